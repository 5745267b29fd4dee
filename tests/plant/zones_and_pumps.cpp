// Zone valves, bypass, several circulators, their own control, mains with direct and reverse return.
#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "plant/plants.hpp"
#include "slabwright/plant_sizes.hpp"
#include "slabwright/plant_zones.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Piped piped_with(const Keys& keys, const std::string& name = "ten-lines") {
  return piped(with_keys(layout(name).file, keys).design);
}

std::vector<std::size_t> all_loops(const Plant& plant) {
  std::vector<std::size_t> all(plant.loop_branch.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

std::vector<std::size_t> all_but_first(const Plant& plant) {
  std::vector<std::size_t> all = all_loops(plant);
  all.erase(all.begin());
  return all;
}

double pump_Pa(const Plant& plant, const NetworkSolution& solved) {
  return solved.pressure_Pa[plant.source.out.at] - solved.pressure_Pa[plant.source.back.at];
}

bool has(const std::vector<Diagnostic>& said, const std::string& code) {
  return std::any_of(said.begin(), said.end(), [&](const Diagnostic& d) { return d.code == code; });
}

}  // namespace

TEST_CASE("with every zone shut nothing moves, the pump stands at its highest head, and that is said") {
  for (const char* piping : {"direct", "closely spaced tees", "mixing valve", "injection"}) {
    INFO(piping);
    const Piped p = piped_with({{"boiler.piping", piping}, {"room[1].shut", "true"}});
    REQUIRE(loops_shut(p.plant.design, p.loops).size() == p.loops.loop.size());
    const OperatingPoint open = operate(p.plant, p.conditions, 40.0);
    const auto shut = zones_shut(p.plant, p.conditions, open, 0.0);
    REQUIRE(shut);
    CHECK(shut.value->stop == Stop::converged);
    for (const LoopState& loop : shut.value->loop) CHECK(loop.flow_m3_per_s == 0.0);
    CHECK(shut.value->water_W == Approx(0.0).margin(1e-6));
    CHECK(has(shut.said, "plant.all-shut"));
    CHECK(shut.value->source.pump.front().pressure_Pa > open.source.pump.front().pressure_Pa);
  }
}

// Water drawn from a closed circuit comes from nowhere: no flows fulfil that.
TEST_CASE("flows that do not settle with zones shut are said") {
  Piped p = piped_with({{"room[1].shut", "true"}});
  const OperatingPoint open = operate(p.plant, p.conditions, 40.0);
  CHECK_FALSE(has(zones_shut(p.plant, p.conditions, open, 0.0).said, "plant.shut-not-settled"));
  p.plant.graph.set_demand(p.plant.graph.from(p.plant.loop_branch[0]), 1e-4);
  CHECK(has(zones_shut(p.plant, p.conditions, open, 0.0).said, "plant.shut-not-settled"));
}

TEST_CASE("a bypass takes what the pump gives at the pressure that it opens to") {
  const Piped p =
      piped_with({{"room[1].shut", "true"}, {"pump.bypass_opening", "12 kPa"}, {"pump.bypass_coefficient", "Kv 2"}});
  const OperatingPoint open = operate(p.plant, p.conditions, 40.0);
  const auto shut = zones_shut(p.plant, p.conditions, open, 0.0);
  REQUIRE(shut);
  CHECK_FALSE(has(shut.said, "plant.all-shut"));
  const double passed = shut.value->source.bypass_m3_per_s;
  CHECK(passed > 0.0);
  CHECK(shut.value->source.boiler_m3_per_s == Approx(passed));
  // derived: pump less boiler is what the valve's own law asks for at that flow.
  const Plant closed = with_shut(p.plant, all_loops(p.plant));
  const NetworkSolution solved = flows_at(closed, 40.0);
  BypassValve valve;
  valve.opening_Pa = 12e3;
  valve.open_kv = 2.0;
  const Liquid water = liquid(mixture_of(p.plant.design.fluid), 40.0);
  const double flow = solved.flow_m3_per_s[p.plant.source.bypass->at];
  CHECK(pump_Pa(closed, solved) == Approx(bypass_loss(valve, water, flow).pressure_Pa).epsilon(1e-6));
  CHECK(bypass_flow_m3_per_s(valve, water, pump_Pa(closed, solved)) == Approx(flow).epsilon(1e-6));
}

TEST_CASE("loops that stay open get more as others shut, least with constant pressure") {
  std::vector<double> more;
  for (const char* control : {"constant speed", "constant pressure", "proportional pressure"}) {
    INFO(control);
    const Piped p = piped_with({{"pump.control", control}});
    const NetworkSolution before = flows_at(p.plant, 40.0);
    // Held at what the plain pump gives with all open: the three then agree at that point.
    const double all = floor_flow_m3_per_s(p.plant, before);
    double given_Pa = 0.0;
    for (const PartLoss& part : losses_by_part(p.plant.graph, p.plant.source_branch, all)) {
      if (part.part == Part::pump) given_Pa = -part.pressure_Pa;
    }
    const Plant held = holding(p.plant, given_Pa, all);
    const NetworkSolution open = flows_at(held, 40.0);
    // The hold is stated in metres of water as it was piped up, and solved in water of 40 degC.
    CHECK(floor_flow_m3_per_s(held, open) == Approx(all).epsilon(5e-3));
    const Plant one = with_shut(held, all_but_first(held));
    const NetworkSolution alone = flows_at(one, 40.0);
    REQUIRE(alone.stop == Stop::converged);
    const std::size_t first = p.plant.loop_branch[0].at;
    more.push_back(alone.flow_m3_per_s[first] / open.flow_m3_per_s[first]);
  }
  CHECK(more[0] > more[1]);
  CHECK(more[1] > more[2]);
  CHECK(more[1] >= 1.0);
}

TEST_CASE("two pumps in parallel share the flow, two in series add their heads") {
  const Piped one = piped_with({});
  const Piped side = piped_with({{"pump.pumps", "2"}});
  const Piped row = piped_with({{"pump.pumps", "2"}, {"pump.together", "in series"}});
  const OperatingPoint a = operate(one.plant, one.conditions, 40.0), b = operate(side.plant, side.conditions, 40.0),
                       c = operate(row.plant, row.conditions, 40.0);
  REQUIRE(b.source.pump.size() == 2);
  CHECK(b.source.pump[0].flow_m3_per_s == Approx(0.5 * b.flow_m3_per_s));
  CHECK(b.source.pump[1].flow_m3_per_s == Approx(0.5 * b.flow_m3_per_s));
  CHECK_FALSE(b.source.pump[0].stands);
  CHECK(c.flow_m3_per_s > a.flow_m3_per_s);
  // derived: twice the head of one at the flow found.
  const Pump& pump = std::get<Pump>(one.plant.graph.elements(one.plant.source_branch).front().shape);
  const double density = one.plant.graph.liquid(one.plant.source_branch).density_kg_per_m3;
  CHECK(c.source.pump[0].pressure_Pa ==
        Approx(2.0 * head_at(pump, c.flow_m3_per_s).head_m * density * 9.80665).epsilon(5e-3));
}

TEST_CASE("a weak pump beside a strong one stands, and that is said") {
  Design design = layout("ten-lines").file.design;
  design.pump.pumps = 2;
  design.pump.points = {{6.0, 0.0}, {4.5, 3e-4}, {0.5, 8e-4}};
  design.pump.second_points = {{1.0, 0.0}, {0.2, 4e-4}};
  const Piped p = piped(design);
  const auto found = supply_for(p.plant, p.conditions, p.wanted_W);
  const std::vector<PumpState>& pumps = found.value->source.pump;
  REQUIRE(pumps.size() == 2);
  CHECK_FALSE(pumps[0].stands);
  CHECK(pumps[1].stands);
  CHECK(pumps[1].flow_m3_per_s == 0.0);
  CHECK(pumps[0].flow_m3_per_s == Approx(found.value->flow_m3_per_s));
  CHECK(has(found.said, "plant.pump-stands"));
  // Behind each other both work: heads add up.
  design.pump.together = Together::in_series;
  const Piped row = piped(design);
  CHECK(floor_flow_m3_per_s(row.plant, flows_at(row.plant, 40.0)) >
        floor_flow_m3_per_s(p.plant, flows_at(p.plant, 40.0)));
}

TEST_CASE("a boiler with its own pump is judged by its own flow") {
  Design design = layout("ten-lines").file.design;
  design.boiler.piping = BoilerPiping::separator;
  design.boiler.least_flow_m3_per_s = 1e-4;
  for (const double flow : {0.8e-4, 1.2e-4}) {
    design.boiler.flow_m3_per_s = flow;
    const Piped p = piped(design);
    const OperatingPoint point = operate(p.plant, p.conditions, 40.0);
    const auto sizes = size_plant(p.plant, p.envelope, point, target_flows(p.plant, &p.envelope), 3e4);
    CHECK(sizes.value->boiler.flow_enough == (flow > 1e-4));
    CHECK(has(sizes.said, "plant.boiler-flow") == (flow < 1e-4));
    CHECK(point.flow_m3_per_s > 1e-4);
  }
}

TEST_CASE("whatever is joined to whatever settles, balances its heat, and stands still when shut") {
  Design design = layout("ten-lines").file.design;
  design.boiler.hottest_degC = 60.0;
  int tried = 0;
  for (const BoilerPiping piping : {BoilerPiping::direct, BoilerPiping::tees, BoilerPiping::separator,
                                    BoilerPiping::mixing_valve, BoilerPiping::injection}) {
    for (const PumpMode control :
         {PumpMode::constant_speed, PumpMode::constant_pressure, PumpMode::proportional_pressure}) {
      for (int kind = 0; kind < 12; ++kind) {
        design.boiler.piping = piping;
        design.boiler.check_valve = kind % 2 == 1;
        design.pump.control = control;
        design.pump.pumps = 1 + kind % 3;
        design.pump.together = kind < 6 ? Together::in_parallel : Together::in_series;
        design.pump.bypass_opening_Pa = kind % 4 < 2 ? std::optional<double>(8e3) : std::nullopt;
        const Piped p = piped(design);
        const Plant held = holding(p.plant, 2e4, 2e-4);
        const OperatingPoint point = operate(held, p.conditions, 38.0);
        CHECK(point.stop == Stop::converged);
        const SourceState& source = point.source;
        CHECK(source.boiler_m3_per_s * (source.boiler_degC - source.boiler_in_degC) ==
              Approx(point.flow_m3_per_s * (38.0 - point.return_degC)).epsilon(2e-4));
        const NetworkSolution shut = flows_at(with_shut(held, all_loops(held)), 20.0);
        INFO("piping " << static_cast<int>(piping) << ", control " << static_cast<int>(control) << ", kind " << kind
                       << "; worst " << shut.worst_name << ", off by " << shut.worst_head_Pa << " Pa and "
                       << shut.worst_imbalance_m3_per_s << " m3/s after " << shut.rounds);
        CHECK(shut.stop == Stop::converged);
        CHECK(std::abs(floor_flow_m3_per_s(held, shut)) < 2e-9);
        ++tried;
      }
    }
  }
  CHECK(tried == 180);
}

TEST_CASE("reverse return gives every manifold mains of one length") {
  const Keys common{{"mains.length", "10 m"}, {"mains.between", "20 m"}};
  Keys direct{{"mains.return_way", "direct"}}, reverse{{"mains.return_way", "reverse"}};
  for (Keys* keys : {&direct, &reverse}) keys->insert(keys->end(), common.begin(), common.end());
  const auto mains_m = [](const Plant& plant, std::size_t loop) {
    double sum = 0.0;
    for (const BranchId way : plant.way[loop]) {
      for (const Element& e : plant.graph.elements(way)) {
        const Bore* bore = std::get_if<Bore>(&e.shape);
        if (bore && e.part == Part::mains) sum += bore->length_m;
      }
    }
    return sum;
  };
  const Piped d = piped_with(direct, "county-garage"), r = piped_with(reverse, "county-garage");
  std::vector<double> spread;
  for (const Piped* p : {&d, &r}) {
    const NetworkSolution solved = flows_at(p->plant, 40.0);
    REQUIRE(solved.stop == Stop::converged);
    double least = 1e9, most = 0.0;
    for (std::size_t i = 0; i < p->loops.loop.size(); ++i) {
      const double metres = mains_m(p->plant, i);
      const auto m = static_cast<double>(p->loops.loop[i].manifold);
      CHECK(metres == Approx(p == &d ? 2.0 * (10.0 + 20.0 * m) : 2.0 * (10.0 + 40.0)));
      // Loops differ in length; what they lose at their flow tells the pressure at their manifold.
      const double at_ports =
          branch_loss(p->plant.graph, p->plant.loop_branch[i], solved.flow_m3_per_s[p->plant.loop_branch[i].at])
              .pressure_Pa;
      least = std::min(least, at_ports);
      most = std::max(most, at_ports);
    }
    spread.push_back((most - least) / most);
  }
  CHECK(spread[1] < spread[0]);
}

TEST_CASE("a reversed return bar changes who is near, not what comes through in all") {
  const Piped near = piped_with({}, "county-garage"),
              far = piped_with({{"manifold[1].reverse_return", "true"}}, "county-garage");
  for (std::size_t i = 0; i < near.loops.loop.size(); ++i) {
    if (near.loops.loop[i].manifold != 0) {
      CHECK(near.plant.way[i].size() == far.plant.way[i].size());
      continue;
    }
    const auto ports = static_cast<std::size_t>(
        std::count_if(near.loops.loop.begin(), near.loops.loop.end(), [](const Loop& l) { return l.manifold == 0; }));
    CHECK(far.plant.way[i].size() == ports + 1);
  }
  const double a = floor_flow_m3_per_s(near.plant, flows_at(near.plant, 40.0));
  const double b = floor_flow_m3_per_s(far.plant, flows_at(far.plant, 40.0));
  CHECK(a == Approx(b).epsilon(0.02));
}

TEST_CASE("a check valve at the heater costs its spring") {
  const Piped plain = piped_with({}), checked = piped_with({{"boiler.check_valve", "true"}});
  CHECK(floor_flow_m3_per_s(checked.plant, flows_at(checked.plant, 40.0)) <
        floor_flow_m3_per_s(plain.plant, flows_at(plain.plant, 40.0)));
}
