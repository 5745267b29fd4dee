// What must hold for any shop: colder weather, thinner boards and nearer tubes never ask for less, nor leave more
// hours.
#include <random>

#include "freeze/holds.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr int designs = 12;
/// Settings are roots to a millikelvin; hours are read between steps of 20 minutes.
constexpr double setting_K = 2e-3, hours_share = 1e-3;

Design random_design(std::mt19937_64& engine) {
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(engine() >> 11) / 9007199254740992.0;
  };
  Design d = engine() % 2 == 0 ? bare_shop() : shop_with_store();
  d.climate.outdoor_degC = between(-28.0, -8.0);
  d.climate.coldest_degC = *d.climate.outdoor_degC - between(2.0, 9.0);
  d.climate.mean_degC = between(2.0, 11.0);
  d.ground.conductivity_W_per_mK = between(1.0, 3.0);
  d.slab.thickness_m = between(0.10, 0.22);
  d.insulation.under = {between(0.5, 3.0)};
  d.edge.insulation = {between(0.6, 2.5)};
  d.edge.door_strip = {engine() % 2 == 0 ? 0.0 : between(0.5, 2.0)};
  d.tube.spacing_m = between(0.15, 0.4);
  d.tube.from_walls_m = between(0.08, 0.3);
  d.tube.from_doors_m = between(0.15, 0.6);
  d.opening[0].size.width_m = between(2.4, 5.0);
  d.building.quality = std::array{Quality::tight, Quality::usual, Quality::poor}[engine() % 3];
  // With a floor that heats, colder weather puts more heat into the tubes, and a tube at the edge may gain by it.
  d.second_source = {SecondSourceKind::heat_pump, {}, {}, {}};
  return d;
}

/// [place]: what it asks of the wall thermostat, far above any where none keeps it; and how long it lasts.
struct Asked {
  std::vector<double> air_degC, lasts_s;
};

Asked asked_of(const Design& design) {
  const Line line = line_of(design);
  const auto zone = heated_zone(design, line.envelope, line.floor, line.places, coarse_fields());
  REQUIRE(zone);
  const SnapCurves curves = snap_curves(*zone, snap_case(design, line.snap, 0));
  Freeze freeze;  // the same dial for all
  freeze.air = DialSetting{"given", 8.0, 0.0, 8.0, 8.0};
  const auto outage = outage_clock(line.held(), freeze, coarse_fields(), std::nullopt);
  REQUIRE(outage);
  Asked asked;
  for (std::size_t i = 0; i < line.places.place.size(); ++i) {
    const WatchedPlace& place = line.places.place[i];
    if (!place.decides) continue;
    asked.air_degC.push_back(asked_dial_degC(curves.air[i], place.limit_degC).value_or(1000.0));
    for (const OutagePlace& one : outage->row.back().place)
      if (one.name == place.name) asked.lasts_s.push_back(one.lasts_s.value_or(1e9));
  }
  return asked;
}

void check_no_better(const Asked& worse, const Asked& base) {
  REQUIRE(worse.air_degC.size() == base.air_degC.size());
  for (std::size_t i = 0; i < base.air_degC.size(); ++i) {
    CAPTURE(i);
    CHECK(worse.air_degC[i] >= base.air_degC[i] - setting_K);
    CHECK(worse.lasts_s[i] <= base.lasts_s[i] * (1.0 + hours_share));
  }
}

}  // namespace

TEST_CASE("over random designs nothing that is worse asks for less", "[whole]") {
  std::mt19937_64 engine(20261126);
  for (int i = 0; i < designs; ++i) {
    CAPTURE(i);
    const Design base = random_design(engine);
    const Asked asked = asked_of(base);
    Design colder = base;
    colder.climate.outdoor_degC = *base.climate.outdoor_degC - 3.0;
    colder.climate.coldest_degC = *base.climate.coldest_degC - 3.0;
    check_no_better(asked_of(colder), asked);
    Design thinner = base;
    thinner.edge.insulation.resistance_m2K_per_W *= 0.6;
    const Asked thin = asked_of(thinner);
    for (std::size_t p = 0; p < asked.air_degC.size(); ++p) CHECK(thin.air_degC[p] >= asked.air_degC[p] - setting_K);
  }
}

TEST_CASE("over random designs a boiler that is large enough keeps the setting, one that is a tenth of it does not",
          "[whole]") {
  std::mt19937_64 engine(7);
  for (int i = 0; i < designs; ++i) {
    CAPTURE(i);
    const Design design = random_design(engine);
    const Freeze ample = hold_of(design, 40000.0);
    if (ample.verdict != FreezeVerdict::found) continue;
    CHECK(ample.beyond_boiler.empty());
    CHECK(ample.air->control_K < 5.0);
    CHECK_FALSE(hold_of(design, ample.hold_W / 10.0).beyond_boiler.empty());
  }
}
