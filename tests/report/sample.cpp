#include "report/sample.hpp"

namespace slabwright::test {

LoopPlan sample_loops() {
  LoopPlan plan;
  for (int port = 1; port <= 2; ++port) {
    Loop loop;
    loop.name = port == 1 ? "bench" : "big door, east";
    loop.port = port;
    loop.length_m = (port == 1 ? 241.0 : 290.0) * ft;
    loop.patch_m2 = 25.0;
    loop.along = {{0, 0.0, 10.0 * ft, true},
                  {0, 10.0 * ft, loop.length_m - 20.0 * ft, false},
                  {0, loop.length_m - 10.0 * ft, 10.0 * ft, true}};
    plan.loop.push_back(loop);
    plan.tube_m += loop.length_m;
  }
  plan.room_tube_m = {plan.tube_m - 40.0 * ft};
  plan.room_heated_m2 = {100.0};
  plan.limit_m = 300.0 * ft;
  return plan;
}

namespace {

DesignFile sample_file() {
  return from_keys({{"project.name", "Harness shop"},
                    {"slab.size", "36 x 30 ft"},
                    {"tube.spacing", "12 in"},
                    {"climate.outdoor", "-12 F"},
                    {"climate.indoor", "60 F"},
                    {"building.wall_insulation", "R-19"}});
}

Envelope sample_envelope() {
  Envelope envelope;
  RoomLoss room;
  room.name = "shop";
  room.walls_W_per_K = 60.0;
  room.air_W_per_K = 40.0;
  room.total_W_per_K = 100.0;
  room.exhaust_W_per_K = 300.0;
  room.gains_W = 350.0;
  room.loss_W = 23000.0 * btu_h;
  room.wanted_W = 23000.0 * btu_h - 350.0;
  envelope.room = {room};
  EdgeStretch door;
  door.name = "big door";
  door.length_m = 12.0 * ft;
  door.tube_in_m = 1.0 * ft;
  envelope.edge = {door};
  envelope.ground.plane_W_per_m2K = 0.3;
  envelope.ground.underside_W_per_m2K = 0.32;
  envelope.ground.effective_degC = 2.0;
  envelope.ground.dimension_m = 5.0;
  envelope.outdoor_degC = of_F(-12.0);
  envelope.loss_W = room.loss_W;
  envelope.exhaust_W = 14200.0;
  return envelope;
}

FloorPlan sample_floor() {
  FloorPlan plan;
  RoomFloor room;
  room.room = "shop";
  room.heated_m2 = 100.0;
  room.wanted_W_per_m2 = room.given_W_per_m2 = 67.4;
  room.floor.floor_mean_degC = of_F(71.0);
  room.floor.floor_over_tube_degC = of_F(74.0);
  room.limit_degC = 29.0;
  plan.room = {room};
  plan.opinion = {
      {"EN 1264-2 power function", 3.7, 4.4, -0.16, -0.06, 0.20, false, {"the tubes do not lie on insulation"}}};
  plan.down_W = 2300.0 * btu_h;
  return plan;
}

Balance sample_balance() {
  Balance balance;
  PortSetting first;
  first.loop = "bench";
  first.port = 1;
  first.length_m = 241.0 * ft;
  first.open_m3_per_s = 0.78 * gpm;
  first.aim_m3_per_s = 0.61 * gpm;
  first.least_m3_per_s = 0.54 * gpm;
  first.most_m3_per_s = 0.70 * gpm;
  first.exact_kv = 0.5;
  first.set_turns = 2.25;
  first.after_m3_per_s = 0.62 * gpm;
  first.authority_share = 0.08;
  PortSetting second = first;
  second.loop = "big door, east";
  second.port = 2;
  second.length_m = 290.0 * ft;
  second.open_m3_per_s = 0.60 * gpm;
  second.aim_m3_per_s = 0.74 * gpm;
  second.least_m3_per_s = 0.66 * gpm;
  second.most_m3_per_s = 0.85 * gpm;
  second.set_turns = 5.0;
  second.open = true;
  second.after_m3_per_s = 0.73 * gpm;
  balance.port = {first, second};
  balance.move = {{"bench", 1, 0.62 * gpm, 2.25, {0.62 * gpm, 0.73 * gpm}}};
  balance.turns = {2.25, 5.0};
  balance.hardest = 1;
  balance.duty_Pa = 8.0 * ft * 9806.65;
  for (const PortSetting& port : balance.port) balance.aim_m3_per_s += port.aim_m3_per_s;
  balance.total_open_m3_per_s = 1.38 * gpm;
  balance.total_after_m3_per_s = 1.35 * gpm;
  balance.untouched_worst_share = 0.279;
  balance.untouched_loop = "bench";
  return balance;
}

OperatingPoint sample_point() {
  OperatingPoint point;
  point.supply_degC = of_F(98.0);
  point.return_degC = of_F(78.0);
  point.flow_m3_per_s = 1.35 * gpm;
  point.pump_Pa = 7.9 * ft * 9806.65;
  point.up_W = 22000.0 * btu_h;
  point.down_W = 2300.0 * btu_h;
  point.water_W = 24300.0 * btu_h;
  LoopState state;
  state.flow_m3_per_s = 0.62 * gpm;
  state.return_degC = of_F(78.0);
  state.velocity_m_per_s = 0.3;
  state.reynolds_number = 3100.0;
  state.regime = Regime::blended;
  state.film_W_per_m2K = 700.0;
  state.loss_Pa = 15000.0;
  state.part = {{Part::tube, 14000.0}, {Part::balancing_valve, 1000.0}};
  point.loop = {state, state};
  point.room_floor_degC = {of_F(71.0)};
  point.room_floor_peak_degC = {of_F(79.0)};
  point.hardest_part = {{Part::tube, 14000.0}, {Part::boiler, 500.0}};
  point.hardest_loop = 1;
  return point;
}

PlantSizes sample_sizes() {
  PlantSizes sizes;
  sizes.pump.flow_m3_per_s = 1.35 * gpm;
  sizes.pump.head_m = 8.0 * ft;
  sizes.pump.added_head_m = 15.0 * ft;
  sizes.pump.hydraulic_W = 2.0;
  sizes.pump.tried_on = "small";
  sizes.pump.runs_m3_per_s = 1.35 * gpm;
  sizes.pump.runs_head_m = 7.9 * ft;
  sizes.pump.runs_share = 0.3;
  sizes.pump.electric_W = 6.7;
  sizes.pump.season_J = 6.7 * 4000.0 * 3600.0;
  sizes.pump.suction_m = 18.0;
  sizes.boiler.floor_W = 7440.0;
  sizes.boiler.pickup_W = 1488.0;
  sizes.boiler.wanted_W = 8928.0;
  sizes.boiler.power_W = 9000.0;
  sizes.boiler.spare_share = 0.21;
  sizes.boiler.fails_working_degC = of_F(-27.0);
  sizes.boiler.least_flow_m3_per_s = 1.7 * gpm;
  sizes.tank = {0.05, 0.0, 0.0007, 0.0015, 4.0, 48.9, 82737.0, 82737.0, 4.4, 186158.0, 58800.0, 9000.0};
  sizes.electric.power_W = 9000.0;
  sizes.electric.voltage_V = 240.0;
  sizes.electric.current_A = 37.5;
  sizes.electric.demand_A = 46.875;
  sizes.electric.device_A = 50.0;
  sizes.electric.free_A = 60.0;
  sizes.electric.stages_number = 2;
  sizes.start = {4.4, 1.3 * gpm, 1.3 * gpm, 0.96, 0.0, false, true, 4.4, 120.0};
  sizes.cycle = {2, 4500.0, 1860.0, 300.0, false, std::nullopt, std::nullopt, 0.0};
  sizes.purge = {{"bench", 1, 2.2 * gpm, 150e3, 1.1 * gpm, 120.0},
                 {"big door, east", 2, 2.2 * gpm, 170e3, 1.1 * gpm, 147.0}};
  return sizes;
}

/// Coldest, limit and what it freezes at.
struct Degrees {
  double coldest_degC, limit_degC, freezes_degC;
};

PlaceAtSetting place(std::string name, PlaceKind kind, Degrees at, std::optional<double> air_degC,
                     std::optional<double> slab_degC) {
  PlaceAtSetting one;
  one.name = std::move(name);
  one.kind = kind;
  one.coldest_degC = at.coldest_degC;
  one.limit_degC = at.limit_degC;
  one.freezes_degC = at.freezes_degC;
  one.spare_K = at.coldest_degC - at.freezes_degC;
  one.asks_air_degC = air_degC;
  one.asks_slab_degC = slab_degC;
  return one;
}

Freeze sample_freeze() {
  Freeze freeze;
  freeze.verdict = FreezeVerdict::found;
  const std::string decides = "tube 12 in inside the big door";
  freeze.air = DialSetting{decides, of_F(45.0), 0.0, of_F(47.0), of_F(47.0)};
  freeze.slab = DialSetting{decides, of_F(56.0), 0.0, of_F(58.0), of_F(58.0)};
  freeze.tried = "3 days at -16 F, worst hour -24 F";
  freeze.outdoor_degC = of_F(-24.0);
  freeze.slab_sensor = "in the concrete at tube depth, midway between two tubes";
  freeze.air_sensor = "on an inside wall, 5 ft up";
  freeze.place = {place("tube 12 in inside the big door", PlaceKind::tube, {2.0, 2.0, 0.0}, 7.0, 13.0),
                  place("water line in the wall", PlaceKind::wall_pipe, {4.0, 2.0, 0.0}, 5.0, 9.0),
                  place("floor line at the big door", PlaceKind::floor_line, {-9.0, 0.0, 0.0}, {}, {})};
  freeze.place.back().decides = false;
  freeze.place.back().ice_below_degC = of_F(22.0);
  freeze.hold_W = 20000.0 * btu_h;
  freeze.boiler_keeps_to_degC = of_F(-31.0);
  return freeze;
}

}  // namespace

Answer sample(Question question) {
  Answer answer;
  answer.wishes = {question, true};
  answer.file = sample_file();
  answer.loops = sample_loops();
  answer.envelope = sample_envelope();
  answer.floor = sample_floor();
  answer.balance = sample_balance();
  answer.point = sample_point();
  answer.sizes = sample_sizes();
  answer.freeze = sample_freeze();
  answer.sensitivity = {{"building.air_changes", "0.6 per hour", 1900.0, 1.5},
                        {"insulation.under", "R-10", 600.0, std::nullopt},
                        {"climate.mean", "45 F", 0.0, 0.0}};
  answer.change = {{"R-10 strip across the slab at the big door", true, of_F(50.0), of_F(43.0)},
                   {"door-side tube 12 in further in", true, of_F(58.0), of_F(47.0)}};
  return answer;
}

Answer undescribed(Question question) {
  Answer answer = sample(question);
  answer.file = from_keys({{"slab.size", "36 x 30 ft"}, {"climate.outdoor", "-12 F"}});
  answer.loss_W = Three{16000.0 * btu_h, 23000.0 * btu_h, 35000.0 * btu_h};
  answer.boiler_W = Three{6300.0, 8928.0, 13400.0};
  answer.supply_degC = Three{of_F(91.0), of_F(98.0), of_F(112.0)};
  answer.slab_dial_degC = Three{of_F(54.0), of_F(58.0), of_F(63.0)};
  answer.air_dial_degC = Three{of_F(47.0), of_F(47.0), of_F(47.0)};
  answer.poor_fails_degC = of_F(3.0);
  return answer;
}

Diagnostic said(Severity severity, std::string sentence) {
  return {severity, "test.said", "boiler.power", std::move(sentence), {}};
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::string flat(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const char plain = c == '\n' ? ' ' : c;
    if (plain != ' ' || (!out.empty() && out.back() != ' ')) out += plain;
  }
  return out;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines(1);
  for (const char c : text) {
    if (c == '\n')
      lines.emplace_back();
    else
      lines.back() += c;
  }
  lines.pop_back();
  return lines;
}

}  // namespace slabwright::test
