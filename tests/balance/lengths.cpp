// Poured slabs: lengths fitted to readings, and what those cannot tell.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "balance/faults.hpp"
#include "slabwright/balance_lengths.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// A slab by count: all loops guessed alike.
struct Poured {
  Piped piped;
  Plant plant;
  double supply_degC = 0.0;
};
const Poured& old_pour() {
  static const Poured poured = [] {
    Poured p{piped(layout("old-pour").file.design), {}, 0.0};
    p.plant = p.piped.plant;
    p.supply_degC = target_flows(p.plant, &p.piped.envelope).supply_degC;
    return p;
  }();
  return poured;
}

/// What would be read of the slab with loops of other lengths, solved as a whole.
Readings exact(const Poured& poured, const std::vector<double>& length_share) {
  Plant true_plant = poured.plant;
  for (std::size_t i = 0; i < length_share.size(); ++i) {
    std::vector<Element> elements = true_plant.graph.elements(true_plant.loop_branch[i]);
    for (Element& e : elements) {
      if (auto* bore = std::get_if<Bore>(&e.shape)) bore->length_m *= length_share[i];
    }
    true_plant.graph.set_elements(true_plant.loop_branch[i], elements);
    true_plant.loops.loop[i].length_m *= length_share[i];
    for (Stretch& s : true_plant.loops.loop[i].along) s.length_m *= length_share[i];
  }
  const OperatingPoint point = operate(true_plant, poured.piped.conditions, poured.supply_degC);
  const TubeSize tube = tube_of(true_plant.design);
  Readings readings;
  readings.supply_degC = poured.supply_degC;
  for (std::size_t i = 0; i < length_share.size(); ++i) {
    const LoopState& loop = point.loop[i];
    const double volume_m3 = water_content_m3_per_m(tube) * true_plant.loops.loop[i].length_m;
    readings.port.push_back({loop.flow_m3_per_s, loop.return_degC, volume_m3 / loop.flow_m3_per_s});
  }
  return readings;
}

Readings noisy(Draw& draw, Readings readings) {
  for (PortReading& port : readings.port) {
    *port.flow_m3_per_s *= std::exp(readings.meter_error_share * draw.normal());
    *port.return_degC += readings.thermometer_error_K * draw.normal();
    *port.front_s *= std::exp(readings.front_error_share * draw.normal());
  }
  return readings;
}

Checked<FittedLengths> fitted(const Readings& readings, const LengthsBefore& before = {}) {
  return fit_lengths(old_pour().plant, readings, old_pour().piped.conditions, before);
}

const std::vector<double> shares{1.25, 0.8, 1.05, 0.7, 1.2};

}  // namespace

TEST_CASE("lengths come back from readings that are exact") {
  Readings readings = exact(old_pour(), shares);
  readings.meter_error_share = readings.front_error_share = 1e-3;
  readings.thermometer_error_K = 0.1;
  const auto fit = fitted(readings);
  REQUIRE(fit);
  CHECK(fit.value->stop == Stop::converged);
  for (std::size_t i = 0; i < shares.size(); ++i) {
    // The model's own rest: it keeps each loop's water as warm as in the guess.
    CHECK(fit.value->loop[i].length_m == Approx(shares[i] * fit.value->loop[i].guess_m).epsilon(0.01));
    CHECK(fit.value->loop[i].told);
  }
}

TEST_CASE("standard errors are as large as the errors made") {
  Draw draw(77);
  double squares = 0.0;
  int count = 0;
  LengthsBefore before;
  for (int k = 0; k < 60; ++k) {
    // Drawn as they are known: each loop and, by what is left, nearly the total.
    std::vector<double> share;
    double total = 0.0;
    for (std::size_t i = 0; i < 5; ++i) share.push_back(std::exp(0.25 * draw.normal()));
    for (const double s : share) total += s / 5.0;
    const double keep = std::exp(before.total_error_share * draw.normal()) / total;
    for (double& s : share) s *= keep;
    const auto fit = fitted(noisy(draw, exact(old_pour(), share)), before);
    REQUIRE(fit);
    for (std::size_t i = 0; i < 5; ++i) {
      const FittedLength& one = fit.value->loop[i];
      const double z = std::log(one.length_m / (share[i] * one.guess_m)) / (one.error_m / one.length_m);
      squares += z * z;
      ++count;
    }
  }
  // 300 draws: their root mean square is within 10 % of 1 but for once in a hundred.
  CHECK(std::sqrt(squares / count) == Approx(1.0).margin(0.15));
}

