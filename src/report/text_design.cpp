// design: does it work, what to buy, what to lay, what to set, where the heat goes.
#include <fmt/format.h>

#include <algorithm>

#include "report/text.hpp"

namespace slabwright::report {
namespace {

std::string weather(const Reader& reader) {
  const Climate& climate = reader.design().climate;
  if (!reader.answer.envelope) return {};
  return fmt::format(" at {} outside and {} inside", reader(Kind::degree, reader.answer.envelope->outdoor_degC),
                     reader(Kind::degree, climate.indoor_degC, Figure::indoor));
}

std::string design_verdict(const Reader& reader) {
  const Answer& answer = reader.answer;
  const std::size_t reasons = answer.verdict.reasons.size();
  if (!answer.loops) return "NOT ENOUGH IS KNOWN to lay out a floor:";
  if (answer.verdict.kind == VerdictKind::fails) return fmt::format("IT DOES NOT WORK{}, because:", weather(reader));
  const std::string works =
      answer.envelope ? "IT WORKS" + weather(reader) : "THE LOOPS WORK OUT; heat waits for the coldest weather outside";
  if (reasons == 0) return works + ".";
  return fmt::format("{}, with {} to mend:", works, reasons == 1 ? "one thing" : counted(reasons) + " things");
}

// --- To buy ---

/// "2 coils of 500 ft and 1 of 300 ft".
std::string coils_of(const CutList& cuts, const Reader& reader) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < cuts.coil.size();) {
    std::size_t next = i;
    while (next < cuts.coil.size() && cuts.coil[next].length_m == cuts.coil[i].length_m) ++next;
    const std::string length = reader(Kind::length, cuts.coil[i].length_m);
    parts.push_back(parts.empty() ? fmt::format("{} of {}", several(next - i, "coil"), length)
                                  : fmt::format("{} of {}", next - i, length));
    i = next;
  }
  return fmt::format("{}", fmt::join(parts, " and "));
}

void add_tube(Page& page, const Reader& reader) {
  const LoopPlan& loops = *reader.answer.loops;
  if (reader.answer.cuts) {
    const CutList& cuts = *reader.answer.cuts;
    return add_row(
        page, "To buy", "tube",
        fmt::format("{} of {}: {} for {}, no splice; {} left", reader(Kind::length, loops.tube_m, Figure::loops),
                    reader.design().tube.size.name, coils_of(cuts, reader), several(loops.loop.size(), "loop"),
                    reader(Kind::length, cuts.left_m)));
  }
  add_row(page, "To buy", "tube",
          fmt::format("{} of {} in {}, each in one piece", reader(Kind::length, loops.tube_m, Figure::loops),
                      reader.design().tube.size.name, several(loops.loop.size(), "loop")));
}

/// "5 ports: 4 loops and 1 spare", a manifold each.
void add_manifolds(Page& page, const Reader& reader) {
  const LoopPlan& loops = *reader.answer.loops;
  const auto& manifolds = reader.design().manifold;
  std::vector<std::string> parts;
  for (std::size_t m = 0; m < manifolds.size(); ++m) {
    const auto leaving = static_cast<std::size_t>(
        std::count_if(loops.loop.begin(), loops.loop.end(), [&](const Loop& loop) { return loop.manifold == m; }));
    const auto ports = static_cast<std::size_t>(manifolds[m].ports_number.value_or(static_cast<double>(leaving + 1)));
    const std::string spare = ports > leaving ? fmt::format(", {} spare", ports - leaving) : ", none spare";
    const std::string name = manifolds.size() > 1 ? manifolds[m].name + ": " : "";
    parts.push_back(name + several(ports, "port") + spare);
  }
  add_row(page, "", manifolds.size() > 1 ? "manifolds" : "manifold", fmt::format("{}", fmt::join(parts, "; ")));
}

constexpr double most_told_share = 10.0;

