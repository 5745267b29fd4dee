#include "report/tape.hpp"

#include <fmt/format.h>

#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright::report {
namespace {

constexpr double quarter_m = 0.0254 / 4.0;

std::string feet_and_inches(double si) {
  const auto quarters = static_cast<long long>(std::floor(std::abs(si) / quarter_m + 0.5));
  const long long feet = quarters / 48, inches = quarters % 48 / 4;
  constexpr const char* parts[] = {"", "1/4", "1/2", "3/4"};
  const char* part = parts[quarters % 4];
  std::string text = feet > 0 ? fmt::format("{} ft", feet) : "";
  std::string rest = inches > 0 ? fmt::format("{}", inches) : "";
  if (*part) rest += rest.empty() ? part : fmt::format(" {}", part);
  if (rest.empty() && feet == 0) rest = "0";
  if (!rest.empty()) text += fmt::format("{}{} in", text.empty() ? "" : " ", rest);
  return si < 0.0 && quarters > 0 ? "-" + text : text;
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

std::string chance(double share) {
  expects(std::isfinite(share), "report: a chance that is not a finite number");
  if (share < 0.001) return "under 0.1 %";
  return share < 0.0995 ? fmt::format("{:.1f} %", 100.0 * share) : fmt::format("{:.0f} %", 100.0 * share);
}

}  // namespace slabwright::report
