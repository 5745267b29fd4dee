// The readings beside old-pour.toml: invented, but by the model, and what is made of them.
#include <algorithm>
#include <cmath>

#include "plant/plants.hpp"
#include "slabwright/balance_lengths.hpp"
#include "slabwright/balance_meters.hpp"
#include "support/catch.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

// What the scenario keeps to itself.
const std::vector<double> true_ft{262.0, 171.0, 214.0, 193.0, 232.0};
constexpr std::size_t choked = 3;
constexpr double choked_share = 0.45, true_pump_share = 0.93;

struct Made {
  Piped piped;
  OperatingPoint point;
  std::vector<double> length_m;
};

Made made(double supply_degC) {
  Made all{piped(layout("old-pour").file.design), {}, {}};
  for (const double ft : true_ft) all.length_m.push_back(from_unit(ft, "ft", Dimension::length));
  Plant true_plant = with_settings(with_lengths(all.piped.plant, all.length_m), {}, true_pump_share);
  true_plant = with_cause(true_plant, {Cause::restricted, choked, choked, 0.0, choked_share, 0.0, 0.0}, 35.0);
  all.point = operate(true_plant, all.piped.conditions, supply_degC);
  return all;
}

MetersRead as_read(const Piped& piped) {
  const MeterSheet sheet = read_meters(read_text("layouts/old-pour-readings.csv"));
  CHECK(sheet.problems.empty());
  auto match = match_meters(sheet, piped.loops, piped.plant.design);
  REQUIRE(match);
  return *match.value;
}

}  // namespace

TEST_CASE("the layout's readings are the model's, as an installer rounds them") {
  const Made m = made(from_unit(100.0, "F", Dimension::degree));
  const Readings read = as_read(m.piped).readings;
  const double m3_per_m = water_content_m3_per_m(tube_of(m.piped.plant.design));
  for (std::size_t i = 0; i < true_ft.size(); ++i) {
    const LoopState& loop = m.point.loop[i];
    const double front_s = m3_per_m * m.length_m[i] / loop.flow_m3_per_s;
    INFO("loop " << i + 1 << ": " << in_unit(loop.flow_m3_per_s, "gpm", Dimension::flow) << " gpm, "
                 << in_unit(loop.return_degC, "F", Dimension::degree) << " F, " << front_s << " s");
    // A meter is read to a few percent, a thermometer to half a degree, a front to a twentieth.
    CHECK(read.port[i].flow_m3_per_s.value() == Approx(loop.flow_m3_per_s).epsilon(0.08));
    CHECK(read.port[i].return_degC.value() == Approx(loop.return_degC).margin(0.6));
    CHECK(read.port[i].front_s.value() == Approx(front_s).epsilon(0.06));
  }
}

TEST_CASE("from them come the lengths, the pump and the odd loop") {
  const Made m = made(from_unit(100.0, "F", Dimension::degree));
  MetersRead meters = as_read(m.piped);
  meters.readings.pump_error_share = 0.4;
  const auto fit = fit_lengths(m.piped.plant, meters.readings, m.piped.conditions);
  REQUIRE(fit);
  CHECK(fit.value->odd_loop == fit.value->loop[choked].loop);
  CHECK(fit.value->odd_cause != Cause::meter);
  for (std::size_t i = 0; i < true_ft.size(); ++i) {
    const FittedLength& one = fit.value->loop[i];
    INFO(one.loop << " " << one.length_m << " +- " << one.error_m << " true " << m.length_m[i]);
    CHECK(std::abs(one.length_m - m.length_m[i]) < 2.5 * one.error_m);
    CHECK((one.told || i == choked));
  }
}
