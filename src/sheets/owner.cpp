// The owner's sheet, before choosing: what it keeps, what to buy, what each winter costs, what would lower that.
#include <algorithm>

#include "sheets/owner.hpp"
#include "sheets/owner_plots.hpp"

namespace slabwright::sheets {
namespace {

Markup owner_verdict(const Source& source) {
  const VerdictKind kind = source.answer.verdict.kind;
  const char* words = kind == VerdictKind::works  ? "It works."
                      : kind == VerdictKind::mend ? "It works, but mend this:"
                                                  : "It does not work, because:";
  std::vector<Markup> reasons;
  for (std::size_t i = 0; i < source.answer.verdict.reasons.size(); ++i)
    reasons.push_back(quoted(source.q.words(key_of_row("verdict.reasons", i, "sentence"))));
  return wrap("p", prose(words), "verdict") + bullets(reasons);
}

/// "14,000 if the building is tight, 35,000 if it is poor": of a building that is not described.
Markup range_of(const Source& source, const std::string& member, Kind kind) {
  const std::string at = "ranges." + member;
  if (!source.q.has(at)) return {};
  return say("; ", source.q.figure(at + ".tight", kind), " if the building is tight, ",
             source.q.figure(at + ".poor", kind), " if it is poor");
}

/// The room whose floor gets warmest, against what feet bear.
std::vector<Fact> floor_top(const Source& source) {
  const OperatingPoint& point = *source.answer.point;
  const auto peak = std::max_element(point.room_floor_peak_degC.begin(), point.room_floor_peak_degC.end());
  const auto room = static_cast<std::size_t>(peak - point.room_floor_peak_degC.begin());
  if (!source.answer.floor || room >= source.answer.floor->room.size() || room >= point.room_floor_degC.size())
    return {};
  const Quotes& q = source.q;
  return {{prose("Top of the floor"),
           say(q.figure(key_of_row("point.room_floor_degC", room), Kind::degree, Lean::floor), " on average, ",
               q.figure(key_of_row("point.room_floor_peak_degC", room), Kind::degree, Lean::water),
               " where warm water comes in; the comfort limit is ",
               q.figure(key_of_row("floor.room", room, "limit_degC"), Kind::degree))}};
}

Markup heat_section(const Source& source) {
  const Quotes& q = source.q;
  if (!source.answer.envelope) return section("The heat", not_known(source, "what the shop loses"));
  std::vector<Fact> rows;
  rows.push_back(
      {prose("Planned for"), say(q.figure("envelope.outdoor_degC", Kind::degree), " outside, ",
                                 q.figure("design.climate.indoor_degC", Kind::degree, Lean::indoor), " inside")});
  rows.push_back({prose("The shop then loses"),
                  say(q.figure("envelope.loss_W", Kind::heat, Lean::loss), range_of(source, "loss_W", Kind::heat))});
  if (!source.answer.point) return section("The heat", facts(rows));
  rows.push_back({prose("The floor gives"), say(q.figure("point.up_W", Kind::heat, Lean::heat), " upward, and loses ",
                                                q.figure("point.down_W", Kind::heat, Lean::ground), " to the ground")});
  rows.push_back({prose("Water"), say(q.figure("point.supply_degC", Kind::degree, Lean::water), " out, ",
                                      q.figure("point.return_degC", Kind::degree, Lean::water), " back")});
  for (Fact& row : floor_top(source)) rows.push_back(std::move(row));
  return section("The heat", facts(rows));
}

Markup tube_to_buy(const Source& source) {
  const Quotes& q = source.q;
  Markup tube = say(q.figure("loops.tube_m", Kind::length, Lean::loops), " of ", q.words("design.tube.size"), ": ",
                    q.count("loops.loop"), source.answer.loops->loop.size() == 1 ? " loop" : " loops");
  if (!source.answer.cuts || source.answer.cuts->coil.empty()) return tube;
  const auto& coils = source.answer.cuts->coil;
  tube += say(" out of ", q.count("cuts.coil"), coils.size() == 1 ? " coil" : " coils");
  const bool alike = std::all_of(coils.begin(), coils.end(),
                                 [&](const auto& coil) { return coil.length_m == coils.front().length_m; });
  if (alike) tube += say(" of ", q.figure(key_of_row("cuts.coil", 0, "length_m"), Kind::length));
  return say(tube, ", no splice");
}

Markup boiler_to_buy(const Source& source) {
  const Quotes& q = source.q;
  const BoilerSize& boiler = source.answer.sizes->boiler;
  const char* words = boiler.kind == BoilerKind::none          ? ", when there is one: leave room for it"
                      : boiler.kind == BoilerKind::tank_heater ? ", a tank heater"
                                                               : ", electric";
  Markup text = say(q.figure("sizes.boiler.power_W", Kind::boiler, Lean::boiler), words,
                    boiler.from_file ? ", which is yours" : "", range_of(source, "boiler_W", Kind::boiler));
  if (q.has("ranges.poor_fails_degC"))
    text += say("; if it is poor, this one keeps the shop warm down to ",
                q.figure("ranges.poor_fails_degC", Kind::degree), " outside only");
  return text;
}

Markup tank_to_buy(const Source& source) {
  const Quotes& q = source.q;
  Markup tank = say("expansion tank of ", q.figure("sizes.tank.tank_m3", Kind::least_volume, Lean::tank), " or more");
  if (source.answer.sizes->tank.glycol_m3 > 0.0)
    tank += say("; ", q.figure("sizes.tank.glycol_m3", Kind::volume, Lean::tank), " of pure glycol");
  return tank;
}

Markup power_to_buy(const Source& source) {
  const Quotes& q = source.q;
  return say(q.figure("sizes.electric.current_A", Kind::current, Lean::power), " at ",
             q.figure("sizes.electric.voltage_V", Kind::voltage),
             source.answer.sizes->electric.phases == 3 ? ", on each of three phases" : "",
             "; the rest is on the electrician's sheet");
}

Markup buy_section(const Source& source) {
  const Quotes& q = source.q;
  std::vector<Fact> rows{{prose("Tube"), tube_to_buy(source)}};
  for (std::size_t i = 0; i < q.rows("design.manifold"); ++i) {
    const std::string ports = key_of_row("design.manifold", i, "ports_number");
    rows.push_back({prose(i == 0 ? "Manifold" : "Another"), q.has(ports) ? say(q.figure(ports, Kind::count), " ports")
                                                                         : prose("a port for each loop, one spare")});
  }
  if (!source.answer.sizes) return section("To buy", facts(rows) + not_known(source, "boiler, pump and tank"));
  rows.push_back({prose("Boiler"), boiler_to_buy(source)});
  rows.push_back({prose("Pump"), say("one that gives ", q.figure("sizes.pump.flow_m3_per_s", Kind::flow, Lean::pump),
                                     " against ", q.figure("sizes.pump.head_m", Kind::head, Lean::pump), " of head")});
  rows.push_back({prose("Tank"), tank_to_buy(source)});
  rows.push_back({prose("Power"), power_to_buy(source)});
  return section("To buy", facts(rows));
}

}  // namespace

std::optional<SheetBody> owner_sheet(const Source& source) {
  if (!source.answer.loops) return std::nullopt;
  const Markup body = owner_verdict(source) + keeps_section(source) + pair(heat_section(source), buy_section(source)) +
                      costs_sections(source) + plots_of_the_owner(source) + caution_about(Caution::frost);
  return SheetBody{wrap("div", body, "tight")};
}

}  // namespace slabwright::sheets
