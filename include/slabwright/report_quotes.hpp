// An answer quoted figure by figure, by the keys of its JSON: what is printed cannot differ from what the key says.
#pragma once
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/report_guesses.hpp"
#include "slabwright/report_number.hpp"

namespace slabwright {

/// A value of the answer as it is printed, and the key it has in the JSON.
struct Quote {
  std::string key;        ///< "loops.loop[2].length_m", rows counted from 0
  std::string text;       ///< "276 ft"
  std::string unit = {};  ///< of a number that is printed without it, under a head that tells it: "gpm"
  bool number = true;     ///< to be kept on one line; else a text of the answer
};

class Quotes {
 public:
  explicit Quotes(const Answer& answer);

  /// Whether the answer has the key; an entry that is absent has none.
  bool has(std::string_view key) const;
  /// How many rows the list at the key has; none where it is absent.
  std::size_t rows(std::string_view key) const;

  // The rest throws std::logic_error where the answer has no such key, or another kind of value there.

  /// "1.36 gpm" in the reader's unit; followed by `~` where it leans on a guess.
  Quote figure(std::string_view key, report::Kind kind) const;
  Quote figure(std::string_view key, report::Kind kind, report::Figure leaning) const;
  /// The same without its unit.
  Quote bare(std::string_view key, report::Kind kind) const;
  /// As a tape reads it: "12 ft 4 1/4 in", "3.45 m".
  Quote tape(std::string_view key) const;
  /// Money with the file's own label: "$1,240", "35.20 EUR".
  Quote money(std::string_view key) const;
  /// How many rows the list at the key has, as a number.
  Quote count(std::string_view key) const;
  /// A text as it stands in the answer.
  Quote words(std::string_view key) const;

  /// The number itself, to choose by; never to print.
  double number(std::string_view key) const;

  System system() const { return answer_->file.design.units; }
  const Answer& answer() const { return *answer_; }

 private:
  struct Whole;
  const Answer* answer_;
  std::shared_ptr<const Whole> whole_;
};

/// "loops.loop[2].length_m" from "loops.loop", 2 and "length_m".
std::string key_of_row(std::string_view list, std::size_t row, std::string_view member = {});

}  // namespace slabwright