TEST_CASE("what the readings cannot tell keeps its guess and is said") {
  Readings flows = only(exact(old_pour(), shares), {});
  const auto by_flows = fitted(flows);
  const auto by_fronts = fitted(only(exact(old_pour(), shares), {false, true}));
  REQUIRE(by_flows);
  REQUIRE(by_fronts);
  for (std::size_t i = 0; i < 5; ++i) {
    CHECK(by_flows.value->loop[i].error_m > 1.5 * by_fronts.value->loop[i].error_m);
    CHECK(by_fronts.value->loop[i].told);
  }
  flows.port[1].flow_m3_per_s.reset();
  const auto without = fitted(flows);
  CHECK_FALSE(without.value->loop[1].told);
  CHECK(std::any_of(without.said.begin(), without.said.end(), [&](const Diagnostic& d) {
    return d.code == "readings.length-untold" && d.about == without.value->loop[1].loop;
  }));
  flows.port[1].flow_m3_per_s = 0.0;
  const auto stands = fitted(flows);
  CHECK(std::any_of(stands.said.begin(), stands.said.end(),
                    [](const Diagnostic& d) { return d.code == "readings.stands"; }));
}

TEST_CASE("a pump that gives less is told from longer loops") {
  Readings readings = exact(old_pour(), shares);
  for (PortReading& port : readings.port) {
    *port.flow_m3_per_s *= 0.9;
    *port.front_s /= 0.9;
  }
  readings = only(readings, {false, true});
  const auto fit = fitted(readings);
  CHECK(fit.value->common_share == Approx(0.9).margin(2.0 * fit.value->common_error_share));
  CHECK(fit.value->common_share < 0.97);
  double truth_m = 0.0;
  for (std::size_t i = 0; i < 5; ++i) truth_m += shares[i] * fit.value->loop[i].guess_m;
  CHECK(std::abs(fit.value->total_m - truth_m) < 2.0 * fit.value->total_error_m);
}

TEST_CASE("a slab with its lengths found reads as it was read") {
  const Readings readings = exact(old_pour(), shares);
  const auto fit = fitted(readings);
  std::vector<double> length_m;
  for (const FittedLength& one : fit.value->loop) length_m.push_back(one.length_m);
  const Plant found = with_lengths(old_pour().plant, length_m);
  for (std::size_t i = 0; i < 5; ++i) CHECK(found.loops.loop[i].length_m == Approx(length_m[i]));
  const auto back = read_back(found, readings, old_pour().piped.conditions, {});
  CHECK(back.value->healthy);
  CHECK_FALSE(read_back(old_pour().plant, readings, old_pour().piped.conditions, {}).value->healthy);
}

TEST_CASE("a flow that does not go with its front is odd, and no other") {
  const Readings good = exact(old_pour(), shares);
  CHECK(fitted(good).value->odd_loop.empty());
  for (std::size_t i = 0; i < 5; ++i) {
    // Choked to half: half the flow, and the front takes twice as long. Or a meter that shows half.
    Readings choked = only(good, {false, true}), meter = choked;
    *choked.port[i].flow_m3_per_s *= 0.5;
    *choked.port[i].front_s *= 2.0;
    *meter.port[i].flow_m3_per_s *= 0.5;
    for (const Readings* one_of : {&choked, &meter}) {
      const Readings& readings = *one_of;
      const auto fit = fitted(readings);
      CHECK(fit.value->odd_loop == fit.value->loop[i].loop);
      // By a flow and a front alone the two may look alike; the wrong one is never told.
      CHECK(fit.value->odd_cause != (&readings == &choked ? Cause::meter : Cause::restricted));
      for (std::size_t k = 0; k < 5; ++k) {
        const FittedLength& one = fit.value->loop[k];
        CHECK(std::abs(one.length_m - shares[k] * one.guess_m) < 1.5 * one.error_m);
      }
      CHECK(std::any_of(fit.said.begin(), fit.said.end(),
                        [](const Diagnostic& d) { return d.code == "readings.odd-flow"; }));
    }
  }
}
