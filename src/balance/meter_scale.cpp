#include "balance/meter_scale.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/handbook_practice.hpp"

namespace slabwright {
namespace {

struct Span {
  double least_m3_per_s = HUGE_VAL, most_m3_per_s = 0.0;

  void take(double flow_m3_per_s) {
    least_m3_per_s = std::min(least_m3_per_s, flow_m3_per_s);
    most_m3_per_s = std::max(most_m3_per_s, flow_m3_per_s);
  }
};

/// What the ports are meant to carry, and what they will.
Span settled_span(const Balance& balance) {
  Span span;
  for (const PortSetting& port : balance.port) {
    span.take(port.aim_m3_per_s);
    span.take(port.after_m3_per_s);
  }
  return span;
}

/// The same, and all that shows while ports are being turned.
Span on_the_way(const Balance& balance) {
  Span span = settled_span(balance);
  for (const PortSetting& port : balance.port) span.take(port.open_m3_per_s);
  if (balance.open_is_enough) return span;
  for (const BalanceMove& move : balance.move) {
    for (const double flow_m3_per_s : move.then_m3_per_s) span.take(flow_m3_per_s);
  }
  return span;
}

void say_unread(const char* sentence, double most, double flow, std::vector<Diagnostic>& said) {
  said.push_back({Severity::warning,
                  "balance.meter",
                  "valve.meter_most",
                  sentence,
                  {Measured{most, Dimension::flow}, Measured{flow, Dimension::flow}}});
}

}  // namespace

double meter_most_m3_per_s(const Design& design, const Balance& balance) {
  if (design.valve.meter_most_m3_per_s) return *design.valve.meter_most_m3_per_s;
  const double shown = on_the_way(balance).most_m3_per_s;
  const auto scales = meter_scales_m3_per_s(design.units == System::us ? Customary::us : Customary::si);
  const auto enough =
      std::find_if(scales.begin(), scales.end(), [&](double most) { return shown <= meter_most_share.value * most; });
  return enough != scales.end() ? *enough : scales.back();
}

void say_meters(const Balance& balance, std::vector<Diagnostic>& said) {
  const double most = balance.meter_most_m3_per_s;
  const double low = meter_least_share.value * most, high = meter_most_share.value * most;
  const Span meant = settled_span(balance), all = on_the_way(balance);
  if (meant.least_m3_per_s < low) {
    say_unread(
        "a meter that goes to {} is not to be trusted at {}, less than a fifth of it: fewer or longer loops, a "
        "smaller drop, or a finer meter.",
        most, meant.least_m3_per_s, said);
  }
  if (meant.most_m3_per_s > high) {
    say_unread(
        "a meter that goes to {} cannot show {} well, over nine tenths of it: more or shorter loops, a larger "
        "drop, or a meter that goes further.",
        most, meant.most_m3_per_s, said);
  } else if (all.most_m3_per_s > high) {
    say_unread(
        "while ports are being set a meter that goes to {} would have to show {}, over nine tenths of it: start "
        "with all ports half shut, or take a meter that goes further.",
        most, all.most_m3_per_s, said);
  }
}

}  // namespace slabwright
