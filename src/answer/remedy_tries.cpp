// What each stop lets be tried, and how figures are typed.
#include "answer/remedy_tries.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/answer_remedies.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using Tries = std::vector<RemedyTry>;

/// Two figures; a degree whole.
std::string typed(double si, Dimension dimension, System system, bool up) {
  constexpr double slack = 1e-9;  // what stands on a step stays there
  const Shown unit = shown(dimension, system);
  const double value = in_unit(si, unit.unit, dimension);
  double step = 1.0;
  int decimals = 0;
  if (dimension != Dimension::degree && value > 0.0) {
    for (; step * 100.0 <= value; step *= 10.0) continue;
    for (; step * 10.0 > value && decimals < 6; step /= 10.0) ++decimals;
  }
  const double steps = up ? std::ceil(value / step - slack) : std::floor(value / step + slack);
  return show_as(from_unit(steps * step, unit.unit, dimension), dimension, unit.unit, decimals);
}

std::string kilowatts(double power_W) { return show_as(std::ceil(power_W / 100.0) * 100.0, Dimension::power, "kW", 1); }

Tries for_frozen_start(const Answer& answer, const Diagnostic&) {
  const Mixture mixture = mixture_of(answer.file.design.fluid);
  const double freezes_degC = mixture.glycol_volume_share > 0.0 ? freezing_point_degC(mixture) : 0.0;
  Tries tries;
  if (mixture.glycol_volume_share > 0.0)
    tries.push_back({"fluid.glycol", {"45 %", "50 %"}});
  else
    tries.push_back({"fluid.kind", {"propylene glycol"}});
  tries.push_back({"fluid.start", typed_above(freezes_degC, {3.0, 5.0}, answer.file.design.units)});
  return tries;
}

Tries for_expansion(const Answer& answer, const Diagnostic&) {
  const Design& design = answer.file.design;
  return {{"pressure.fill", typed_down(design.pressure.relief_Pa, {0.5, 0.3}, Dimension::pressure, design.units)},
          {"pressure.relief", {design.units == System::us ? "30 psi" : "3.0 bar"}}};
}

Tries for_tube_in_slab(const Answer& answer, const Diagnostic&) {
  const Design& design = answer.file.design;
  const TubeSize* tube = find_tube(design.tube.size.name);
  if (!tube) return {};
  const double spare_m = design.slab.thickness_m - tube->outside_diameter_m;
  return {{"slab.concrete_above_tube", typed_down(spare_m, {0.5, 0.3}, Dimension::length, design.units)}};
}

/// By the floor at work and by the frost hold, whichever is more.
double asked_of_boiler_W(const Answer& answer) {
  const double hold_W = answer.freeze ? answer.freeze->hold_W : 0.0;
  return answer.sizes ? std::max(hold_W, answer.sizes->boiler.floor_W) : hold_W;
}

Tries for_small_boiler(const Answer& answer, const Diagnostic&) {
  const RemedyTry boilers = larger_boilers(answer);
  if (!answer.envelope || !answer.sizes) return {boilers};
  // Or a building that asks for no more than this boiler gives.
  const double gives_share = answer.sizes->boiler.power_W / asked_of_boiler_W(answer);
  const double enough_W = answer.envelope->loss_W * std::min(1.0, gives_share);
  return {boilers,
          {"building.heat_loss", typed_down(enough_W, {0.8, 0.4}, Dimension::power, answer.file.design.units)}};
}

Tries for_bare_room(const Answer&, const Diagnostic& said) { return {{said.about + ".heated_floor", {"false"}}}; }

Tries for_long_leader(const Answer& answer, const Diagnostic& said) {
  const double too_long_m = std::get<Measured>(said.parts[1]).si;
  return {{"tube.leader", typed_down(too_long_m, {0.2, 0.1}, Dimension::length, answer.file.design.units)}};
}

Tries for_no_floor(const Answer& answer, const Diagnostic&) {
  Tries heated;
  for (std::size_t i = 0; i < answer.file.design.room.size(); ++i)
    if (!answer.file.design.room[i].heated_floor)
      heated.push_back({fmt::format("room[{}].heated_floor", i + 1), {"true"}});
  if (!heated.empty()) return heated;
  const bool us = answer.file.design.units == System::us;
  return {{"slab.size", {us ? "36 x 30 ft" : "11 x 9 m", us ? "12 x 10 ft" : "4 x 3 m"}}};
}

