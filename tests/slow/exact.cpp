// The whole model where an exact answer is to be had: blocks of one temperature each, and a slab by cells.
#include <algorithm>
#include <cmath>
#include <optional>

#include "slabwright/maths_linear.hpp"
#include "slabwright/units_exact.hpp"
#include "slow/whole_model.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Kind = FieldDriver::Kind;
using Vector = std::vector<double>;

constexpr double film_W_per_m2K = 7.0, tube_depth_m = 0.05;

/// From the floor down. `cells` are those of the second method.
struct Layer {
  double thickness_m, conductivity_W_per_mK, heat_capacity_J_per_m3K;
  int cells;
};

/// One metre wide, alike everywhere; film above, tubes' plane in the first layer, held below.
FieldSection layered(const std::vector<Layer>& layers) {
  FieldSection section;
  section.drivers = {{"air", Kind::temperature}, {"ground", Kind::temperature}, {"tubes", Kind::heat}};
  double top_m = 0.0;
  for (const Layer& layer : layers) {
    section.materials.push_back(
        {0.0, 1.0, top_m - layer.thickness_m, top_m, layer.conductivity_W_per_mK, layer.heat_capacity_J_per_m3K});
    top_m -= layer.thickness_m;
  }
  section.boundaries = {{{{0.0, 0.0}, {1.0, 0.0}}, SurfaceFilm{film_W_per_m2K, {0}}},
                        {{{0.0, top_m}, {1.0, top_m}}, FixedTemperature{{1}, {1}}}};
  section.planes = {{{{0.0, -tube_depth_m}, {1.0, -tube_depth_m}}, {2}}};
  return section;
}

/// Heated until time 0, then a night in which outdoors falls, the tubes rest and come back for an hour.
constexpr double length_m = 40.0, rise_share = 0.95, ground_degC = 9.0, capacity_J_per_K = 1.5e6, loss_W_per_K = 70.0;
constexpr double start_degC = 16.0, tubes_W_per_m2 = 45.0;

WholeBuilding night(const FieldSection& section, double step_s) {
  WholeBuilding building;
  WholeEdge edge{section, {{0.5, -tube_depth_m}}, length_m, {{{0}, rise_share}}, {}, {}};
  edge.before = steady_drivers({-5.0 + rise_share * (start_degC + 5.0), ground_degC, tubes_W_per_m2});
  const auto add = [&](double time_s, double tubes) {
    building.times_s.push_back(time_s);
    building.outdoor_degC.push_back(-5.0 - 12.0 * std::min(1.0, time_s / (8.0 * hour_s)));
    building.gain_W.push_back(time_s > 4.0 * hour_s ? 300.0 : 300.0 * time_s / (4.0 * hour_s));
    edge.drivers.push_back({0.0, ground_degC, tubes});
  };
  add(0.0, tubes_W_per_m2);
  const auto until = [&](double from_s, double to_s, double tubes) {
    add(from_s, tubes);
    for (double time_s = from_s + step_s; time_s < to_s + 1.0; time_s += step_s) add(time_s, tubes);
  };
  until(0.0, 6.0 * hour_s, 0.0);
  until(6.0 * hour_s, 7.0 * hour_s, 2.0 * tubes_W_per_m2);
  until(7.0 * hour_s, 24.0 * hour_s, 0.0);
  building.edges = {edge};
  building.capacity_J_per_K = capacity_J_per_K;
  building.loss_W_per_K = loss_W_per_K;
  building.start_degC = start_degC;
  return building;
}

/// The second method: the air and cells between faces in one linear system, whose steps are exact. Inputs: outdoors,
/// ground, tubes, gain. The air over the strip stands a little toward outdoors.
struct Chain {
  LinearSystem system;
  std::size_t cells = 0;
  std::size_t tube_cell = 0;  ///< the cell whose lower face the tubes' plane is, or within which it lies
};

