// Round values for axes. With * and / on whole numbers only, so that every machine finds the same ones.
#include <fmt/format.h>

#include <cmath>
#include <string>

#include "plot_parts.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

/// Sums of doubles that ought to be whole are off by less than this.
constexpr double nearly = 1.0e-6;

/// The k-th multiple is k * times / over: a division makes 0.3 what is written as 0.3.
struct RoundStep {
  double times = 1.0, over = 1.0;
  int decimals = 0;

  double first(double low) const { return std::ceil(low * over / times - nearly); }
  double last(double high) const { return std::floor(high * over / times + nearly); }
  double at(double k) const { return k * times / over; }
};

/// Growing: a decade's 1, 2 and 5; on a clock fractions and multiples of an hour.
RoundStep step_number(int n, PlotSteps steps) {
  static constexpr double clock[] = {1, 2, 3, 6, 12, 24, 48, 96, 168};
  if (steps == PlotSteps::hours) {
    if (n == 0) return {1.0, 4.0, 2};
    if (n == 1) return {1.0, 2.0, 1};
    if (n < 11) return {clock[n - 2], 1.0, 0};
    return {168.0 * std::ldexp(1.0, n - 10), 1.0, 0};
  }
  static constexpr double of_decade[] = {1, 2, 5};
  const int decade = n / 3 - 15;
  double ten = 1.0;
  for (int k = 0; k < std::abs(decade); ++k) ten *= 10.0;
  const double times = of_decade[n % 3];
  return decade < 0 ? RoundStep{times, ten, -decade} : RoundStep{times * ten, 1.0, 0};
}
constexpr int steps_number = 3 * 30;

RoundTicks ticks_of(const RoundStep& step, double from, double to) {
  RoundTicks ticks{{}, step.times / step.over, step.decimals};
  for (double k = from; k <= to; k += 1.0) ticks.at.push_back(step.at(k) + 0.0);  // no -0
  return ticks;
}

}  // namespace

RoundTicks round_ticks(double low, double high, int most, PlotSteps steps) {
  expects(low < high && most > 1, "round_ticks: ends that are not in order");
  for (int n = 0; n < steps_number; ++n) {
    const RoundStep step = step_number(n, steps);
    const double from = step.first(low), to = step.last(high);
    if (to - from < static_cast<double>(most)) return ticks_of(step, from, to);
  }
  throw std::logic_error("round_ticks: values beyond all steps");
}

std::string tick_words(double value, int decimals, bool commas) {
  if (decimals > 5 || std::abs(value) >= 1.0e7) return fmt::format("{:.13g}", value);
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (!commas) return text;
  const std::size_t point = std::min(text.find('.'), text.size());
  const std::size_t sign = text[0] == '-' ? 1 : 0;
  for (std::size_t at = point; at > 3 + sign; at -= 3) text.insert(at - 3, 1, ',');
  return text;
}

PlotAxis axis_of_words(std::string title, const std::vector<std::string>& words) {
  PlotAxis axis;
  axis.title = std::move(title);
  axis.least = -0.5;
  axis.most = static_cast<double>(words.size()) - 0.5;
  for (std::size_t k = 0; k < words.size(); ++k) axis.tick.push_back({static_cast<double>(k), words[k]});
  return axis;
}

namespace drawn {

RoundTicks ticks_around(double low, double high, int most, PlotSteps steps) {
  for (int n = 0; n < steps_number; ++n) {
    const RoundStep step = step_number(n, steps);
    // `nearly` lets a value stand as little beyond the last tick.
    const double from = step.last(low), to = step.first(high);
    if (to - from < static_cast<double>(most)) return ticks_of(step, from, to);
  }
  throw std::logic_error("ticks_around: values beyond all steps");
}

}  // namespace drawn
}  // namespace slabwright
