#include "slabwright/handbook_practice.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// R-1 of US practice, h ft2 degF / Btu.
constexpr double R_m2K_per_W = 0.176110184;
constexpr double degF_K = 1.0 / 1.8;
constexpr double hour_s = 3600.0;

/// 0.20, 0.30 and 0.45 Btu/h ft2 degF, one physical value for both.
constexpr double tight_W_per_m2K = 1.136, usual_W_per_m2K = 1.703, poor_W_per_m2K = 2.555;

constexpr std::array<BuildingGuess, 3> us_buildings{
    {{"tight", tight_W_per_m2K, 19 * R_m2K_per_W, 38 * R_m2K_per_W, 8 * R_m2K_per_W, 0.35 / hour_s},
     {"usual", usual_W_per_m2K, 13 * R_m2K_per_W, 30 * R_m2K_per_W, 6 * R_m2K_per_W, 0.6 / hour_s},
     {"poor", poor_W_per_m2K, 8 * R_m2K_per_W, 19 * R_m2K_per_W, 4 * R_m2K_per_W, 0.9 / hour_s}}};
constexpr std::array<BuildingGuess, 3> si_buildings{{{"tight", tight_W_per_m2K, 3.3, 6.7, 1.4, 0.35 / hour_s},
                                                     {"usual", usual_W_per_m2K, 2.3, 5.3, 1.05, 0.6 / hour_s},
                                                     {"poor", poor_W_per_m2K, 1.4, 3.3, 0.7, 0.9 / hour_s}}};

constexpr std::array<double, 7> us_boilers_W{4500, 6000, 9000, 12000, 14400, 18000, 24000};
constexpr std::array<double, 6> si_boilers_W{6000, 9000, 12000, 15000, 18000, 24000};

constexpr double gpm_m3_per_s = 3.785411784e-3 / 60.0, L_per_min_m3_per_s = 1e-3 / 60.0;
constexpr std::array<double, 4> us_meters_m3_per_s{1.0 * gpm_m3_per_s, 2.0 * gpm_m3_per_s, 4.0 * gpm_m3_per_s,
                                                   8.0 * gpm_m3_per_s};
constexpr std::array<double, 4> si_meters_m3_per_s{2.5 * L_per_min_m3_per_s, 5.0 * L_per_min_m3_per_s,
                                                   10.0 * L_per_min_m3_per_s, 20.0 * L_per_min_m3_per_s};

constexpr std::array<GenericPump, 3> pumps{
    {{"small", 4.0, 3.0 / 3600.0}, {"middle", 6.0, 3.5 / 3600.0}, {"large", 8.0, 5.0 / 3600.0}}};

bool us(Customary c) { return c == Customary::us; }

PracticeFigure pick(Customary c, double us_value, double si_value) { return {us(c) ? us_value : si_value, "practice"}; }

}  // namespace

std::array<BuildingGuess, 3> building_guesses(Customary c) { return us(c) ? us_buildings : si_buildings; }

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

PracticeFigure working_drop_K(Customary c) { return pick(c, 20 * degF_K, 10.0); }
PracticeFigure usual_fill_gauge_Pa(Customary c) { return pick(c, 12 * psi_Pa, 1.0e5); }
PracticeFigure usual_relief_gauge_Pa(Customary c) { return pick(c, 30 * psi_Pa, 3.0e5); }

PracticeFigure yearly_mean_degC(Customary c) { return pick(c, (45.0 - 32.0) * degF_K, 7.0); }
PracticeFigure yearly_half_swing_K(Customary c) { return pick(c, 22 * degF_K, 12.0); }
PracticeFigure coldest_below_outdoor_K(Customary c) { return pick(c, 12 * degF_K, 7.0); }

}  // namespace slabwright
