// Heat against the weather, steady: the shop's needs by the envelope, the water's by the plant, the second source's by
// its curve.
#include "slabwright/winter_outdoor.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/fluid.hpp"
#include "slabwright/maths.hpp"
#include "slabwright/units_exact.hpp"
#include "winter/machines.hpp"

namespace slabwright {
namespace {

using namespace winter;

/// Less than this is no heat that anybody wants.
constexpr double least_wanted_W = 1.0;
/// Two rows that lie nearer than this are one.
constexpr double one_row_K = 1e-6;
/// Steps in which a cross-over is looked for: finer than the rows of any maker's table.
constexpr double search_step_K = 1.0;

/// Temperatures that a fitter is asked for, round in the reader's own units.
std::vector<double> asked_degC(System system) {
  if (system == System::si) return {-20.0, -10.0, 0.0, 8.0};
  std::vector<double> asked;
  for (const double degF : {-4.0, 14.0, 32.0, 47.0}) asked.push_back((degF - 32.0) / 1.8);
  return asked;
}

/// Marks of 10 F or 5 K between two temperatures.
std::vector<double> marks_degC(System system, double from_degC, double to_degC) {
  const double step_K = system == System::us ? 10.0 / 1.8 : 5.0, zero_degC = system == System::us ? -32.0 / 1.8 : 0.0;
  std::vector<double> marks;
  for (double i = std::ceil((from_degC - zero_degC) / step_K); zero_degC + i * step_K < to_degC; i += 1.0)
    marks.push_back(zero_degC + i * step_K);
  return marks;
}

/// Heat that a floor takes from a room while its water stands: the water is then as warm as leaves it no heat.
double taken_W_per_m2(const Section& section, double room_degC) {
  const auto given = [&](double water_degC) {
    return floor_from_water(section, water_degC, section.wall_mK_per_W, room_degC);
  };
  const auto lost_W_per_m2 = [&](double water_degC) {
    const FloorState floor = given(water_degC);
    return floor.up_W_per_m2 + floor.down_W_per_m2;
  };
  const double low_degC = std::min(section.below_degC, room_degC), high_degC = std::max(section.below_degC, room_degC);
  if (high_degC - low_degC < one_row_K) return 0.0;
  // Water as cold as all round it takes heat, as warm as all round it gives heat: the bracket holds the root.
  return -given(root_in_bracket(lost_W_per_m2, low_degC, high_degC, {}).x).up_W_per_m2;
}

void say_unsettled_at(double outdoor_degC, const OperatingPoint& point, std::vector<Diagnostic>& said) {
  constexpr std::string_view code = "winter.not-settled";
  if (point.stop == Stop::converged || any_code(said, code)) return;
  said.push_back({Severity::warning,
                  std::string(code),
                  "tube",
                  "at {} outside flow and temperature of {} did not settle together; take that weather as rough.",
                  {Measured{outdoor_degC, Dimension::degree}, point.worst}});
}

class ShopInWeather {
 public:
  explicit ShopInWeather(const OutdoorCase& shop) : shop_(shop), design_(shop.plant.design) {
    for (std::size_t i = 0; i < shop.envelope.room.size(); ++i) add_room(i);
    const SecondSource& source = design_.second_source;
    heats_water_ = source.kind == SecondSourceKind::water_heat_pump;
    SecondSource as_air = source;
    if (heats_water_) as_air.kind = SecondSourceKind::heat_pump;
    machines_.source = heat_pump_of(as_air);
    machines_.defrost = source.defrost;
    const std::size_t room = room_row(design_, source.room);
    source_room_degC_ = shop.envelope.room[room].indoor_degC;
    if (machines_.source && !heats_water_)
      layered_W_ = source.gradient_K_per_m * layered_Wm_per_K(design_, shop.envelope.room[room], room);
  }

  bool is_heated() const { return loss_W_per_K_ > 0.0; }
  double idle_degC() const { return warm_W_ / loss_W_per_K_; }
  bool heats_water() const { return heats_water_; }
  bool has_source() const { return machines_.source.has_value(); }
  std::optional<double> cut_out_degC() const {
    if (!machines_.source || !machines_.source->cut_out) return std::nullopt;
    return machines_.source->cut_out->out_degC;
  }

  OutdoorRow row(double outdoor_degC, std::vector<Diagnostic>& said) const;
  /// What the second source must give where nothing else heats the air.
  double alone_W(double outdoor_degC) const {
    double sum_W = cold_floor_W_ + layered_W_;
    for (std::size_t i = 0; i < shop_.envelope.room.size(); ++i) sum_W += loss_W(i, outdoor_degC) - gains_W(i);
    return std::max(0.0, sum_W);
  }
  FullLoad source_at(double outdoor_degC) const {
    const SourceHour hour = source_hour(machines_, outdoor_degC, outdoor_degC);
    return heats_water_ ? hour.full : in_room(hour, source_room_degC_);
  }
  bool locked(double outdoor_degC) const { return cut_out_degC() && outdoor_degC < *cut_out_degC(); }

