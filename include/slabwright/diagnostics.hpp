// What a stage has to say, without units, lines or columns: those are found when it is printed.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "units.hpp"

namespace slabwright {

/// A quantity in a sentence, shown in the reader's units when it is printed.
struct Measured {
  double si = 0.0;
  Dimension dimension = Dimension::number;
  friend bool operator==(const Measured& a, const Measured& b) { return a.si == b.si && a.dimension == b.dimension; }
};

/// Short names for the holes of a sentence.
namespace measured {
inline Measured length(double m) { return {m, Dimension::length}; }
inline Measured area(double m2) { return {m2, Dimension::area}; }
inline Measured degree(double degC) { return {degC, Dimension::degree}; }
inline Measured power(double W) { return {W, Dimension::power}; }
inline Measured share(double ratio) { return {ratio, Dimension::share}; }
}  // namespace measured

enum class Severity {
  note,     ///< worth knowing; nothing need be done
  warning,  ///< works, but mend this
  failure,  ///< a limit fails: exit code 3
  problem   ///< the design file is wrong: exit code 2
};

/// One thing said. `sentence` holds a {} for each part.
struct Diagnostic {
  Severity severity = Severity::note;
  std::string code;      ///< stable: "loop.too-long"
  std::string about;     ///< what it is about, as a path in the design file: "loop[3].length"
  std::string sentence;  ///< "{} is {} long; the limit for this tube is {}"
  std::vector<std::variant<std::string, Measured>> parts;
  friend bool operator==(const Diagnostic& a, const Diagnostic& b) {
    return a.severity == b.severity && a.code == b.code && a.about == b.about && a.sentence == b.sentence &&
           a.parts == b.parts;
  }
};

/// The sentence with its holes filled in the reader's units.
std::string say(const Diagnostic& diagnostic, System system);

/// A value, or the reasons why there is none; the reasons may also stand beside a value.
template <class T>
struct Checked {
  std::optional<T> value;
  std::vector<Diagnostic> said;
  explicit operator bool() const { return value.has_value(); }
};

/// Whether any of it is as grave as this.
bool any(const std::vector<Diagnostic>& said, Severity at_least);
bool any_code(const std::vector<Diagnostic>& said, std::string_view code);

}  // namespace slabwright
