#include "answer/pass.hpp"

#include <algorithm>

#include "slabwright/handbook_practice.hpp"
#include "slabwright/plant_zones.hpp"

namespace slabwright {
namespace {

/// What each room's floor is asked for: no more than its surface limit lets it give.
std::vector<double> wanted_W(const Envelope& envelope, const FloorPlan& floor) {
  std::vector<double> wanted;
  for (std::size_t i = 0; i < envelope.room.size(); ++i) {
    const double given = floor.room[i].given_W_per_m2 * floor.room[i].heated_m2;
    wanted.push_back(std::min(envelope.room[i].wanted_W, given));
  }
  return wanted;
}

/// Balanced on the smallest generic pump that reaches the duty, or on the file's own.
std::optional<Balanced> balanced(Answer& answer) {
  const FloorPlan* floor = answer.floor ? &*answer.floor : nullptr;
  const Envelope* envelope = answer.envelope ? &*answer.envelope : nullptr;
  std::vector<Diagnostic> said;
  std::optional<Balanced> best;
  // Lengths alone ask for no flow: the smallest will do.
  const bool asked = floor || answer.file.design.pump.flow_m3_per_s;
  const std::size_t pumps = asked && answer.file.design.pump.points.empty() ? generic_pumps().size() : 1;
  for (std::size_t i = 0; i < pumps; ++i) {
    said.clear();
    auto plant = keep(pipe_up(answer.file.design, *answer.loops, floor, i), said);
    if (!plant) break;
    FlowTarget target = target_flows(*plant, envelope);
    auto balance = keep(balance_plant(*plant, target, target.water_degC), said);
    if (!balance) break;
    const bool reached = balance->pump_reach_share >= 1.0;
    best = Balanced{std::move(*plant), std::move(target), std::move(*balance)};
    if (reached) break;
  }
  answer.said.insert(answer.said.end(), said.begin(), said.end());
  return best;
}

/// The floor everywhere, at the operating point, for tube as it is drawn.
void add_field(Answer& answer, const Plant& plant, EdgeFields& fields) {
  LaidFloor laid;
  for (const Loop& loop : answer.loops->loop) laid.tube.push_back({*loop.path, 0.0, 0.0});
  laid.apron = answer.loops->drawing->apron;
  laid.edge = laid_edges(plant.design, *answer.envelope, fields);
  answer.field = keep(floor_field(plant, conditions_at(*answer.envelope), *answer.point, laid), answer.said);
}

/// With the figures that are known by now.
void add_scheme(Answer& answer, const Passing& passing, const Plant& plant) {
  if (!passing.sees_floor || answer.wishes.question != Question::sheets) return;
  answer.scheme =
      piping_scheme(plant, answer.point ? &*answer.point : nullptr, answer.sizes ? &*answer.sizes : nullptr);
}

std::optional<double> boiler_W(const Answer& answer) {
  if (answer.file.design.boiler.kind == BoilerKind::none) return std::nullopt;
  if (answer.sizes) return answer.sizes->boiler.power_W;
  return answer.file.design.boiler.power_W;
}

/// Of the plant as it runs, for sheets.
void add_plots(Answer& answer, const Plant& plant, const Balanced& hydronics) {
  answer.curves = plant_curves(plant, *answer.point, hydronics.target, hydronics.balance.duty_Pa);
  answer.by_outdoor =
      keep(heat_by_outdoor({plant, *answer.envelope, *answer.floor, *answer.point, boiler_W(answer)}), answer.said);
}

void add_plant(Answer& answer, Passing& passing) {
  auto hydronics = balanced(answer);
  if (!hydronics) return;
  answer.balance = hydronics->balance;
  add_scheme(answer, passing, hydronics->plant);
  if (passing.meters) add_readings(answer, *passing.meters, *hydronics);
  if (!answer.envelope || !answer.floor) return;
  const Plant plant = with_settings(as_balanced(hydronics->plant, hydronics->balance), hydronics->balance.turns,
                                    hydronics->balance.pump_speed_share);
  answer.point =
      keep(supply_for(plant, conditions_at(*answer.envelope), wanted_W(*answer.envelope, *answer.floor)), answer.said);
  if (!answer.point) return;
  if (passing.sees_floor && answer.loops->drawing) add_field(answer, plant, passing.fields);
  if (passing.runs_winter)
    passing.water = curve_of(plant, conditions_at(*answer.envelope), plant.design.boiler.hottest_degC);
  answer.sizes = keep(size_plant(plant, *answer.envelope, *answer.point, hydronics->target, hydronics->balance.duty_Pa),
                      answer.said);
  add_scheme(answer, passing, plant);
  if (!answer.sizes) return;
  if (passing.plots) add_plots(answer, plant, *hydronics);
  answer.shut =
      keep(zones_shut(plant, conditions_at(*answer.envelope), *answer.point, answer.sizes->boiler.least_flow_m3_per_s),
           answer.said);
}

/// What the frost hold is found from, for as long as the answer stands.
struct ColdShop {
  WatchedPlaces places;
  Snap snap;
  HeldShop held;

