// Heat against the weather: what must hold of its rows, over layouts and second sources.
#include <algorithm>
#include <cmath>

#include "plant/sized.hpp"
#include "slabwright/fluid.hpp"
#include "slabwright/winter_outdoor.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

HeatByOutdoor heat_of(const DesignFile& file, const Keys& keys = {}) {
  const Sized one = sized(keys.empty() ? file.design : with_keys(file, keys).design);
  const auto heat = heat_by_outdoor({one.piped.plant, one.piped.envelope, one.piped.floor, one.point,
                                     one.sizes.value->boiler.power_W})
                        .value;
  REQUIRE(heat);
  return *heat;
}

const Keys with_pump = {{"second_source.kind", "heat pump"},
                        {"second_source.points", "-15 C: 2.0 kW, COP 1.8; 0 C: 3.5 kW, COP 2.6; 10 C: 4.5 kW, COP 3.4"},
                        {"second_source.cut_out", "-20 C"}};

}  // namespace

TEST_CASE("the row of the weather planned for is the operating point") {
  for (const Layout& layout : layouts()) {
    INFO(layout.name);
    const Sized one = sized(layout.file.design);
    const HeatByOutdoor heat =
        heat_by_outdoor({one.piped.plant, one.piped.envelope, one.piped.floor, one.point, std::nullopt}).value.value();
    REQUIRE(heat.fitter.size() == 5);
    const OutdoorRow& planned = heat.fitter.front();
    CHECK(planned.outdoor_degC == one.piped.envelope.outdoor_degC);
    CHECK(planned.supply_degC == one.point.supply_degC);
    CHECK(planned.water_W == one.point.water_W);
    CHECK(planned.flow_m3_per_s == one.point.flow_m3_per_s);
    double loss_W = 0.0, wanted_W = 0.0;
    for (const RoomLoss& room : one.piped.envelope.room) {
      if (room.heated_floor) loss_W += room.loss_W;
      wanted_W += room.wanted_W;
    }
    CHECK(planned.loss_W == Approx(loss_W));
    CHECK(planned.wanted_W <= wanted_W * (1.0 + 1e-9));
    CHECK_FALSE(planned.boiler_spare_W);
    CHECK(std::is_sorted(heat.fitter.begin() + 1, heat.fitter.end(),
                         [](const OutdoorRow& a, const OutdoorRow& b) { return a.outdoor_degC < b.outdoor_degC; }));
  }
}

TEST_CASE("milder weather asks for less heat and cooler water") {
  for (const Layout& layout : layouts()) {
    INFO(layout.name);
    const HeatByOutdoor heat = heat_of(layout.file);
    REQUIRE(heat.row.size() >= 5);
    for (std::size_t i = 1; i < heat.row.size(); ++i) {
      const OutdoorRow &cold = heat.row[i - 1], &mild = heat.row[i];
      CHECK(mild.outdoor_degC > cold.outdoor_degC);
      CHECK(mild.loss_W < cold.loss_W);
      CHECK(mild.wanted_W <= cold.wanted_W);
      // Less than 1 W is no heat that anybody wants.
      CHECK(mild.load_W == Approx(mild.wanted_W + mild.down_W).margin(1.0));
      CHECK(mild.alone_W < cold.alone_W);
      CHECK(mild.water_W <= cold.water_W);
      if (mild.supply_degC) CHECK(*mild.supply_degC <= *cold.supply_degC);
      if (mild.supply_degC) CHECK(*mild.return_degC < *mild.supply_degC);
    }
    // Where the rows end, gains carry all rooms together.
    CHECK(heat.row.back().loss_W == Approx(heat.row.back().gains_W).margin(1e-6 * heat.row.front().loss_W));
    CHECK(heat.idle_above_degC.value_or(0.0) == Approx(heat.row.back().outdoor_degC));
  }
}

TEST_CASE("at the cross-over the second source gives just what the shop takes") {
  const DesignFile& file = layout("ten-lines").file;
  const HeatByOutdoor heat = heat_of(file, with_pump);
  REQUIRE(heat.cross_over_degC);
  // Both lines go straight between rows of the table; the load goes straight everywhere.
  std::size_t i = 1;
  while (heat.row[i].outdoor_degC < *heat.cross_over_degC) ++i;
  const OutdoorRow &cold = heat.row[i - 1], &mild = heat.row[i];
  const double share = (*heat.cross_over_degC - cold.outdoor_degC) / (mild.outdoor_degC - cold.outdoor_degC);
  const auto between = [&](double a, double b) { return a + share * (b - a); };
  CHECK(*heat.cross_over_W == Approx(between(cold.alone_W, mild.alone_W)));
  CHECK(*heat.cross_over_W == Approx(between(*cold.source_W, *mild.source_W)).epsilon(0.01));
  CHECK(*cold.source_W < cold.alone_W);
  CHECK(*mild.source_W > mild.alone_W);
}

TEST_CASE("colder than its cut-out a second source gives nothing, and one that always does has no cross-over") {
  const DesignFile& file = layout("ten-lines").file;
  Keys keys = with_pump;
  keys.back() = {"second_source.cut_out", "0 C"};
  const HeatByOutdoor early = heat_of(file, keys);
  CHECK(early.cut_out_degC == 0.0);
  for (const OutdoorRow& row : early.row) {
    CHECK(row.source_locked == (row.outdoor_degC < 0.0));
    REQUIRE(row.source_W);
    CHECK((*row.source_W > 0.0) == !row.source_locked);
    CHECK(row.source_cop_number.has_value() == !row.source_locked);
  }
  keys[1] = {"second_source.points", "-15 C: 60 kW, COP 1.8; 10 C: 90 kW, COP 3.4"};
  CHECK_FALSE(heat_of(file, keys).cross_over_degC);
  const HeatByOutdoor none = heat_of(file);
  CHECK_FALSE(none.cross_over_degC);
  CHECK_FALSE(none.row.front().source_W);
}

TEST_CASE("where a unit heats the water: flow at the drop, and a buffer once it gives more than is taken") {
  Keys keys = with_pump;
  keys[0] = {"second_source.kind", "water heat pump"};
  keys[1] = {"second_source.points", "-15 C: 6 kW, COP 1.8; 10 C: 12 kW, COP 3.4"};
  const HeatByOutdoor heat = heat_of(layout("ten-lines").file, keys);
  for (const OutdoorRow& row : heat.row) {
    if (!row.unit_buffer_m3) continue;
    if (*row.source_W <= row.load_W) CHECK(*row.unit_buffer_m3 == 0.0);
    CHECK(*row.unit_least_m3_per_s > 0.0);
  }
  CHECK(*heat.row[heat.row.size() - 2].unit_buffer_m3 > 0.0);
  if (heat.cross_over_degC) {
    const auto mild = std::find_if(heat.row.begin(), heat.row.end(),
                                   [&](const OutdoorRow& row) { return row.outdoor_degC > *heat.cross_over_degC; });
    CHECK(*mild->source_W > mild->load_W);
  }
  REQUIRE(heat.unit_glycol_share);
  const Design& design = layout("ten-lines").file.design;
  const Mixture filled{FluidKind::propylene_glycol, *heat.unit_glycol_share};
  CHECK(freezing_point_degC(filled) < *design.climate.coldest_degC);
  CHECK(freezing_point_degC({filled.kind, filled.glycol_volume_share - 0.01}) >= *design.climate.coldest_degC);
}
