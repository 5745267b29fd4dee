#include "slabwright/handbook_practice.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr std::array<double, 7> us_boilers_W{4500, 6000, 9000, 12000, 14400, 18000, 24000};
constexpr std::array<double, 6> si_boilers_W{6000, 9000, 12000, 15000, 18000, 24000};

constexpr double gpm_m3_per_s = gallon_m3 / 60.0, L_per_min_m3_per_s = 1e-3 / 60.0;
constexpr std::array<double, 4> us_meters_m3_per_s{1.0 * gpm_m3_per_s, 2.0 * gpm_m3_per_s, 4.0 * gpm_m3_per_s,
                                                   8.0 * gpm_m3_per_s};
constexpr std::array<double, 4> si_meters_m3_per_s{2.5 * L_per_min_m3_per_s, 5.0 * L_per_min_m3_per_s,
                                                   10.0 * L_per_min_m3_per_s, 20.0 * L_per_min_m3_per_s};

constexpr std::array<GenericPump, 3> pumps{
    {{"small", 4.0, 3.0 / hour_s}, {"middle", 6.0, 3.5 / hour_s}, {"large", 8.0, 5.0 / hour_s}}};

bool us(Customary c) { return c == Customary::us; }

}  // namespace

std::span<const double> boiler_steps_W(Customary c) {
  if (us(c)) return us_boilers_W;
  return si_boilers_W;
}

std::span<const double> meter_scales_m3_per_s(Customary c) {
  if (us(c)) return us_meters_m3_per_s;
  return si_meters_m3_per_s;
}

std::optional<double> next_boiler_W(double needed_W, Customary c) {
  for (const double step_W : boiler_steps_W(c))
    if (step_W >= needed_W) return step_W;
  return std::nullopt;
}

std::span<const GenericPump> generic_pumps() { return pumps; }

double generic_pump_head_m(const GenericPump& pump, double flow_m3_per_s) {
  if (flow_m3_per_s <= 0.0) return pump.shutoff_m;
  if (flow_m3_per_s >= pump.most_m3_per_s) return 0.0;
  const double share = flow_m3_per_s / pump.most_m3_per_s;
  return pump.shutoff_m * (1.0 - share * share);
}

}  // namespace slabwright