 private:
  void add_room(std::size_t i) {
    const RoomLoss& room = shop_.envelope.room[i];
    if (!heated(i)) return;
    loss_W_per_K_ += room.total_W_per_K;
    warm_W_ += room.total_W_per_K * room.indoor_degC - room.gains_W;
    cold_floor_W_ += shop_.floor.room[i].heated_m2 * taken_W_per_m2(shop_.plant.floor->section, room.indoor_degC);
  }
  bool heated(std::size_t i) const {
    return shop_.floor.room[i].heated_m2 > 0.0 && shop_.envelope.room[i].total_W_per_K > 0.0;
  }
  double loss_W(std::size_t i, double outdoor_degC) const {
    const RoomLoss& room = shop_.envelope.room[i];
    return heated(i) ? room.total_W_per_K * (room.indoor_degC - outdoor_degC) : 0.0;
  }
  double gains_W(std::size_t i) const { return heated(i) ? shop_.envelope.room[i].gains_W : 0.0; }
  /// A floor that its limit stops in the weather planned for gives no more in any other.
  double wanted_W(std::size_t i, double outdoor_degC) const {
    const double wanted = std::max(0.0, loss_W(i, outdoor_degC) - gains_W(i));
    const RoomFloor& floor = shop_.floor.room[i];
    if (floor.shortfall_W <= 0.0) return wanted;
    return std::min(wanted, floor.given_W_per_m2 * shop_.envelope.room[i].floor_m2);
  }
  void add_water(OutdoorRow& row, const std::vector<double>& wanted, std::vector<Diagnostic>& said) const;
  void add_source(OutdoorRow& row) const;

  const OutdoorCase& shop_;
  const Design& design_;
  Machines machines_;
  bool heats_water_ = false;
  double source_room_degC_ = 0.0, layered_W_ = 0.0, cold_floor_W_ = 0.0;
  double loss_W_per_K_ = 0.0, warm_W_ = 0.0;  ///< of all heated rooms; the second less gains, outdoors at 0 degC
};

void ShopInWeather::add_water(OutdoorRow& row, const std::vector<double>& wanted, std::vector<Diagnostic>& said) const {
  if (row.wanted_W < least_wanted_W) return;
  std::optional<OperatingPoint> point;
  if (std::abs(row.outdoor_degC - shop_.envelope.outdoor_degC) < one_row_K) {
    point = shop_.point;
  } else {
    Conditions conditions{{}, row.outdoor_degC};
    for (const RoomLoss& room : shop_.envelope.room) conditions.room_degC.push_back(room.indoor_degC);
    point = supply_for(shop_.plant, conditions, wanted).value;
    if (point) say_unsettled_at(row.outdoor_degC, *point, said);
  }
  if (!point) return;
  row.down_W = point->down_W;
  row.load_W = row.wanted_W + point->down_W;
  row.water_W = point->water_W;
  row.supply_degC = point->supply_degC;
  row.return_degC = point->return_degC;
  row.flow_m3_per_s = point->flow_m3_per_s;
}

void ShopInWeather::add_source(OutdoorRow& row) const {
  if (!machines_.source) return;
  const FullLoad full = source_at(row.outdoor_degC);
  row.source_locked = locked(row.outdoor_degC);
  const bool runs = !row.source_locked && full.capacity_W > 0.0 && full.cop >= machines_.source->least_cop;
  row.source_W = runs ? full.capacity_W : 0.0;
  if (!runs) return;
  row.source_cop_number = full.cop;
  row.source_electric_W = full.capacity_W / full.cop;
  if (!row.supply_degC) return;
  const FluidProperties water = properties_of(mixture_of(design_.fluid), *row.supply_degC);
  const double heat_J_per_m3K = water.density_kg_per_m3 * water.specific_heat_J_per_kgK;
  row.unit_least_m3_per_s = full.capacity_W / (heat_J_per_m3K * design_.pump.drop_K);
  row.unit_buffer_m3 = water_to_add_m3(shop_.plant, shop_.point, full.capacity_W, row.load_W);
}

OutdoorRow ShopInWeather::row(double outdoor_degC, std::vector<Diagnostic>& said) const {
  OutdoorRow row;
  row.outdoor_degC = outdoor_degC;
  std::vector<double> wanted;
  for (std::size_t i = 0; i < shop_.envelope.room.size(); ++i) {
    row.loss_W += loss_W(i, outdoor_degC);
    row.gains_W += gains_W(i);
    wanted.push_back(wanted_W(i, outdoor_degC));
    row.wanted_W += wanted.back();
  }
  add_water(row, wanted, said);
  if (shop_.boiler_W) row.boiler_spare_W = *shop_.boiler_W - row.water_W;
  row.alone_W = alone_W(outdoor_degC);
  add_source(row);
  return row;
}

/// Everything between the coldest and the mildest weather at which a line bends, and marks.
std::vector<double> rows_degC(const Design& design, const ShopInWeather& shop, double planned_degC) {
  const double coldest_degC = std::min(design.climate.coldest_degC.value_or(planned_degC), planned_degC);
  std::vector<double> rows = marks_degC(design.units, coldest_degC, shop.idle_degC());
  for (const double degC : {coldest_degC, planned_degC, shop.idle_degC()}) rows.push_back(degC);
  const auto add_bend = [&](double degC) {
    if (degC > coldest_degC && degC < shop.idle_degC()) rows.push_back(degC);
  };
  if (const auto cut_out = shop.cut_out_degC()) add_bend(*cut_out);
  for (const SourcePoint& point : design.second_source.points) add_bend(point.outdoor_degC);
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end(), [](double a, double b) { return b - a < one_row_K; }), rows.end());
  return rows;
}