Chain chain_of(const std::vector<Layer>& layers) {
  std::vector<double> resistance, store;  // half a cell, m2K/W; J/m2K
  double down_m = 0.0;
  Chain chain;
  for (const Layer& layer : layers)
    for (int c = 0; c < layer.cells; ++c) {
      const double thick_m = layer.thickness_m / layer.cells;
      if (down_m < tube_depth_m - 1e-9) chain.tube_cell = store.size();
      resistance.push_back(0.5 * thick_m / layer.conductivity_W_per_mK);
      store.push_back(thick_m * layer.heat_capacity_J_per_m3K);
      down_m += thick_m;
    }
  const std::size_t n = chain.cells = store.size();
  MatrixRows a(n + 1, Vector(n + 1, 0.0)), b(n + 1, Vector(4, 0.0));
  for (std::size_t i = 0; i + 1 < n; ++i) {
    const double passes = 1.0 / (resistance[i] + resistance[i + 1]);
    a[i + 1][i + 1] -= passes / store[i];
    a[i + 1][i + 2] += passes / store[i];
    a[i + 2][i + 2] -= passes / store[i + 1];
    a[i + 2][i + 1] += passes / store[i + 1];
  }
  const double above = 1.0 / (1.0 / film_W_per_m2K + resistance[0]), below = 1.0 / resistance[n - 1];
  a[1][1] -= above / store[0];
  a[1][0] += above * rise_share / store[0];
  b[1][0] += above * (1.0 - rise_share) / store[0];
  a[n][n] -= below / store[n - 1];
  b[n][1] += below / store[n - 1];
  a[0][0] -= (length_m * above * rise_share + loss_W_per_K) / capacity_J_per_K;
  a[0][1] += length_m * above / capacity_J_per_K;
  b[0][0] += (loss_W_per_K - length_m * above * (1.0 - rise_share)) / capacity_J_per_K;
  b[0][3] += 1.0 / capacity_J_per_K;
  const bool on_face = layers[0].cells > 1;
  b[chain.tube_cell + 1][2] += (on_face ? 0.5 : 1.0) / store[chain.tube_cell];
  if (on_face) b[chain.tube_cell + 2][2] += 0.5 / store[chain.tube_cell + 1];
  chain.system = {a, b};
  return chain;
}

/// The cells at rest under the air before the first time: the air held, then its own row put back.
Vector settled(const Chain& chain, const Vector& inputs) {
  LinearSystem held = chain.system;
  const double fast_per_s = 1.0;
  held.of_states[0].assign(chain.cells + 1, 0.0);
  held.of_states[0][0] = -fast_per_s;
  for (Vector& row : held.of_inputs) row.push_back(0.0);
  held.of_inputs[0].assign(5, 0.0);
  held.of_inputs[0][4] = fast_per_s;
  Vector with_air = inputs;
  with_air.push_back(start_degC);
  return steady_state(held, with_air).value();
}

Vector exact_air(const Chain& chain, const WholeBuilding& building) {
  const auto inputs = [&](std::size_t i) {
    return Vector{building.outdoor_degC[i], ground_degC, building.edges[0].drivers[i][2], building.gain_W[i]};
  };
  Vector state = settled(chain, inputs(0)), air_degC{state[0]};
  std::optional<LinearStep> step;
  for (std::size_t i = 1; i < building.times_s.size(); ++i) {
    const double dt_s = building.times_s[i] - building.times_s[i - 1];
    if (dt_s > 0.0 && (!step || step->dt_s != dt_s)) step = exact_step(chain.system, dt_s);
    if (dt_s > 0.0) state = after_step(*step, state, inputs(i - 1), inputs(i));
    air_degC.push_back(state[0]);
  }
  return air_degC;
}

double worst_K(const Vector& one, const Vector& other) {
  REQUIRE(one.size() == other.size());
  double worst = 0.0;
  for (std::size_t i = 0; i < one.size(); ++i) worst = std::max(worst, std::abs(one[i] - other[i]));
  return worst;
}

WholeRun run_within(const WholeBuilding& building, double step_K, double air_K = 1e-5) {
  WholeOptions options;
  options.fields.step_K = step_K;
  options.air_K = air_K;
  const WholeRun run = whole_run(building, options);
  INFO("rounds " << run.rounds);
  REQUIRE(run.moved_K <= air_K);
  return run;
}

/// Two blocks too good at conducting to be anything but one temperature each, boards that store nothing.
const std::vector<Layer> blocks{{0.10, 1e5, 2e6, 1}, {0.05, 0.035, 0.0, 1}, {0.20, 1e5, 2e6, 1}, {0.05, 0.035, 0.0, 1}};

/// The same, exact: air, upper and lower block.
Chain chain_of_blocks() {
  const double upper = 0.10 * 2e6, lower = 0.20 * 2e6, board = 0.035 / 0.05, film = film_W_per_m2K;
  const double all = length_m * film / capacity_J_per_K, out = loss_W_per_K / capacity_J_per_K;
  Chain chain;
  chain.cells = 2;
  chain.system.of_states = {{-all * rise_share - out, all, 0.0},
                            {film * rise_share / upper, -(film + board) / upper, board / upper},
                            {0.0, board / lower, -2.0 * board / lower}};
  chain.system.of_inputs = {{out - all * (1.0 - rise_share), 0.0, 0.0, 1.0 / capacity_J_per_K},
                            {film * (1.0 - rise_share) / upper, 0.0, 1.0 / upper, 0.0},
                            {0.0, board / lower, 0.0, 0.0}};
  return chain;
}

