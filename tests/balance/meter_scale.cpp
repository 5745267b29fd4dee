// Flow meters at the ports: every design flow and every reading on the way stands where a meter is read well.
#include <algorithm>

#include "plant/plants.hpp"
#include "slabwright/balance.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double gpm_m3_per_s = 3.785411784e-3 / 60.0;

Checked<Balance> balanced_with(DesignFile file, const std::string& meter) {
  if (!meter.empty()) file = with_key(file, "valve.meter_most", meter).value();
  const Piped p = piped(file.design);
  const FlowTarget target = target_flows(p.plant, &p.envelope);
  return balance_plant(p.plant, target, target.supply_degC);
}

std::vector<std::string> meters_said(const Checked<Balance>& balance) {
  std::vector<std::string> said;
  for (const Diagnostic& d : balance.said)
    if (d.code == "balance.meter") said.push_back(say(d, System::us));
  return said;
}

}  // namespace

TEST_CASE("a scale is chosen that shows all of it, or it is said") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const auto balance = balanced_with(one.file, "");
    REQUIRE(balance);
    bool inside = true;
    for (const PortSetting& port : balance.value->port) {
      for (const double flow : {port.aim_m3_per_s, port.after_m3_per_s, port.open_m3_per_s})
        inside = inside && flow <= 0.9 * balance.value->meter_most_m3_per_s;
      for (const double flow : {port.aim_m3_per_s, port.after_m3_per_s})
        inside = inside && flow >= 0.2 * balance.value->meter_most_m3_per_s;
    }
    CHECK(inside == meters_said(balance).empty());
  }
}

TEST_CASE("a coarse meter and a short one are called so, with what mends it") {
  const DesignFile file = layout("ten-lines").file;
  const auto coarse = balanced_with(file, "10 gpm");
  REQUIRE(meters_said(coarse).size() == 1);
  CHECK(meters_said(coarse)[0].find("fewer or longer loops, a smaller drop, or a finer meter") != std::string::npos);
  const auto small = balanced_with(file, "0.5 gpm");
  REQUIRE(meters_said(small).size() == 1);
  CHECK(meters_said(small)[0].find("goes further") != std::string::npos);
  CHECK(meters_said(balanced_with(file, "2 gpm")).empty());
  CHECK(balanced_with(file, "2 gpm").value->meter_most_m3_per_s == Approx(2.0 * gpm_m3_per_s));
}

TEST_CASE("a short loop that shows too much while ports are open is told of") {
  const auto with_meter = [](double most_gpm) {
    const Design design = from_keys({{"tube.size", "1/2 in"},
                                     {"loop[1].length", "90 ft"},
                                     {"loop[2].length", "290 ft"},
                                     {"loop[3].length", "280 ft"},
                                     {"valve.meter_most", std::to_string(most_gpm) + " gpm"}})
                              .design;
    const Plant plant = pipe_up(design, plan_loops(design).value.value(), nullptr).value.value();
    const FlowTarget target = target_flows(plant, nullptr);
    return balance_plant(plant, target, target.supply_degC);
  };
  const Balance wide = with_meter(4.0).value.value();
  double open = 0.0, settled = 0.0;
  for (const PortSetting& port : wide.port) {
    open = std::max(open, port.open_m3_per_s);
    settled = std::max({settled, port.aim_m3_per_s, port.after_m3_per_s});
  }
  REQUIRE(open > 1.2 * settled);
  const auto said = meters_said(with_meter(0.5 * (open + settled) / 0.9 / gpm_m3_per_s));
  REQUIRE(std::any_of(said.begin(), said.end(), [](const std::string& text) {
    return text.find("while ports are being set") != std::string::npos;
  }));
}