/// From mild weather down to where the second source first gives less than is asked of it.
void add_cross_over(HeatByOutdoor& heat, const ShopInWeather& shop) {
  if (!shop.has_source() || heat.row.size() < 2) return;
  std::vector<TablePoint> water;
  for (const OutdoorRow& row : heat.row) water.push_back({row.outdoor_degC, row.load_W});
  const auto load_W = [&](double degC) {
    return shop.heats_water() ? linear_in_table(water, degC).value : shop.alone_W(degC);
  };
  const auto spare_W = [&](double degC) { return shop.source_at(degC).capacity_W - load_W(degC); };
  const double from_degC = heat.row.back().outdoor_degC;
  const double to_degC = std::max(heat.row.front().outdoor_degC, shop.cut_out_degC().value_or(-1e9));
  if (spare_W(from_degC) < 0.0) return;
  for (double warm_degC = from_degC; warm_degC > to_degC; warm_degC -= search_step_K) {
    const double cold_degC = std::max(to_degC, warm_degC - search_step_K);
    if (spare_W(cold_degC) >= 0.0) continue;
    heat.cross_over_degC = root_in_bracket(spare_W, cold_degC, warm_degC, {}).x;
    heat.cross_over_W = load_W(*heat.cross_over_degC);
    return;
  }
}

/// What the floor and its water can at most.
void add_most(HeatByOutdoor& heat, const OutdoorCase& shop, std::vector<Diagnostic>& said) {
  Conditions conditions{{}, shop.envelope.outdoor_degC};
  for (const RoomLoss& room : shop.envelope.room) conditions.room_degC.push_back(room.indoor_degC);
  heat.hottest_degC = shop.plant.design.boiler.hottest_degC;
  const OperatingPoint hottest = operate(shop.plant, conditions, heat.hottest_degC, &shop.point);
  say_unsettled_at(shop.envelope.outdoor_degC, hottest, said);
  heat.floor_most_W = hottest.up_W;
  heat.water_most_W = hottest.water_W;
  heat.boiler_W = shop.boiler_W;
}

}  // namespace

Checked<HeatByOutdoor> heat_by_outdoor(const OutdoorCase& shop) {
  const Design& design = shop.plant.design;
  if (!shop.plant.floor) return {};
  const ShopInWeather in_weather(shop);
  if (!in_weather.is_heated()) return {};
  HeatByOutdoor heat;
  std::vector<Diagnostic> said;
  for (const double degC : rows_degC(design, in_weather, shop.envelope.outdoor_degC))
    heat.row.push_back(in_weather.row(degC, said));
  heat.fitter.push_back(in_weather.row(shop.envelope.outdoor_degC, said));
  for (const double degC : asked_degC(design.units)) heat.fitter.push_back(in_weather.row(degC, said));
  add_most(heat, shop, said);
  add_cross_over(heat, in_weather);
  heat.cut_out_degC = in_weather.cut_out_degC();
  heat.idle_above_degC = in_weather.idle_degC();
  const Mixture filled = mixture_of(design.fluid);
  heat.glycol_share = filled.glycol_volume_share;
  heat.freezes_degC = freezing_point_degC(filled);
  if (design.climate.coldest_degC)
    heat.unit_glycol_share = glycol_that_keeps_share(design.fluid.kind, *design.climate.coldest_degC);
  heat.unit_least_on_s = design.boiler.least_on_s;
  heat.unit_differential_K = design.boiler.differential_K;
  return {std::move(heat), std::move(said)};
}

}  // namespace slabwright
