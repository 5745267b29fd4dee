// Every key between boiler and floor moves a figure that is shown, where it has something to move.
#include <cmath>

#include "answer/pass.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Answer answered_to(const DesignFile& file) {
  Passing passing{EdgeFields(coarse_edges()), nullptr};
  passing.draws = false;
  return pass(file, Question::design, passing, Reach::no_frost_hold);
}

/// All that the report's rows on boiler, pumps and zones are made from.
std::vector<double> shown(const Answer& answer) {
  const SourceState& source = answer.point->source;
  std::vector<double> all{source.boiler_m3_per_s,         source.boiler_degC,
                          source.boiler_in_degC,          source.mixed_in_m3_per_s,
                          source.straight_back_m3_per_s,  source.bypass_m3_per_s,
                          source.hot_share.value_or(0.0), answer.balance->hold_Pa.value_or(0.0),
                          answer.sizes->pump.head_m,      answer.sizes->tank.fluid_m3};
  for (const PumpState& pump : source.pump) {
    all.push_back(pump.flow_m3_per_s);
    all.push_back(pump.pressure_Pa);
  }
  if (answer.shut) {
    all.push_back(answer.shut->source.pump.front().flow_m3_per_s);
    all.push_back(answer.shut->source.pump.front().pressure_Pa);
    all.push_back(answer.shut->source.bypass_m3_per_s);
  }
  return all;
}

bool moved(const std::vector<double>& before, const std::vector<double>& after) {
  if (before.size() != after.size()) return true;
  for (std::size_t i = 0; i < before.size(); ++i) {
    // Ten times what the supply is settled to.
    if (std::abs(before[i] - after[i]) > 1e-5 * std::max(std::abs(before[i]), std::abs(after[i]))) return true;
  }
  return false;
}

struct Case {
  const char* layout;
  Keys base;
  std::pair<std::string, std::string> change;
};

}  // namespace

TEST_CASE("every key between boiler and floor moves something") {
  const std::vector<Case> cases{
      {"ten-lines", {}, {"boiler.piping", "closely spaced tees"}},
      {"ten-lines", {}, {"boiler.piping", "mixing valve"}},
      {"ten-lines", {}, {"boiler.piping", "injection"}},
      {"ten-lines", {{"boiler.piping", "closely spaced tees"}}, {"boiler.piping", "separator"}},
      {"ten-lines", {{"boiler.piping", "separator"}}, {"boiler.flow", "1 gpm"}},
      {"ten-lines", {{"boiler.piping", "buffer"}}, {"boiler.buffer", "40 gal"}},
      {"ten-lines", {}, {"boiler.check_valve", "true"}},
      {"ten-lines", {}, {"pump.control", "constant pressure"}},
      {"ten-lines",
       {{"pump.control", "constant pressure"},
        {"loop[1].length", "250 ft"},
        {"loop[2].length", "200 ft"},
        {"loop[1].shut", "true"}},
       {"pump.control", "proportional pressure"}},
      {"ten-lines", {}, {"pump.pumps", "2"}},
      {"ten-lines", {{"pump.pumps", "2"}}, {"pump.together", "in series"}},
      {"ten-lines", {}, {"pump.bypass_opening", "1 psi"}},
      {"ten-lines", {{"pump.bypass_opening", "1 psi"}}, {"pump.bypass_coefficient", "Kv 1"}},
      {"ten-lines", {}, {"room[1].shut", "true"}},
      {"ten-lines", {{"loop[1].length", "250 ft"}, {"loop[2].length", "200 ft"}}, {"loop[1].shut", "true"}},
      {"county-garage", {}, {"mains.return_way", "direct"}},
      {"county-garage", {{"mains.return_way", "direct"}}, {"mains.return_way", "reverse"}},
      {"county-garage", {{"mains.return_way", "direct"}}, {"mains.between", "90 ft"}},
      {"county-garage", {}, {"manifold[1].reverse_return", "true"}}};
  for (const Case& one : cases) {
    INFO(one.layout << " " << one.change.first << " = " << one.change.second);
    const DesignFile base = with_keys(layout(one.layout).file, one.base);
    CHECK(moved(shown(answered_to(base)), shown(answered_to(with_keys(base, {one.change})))));
  }
}

TEST_CASE("a floor joined in any way is balanced, and the balance does not know how") {
  const Answer direct = answered_to(layout("ten-lines").file);
  for (const char* piping : {"closely spaced tees", "separator", "mixing valve", "injection"}) {
    INFO(piping);
    const Answer other = answered_to(with_keys(layout("ten-lines").file, {{"boiler.piping", piping}}));
    REQUIRE(other.balance);
    for (std::size_t i = 0; i < direct.balance->port.size(); ++i) {
      CHECK(other.balance->port[i].set_turns == direct.balance->port[i].set_turns);
      CHECK(other.balance->port[i].aim_m3_per_s == Approx(direct.balance->port[i].aim_m3_per_s));
    }
    CHECK(other.balance->total_after_m3_per_s == Approx(direct.balance->total_after_m3_per_s).epsilon(0.01));
    CHECK(other.point->supply_degC == Approx(direct.point->supply_degC).margin(0.05));
  }
}
