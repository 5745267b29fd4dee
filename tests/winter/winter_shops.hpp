// A shop made ready for its winter: from a design to ways that were run.
#pragma once
#include "envelope/coarse_fields.hpp"
#include "envelope/shops.hpp"
#include "slabwright/winter.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

namespace slabwright::test {

struct WinterLine {
  Design design;
  Envelope envelope;
  FloorPlan floor;
  WatchedPlaces places;
  Snap snap;
  WaterCurve water;
  std::optional<double> boiler_W;
  double hold_air_degC = 7.0;

  WinterShop shop() const {
    WinterShop of{design, envelope, floor, places, snap, water, boiler_W, 0.0, {}, {}, nullptr};
    of.pump_W = 60.0;
    of.hold_air_degC = hold_air_degC;
    of.hold_slab_degC = hold_air_degC + 3.0;
    return of;
  }
};

/// Water into a floor in proportion to how much warmer it is than the rooms: 4 W/m2K, a tenth of it downward.
inline WaterCurve plain_water(double tubes_m2, double hottest_degC) {
  WaterCurve curve;
  curve.room_degC = 16.0;
  for (const double share : {0.2, 0.4, 0.6, 0.8, 1.0}) {
    const double over_K = share * (hottest_degC - curve.room_degC), water_W = 4.0 * over_K * tubes_m2;
    curve.row.push_back({curve.room_degC + over_K, curve.room_degC + 0.8 * over_K, 1e-4, 0.9 * water_W, water_W});
  }
  return curve;
}

/// Its water by the plant, or a plain one where nothing is said of mains.
inline WinterLine winter_line(const Design& design) {
  const auto envelope = envelope_of(design, coarse_fields());
  const auto loops = plan_loops(design);
  REQUIRE((envelope && loops));
  const auto floor = floor_of(design, *loops.value, *envelope.value);
  REQUIRE(floor);
  WinterLine line{design,
                  *envelope.value,
                  *floor.value,
                  watched_places(design, *envelope.value, coarse_fields()),
                  snap_of(design),
                  {},
                  design.boiler.power_W};
  const auto zone = heated_zone(design, line.envelope, line.floor, line.places, coarse_fields());
  REQUIRE(zone);
  if (!line.boiler_W) line.boiler_W = 120.0 * tubes_m2(*zone);
  if (design.mains.length_m == 0.0) {
    line.water = plain_water(tubes_m2(*zone), design.boiler.hottest_degC);
    return line;
  }
  const auto plant = pipe_up(design, *loops.value, &*floor.value);
  REQUIRE(plant);
  Conditions conditions;
  conditions.outdoor_degC = line.envelope.outdoor_degC;
  for (const RoomLoss& room : line.envelope.room) conditions.room_degC.push_back(room.indoor_degC);
  line.water = curve_of(*plant.value, conditions, design.boiler.hottest_degC);
  return line;
}

inline Winter winter_in(const WinterLine& line) {
  WinterWishes wishes;
  wishes.raises_hold = false;
  const auto winter = winter_of(line.shop(), coarse_fields(), wishes);
  REQUIRE(winter);
  return *winter.value;
}

/// A way that begins when work does: one year, nothing sought.
inline WayEntry plain_way(const std::string& name, WayFloor floor, WaySource source = WaySource::off) {
  WayEntry way;
  way.name = name;
  way.floor = floor;
  way.second_source = source;
  way.early_start = false;
  return way;
}

/// The hand-written shop with a second source, hours and a price.
inline Design priced_shop() {
  Design design = described_shop();
  design.climate.latitude_deg = 45.0;
  design.second_source.kind = SecondSourceKind::heat_pump;
  design.second_source.points = {{-25.0, 3000.0, 1.5}, {-15.0, 4500.0, 2.0}, {-8.0, 5500.0, 2.4}, {8.0, 8000.0, 3.4}};
  design.second_source.cut_out_degC = -15.0;
  design.electricity.price = EnergyPrice{0.14 / 3.6e6};
  design.electricity.standing = MonthPrice{15.0};
  return design;
}

/// What one way comes to.
inline WayResult result_of_way(const WinterLine& line, const WayEntry& way) {
  WinterLine one = line;
  one.design.way = {way};
  const Winter winter = winter_in(one);
  REQUIRE(winter.way.size() == 1);
  return winter.way[0];
}

}  // namespace slabwright::test
