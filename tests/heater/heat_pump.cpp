// A heat pump: its table and what lies beyond, what stops it and what starts it again, frost, part load.
#include <cmath>
#include <stdexcept>
#include <vector>

#include "slabwright/heater.hpp"
#include "slabwright/heater_curves.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

HeatPump plain() {
  HeatPump pump;
  pump.row = {{-15.0, 5000.0, 1.8}, {-8.0, 6000.0, 2.2}, {8.0, 8000.0, 3.4}};
  return pump;
}

HeatPumpHour hour_at(const HeatPump& pump, double outdoor_degC, double demand_W, HeatPumpState before = {}) {
  return heat_pump_hour(pump, {outdoor_degC, 10.0, demand_W}, before);
}

// Runs through hours of these outdoor temperatures and says in which it ran.
std::vector<HeatPumpRun> runs_of(const HeatPump& pump, const std::vector<double>& outdoor_degC) {
  std::vector<HeatPumpRun> runs;
  HeatPumpState state;
  for (const double at : outdoor_degC) {
    const HeatPumpHour hour = hour_at(pump, at, 3000.0, state);
    runs.push_back(hour.run);
    state = hour.after;
  }
  return runs;
}

constexpr HeatPumpRun ran = HeatPumpRun::ran, below = HeatPumpRun::below_cut_out, waiting = HeatPumpRun::before_cut_in;

}  // namespace

TEST_CASE("rows are met, and between them two things go straight") {
  HeatPump pump = plain();
  CHECK(full_load(pump, -8.0).capacity_W == 6000.0);
  CHECK(full_load(pump, -8.0).cop == 2.2);
  CHECK(full_load(pump, 0.0).capacity_W == Approx(7000.0));
  CHECK(full_load(pump, 0.0).cop == Approx(2.8));
  pump.between = StraightBetweenRows::power;
  CHECK(full_load(pump, 8.0).cop == Approx(3.4).epsilon(1e-14));
  const double power_W = 0.5 * (6000.0 / 2.2 + 8000.0 / 3.4);
  CHECK(full_load(pump, 0.0).cop == Approx(7000.0 / power_W));
  CHECK_FALSE(full_load(pump, 8.0).beyond_rows);
}

TEST_CASE("beyond the rows the chosen rule holds, and that is said") {
  HeatPump pump = plain();
  CHECK(full_load(pump, 20.0).beyond_rows);
  CHECK(full_load(pump, 20.0).capacity_W == 8000.0);
  CHECK(full_load(pump, -22.0).beyond_rows);
  CHECK(full_load(pump, -22.0).capacity_W == Approx(4000.0));
  CHECK(full_load(pump, -22.0).cop == Approx(1.4));
  pump.colder = BeyondRows::hold;
  pump.warmer = BeyondRows::straight;
  CHECK(full_load(pump, -22.0).cop == 1.8);
  CHECK(full_load(pump, 16.0).capacity_W == Approx(9000.0));
}

TEST_CASE("a table carried on never gives less than nothing") {
  HeatPump pump = plain();
  CHECK(full_load(pump, -60.0).capacity_W == 0.0);
  CHECK(full_load(pump, -60.0).cop == 0.0);
  CHECK(hour_at(pump, -60.0, 3000.0).run == HeatPumpRun::no_capacity);
  CHECK(hour_at(pump, -30.0, 3000.0).run == HeatPumpRun::cop_below_least);
  pump.least_cop = 0.0;
  CHECK(hour_at(pump, -30.0, 3000.0).run == ran);
  // A power that falls to nothing before the capacity does.
  pump.between = StraightBetweenRows::power;
  pump.row = {{-15.0, 5000.0, 5.0}, {-8.0, 6000.0, 2.0}};
  CHECK(full_load(pump, -20.0).cop == 5.0);
}

TEST_CASE("once cut out, it waits until it is warm enough again") {
  HeatPump pump = plain();
  pump.cut_out = CutOut{-12.0, -9.0};
  CHECK(runs_of(pump, {-5.0, -11.0, -12.0, -12.1, -12.0, -9.1, -9.0, -11.9}) ==
        std::vector<HeatPumpRun>{ran, ran, ran, below, waiting, waiting, ran, ran});
  const HeatPumpHour out = hour_at(pump, -13.0, 3000.0);
  CHECK(out.heat_W == 0.0);
  CHECK_FALSE(out.after.outdoors_allow);
  // It is remembered while nothing is asked for.
  CHECK_FALSE(hour_at(pump, -11.0, 0.0, out.after).after.outdoors_allow);
  pump.cut_out = CutOut{-12.0, -12.0};
  CHECK(runs_of(pump, {-12.1, -12.0}) == std::vector<HeatPumpRun>{below, ran});
}

TEST_CASE("hours out are at least those below the cut-out, and no more than those below the cut-in") {
  HeatPump pump = plain();
  pump.cut_out = CutOut{-12.0, -9.0};
  int out = 0, below_out = 0, below_in = 0;
  HeatPumpState state;
  for (int h = 0; h < 2000; ++h) {
    const double outdoor = -10.0 + 4.0 * std::sin(h / 3.8) + 3.0 * std::sin(h / 17.0);
    const HeatPumpHour hour = hour_at(pump, outdoor, 1000.0, state);
    state = hour.after;
    out += hour.run != ran;
    below_out += outdoor < -12.0;
    below_in += outdoor < -9.0;
  }
  CHECK(below_out < out);
  CHECK(out < below_in);
}

