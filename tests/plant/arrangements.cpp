// Ways of joining boiler and floor, each held against the mixing arithmetic of its own. derived: the balances of
// handbook_mixing.hpp, whose figures are checked against a source elsewhere.
#include <algorithm>
#include <cmath>

#include "plant/plants.hpp"
#include "slabwright/handbook_mixing.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Run {
  Piped piped;
  OperatingPoint point;
};

Run run(const Keys& keys, double supply_degC = 40.0, const std::string& name = "ten-lines") {
  Run one{piped(with_keys(layout(name).file, keys).design), {}};
  one.point = operate(one.piped.plant, one.piped.conditions, supply_degC);
  REQUIRE(one.point.stop == Stop::converged);
  return one;
}

/// Both sides of a balance of flow times temperature agree to what the operating point is settled to.
void check_heat(double got, double wanted, double flow_m3_per_s) {
  CHECK(got == Approx(wanted).margin(2e-4 * flow_m3_per_s));
}

bool has(const std::vector<Diagnostic>& said, const std::string& code) {
  return std::any_of(said.begin(), said.end(), [&](const Diagnostic& d) { return d.code == code; });
}

}  // namespace

TEST_CASE("direct: the floor's water goes through the boiler") {
  const Run one = run({});
  const SourceState& source = one.point.source;
  CHECK(source.boiler_m3_per_s == Approx(one.point.flow_m3_per_s));
  CHECK(source.boiler_degC == one.point.supply_degC);
  CHECK(source.boiler_in_degC == Approx(one.point.return_degC));
  CHECK(source.mixed_in_m3_per_s == 0.0);
  CHECK(source.bypass_m3_per_s == 0.0);
}

TEST_CASE("tees, separator and buffer mix as the balance of two circuits says, either way round") {
  for (const char* piping : {"closely spaced tees", "separator", "buffer"}) {
    for (const char* flow : {"0.6 gpm", "1.5 gpm", "3 gpm", "6 gpm", "12 gpm"}) {
      INFO(piping << " " << flow);
      const Run one = run({{"boiler.piping", piping}, {"boiler.flow", flow}});
      const SourceState& source = one.point.source;
      const double floor = one.point.flow_m3_per_s, boiler = source.boiler_m3_per_s;
      const Separated both = separate({boiler, floor, source.boiler_degC, one.point.return_degC});
      CHECK(both.floor_supply_degC == Approx(one.point.supply_degC).margin(1e-3));
      CHECK(both.boiler_return_degC == Approx(source.boiler_in_degC).margin(1e-3));
      CHECK(source.mixed_in_m3_per_s == Approx(std::max(floor - boiler, 0.0)).margin(3e-9));
      CHECK(source.straight_back_m3_per_s == Approx(std::max(boiler - floor, 0.0)).margin(3e-9));
      check_heat(boiler * (source.boiler_degC - source.boiler_in_degC),
                 floor * (one.point.supply_degC - one.point.return_degC), floor);
      // Where the floor moves more the boiler has to be hotter than the floor, and only there.
      CHECK((source.boiler_degC > one.point.supply_degC + 1e-3) == (floor > boiler + 1e-8));
    }
  }
}

TEST_CASE("a boiler's own pump moves what it was chosen for, whatever the floor does") {
  const double wanted = 4.0 * 6.30901964e-5;  // 4 gpm
  for (const char* drop : {"10 F", "20 F", "30 F"}) {
    const Run one = run({{"boiler.piping", "separator"}, {"boiler.flow", "4 gpm"}, {"pump.drop", drop}});
    CHECK(one.point.source.boiler_m3_per_s == Approx(wanted).epsilon(0.01));
  }
  // A curve of the file's runs where it meets its circuit.
  Design design = with_keys(layout("ten-lines").file, {{"boiler.piping", "separator"}}).design;
  design.boiler.pump_points = {{1.8, 0.0}, {0.9, 4e-4}};
  const Piped piped_up = piped(design);
  const OperatingPoint own = operate(piped_up.plant, piped_up.conditions, 40.0);
  const PumpState& pump = own.source.pump.back();
  CHECK(pump.name == "boiler and its pump");
  CHECK(pump.flow_m3_per_s == own.source.boiler_m3_per_s);
  const Pump curve{*pump_table({{0.0, 1.8}, {4e-4, 0.9}}).value};
  const double density = liquid(mixture_of(design.fluid), own.return_degC).density_kg_per_m3;
  CHECK(pump.pressure_Pa == Approx(head_at(curve, pump.flow_m3_per_s).head_m * 9.80665 * density).epsilon(2e-3));
}

TEST_CASE("two circuits leave the floor as it was but for what they share") {
  const Run direct = run({}), apart = run({{"boiler.piping", "separator"}});
  // The boiler's resistance is off the floor pump's round.
  CHECK(apart.point.flow_m3_per_s > direct.point.flow_m3_per_s);
  const Run little = run({{"boiler.piping", "separator"}, {"boiler.flow", "1 gpm"}});
  const Run much = run({{"boiler.piping", "separator"}, {"boiler.flow", "10 gpm"}});
  // A body three pipes wide: what one pump does moves the other circuit by less than a thousandth.
  CHECK(little.point.flow_m3_per_s == Approx(much.point.flow_m3_per_s).epsilon(1e-3));
}