  ColdShop(const Answer& answer, Passing& passing)
      : places(watched_places(answer.file.design, *answer.envelope, passing.fields)),
        snap(snap_of(answer.file.design, passing.weather)),
        held{answer.file.design, *answer.envelope, *answer.floor, places, snap} {}

  /// With the water that the plant gives, and the settings that were found.
  WinterShop in_winter(const Answer& answer, const Passing& passing) const {
    const Freeze& freeze = *answer.freeze;
    WinterShop winter{held.design,      held.envelope, held.floor, places, snap,   *passing.water,
                      boiler_W(answer), 0.0,           {},         {},     nullptr};
    if (answer.point) winter.reset_supply_degC = answer.point->supply_degC;
    if (answer.sizes) winter.pump_W = answer.sizes->pump.electric_W;
    if (freeze.air) winter.hold_air_degC = freeze.air->dial_degC;
    if (freeze.slab) winter.hold_slab_degC = freeze.slab->dial_degC;
    winter.weather = passing.weather;
    return winter;
  }
};

void add_freeze(Answer& answer, Passing& passing) {
  if (!answer.envelope || !answer.floor) return;
  const ColdShop shop(answer, passing);
  answer.freeze = keep(lowest_setting(shop.held, passing.fields, boiler_W(answer)), answer.said);
}

}  // namespace

Conditions conditions_at(const Envelope& envelope) {
  Conditions conditions;
  conditions.outdoor_degC = envelope.outdoor_degC;
  for (const RoomLoss& room : envelope.room) conditions.room_degC.push_back(room.indoor_degC);
  return conditions;
}

std::optional<double> lasting_hold_degC(const Answer& answer, Passing& passing) {
  if (!answer.envelope || !answer.floor) return std::nullopt;
  return lasting_slab_degC(ColdShop(answer, passing).held);
}

void add_bands(Answer& answer, Passing& passing) {
  if (!answer.freeze || !answer.envelope || !answer.floor) return;
  const ColdShop shop(answer, passing);
  const Unknowns unknowns = usual_unknowns(answer.file.design);
  answer.bands =
      freeze_bands(shop.held, *answer.freeze, unknowns, {}, work_of(answer.wishes.progress, "what nobody can know"));
  if (!answer.bands) return;
  auto covered = with_dials(shop.held, *answer.freeze, covering(*answer.bands), boiler_W(answer));
  if (!covered.value) return;
  const bool raised = covered.value->air->dial_degC > answer.freeze->air->dial_degC;
  const auto of_freeze = [](const Diagnostic& d) { return d.code.compare(0, 7, "freeze.") == 0; };
  answer.said.erase(std::remove_if(answer.said.begin(), answer.said.end(), of_freeze), answer.said.end());
  answer.freeze = keep(std::move(covered), answer.said);
  // Hours are from the dial that is printed.
  const Progress again = work_of(answer.wishes.progress, "what nobody can know, at the higher setting");
  if (raised) answer.bands = freeze_bands(shop.held, *answer.freeze, unknowns, {}, again);
}

void add_cold_runs(Answer& answer, Passing& passing) {
  if (!answer.freeze || !answer.envelope || !answer.floor) return;
  const ColdShop shop(answer, passing);
  const auto boiler = boiler_W(answer);
  answer.outage = outage_clock(shop.held, *answer.freeze, passing.fields, boiler);
  answer.fault = single_faults(shop.held, *answer.freeze, passing.fields, boiler);
  answer.recovery = recoveries(shop.held, *answer.freeze, passing.fields, boiler);
  answer.sensor = sensor_cases(shop.held, *answer.freeze, passing.fields);
  if (passing.plots) answer.courses = freeze_courses(shop.held, *answer.freeze, passing.fields, boiler);
  if (answer.file.design.climate.coldest_degC) answer.turn_off = turned_off(shop.held, passing.fields);
  if (answer.wishes.question == Question::sheets) answer.edge_section = held_sections(shop.held, *answer.freeze);
}

void add_winter(Answer& answer, Passing& passing) {
  if (!answer.envelope || !answer.floor || !answer.freeze || !passing.water) return;
  const ColdShop shop(answer, passing);
  const WinterWishes wishes{answer.wishes.bands, true, answer.wishes.wide, passing.plots,
                            work_of(passing.progress, "running the winter")};
  answer.winter = keep(winter_of(shop.in_winter(answer, passing), passing.fields, wishes), answer.said);
}

std::vector<OwnerCost> owner_costs_of(const Answer& answer, Passing& passing, const OwnerAsked& asked) {
  if (!answer.envelope || !answer.floor || !answer.freeze || !passing.water) return {};
  const ColdShop shop(answer, passing);
  return owner_costs(shop.in_winter(answer, passing), passing.fields, asked.setting_degC, asked.source_lead_h);
}

Answer pass(const DesignFile& file, Question question, Passing& passing, Reach reach) {
  Answer answer;
  answer.wishes.question = question;
  answer.wishes.sensitivities = false;
  answer.file = file;
  answer.loops =
      keep(plan_loops(file.design, passing.draws ? &passing.laid : nullptr, work_of(passing.progress, "laying tube")),
           answer.said);
  if (question == Question::drill) return answer;
  if (answer.loops && reach == Reach::whole) {
    answer.cuts = keep(cut_list(file.design, *answer.loops), answer.said);
    answer.materials = materials_of(file.design, *answer.loops);
    // What there is to say of them is for who asks about drilling; here they stand on the plan.
    if (answer.loops->drawing && !file.design.anchor.empty())
      answer.drill = drill_at(file.design, *answer.loops, {}).value;
    if (question == Question::design || question == Question::route || question == Question::sheets)
      answer.plan = plan_figures(file.design, *answer.loops);
  }
  const bool for_the_crew = question == Question::route || (question == Question::sheets && reach == Reach::whole);
  if (for_the_crew && answer.loops) {
    answer.stakes = stake_out(file.design, *answer.loops);
    answer.laid = laid_lines(file.design, *answer.loops);
    if (question == Question::sheets) {
      answer.control = control_points(file.design, *answer.loops);
      answer.drill_bands = drill_bands(file.design, *answer.loops);
    }
  }
  if (question == Question::route) return answer;
  if (file.design.climate.outdoor_degC) answer.envelope = keep(envelope_of(file.design, passing.fields), answer.said);
  if (answer.loops && answer.envelope) {
    answer.floor = keep(floor_of(file.design, *answer.loops, *answer.envelope), answer.said);
  }
  if (answer.loops && reach != Reach::frost_hold) add_plant(answer, passing);
  const bool freezes = question != Question::balance && question != Question::cure;
  if (freezes && reach != Reach::no_frost_hold) add_freeze(answer, passing);
  return answer;
}

}  // namespace slabwright