TEST_CASE("it does not start in too cold a room, but does not stop for it") {
  HeatPump pump = plain();
  pump.least_indoor_start_degC = 10.0;
  const HeatPumpState running{true, true};
  CHECK(heat_pump_hour(pump, {0.0, 9.9, 3000.0}, {}).run == HeatPumpRun::indoors_too_cold);
  CHECK(heat_pump_hour(pump, {0.0, 10.0, 3000.0}, {}).run == ran);
  CHECK(heat_pump_hour(pump, {0.0, 9.9, 3000.0}, running).run == ran);
  CHECK_FALSE(heat_pump_hour(pump, {0.0, 9.9, 0.0}, running).after.running);
}

TEST_CASE("frost takes its shares in its band, ends included, and nowhere else") {
  HeatPump pump = plain();
  pump.frost = FrostBand{-7.0, 4.0, 0.85, 0.9};
  const HeatPump clean = plain();
  for (const double at : {-7.0, 0.0, 4.0}) {
    CHECK(full_load(pump, at).capacity_W == Approx(0.85 * full_load(clean, at).capacity_W));
    CHECK(full_load(pump, at).cop == Approx(0.9 * full_load(clean, at).cop));
  }
  for (const double at : {-7.01, 4.01}) CHECK(full_load(pump, at).capacity_W == full_load(clean, at).capacity_W);
}

TEST_CASE("an hour balances: full, in part, and idle") {
  HeatPump pump = plain();
  pump.idle_W = 40.0;
  const HeatPumpHour full = hour_at(pump, -8.0, 9000.0);
  CHECK(full.heat_W == 6000.0);
  CHECK(full.electric_W == Approx(6000.0 / 2.2));
  CHECK(full.load_share == 1.0);
  pump.part_load.law = PartLoadLaw::straight;
  const HeatPumpHour half = hour_at(pump, -8.0, 3000.0);
  CHECK(half.heat_W == 3000.0);
  CHECK(half.electric_W == Approx(3000.0 / 2.2 / 0.875 + 40.0 * (1.0 - 0.5 / 0.875)));
  const HeatPumpHour none = hour_at(pump, -8.0, 0.0);
  CHECK(none.run == HeatPumpRun::no_demand);
  CHECK(none.electric_W == 40.0);
}

TEST_CASE("part load: whole at full load, never more, less with less load") {
  for (const PartLoadLaw law :
       {PartLoadLaw::none, PartLoadLaw::straight, PartLoadLaw::hyperbola, PartLoadLaw::starting}) {
    const PartLoad part{law, 0.25, 60.0, 3.0 / 3600.0};
    CHECK(part_load_share(part, 1.0) == 1.0);
    double before = 0.0;
    for (double x = 0.0; x <= 1.0; x += 0.05) {
      const double share = part_load_share(part, x);
      CHECK(share <= 1.0);
      CHECK(share >= before);
      CHECK(share >= x);  // no more of the hour than all of it
      before = share;
    }
  }
}

TEST_CASE("a curve and a judgement stay what they are for") {
  CHECK(single_speed_heat_pump(21.1, 8.3).capacity_share == Approx(1.0).epsilon(0.01));
  CHECK(single_speed_heat_pump(21.1, 8.3).cop_share == Approx(1.0).epsilon(0.01));
  HeatPump cold;
  cold.row = cold_climate_rows(10000.0);
  CHECK(is_heat_pump(cold));
  for (const HeatPumpRow& row : cold.row) CHECK(row.cop < believable_carnot_share * carnot_cop(40.0, row.outdoor_degC));
  CHECK(air_to_water_cop(40.0) < air_to_water_cop(30.0));
  CHECK(defrost_on_demand(0.0).time_share == defrost_on_demand(1e-6).time_share);
  CHECK(defrost_by_clock(0.002).capacity_share < defrost_by_clock(0.001).capacity_share);
}

TEST_CASE("no heat pump, no hour: bugs") {
  const auto broken = [](auto change) {
    HeatPump pump = plain();
    change(pump);
    CHECK_FALSE(is_heat_pump(pump));
    CHECK_THROWS_AS(full_load(pump, 0.0), std::logic_error);
  };
  broken([](HeatPump& pump) { pump.row.resize(1); });
  broken([](HeatPump& pump) { pump.row[1].outdoor_degC = -20.0; });
  broken([](HeatPump& pump) { pump.row[0].cop = 0.0; });
  broken([](HeatPump& pump) { pump.row[0].capacity_W = -1.0; });
  broken([](HeatPump& pump) { pump.frost = FrostBand{5.0, -5.0, 0.9, 0.9}; });
  broken([](HeatPump& pump) { pump.frost = FrostBand{-5.0, 5.0, 0.0, 0.9}; });
  broken([](HeatPump& pump) { pump.cut_out = CutOut{-9.0, -12.0}; });
  broken([](HeatPump& pump) { pump.part_load.coefficient = 1.5; });
  broken([](HeatPump& pump) { pump.idle_W = -1.0; });
  CHECK_THROWS_AS(full_load(plain(), std::nan("")), std::logic_error);
  CHECK_THROWS_AS(hour_at(plain(), 0.0, -1.0), std::logic_error);
  CHECK_THROWS_AS(part_load_share({}, 1.1), std::logic_error);
  CHECK_THROWS_AS(carnot_cop(10.0, 10.0), std::logic_error);
  CHECK_THROWS_AS(air_to_water_cop(10.0), std::logic_error);
  CHECK_THROWS_AS(cold_climate_rows(0.0), std::logic_error);
}