/// Air straight between times ten minutes apart, a second after a jump too; 0.001 and 0.003 K when this was written.
constexpr double whole_model_K = 0.005;

}  // namespace

TEST_CASE("air over two blocks: three states, exact, and times half as far apart err a quarter") {
  const FieldSection section = layered(blocks);
  const auto error_K = [&](double step_s) {
    const WholeBuilding building = night(section, step_s);
    return worst_K(run_within(building, 1e-6).air_degC, exact_air(chain_of_blocks(), building));
  };
  const double coarse = error_K(1200.0), fine = error_K(600.0);
  CAPTURE(coarse, fine);
  CHECK(coarse / fine == Approx(4.0).margin(0.4));
  CHECK(fine < whole_model_K);
}

TEST_CASE("a guess of the air moves the work and not the answer; too few rounds are said") {
  const WholeBuilding building = night(layered(blocks), 600.0);
  const WholeRun plain = run_within(building, 1e-6, 1e-6);
  WholeOptions options;
  options.fields.step_K = 1e-6;
  options.air_K = 1e-6;
  options.air_guess_degC = plain.air_degC;
  const WholeRun guessed = whole_run(building, options);
  CHECK(guessed.rounds == 1);
  for (double& air : options.air_guess_degC) air -= 0.1 * (building.start_degC - air);
  CHECK(worst_K(whole_run(building, options).air_degC, plain.air_degC) < 5e-6);
  options.most_rounds = 2;
  options.air_guess_degC.clear();
  CHECK(whole_run(building, options).moved_K > options.air_K);
}

TEST_CASE("two strips of half the length are one, and the air's heat adds up") {
  const WholeBuilding one = night(layered(blocks), 600.0);
  WholeBuilding two = one;
  two.edges.push_back(one.edges[0]);
  for (WholeEdge& edge : two.edges) edge.length_m = length_m / 2.0;
  const WholeRun run = run_within(two, 1e-4);
  CHECK(worst_K(run.air_degC, run_within(one, 1e-4).air_degC) < 1e-9);
  double into_J = 0.0, floor_J = 0.0;
  for (std::size_t i = 1; i < one.times_s.size(); ++i)
    for (const std::size_t end : {i - 1, i}) {
      const double half_s = 0.5 * (one.times_s[i] - one.times_s[i - 1]);
      into_J += half_s * (run.up_W[end] + one.gain_W[end] - loss_W_per_K * (run.air_degC[end] - one.outdoor_degC[end]));
      floor_J += half_s * run.up_W[end];
    }
  CHECK(into_J == Approx(capacity_J_per_K * (run.air_degC.back() - start_degC)).margin(1e-5 * floor_J));
}

TEST_CASE("what no whole model can be is refused") {
  const WholeBuilding sound = night(layered(blocks), 3600.0);
  const auto refused = [&](auto change) {
    WholeBuilding building = sound;
    change(building);
    CHECK_THROWS(whole_run(building));
  };
  refused([](WholeBuilding& b) { b.capacity_J_per_K = 0.0; });
  refused([](WholeBuilding& b) { b.outdoor_degC.pop_back(); });
  refused([](WholeBuilding& b) { b.edges[0].drivers.pop_back(); });
  refused([](WholeBuilding& b) { b.edges[0].length_m = 0.0; });
  refused([](WholeBuilding& b) { b.edges[0].air = {{{7}, 1.0}}; });
  refused([](WholeBuilding& b) { b.edges[0].section.boundaries[0].condition = FixedTemperature{{0}, {0}}; });
}

TEST_CASE("air over a slab on board and soil: cells of another kind, stepped exactly") {
  const auto layers = [](int finer) {
    return std::vector<Layer>{
        {0.15, 1.75, 2.0e6, 30 * finer}, {0.10, 0.035, 4.35e4, 10 * finer}, {1.0, 2.0, 2.0e6, 40 * finer}};
  };
  const auto error_K = [&](double step_s) {
    const WholeBuilding building = night(layered(layers(1)), step_s);
    const Vector cells = exact_air(chain_of(layers(1)), building), finer = exact_air(chain_of(layers(2)), building);
    CHECK(worst_K(cells, finer) < 1e-3);
    return worst_K(run_within(building, 1e-5).air_degC, finer);
  };
  const double coarse = error_K(600.0), fine = error_K(300.0);
  CAPTURE(coarse, fine);
  CHECK(coarse < whole_model_K);
  CHECK(fine < coarse / 2.0);
}