TEST_CASE("a mixing valve finds the stem at which the supply is as asked for") {
  for (const char* hottest : {"110 F", "120 F", "140 F", "180 F"}) {
    INFO(hottest);
    const Run one = run({{"boiler.piping", "mixing valve"}, {"boiler.hottest", hottest}});
    const SourceState& source = one.point.source;
    const double boiler_degC = one.piped.plant.design.boiler.hottest_degC;
    const double share = mixing_share(40.0, one.point.return_degC, boiler_degC).value();
    CHECK(source.reached);
    CHECK(source.boiler_degC == boiler_degC);
    CHECK(source.hot_share.value() == Approx(share).margin(1e-4));
    CHECK(source.boiler_m3_per_s == Approx(share * one.point.flow_m3_per_s).epsilon(1e-4));
    CHECK(source.mixed_in_m3_per_s == Approx((1.0 - share) * one.point.flow_m3_per_s).epsilon(1e-4));
    CHECK(source.setting_share.value() > 0.0);
    CHECK(source.setting_share.value() < 1.0);
    check_heat(source.boiler_m3_per_s * (source.boiler_degC - source.boiler_in_degC),
               one.point.flow_m3_per_s * (40.0 - one.point.return_degC), one.point.flow_m3_per_s);
  }
}

TEST_CASE("a mixing valve to a boiler too cool stands open and says so") {
  const Run one = run({{"boiler.piping", "mixing valve"}, {"boiler.hottest", "35 C"}});
  CHECK_FALSE(one.point.source.reached);
  CHECK(one.point.source.setting_share.value() == Approx(1.0).margin(1e-3));
  const auto asked = supply_for(one.piped.plant, one.piped.conditions, std::vector<double>(1, 30e3));
  CHECK(has(asked.said, "plant.boiler-too-cool"));
}

TEST_CASE("injection gives the floor the share its temperatures ask for, and the boiler's circuit closes") {
  for (const char* hottest : {"120 F", "140 F", "180 F"}) {
    INFO(hottest);
    const Run one = run({{"boiler.piping", "injection"}, {"boiler.hottest", hottest}});
    const SourceState& source = one.point.source;
    const double boiler_degC = one.piped.plant.design.boiler.hottest_degC, floor = one.point.flow_m3_per_s;
    REQUIRE(source.reached);
    const double share = mixing_share(40.0, one.point.return_degC, boiler_degC).value();
    CHECK(source.hot_share.value() == Approx(share).margin(1e-4));
    const auto pump = std::find_if(source.pump.begin(), source.pump.end(),
                                   [](const PumpState& p) { return p.name == "injection pump"; });
    REQUIRE(pump != source.pump.end());
    // The circuit of the boiler moves more than is injected, so that all of that is boiler water.
    CHECK(pump->flow_m3_per_s == Approx(share * floor).epsilon(1e-3));
    CHECK(source.mixed_in_m3_per_s == Approx((1.0 - share) * floor).epsilon(1e-3));
    const double back = source.boiler_m3_per_s - pump->flow_m3_per_s;
    check_heat(source.boiler_m3_per_s * source.boiler_in_degC,
               back * boiler_degC + pump->flow_m3_per_s * one.point.return_degC, source.boiler_m3_per_s);
  }
}

TEST_CASE("every joining of boiler and floor brings the heat the floor gives") {
  for (const char* piping : {"direct", "closely spaced tees", "separator", "buffer", "mixing valve", "injection"}) {
    for (const char* name : {"ten-lines", "potting-house", "county-garage"}) {
      INFO(piping << " " << name);
      const Run one = run({{"boiler.piping", piping}, {"boiler.hottest", "60 C"}}, 38.0, name);
      const SourceState& source = one.point.source;
      CHECK(source.boiler_m3_per_s * (source.boiler_degC - source.boiler_in_degC) ==
            Approx(one.point.flow_m3_per_s * (38.0 - one.point.return_degC)).epsilon(1e-4));
    }
  }
}

TEST_CASE("a boiler's circuit too small for its hottest water fails") {
  const Run one = run({{"boiler.piping", "closely spaced tees"}, {"boiler.flow", "0.5 gpm"}});
  std::vector<double> wanted = one.piped.wanted_W;
  const auto asked = supply_for(one.piped.plant, one.piped.conditions, wanted);
  CHECK(asked.value->source.boiler_degC > one.piped.plant.design.boiler.hottest_degC);
  CHECK(has(asked.said, "plant.boiler-too-cool"));
  const Run enough = run({{"boiler.piping", "closely spaced tees"}});
  CHECK_FALSE(has(supply_for(enough.piped.plant, enough.piped.conditions, wanted).said, "plant.boiler-too-cool"));
}