std::string boiler_power(const Reader& reader, const BoilerSize& boiler) {
  const std::string power = reader(Kind::boiler, boiler.power_W, Figure::boiler);
  const double share = boiler.spare_share;
  // Of a floor that takes next to nothing, a pump standing perhaps, a percentage tells nobody anything.
  const std::string by = share > most_told_share ? "far" : reader(Kind::share, std::abs(share));
  const std::string spare = fmt::format("{} {} than the floor takes", by, share < 0.0 ? "less" : "more");
  if (boiler.kind == BoilerKind::none) return fmt::format("none yet: leave room for {} ({})", power, spare);
  const std::string kind = boiler.kind == BoilerKind::tank_heater ? " tank heater" : " electric";
  return fmt::format("{}{}{} ({})", boiler.from_file ? "yours, " : "", power, kind, spare);
}

/// What is lost where it is too small: "keeps 60 F inside down to -36 F outside, the frost hold to -55 F".
std::string boiler_reach(const Reader& reader, const BoilerSize& boiler) {
  const Answer& answer = reader.answer;
  std::string keeps;
  if (boiler.fails_working_degC) {
    keeps = fmt::format("keeps {} inside {} outside", reader(Kind::degree, reader.design().climate.indoor_degC),
                        keeps_to(reader, *boiler.fails_working_degC, Figure::heat));
  }
  if (answer.freeze && answer.freeze->boiler_keeps_to_degC) {
    keeps += (keeps.empty() ? "keeps the frost hold " : ", the frost hold ") +
             keeps_to(reader, *answer.freeze->boiler_keeps_to_degC, Figure::frost_hold);
  }
  return keeps;
}

/// Only for a boiler to be bought: what is wrong with one of the file stands above.
void add_short_runs(Page& page, const Reader& reader) {
  const BoilerCycle& cycle = reader.answer.sizes->cycle;
  if (!cycle.short_runs || reader.answer.sizes->boiler.from_file) return;
  add_row(page, "", "",
          fmt::format("in mild weather it runs {} at a time: take smaller stages, or a buffer tank of {}",
                      minutes_words(*cycle.on_s), reader(Kind::volume, cycle.buffer_m3)));
}

void add_boiler(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  const BoilerSize& boiler = answer.sizes->boiler;
  add_row(page, "", "boiler", boiler_power(reader, boiler));
  if (answer.boiler_W) {
    add_row(page, "", "", "sized by " + ranged(Kind::boiler, *answer.boiler_W, reader.system()));
  }
  if (const std::string keeps = boiler_reach(reader, boiler); !keeps.empty()) add_row(page, "", "", keeps);
  if (!answer.poor_fails_degC) return;
  add_row(page, "", "",
          fmt::format("if the building is poor, {} only down to {} outside",
                      reader(Kind::degree, reader.design().climate.indoor_degC),
                      reader(Kind::degree, *answer.poor_fails_degC)));
}

void add_pump(Page& page, const Reader& reader) {
  const PumpSize& pump = reader.answer.sizes->pump;
  const double duty_Pa = reader.answer.balance ? reader.answer.balance->duty_Pa : reader.answer.point->pump_Pa;
  const std::string duty = marked(fmt::format("{} against {}", reader(Kind::flow, pump.flow_m3_per_s),
                                              against(pump.head_m, duty_Pa, reader.system())),
                                  reader.answer, Figure::pump);
  if (reader.design().pump.points.empty()) return add_row(page, "", "pump", "one that gives " + duty);
  add_row(page, "", "pump", "the floor asks for " + duty);
  add_row(page, "", "",
          fmt::format("yours gives {} against {}", reader(Kind::flow, pump.runs_m3_per_s),
                      against(pump.runs_head_m, reader.answer.point->pump_Pa, reader.system())));
}

void add_tank(Page& page, const Reader& reader) {
  const TankSize& tank = reader.answer.sizes->tank;
  const std::string air = reader(Kind::gauge, tank.fill_Pa), fill = reader(Kind::gauge, tank.start_Pa);
  const std::string size = reader(Kind::least_volume, tank.tank_m3, Figure::tank);
  add_row(page, "", "tank",
          air == fill ? fmt::format("expansion tank of {} or more, for a cold fill to {}", size, fill)
                      : fmt::format("expansion tank of {} or more, its air at {}; fill to {} at {}", size, air, fill,
                                    reader(Kind::degree, tank.start_degC)));
  if (tank.glycol_m3 <= 0.0) return;
  add_row(page, "", "glycol",
          fmt::format("{} in {} of mixture", reader(Kind::volume, tank.glycol_m3, Figure::tank),
                      reader(Kind::volume, tank.fluid_m3)));
}

