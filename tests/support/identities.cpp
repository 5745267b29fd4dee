#include "support/identities.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_pressure_test.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::test {
namespace {

/// A sum of terms that grows as it is written down.
struct Sum {
  double total = 0.0, largest = 0.0;
  Sum& add(double term) {
    total += term;
    largest = std::max(largest, std::abs(term));
    return *this;
  }
};

class Found {
 public:
  std::vector<Identity> all;
  void is(std::string what, const Sum& left, double right) {
    all.push_back({std::move(what), left.total, right, std::max(left.largest, std::abs(right)), adds_up_share});
  }
  void is(std::string what, double left, double right) { is(std::move(what), Sum{}.add(left), right); }
};

void add_loops(const Answer& a, Found& found) {
  Sum tube;
  std::vector<Sum> rooms(a.loops->room_tube_m.size());
  for (const Loop& loop : a.loops->loop) {
    tube.add(loop.length_m);
    Sum along;
    for (const Stretch& stretch : loop.along) {
      along.add(stretch.length_m);
      rooms[stretch.room].add(heating_m(stretch));
    }
    if (!loop.along.empty()) found.is("length of " + loop.name, along, loop.length_m);
  }
  found.is("all tube", tube, a.loops->tube_m);
  for (std::size_t i = 0; i < rooms.size(); ++i)
    found.is(fmt::format("tube of room {}", i + 1), rooms[i], a.loops->room_tube_m[i]);
}

/// The ground is the floor's own: a room's loss has no part of it.
void add_envelope(const Answer& a, Found& found) {
  Sum loss;
  for (const RoomLoss& room : a.envelope->room) {
    Sum parts;
    for (const double part : {room.walls_W_per_K, room.roof_W_per_K, room.openings_W_per_K, room.air_W_per_K,
                              room.by_area_W_per_K, room.unheated_floor_W_per_K, room.exhaust_counted_W_per_K})
      parts.add(part);
    found.is("loss of " + room.name + " by part", parts, room.total_W_per_K);
    found.is("loss of " + room.name, room.total_W_per_K * (room.indoor_degC - a.envelope->outdoor_degC), room.loss_W);
    loss.add(room.loss_W);
    if (room.heated_floor) found.is("wanted in " + room.name, std::max(0.0, room.loss_W - room.gains_W), room.wanted_W);
  }
  found.is("loss", loss, a.envelope->loss_W);
  found.is("ground's shares", Sum{}.add(a.envelope->ground.outdoor_share).add(a.envelope->ground.deep_share), 1.0);
}

void add_floor(const Answer& a, Found& found) {
  Sum down, heat;
  for (std::size_t i = 0; i < a.floor->room.size(); ++i) {
    const RoomFloor& room = a.floor->room[i];
    if (room.heated_m2 <= 0.0) continue;
    found.is("floor of " + room.room + " and what it lacks",
             Sum{}.add(room.given_W_per_m2 * room.heated_m2).add(room.shortfall_W), a.envelope->room[i].wanted_W);
    down.add(room.floor.down_W_per_m2 * room.heated_m2);
    heat.add(room.floor.up_W_per_m2 * room.heated_m2).add(room.floor.down_W_per_m2 * room.heated_m2);
  }
  found.is("heat down", down, a.floor->down_W);
  found.is("heat of the tube", heat, a.floor->tube_heat_W);
}

void add_balance(const Answer& a, Found& found) {
  Sum aim, open, after;
  for (const PortSetting& port : a.balance->port) {
    aim.add(port.aim_m3_per_s);
    open.add(port.open_m3_per_s);
    after.add(port.after_m3_per_s);
  }
  found.is("aims of the ports", aim, a.balance->aim_m3_per_s);
  found.is("flows with all ports open", open, a.balance->total_open_m3_per_s);
  found.is("flows with ports set", after, a.balance->total_after_m3_per_s);
}

/// What the water loses on its way is what floor and ground get.
void add_water(const Answer& a, Found& found) {
  const OperatingPoint& point = *a.point;
  const Mixture mixture = mixture_of(a.file.design.fluid);
  Sum flow, up, down, parts, mixed;
  for (std::size_t i = 0; i < point.loop.size(); ++i) {
    const LoopState& loop = point.loop[i];
    const FluidProperties fluid = properties_of(mixture, 0.5 * (point.supply_degC + loop.return_degC));
    const double capacity = loop.flow_m3_per_s * fluid.density_kg_per_m3 * fluid.specific_heat_J_per_kgK;
    // What did not settle is said to be rough.
    if (point.stop == Stop::converged)
      found.is("water's heat of " + a.loops->loop[i].name,
               Sum{}.add(capacity * point.supply_degC).add(-capacity * loop.return_degC).add(-loop.up_W - loop.down_W),
               0.0);
    flow.add(loop.flow_m3_per_s);
    up.add(loop.up_W);
    down.add(loop.down_W);
    mixed.add(loop.flow_m3_per_s * loop.return_degC);
  }
  found.is("flow of the loops", flow, point.flow_m3_per_s);
  found.is("up", up, point.up_W);
  found.is("down", down, point.down_W);
  found.is("up and down", Sum{}.add(point.up_W).add(point.down_W), point.water_W);
  if (point.flow_m3_per_s > 0.0) found.is("returns mixed", mixed, point.flow_m3_per_s * point.return_degC);
  Sum rooms;
  for (const double room_W : point.room_up_W) rooms.add(room_W);
  found.is("up by room", rooms, point.up_W);
  for (const PartLoss& part : point.hardest_part) parts.add(part.pressure_Pa);
  found.is("pressure by part", parts, point.pump_Pa);
}

/// Heat between boiler and mains, as the product of flow and temperature that meets in every pipe. Not where the
/// supply asked for is out of reach, or where an injecting pump at its slowest brings more than that: it then stands
/// now and then.
void add_source(const Answer& a, Found& found) {
  constexpr double slowest_share = 0.021;
  const OperatingPoint& point = *a.point;
  const SourceState& source = point.source;
  if (!source.reached || source.boiler_m3_per_s <= 0.0 || point.flow_m3_per_s <= 0.0) return;
  if (source.setting_share && (*source.setting_share < slowest_share || *source.setting_share >= 1.0)) return;
  const double boiler = source.boiler_m3_per_s * (source.boiler_degC - source.boiler_in_degC);
  const double floor = point.flow_m3_per_s * (point.supply_degC - point.return_degC);
  const double largest = std::max(source.boiler_m3_per_s * std::abs(source.boiler_degC),
                                  point.flow_m3_per_s * std::abs(point.supply_degC));
  found.all.push_back(
      {"boiler's water and the floor's", boiler, floor, largest, source.setting_share ? settled_share : adds_up_share});
}

void add_sizes(const Answer& a, Found& found) {
  const PlantSizes& sizes = *a.sizes;
  if (a.point->water_W >= 0.0)
    found.is("boiler and floor", Sum{}.add(a.point->up_W).add(a.point->down_W), sizes.boiler.floor_W);
  found.is("boiler wanted", Sum{}.add(sizes.boiler.floor_W).add(sizes.boiler.pickup_W), sizes.boiler.wanted_W);
  const TankSize& tank = sizes.tank;
  const double air_Pa = air_pressure_Pa(a.file.design.climate.altitude_m);
  const auto absolute = [&](double gauge_Pa) { return gauge_Pa + air_Pa; };
  if (tank.tank_m3 > 0.0)
    found.is("air in the tank", absolute(tank.fill_Pa) * tank.tank_m3,
             absolute(tank.most_Pa) * (tank.tank_m3 - tank.expansion_m3));
  const double phases = sizes.electric.phases == 3 ? std::sqrt(3.0) : 1.0;
  found.is("volts and amperes", phases * sizes.electric.voltage_V * sizes.electric.current_A, sizes.electric.power_W);
}

void add_way(const WayResult& way, Found& found) {
  const std::string of = " of " + way.way.name;
  Sum use, floor, source, hours, money;
  for (const WayMonth& month : way.month) {
    use.add(month.boiler_J).add(month.source_J).add(month.pump_J);
    floor.add(month.floor_heat_J);
    source.add(month.source_heat_J);
    money.add(month.money.value_or(0.0));
  }
  for (const double hour_J : way.use_hour_J) hours.add(hour_J);
  found.is("electricity by month" + of, use, way.use_J);
  found.is("electricity by hour" + of, hours, way.use_J);
  found.is("floor's heat by month" + of, floor, way.heat.tubes_J);
  found.is("second source's heat by month" + of, source, way.heat.source_J);
  if (way.money) found.is("money by month" + of, money, *way.money);
  // What went in and out of every store, and what is left in them.
  const ShopHeat& heat = way.heat;
  double largest_J = 0.0;
  for (const double term_J : {heat.tubes_J, heat.source_J, heat.air_gains_J, heat.faces_gains_J, heat.sun_J,
                              heat.light_J, heat.more_J, heat.opaque_J, heat.ground_J, heat.slab_J, heat.soil_J})
    largest_J = std::max(largest_J, std::abs(term_J));
  found.all.push_back({"heat" + of, heat.missing_J(), 0.0, largest_J, adds_up_share});
}

}  // namespace

double Identity::off_share() const {
  const double off = std::abs(left - right);
  return off == 0.0 ? 0.0 : off / largest;
}

std::vector<Identity> identities_of(const Answer& answer) {
  Found found;
  if (answer.loops) add_loops(answer, found);
  if (answer.envelope) add_envelope(answer, found);
  if (answer.envelope && answer.floor) add_floor(answer, found);
  if (answer.balance) add_balance(answer, found);
  if (answer.point) add_water(answer, found);
  if (answer.point) add_source(answer, found);
  if (answer.point && answer.sizes) add_sizes(answer, found);
  if (answer.winter)
    for (const WayResult& way : answer.winter->way) add_way(way, found);
  return std::move(found.all);
}

}  // namespace slabwright::test
