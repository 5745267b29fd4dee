// Golden answers compared as words and numbers: what a reader reads, not where a line ends.
#pragma once
#include <cmath>
#include <cstdlib>
#include <sstream>
#include <string>
#include <vector>

namespace slabwright::test {

/// A number as it is printed, and one unit of its last digit: "23,100" and 100, "0.61" and 0.01.
struct Printed {
  bool number = false;
  double value = 0.0;
  double unit = 0.0;
};

inline Printed printed(std::string word) {
  while (!word.empty() && (word.front() == '(' || word.front() == '"')) word.erase(0, 1);
  while (!word.empty() && std::string(".,;:)\"").find(word.back()) != std::string::npos) word.pop_back();
  std::string digits;
  const bool thousands = word.find(',') != std::string::npos;
  for (const char c : word) {
    if (c == ',') continue;
    if ((c < '0' || c > '9') && c != '.' && !(c == '-' && digits.empty())) return {};
    digits += c;
  }
  if (digits.empty() || digits == "-" || digits == ".") return {};
  const std::size_t point = digits.find('.');
  // Heat is printed in hundreds of Btu/h; nothing else has commas and ends in zeros.
  const bool hundreds = thousands && digits.size() > 2 && digits.substr(digits.size() - 2) == "00";
  const double unit = point == std::string::npos ? (hundreds ? 100.0 : 1.0)
                                                 : std::pow(10.0, -static_cast<double>(digits.size() - point - 1));
  return {true, std::strtod(digits.c_str(), nullptr), unit};
}

/// Nothing where both say the same: words alike, numbers within one unit of their last digit, which is as far as two
/// compilers may round apart. Else the first words that differ.
inline std::string golden_difference(const std::string& golden, const std::string& text) {
  std::istringstream a(golden), b(text);
  std::string before, left, right;
  while (true) {
    const bool more_left = static_cast<bool>(a >> left), more_right = static_cast<bool>(b >> right);
    if (!more_left && !more_right) return {};
    if (!more_left || !more_right) return "one ends after \"" + before + "\"";
    const Printed x = printed(left), y = printed(right);
    const bool alike =
        x.number && y.number ? std::abs(x.value - y.value) <= std::max(x.unit, y.unit) * 1.001 : left == right;
    if (!alike) return "after \"" + before + "\": \"" + left + "\" became \"" + right + "\"";
    before = left;
  }
}

}  // namespace slabwright::test