void add_power(Page& page, const Reader& reader) {
  const ElectricSize& electric = reader.answer.sizes->electric;
  const std::string current = reader(Kind::current, electric.current_A, Figure::power);
  const std::string at =
      fmt::format("{}{} at {}{}", current, electric.phases == 3 ? " a phase" : "",
                  reader(Kind::voltage, electric.voltage_V), electric.phases == 3 ? ", three-phase" : "");
  if (!electric.demand_A) {
    return add_row(page, "", "power", at + "; the electrician sizes wire and breaker");
  }
  add_row(page, "", "power",
          fmt::format("{}; the electrician sizes wire and breaker for {} or more (125 %)", at,
                      reader(Kind::current, *electric.demand_A)));
}

/// A boiler on another voltage than its plate's, and what else hangs on the service where the file tells.
void add_together(Page& page, const Reader& reader) {
  const ElectricSize& electric = reader.answer.sizes->electric;
  for (const Diagnostic& said : reader.answer.said) {
    if (said.code == "plant.voltage" && said.severity == Severity::note)
      add_row(page, "", "", sentence(said, reader.system()));
  }
  if (!electric.together_A) return;
  std::string words = "with all else at once " + reader(Kind::current, *electric.together_A);
  if (electric.one_heats_A)
    words += fmt::format(", {} with an interlock", reader(Kind::current, *electric.one_heats_A));
  if (electric.main_breaker_A) words += "; main breaker " + reader(Kind::current, *electric.main_breaker_A);
  add_row(page, "", "", words);
}

/// Only where cold water makes a difference that somebody will see.
void add_start(Page& page, const Reader& reader) {
  constexpr double worth_a_word_share = 0.9;
  const StartUp& start = reader.answer.sizes->start;
  const bool slow = start.flow_share < worth_a_word_share || start.laminar_share > 0.0 || !start.flow_enough;
  if (slow) add_row(page, "", "cold start", start_words(reader, start));
}

// --- To lay ---

/// "18 in from the big door"; doors with one distance together: "18 in from bay 1, bay 2 and yard door".
std::vector<std::string> door_distances(const Reader& reader) {
  std::vector<std::pair<std::string, std::vector<std::string>>> alike;
  for (const Opening& opening : reader.design().opening) {
    if (opening.kind != OpeningKind::big_door) continue;
    const double from_m = opening.tube_distance_m.value_or(reader.design().tube.from_doors_m);
    const std::string away = reader(Kind::short_length, from_m);
    const std::string name = opening.name.empty() ? "big door" : opening.name;
    auto row = std::find_if(alike.begin(), alike.end(), [&](const auto& one) { return one.first == away; });
    if (row == alike.end()) row = alike.insert(row, {away, {}});
    if (std::find(row->second.begin(), row->second.end(), name) == row->second.end()) row->second.push_back(name);
  }
  std::vector<std::string> texts;
  for (const auto& [away, names] : alike) {
    std::string text = away + " from " + (names.size() == 1 ? "the " : "");
    for (std::size_t i = 0; i < names.size(); ++i)
      text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    texts.push_back(std::move(text));
  }
  return texts;
}

void add_lay(Page& page, const Reader& reader) {
  const LoopPlan& plan = *reader.answer.loops;
  const auto [least, most] = std::minmax_element(plan.loop.begin(), plan.loop.end(),
                                                 [](const Loop& a, const Loop& b) { return a.length_m < b.length_m; });
  const std::string lengths = from_to(Kind::length, least->length_m, most->length_m, reader.system());
  add_row(page, "To lay", several(plan.loop.size(), "loop"),
          fmt::format("{}{}, leaders (runs to the manifold) included; the limit for this tube is {}",
                      marked(lengths, reader.answer, Figure::loops), least->length_m == most->length_m ? " each" : "",
                      reader(Kind::length, plan.limit_m)));
  const Tube& tube = reader.design().tube;
  std::vector<std::string> doors = door_distances(reader);
  doors.insert(doors.begin(), reader(Kind::short_length, tube.from_walls_m) + " from walls");
  if (!reader.answer.envelope && floor_shape(reader.design().slab).area_m2 <= 0.0) return;
  add_row(page, "", "distances",
          marked(fmt::format("first tube {}", fmt::join(doors, ", ")), reader.answer, Figure::distances));
}

