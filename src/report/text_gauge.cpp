// gauge: is the pressure test leaking?
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

#include "report/text.hpp"

namespace slabwright {
namespace report {
namespace {

/// Numbers in the units that were typed.
struct GaugeReader {
  const GaugeAnswer& answer;
  const GaugeOptions& options;

  std::string pressure(double Pa) const {
    const int decimals = options.pressure_unit == "bar" ? 2 : options.pressure_unit == "psi" ? 1 : 0;
    return show_as(Pa, Dimension::pressure, options.pressure_unit, decimals);
  }
  /// "49.9 to 56.8 psi".
  std::string range(double least_Pa, double most_Pa) const {
    const std::string least = pressure(least_Pa);
    return fmt::format("{} to {}", least.substr(0, least.find(' ')), pressure(most_Pa));
  }
  std::string degree(double degC) const { return show_as(degC, Dimension::degree, options.degree_unit, 0); }
  std::string rise(double K) const { return show_as(K, Dimension::rise, options.degree_unit == "F" ? "F" : "K", 1); }
  std::string reading(double Pa, double degC) const { return fmt::format("{} at {}", pressure(Pa), degree(degC)); }
};

std::string hours_words(double s) { return fmt::format("{:.0f} hours", std::max(1.0, std::round(s / hour_s))); }

/// "in 8 hours, at the hour of the first reading".
std::string when_again(const GaugeAnswer& answer) {
  if (answer.after_s) return fmt::format("in {}, at the hour of the first reading", hours_words(answer.wait_s));
  return fmt::format("{} after the first reading, at the same hour of the day", hours_words(answer.wait_s));
}

std::string gauge_verdict(const GaugeReader& r) {
  const JudgedTest& judged = r.answer.judged;
  const std::string now = r.pressure(r.answer.now_Pa);
  switch (judged.why) {
    case TestWhy::within:
      return fmt::format("IT HOLDS, as far as this gauge can tell: {} is what {} comes to at {}.", now,
                         r.reading(r.answer.then_Pa, r.answer.then_degC), r.degree(r.answer.now_degC));
    case TestWhy::fell:
      return fmt::format("IT LEAKS: {} is {} under what a tight tube would read, more than errors explain.", now,
                         r.pressure(-judged.off_Pa));
    case TestWhy::in_between:
      return fmt::format("CANNOT TELL YET: {} is {} low, about as much as errors make. Wait and read again.", now,
                         r.pressure(-judged.off_Pa));
    case TestWhy::rose:
      return fmt::format("CANNOT TELL YET: {} is more than a tight tube reads. Something else moved.", now);
    case TestWhy::too_coarse:
      return fmt::format("CANNOT TELL YET: it reads as it should, but a loss of {} would not show.",
                         r.pressure(judged.doubt_Pa));
    case TestWhy::unlike:
      return fmt::format(
          "CANNOT TELL YET: water was tested at {} and read at {}, and temperature alone moves it more "
          "than a leak does.",
          r.degree(r.answer.then_degC), r.degree(r.answer.now_degC));
    case TestWhy::frozen: return "CANNOT TELL YET: water at freezing may be ice, and the tube is in danger now.";
  }
  return {};
}

std::vector<std::string> gauge_steps(const GaugeReader& r) {
  const std::string again = fmt::format("Read it again {}, and pump nothing in between.", when_again(r.answer));
  switch (r.answer.judged.why) {
    case TestWhy::within:
      return {"Write it down: date, hour, both readings, both temperatures, who saw them.",
              "Leave the gauge on, in sight, until the concrete is in and hard."};
    case TestWhy::fell:
      return {"No concrete before it is found. Soap the gauge, the caps and the manifold first: most leaks are there.",
              "Then shut loop by loop and see with which one it stops. Mend, pump up, begin the time anew."};
    case TestWhy::in_between: return {again, "Meanwhile soap the gauge, the caps and the manifold."};
    case TestWhy::rose:
      return {"The tube may have been warmer than the thermometer: sun on it, or a heater. Or it was pumped again.",
              again};
    case TestWhy::too_coarse:
      return {
          "A gauge with a shorter scale, or the thermometer against the tube, sees more (--gauge-error, "
          "--thermometer-error).",
          again};
    case TestWhy::unlike:
      return {
          again,
          "Wait until the water itself is as warm as it was. Look for wet places meanwhile: water shows its leaks."};
    case TestWhy::frozen:
      return {
          "Warm the place, or blow the water out now: ice bursts tube. In frost test on air, where the code allows "
          "it."};
  }
  return {};
}

void add_expected(Page& page, const GaugeReader& r) {
  const GaugeAnswer& answer = r.answer;
  const JudgedTest& judged = answer.judged;
  add_row(page, "Read", "first", r.reading(answer.then_Pa, answer.then_degC) + " on " + answer.medium);
  std::string now = r.reading(answer.now_Pa, answer.now_degC);
  if (answer.after_s) now += fmt::format(", {} later", hours_words(*answer.after_s));
  add_row(page, "", "now", now);
  const bool estimate = judged.why == TestWhy::unlike || judged.why == TestWhy::frozen;
  add_row(page, "If tight", estimate ? "perhaps" : "expected",
          fmt::format("{} at {}; {} with every error counted", r.pressure(judged.expected_Pa),
                      r.degree(answer.now_degC), r.range(judged.least_Pa, judged.most_Pa)));
  if (!estimate) add_row(page, "", "off", r.pressure(judged.off_Pa));
  if (answer.hourly_Pa) add_row(page, "", "loses", r.pressure(*answer.hourly_Pa) + " an hour");
}

void add_errors(Page& page, const GaugeReader& r) {
  const GaugeAnswer& answer = r.answer;
  std::string gauge = r.pressure(answer.gauge_error_Pa) + " a reading";
  if (answer.scale_Pa)
    gauge += fmt::format(" ~ (2 % of a scale to {}; yours with --gauge-error)", r.pressure(*answer.scale_Pa));
  add_row(page, "Errors", "gauge", gauge);
  add_row(page, "", "warmth",
          fmt::format("{} a reading, which is {} of pressure", r.rise(answer.thermometer_error_K),
                      r.pressure(std::abs(answer.judged.one_kelvin_Pa) * answer.thermometer_error_K)));
  add_row(page, "", "together", r.pressure(answer.judged.doubt_Pa) + ": a smaller loss would not show");
  add_row(page, "", "the tube", fmt::format("yields, and takes {} off at most", r.pressure(answer.judged.tube_Pa)));
}

/// Why water cannot be corrected.
void add_water(Page& page, const GaugeReader& r) {
  if (!r.answer.swing_least_Pa) return;
  const double step_K = r.options.degree_unit == "F" ? 5.0 / 9.0 : 1.0;
  add_gap(page);
  add_text(page, fmt::format(
                     "Tube of PE-X full of water reads lower as it warms, for its bore grows more than the water: {} "
                     "for each degree, an estimate so wide that it corrects nothing. Tube with a metal layer goes the "
                     "other way, and farther.",
                     r.range(*r.answer.swing_least_Pa * step_K, *r.answer.swing_most_Pa * step_K)));
}

}  // namespace
}  // namespace report

std::string text_of(const GaugeAnswer& answer, const GaugeOptions& options) {
  using namespace report;
  const GaugeReader r{answer, options};
  Page page;
  page.lines.emplace_back("PRESSURE TEST   is it leaking?");
  add_blank(page);
  add_text(page, gauge_verdict(r));
  add_gap(page);
  add_expected(page, r);
  add_gap(page);
  add_errors(page, r);
  add_water(page, r);
  add_gap(page);
  for (const std::string& step : gauge_steps(r)) add_text(page, step, "- ");
  add_gap(page);
  add_text(
      page,
      "A pressure test stores energy, above all with air: keep people away. How high and how long is for the local "
      "code and the tube's maker to say.");
  const bool holds = answer.judged.verdict == TestVerdict::holds;
  add_text(
      page,
      holds ? std::string("slabwright cure my-shop.toml --poured \"2026-09-14\"")
            : fmt::format("slabwright gauge --then \"{}\" --now \"...\"", r.reading(answer.then_Pa, answer.then_degC)),
      "Next:  ");
  return text_of(page);
}

}  // namespace slabwright
