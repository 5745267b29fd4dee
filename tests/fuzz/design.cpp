// A design file through the reader: sentences of ours, numbers within their limits, and what is written reads back.
#include <algorithm>
#include <cmath>
#include <set>

#include "fuzz/targets.hpp"
#include "slabwright/design.hpp"

namespace slabwright::fuzz {
namespace {

/// A sentence may quote what somebody wrote, even the parser's words.
void check_sentence(const Diagnostic& said, System units, std::string_view wrote) {
  const std::string sentence = say(said, units);
  for (const std::string_view word : {"while parsing", "toml", "U+00"})
    must(sentence.find(word) == std::string::npos || wrote.find(word) != std::string_view::npos,
         "the parser's words: " + sentence);
  must(sentence.size() < 500 && sentence.find('\n') == std::string::npos, "a long sentence: " + sentence);
}

void check_number(const std::string& path, const Key& key, double value) {
  must(std::isfinite(value), path + " is not finite");
  // Texts of another unit round to the last bit.
  const double slack = 1e-9 * std::fabs(value);
  must(value >= key.says.least - slack && value <= key.says.most + slack, path + " is beyond its limits");
}

void check_numbers(const DesignFile& file) {
  std::set<std::string> has_value(file.given.begin(), file.given.end());
  for (const Assumption& guess : file.assumed) has_value.insert(guess.path);
  walk(reading(file.design), [&](const std::string& path, const Key& key, const Slot& slot) {
    const auto* number = std::get_if<Number>(&slot);
    // A loop's length where its path is given is neither said nor guessed: nothing, which no length may be.
    if (number && *number->at == 0.0 && !has_value.count(path)) return;
    if (number) check_number(path, key, *number->at);
    if (const auto* maybe = std::get_if<MaybeNumber>(&slot); maybe && *maybe->at) check_number(path, key, **maybe->at);
  });
}

/// All but the units: they stand in what is written, where the reader had them from the units of the numbers.
std::vector<Assumption> guesses(const DesignFile& file) {
  std::vector<Assumption> all = file.assumed;
  all.erase(std::remove_if(all.begin(), all.end(), [](const Assumption& guess) { return guess.path == "units"; }),
            all.end());
  return all;
}

}  // namespace

bool design(std::string_view bytes) {
  const ReadDesign read = read_design(bytes);
  must(bool(read.checked) == !any(read.checked.said, Severity::problem), "refused without a problem");
  for (const Diagnostic& said : read.checked.said) check_sentence(said, read.units, bytes);
  if (!read.checked) {
    must(!problems_text(read, "x.toml").empty(), "refused without a word");
    return false;
  }
  const DesignFile& file = *read.checked.value;
  check_numbers(file);
  const std::string written = write_design(file);
  if (file.given.empty()) return true;
  const ReadDesign again = read_design(written);
  must(bool(again.checked), "what is written does not read:\n" + written + problems_text(again, "written.toml"));
  const DesignFile& back = *again.checked.value;
  must(back.design == file.design && guesses(back) == guesses(file),
       "what is written reads back as another:\n" + written);
  return true;
}

}  // namespace slabwright::fuzz