// --- To set ---

void add_water(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  const std::string back = reader(Kind::degree, answer.point->return_degC, Figure::water);
  if (answer.supply_degC) {
    add_row(page, "To set", "water out", ranged(Kind::degree, *answer.supply_degC, reader.system()));
    return add_row(page, "", "", fmt::format("in the coldest weather, back at {}", back));
  }
  add_row(page, "To set", "water out",
          fmt::format("{} in the coldest weather, back at {}",
                      reader(Kind::degree, answer.point->supply_degC, Figure::water), back));
}

void add_flows(Page& page, const Reader& reader) {
  const auto& ports = reader.answer.balance->port;
  const auto [least, most] = std::minmax_element(
      ports.begin(), ports.end(), [](const auto& a, const auto& b) { return a.aim_m3_per_s < b.aim_m3_per_s; });
  const std::string flows = from_to(Kind::flow, least->aim_m3_per_s, most->aim_m3_per_s, reader.system());
  add_row(page, reader.answer.point ? "" : "To set", "each loop",
          fmt::format("{}; the settings: slabwright balance",
                      marked(flows, reader.answer, reader.answer.floor ? Figure::flow : Figure::balance)));
}

void add_floor_top(Page& page, const Reader& reader) {
  const OperatingPoint& point = *reader.answer.point;
  if (point.room_floor_degC.empty() || point.room_floor_peak_degC.empty() || !reader.answer.floor) return;
  const auto peak = std::max_element(point.room_floor_peak_degC.begin(), point.room_floor_peak_degC.end());
  const auto room = static_cast<std::size_t>(peak - point.room_floor_peak_degC.begin());
  const double limit_degC = reader.answer.floor->room[room].limit_degC;
  const std::string warmest = reader(Kind::degree, *peak), limit = reader(Kind::degree, limit_degC);
  const bool over = *peak > limit_degC && warmest != limit;
  add_row(page, "", "floor top",
          fmt::format("{} on average, up to {} where warm water comes in; {} {}",
                      reader(Kind::degree, point.room_floor_degC[room], Figure::floor),
                      marked(warmest, reader.answer, Figure::water),
                      over ? "more there than the comfort limit of" : "the comfort limit is", limit));
}

void add_hold(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.freeze) return;
  const std::string question = answer.point || answer.balance ? "" : "To set";
  const std::string more = "freeze adds what nobody knows";
  switch (answer.freeze->verdict) {
    case FreezeVerdict::no_setting: return add_row(page, question, "frost hold", "no setting is safe: see above");
    case FreezeVerdict::cannot_be_called:
      return add_row(page, question, "frost hold", "cannot be called safe: see above");
    case FreezeVerdict::found: break;
  }
  const auto setting = [&](const DialSetting& of) { return reader(Kind::dial, of.dial_degC, Figure::frost_hold); };
  const std::string wall = setting(*answer.freeze->air);
  const auto& slab = answer.freeze->slab;
  if (!slab) return add_row(page, question, "frost hold", fmt::format("wall thermostat {}; {}", wall, more));
  if (!answer.air_dial_degC || !answer.slab_dial_degC) {
    return add_row(page, question, "frost hold",
                   fmt::format("wall thermostat {}, or slab sensor {}; {}", wall, setting(*slab), more));
  }
  const System system = reader.system();
  add_row(page, question, "frost hold", "wall thermostat " + ranged(Kind::dial, *answer.air_dial_degC, system));
  add_row(page, "", "", "or slab sensor " + ranged(Kind::dial, *answer.slab_dial_degC, system) + "; " + more);
}

// --- The heat ---

