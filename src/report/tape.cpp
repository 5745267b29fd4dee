#include "report/tape.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string_view>
#include <vector>

#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::report {
namespace {

constexpr double quarter_m = inch_m / 4.0;

std::string feet_and_inches(double si) {
  const auto quarters = static_cast<long long>(std::floor(std::abs(si) / quarter_m + 0.5));
  const long long feet = quarters / 48, inches = quarters % 48 / 4, rest = quarters % 4;
  constexpr std::string_view rests[] = {"", "1/4", "1/2", "3/4"};
  std::vector<std::string> words;
  if (si < 0.0 && quarters > 0) words.emplace_back("-");
  if (feet > 0) words.push_back(fmt::format("{} ft ", feet));
  if (inches > 0) words.push_back(fmt::format("{} ", inches));
  if (rest > 0) words.push_back(fmt::format("{} ", rests[rest]));
  if (quarters == 0) words.emplace_back("0 ");
  words.emplace_back(quarters % 48 > 0 || quarters == 0 ? "in" : "");
  std::string text = fmt::format("{}", fmt::join(words, ""));
  if (text.back() == ' ') text.pop_back();
  return text;
}

}  // namespace

std::string tape(double si, System system) {
  expects(std::isfinite(si), "report: a length that is not a finite number");
  if (system == System::us) return feet_and_inches(si);
  const auto steps = static_cast<long long>(std::floor(std::abs(si) / 0.005 + 0.5));
  const std::string text =
      steps >= 200 ? fmt::format("{}.{:03} m", steps / 200, steps % 200 * 5) : fmt::format("{} mm", steps * 5);
  return si < 0.0 && steps > 0 ? "-" + text : text;
}

std::string rule(double si, System system) {
  expects(std::isfinite(si) && si >= 0.0, "report: a size that is not a number, or below 0");
  if (system == System::si) return fmt::format("{:g} mm", std::round(10000.0 * si) / 10.0);
  const auto sixteenths = static_cast<long long>(std::floor(si / (inch_m / 16.0) + 0.5));
  long long over = sixteenths % 16, under = 16;
  for (; over > 0 && over % 2 == 0; over /= 2) under /= 2;
  if (over == 0) return fmt::format("{} in", sixteenths / 16);
  return sixteenths < 16 ? fmt::format("{}/{} in", over, under)
                         : fmt::format("{} {}/{} in", sixteenths / 16, over, under);
}

std::string chance(double share) {
  expects(std::isfinite(share), "report: a chance that is not a finite number");
  if (share < 0.001) return "under 0.1 %";
  return share < 0.0995 ? fmt::format("{:.1f} %", 100.0 * share) : fmt::format("{:.0f} %", 100.0 * share);
}

}  // namespace slabwright::report