/// A code that says that something stopped before it had what it was asked for. What only readings or sheets say has no
/// row: trying a value runs neither.
struct StopRow {
  std::string_view code;
  Tries (*tries)(const Answer&, const Diagnostic&);
};
constexpr StopRow stop_rows[] = {{"plant.boiler-too-small", for_small_boiler},
                                 {"plant.boiler-too-cool", cool_boiler_tries},
                                 {"plant.injection-short", injection_tries},
                                 {"plant.no-boiler-water", circuit_tries},
                                 {"plant.pump-stands", circuit_tries},
                                 {"plant.not-settled", circuit_tries},
                                 {"plant.shut-not-settled", circuit_tries},
                                 {"plant.start-not-settled", circuit_tries},
                                 {"plant.supply-too-hot", hot_supply_tries},
                                 {"plant.start-frozen", for_frozen_start},
                                 {"plant.no-room-for-expansion", for_expansion},
                                 {"floor.too-warm", warm_floor_tries},
                                 {"floor.no-tube", for_bare_room},
                                 {"balance.not-settled", circuit_tries},
                                 {"balance.pump-too-weak", weak_pump_tries},
                                 {"balance.out-of-band", out_of_band_tries},
                                 {"freeze.no-setting", no_setting_tries},
                                 {"freeze.cannot-be-called", not_called_tries},
                                 {"freeze.boiler-too-small", for_small_boiler},
                                 {"slab.tube-does-not-fit", for_tube_in_slab},
                                 {"tube.leader-too-long", for_long_leader},
                                 {"loops.no-floor", for_no_floor},
                                 {"layout.bend-too-wide", wide_bend_tries},
                                 {"layout.too-few-ports", few_port_tries},
                                 {"layout.round-drawn", round_drawn_tries},
                                 {"layout.no-floor", no_way_tries},
                                 {"layout.no-apron", no_way_tries},
                                 {"layout.not-shared-out", no_way_tries},
                                 {"layout.not-parted", no_way_tries},
                                 {"layout.no-port-left", no_way_tries},
                                 {"layout.own-loops", no_way_tries}};

const StopRow* stop_row(const std::string& code) {
  for (const StopRow& row : stop_rows)
    if (row.code == code) return &row;
  return nullptr;
}

}  // namespace

void add_to(std::vector<RemedyTry>& tries, std::vector<RemedyTry> more) {
  for (RemedyTry& one : more) tries.push_back(std::move(one));
}

std::string typed_up(double si, Dimension dimension, System system) { return typed(si, dimension, system, true); }
std::string typed_down(double si, Dimension dimension, System system) { return typed(si, dimension, system, false); }

std::vector<std::string> typed_up(double si, const std::vector<double>& by, Dimension dimension, System system) {
  std::vector<std::string> texts;
  for (const double times : by) texts.push_back(typed_up(times * si, dimension, system));
  return texts;
}

std::vector<std::string> typed_down(double si, const std::vector<double>& by, Dimension dimension, System system) {
  std::vector<std::string> texts;
  for (const double times : by) texts.push_back(typed_down(times * si, dimension, system));
  return texts;
}

std::vector<std::string> typed_above(double from_degC, const std::vector<double>& by_K, System system) {
  std::vector<std::string> texts;
  for (const double by : by_K) texts.push_back(typed_up(from_degC + by, Dimension::degree, system));
  return texts;
}

std::vector<std::string> typed_counts(int from, int to) {
  std::vector<std::string> texts;
  for (int i = from; i <= to; ++i) texts.push_back(fmt::format("{}", i));
  return texts;
}

std::string indoor_path(const DesignFile& file, std::size_t room) {
  const std::string row = fmt::format("room[{}]", room + 1);
  const bool own = file.design.room[room].indoor_degC.has_value();
  return own && row_is_given(file, row) ? row + ".indoor" : "climate.indoor";
}

bool row_is_given(const DesignFile& file, const std::string& row) {
  return std::any_of(file.given.begin(), file.given.end(),
                     [&](const std::string& path) { return path.compare(0, row.size() + 1, row + ".") == 0; });
}

RemedyTry larger_boilers(const Answer& answer) {
  const Design& design = answer.file.design;
  const double wanted_W = asked_of_boiler_W(answer);
  double stated_over_given = 1.0;
  // An element on another voltage than its own gives another power than its plate says.
  if (answer.sizes && design.boiler.power_W && answer.sizes->boiler.power_W > 0.0)
    stated_over_given = *design.boiler.power_W / answer.sizes->boiler.power_W;
  RemedyTry boilers{"boiler.power", {}};
  for (const double by : {1.02, 1.5, 3.0, 8.0}) {
    const double power_W = by * stated_over_given * wanted_W;
    const auto step = next_boiler_W(power_W, design.units == System::us ? Customary::us : Customary::si);
    boilers.texts.push_back(kilowatts(step.value_or(power_W)));
  }
  return boilers;
}

bool is_stop(const std::string& code) { return stop_row(code) != nullptr; }

std::vector<RemedyTry> remedy_tries(const Answer& answer, const Diagnostic& said) {
  const StopRow* row = stop_row(said.code);
  return row ? row->tries(answer, said) : Tries{};
}

}  // namespace slabwright