/// One water serves all rooms: where one needs it warmer, the others get more than they ask for.
void add_floor_gives(Page& page, const Reader& reader) {
  constexpr double worth_a_word_share = 0.05;
  const Answer& answer = reader.answer;
  double wanted_W = 0.0;
  for (const RoomLoss& room : answer.envelope->room) wanted_W += room.wanted_W;
  if (answer.point->up_W <= (1.0 + worth_a_word_share) * wanted_W) return;
  add_row(page, "", "floor gives",
          fmt::format("{} upward, more than is asked: the room that is hardest to warm sets the water for all",
                      reader(Kind::heat, answer.point->up_W, Figure::heat)));
}

void add_heat(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  const Envelope& envelope = *answer.envelope;
  add_row(page, "The heat", "shop loses",
          answer.loss_W ? ranged(Kind::heat, *answer.loss_W, reader.system())
                        : reader(Kind::heat, envelope.loss_W, Figure::loss));
  if (answer.point) {
    add_row(page, "", "ground",
            reader(Kind::heat, answer.point->down_W, Figure::ground) + " more goes to ground and edge");
    add_floor_gives(page, reader);
  }
  if (envelope.exhaust_W > 0.0) {
    const bool counted_too = std::any_of(envelope.room.begin(), envelope.room.end(),
                                         [](const RoomLoss& r) { return r.exhaust_counted_W_per_K > 0.0; });
    add_row(page, "", "exhaust",
            fmt::format("fans take {} while they run; {}", reader(Kind::heat, envelope.exhaust_W),
                        counted_too ? "air that comes in cold is counted above" : "not counted above"));
  }
}

/// What can wait for --full where the page is full.
enum class Behaviour { told, left_out };

/// Everything below the verdict and its reasons.
Page ledger(const Reader& reader, Behaviour behaviour) {
  const Answer& answer = reader.answer;
  Page page;
  add_text(page, counts(reader));
  if (answer.loss_W) {
    add_text(page, "The building is not described, so look at the ranges. To narrow them, give:");
    add_sharpen(page, reader, "");
  }
  add_blank(page);
  add_tube(page, reader);
  add_manifolds(page, reader);
  if (answer.sizes) {
    add_boiler(page, reader);
    if (behaviour == Behaviour::told) add_short_runs(page, reader);
    add_pump(page, reader);
    add_source(page, reader);
    add_tank(page, reader);
    add_power(page, reader);
    if (behaviour == Behaviour::told) add_together(page, reader);
  }
  add_lay(page, reader);
  if (answer.point) add_water(page, reader);
  if (answer.balance && !answer.balance->port.empty()) add_flows(page, reader);
  if (answer.sizes && behaviour == Behaviour::told) add_start(page, reader);
  if (answer.point) add_floor_top(page, reader);
  add_hold(page, reader);
  if (answer.envelope) add_heat(page, reader);
  add_gap(page);
  add_lacking(page, reader);
  if (!answer.loss_W) add_sharpen(page, reader, "What would sharpen it");
  if (reader.options.full) add_full(page, reader);
  add_end(page, reader, answer.freeze ? "freeze" : "balance");
  return page;
}

}  // namespace

void add_design(Page& page, const Reader& reader) {
  constexpr std::size_t least_reason_lines = 3;
  const Answer& answer = reader.answer;
  add_first_line(page, reader, "");
  add_text(page, design_verdict(reader));
  if (!answer.loops) {
    add_reasons(page, reader, answer.verdict.reasons, most_lines / 2);
    add_lacking(page, reader);
    return add_end(page, reader, "design", "--size \"36 x 30 ft\"");
  }
  Page rest = ledger(reader, Behaviour::told);
  const std::size_t reason_lines = answer.verdict.reasons.empty() ? 0 : least_reason_lines;
  if (!reader.options.full && page.lines.size() + rest.lines.size() + reason_lines > most_lines)
    rest = ledger(reader, Behaviour::left_out);
  const std::size_t taken = page.lines.size() + rest.lines.size();
  const std::size_t left = most_lines - std::min(most_lines, taken);
  add_reasons(page, reader, answer.verdict.reasons, std::max(left, least_reason_lines));
  page.lines.insert(page.lines.end(), rest.lines.begin(), rest.lines.end());
}

}  // namespace slabwright::report
