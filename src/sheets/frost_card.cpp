// The card for the wall by the boiler: what the dial must say, and what to do when the power is off.
#include <algorithm>

#include "sheets/phrases.hpp"
#include "sheets/plots.hpp"

namespace slabwright::sheets {
namespace {

// --- The first card: every day ---

Markup huge(const Markup& inner) { return wrap("p", inner, "huge"); }

Markup dials(const Source& source) {
  const Quotes& q = source.q;
  const Markup air = huge(quoted(q.figure("freeze.air.dial_degC", Kind::dial, Lean::frost_hold))) +
                     paragraph("on the ", strong(prose("wall thermostat")), ": ", q.words("freeze.air_sensor"), ".");
  if (!source.answer.freeze->slab)
    return air + paragraph("No setting of a slab sensor is enough: leave the wall thermostat in charge.");
  const Markup slab = huge(quoted(q.figure("freeze.slab.dial_degC", Kind::dial, Lean::frost_hold))) +
                      paragraph("or, if that is in charge, on the ", strong(prose("slab sensor")), ": ",
                                q.words("freeze.slab_sensor"), ".");
  return wrap("div", wrap("div", air) + wrap("div", slab), "two");
}

/// Nothing that follows is a setting to rely on.
Markup no_dial(const Source& source) {
  const bool none = source.answer.freeze->verdict == FreezeVerdict::no_setting;
  return wrap("p", prose(none ? "NO SETTING IS SAFE" : "CANNOT BE CALLED SAFE"), "big") +
         paragraph(source.q.words("freeze.reason"));
}

Markup turn_off_words(const Source& source) {
  if (!source.answer.turn_off) return {};
  const Quotes& q = source.q;
  const TurnOff& off = *source.answer.turn_off;
  if (off.yes)
    return wrap("p", say(strong(prose("Switch it off for the winter? Yes: ")),
                         "nothing that is watched freezes; the coldest tube comes to ",
                         q.figure("turn_off.coldest_tube_degC", Kind::degree, Lean::frost_hold), "."));
  constexpr std::size_t most_named = 3;
  std::vector<Markup> names;
  for (std::size_t i = 0; i < std::min(off.freezes.size(), most_named); ++i)
    names.push_back(quoted(q.words(key_of_row("turn_off.freezes", i))));
  if (off.freezes.size() > most_named) names.push_back(prose("more"));
  const Markup why =
      names.empty() ? prose("what could not be computed may freeze") : say("frost would reach ", listed(names));
  return wrap("p", say(strong(prose("Switch it off for the winter? NO: ")), why, "."));
}

Markup alarm_words(const Source& source) {
  return paragraph(strong(prose("Low-temperature alarm: ")),
                   "on a battery, near the coldest pipe, a little "
                   "below the dial so that it does not ring every night (the thermostat itself swings by ",
                   source.q.figure("design.frost_hold.deadband_K", Kind::rise), "). It rings or writes to: ", blank());
}

Markup call_list() {
  const auto rows = [](const std::vector<const char*>& whom) {
    std::vector<Fact> all;
    for (const char* one : whom) all.push_back({prose(one), blank()});
    return wrap("div", facts(all));
  };
  return wrap("h3", prose("Call")) +
         wrap("div", rows({"Owner", "Heating"}) + rows({"Electrician", "Power company"}), "two");
}

Markup every_day(const Source& source) {
  Markup text = wrap("h2", prose("Never below, all winter"));
  const bool found = source.answer.freeze->verdict == FreezeVerdict::found;
  text += found ? dials(source) : no_dial(source);
  if (source.answer.freeze->air)
    text += paragraph(found ? "What gets too cold first if it is set lower: " : "What gets too cold: ",
                      source.q.words("freeze.air.decides"), ".");
  text += turn_off_words(source) + alarm_words(source);
  if (found) text += paragraph("Set to ", blank(), " by ", blank(), " on ", blank());
  return wrap("div", text + call_list(), "card");
}

// --- The second card: tonight ---

/// Water that the pump moves on its way through the slab.
bool pumped(PlaceKind kind) { return kind == PlaceKind::tube || kind == PlaceKind::room_air; }

/// What is emptied by hand.
bool emptied(PlaceKind kind) {
  return kind == PlaceKind::room_pipe || kind == PlaceKind::wall_pipe || kind == PlaceKind::drain_trap ||
         kind == PlaceKind::outdoor_line;
}

/// A place that freezes while the clock runs, and its row.
struct DuePlace {
  std::size_t row = 0;
  PlaceKind kind = PlaceKind::tube;
};

/// In the coldest weather from the lowest setting, soonest first.
std::vector<DuePlace> due_places(const Source& source, std::size_t cut) {
  std::vector<DuePlace> due;
  const auto& places = source.answer.outage->row[cut].place;
  const auto& watched = source.answer.freeze->place;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const auto same =
        std::find_if(watched.begin(), watched.end(), [&](const auto& place) { return place.name == places[i].name; });
    if (same != watched.end() && places[i].lasts_s) due.push_back({i, same->kind});
  }
  return due;
}

Markup within_hours(const Source& source, std::size_t cut, std::size_t place) {
  const std::string key = key_of_row(key_of_row("outage.row", cut, "place"), place, "whole_s");
  if (source.q.number(key) <= 0.0) return prose("at once");
  return say("within ", source.q.figure(key, Kind::hours));
}

void add_drains(const Source& source, std::size_t cut, const std::vector<DuePlace>& due, std::vector<Markup>& steps) {
  constexpr std::size_t most_named = 4;
  std::vector<Markup> drains;
  std::size_t all = 0;
  for (const DuePlace& place : due) {
    if (!emptied(place.kind) || ++all > most_named) continue;
    const std::string key = key_of_row(key_of_row("outage.row", cut, "place"), place.row, "name");
    drains.push_back(say("the ", source.q.words(key), " ", within_hours(source, cut, place.row)));
  }
  if (drains.empty()) return;
  if (all > most_named) drains.push_back(prose("the other water lines after those"));
  steps.push_back(say("Shut off and drain ", listed(drains), "."));
}

/// What the pump alone is worth, and one element of the boiler with it.
Markup generator_step(const Source& source, std::size_t cut) {
  const Quotes& q = source.q;
  const auto at = [&](const char* member) { return key_of_row("outage.row", cut, member); };
  const OutageCase& row = source.answer.outage->row[cut];
  const auto longer = [](std::optional<double> a, std::optional<double> b) { return b && (!a || *a > *b); };
  Markup step = prose("Run the pump on a small generator, outdoors: it spreads the slab's heat");
  if (row.whole_s != row.pump_whole_s && longer(row.pump_whole_s, row.whole_s))
    step += say(", and the first place then lasts ", whole_hours(source, at("pump_whole_s")), " instead of ",
                whole_hours(source, at("whole_s")));
  if (source.answer.outage->stage_W <= 0.0) return say(step, ".");
  const bool more = row.stage_whole_s != row.pump_whole_s && longer(row.stage_whole_s, row.pump_whole_s);
  return say(step, ". One element of the boiler (", q.figure("outage.stage_W", Kind::boiler), ") beside it ",
             more ? say("makes that ", whole_hours(source, at("stage_whole_s"))) : prose("adds nothing"), ".");
}

/// Boiler and manifold by hand, tubes by somebody with a compressor: each by the first of its kind.
void add_without(const Source& source, std::size_t cut, const std::vector<DuePlace>& due, std::vector<Markup>& steps) {
  std::vector<Markup> parts;
  for (const PlaceKind kind : {PlaceKind::room_air, PlaceKind::tube}) {
    const auto first = std::find_if(due.begin(), due.end(), [&](const DuePlace& place) { return place.kind == kind; });
    if (first == due.end()) continue;
    parts.push_back(say(kind == PlaceKind::tube ? "have the loops blown out " : "drain boiler and manifold ",
                        within_hours(source, cut, first->row)));
  }
  if (!parts.empty()) steps.push_back(say("Without a generator: ", listed(parts), "."));
}

Markup tonight_list(const Source& source, std::size_t cut) {
  const std::vector<DuePlace> due = due_places(source, cut);
  std::vector<Markup> steps{prose("Keep the doors shut, the big door above all. Nobody opens it to look.")};
  add_drains(source, cut, due, steps);
  steps.push_back(generator_step(source, cut));
  if (std::any_of(due.begin(), due.end(), [](const DuePlace& place) { return pumped(place.kind); }))
    add_without(source, cut, due, steps);
  steps.push_back(prose("Engines and fuel heaters stay outdoors: carbon monoxide kills."));
  steps.push_back(
      prose("Power is back: look for leaks first, then warm up over days, not hours; concrete that is "
            "warmed in a hurry cracks."));
  return numbered(steps);
}

Markup hours_table(const Source& source) {
  std::vector<std::vector<Markup>> rows;
  for (const std::size_t i : cuts_from_lowest(source)) rows.push_back(cut_cells(source, i));
  return stacking_table({{"outside"}, {"there is time for"}, {"then freezes first", "", false}}, rows);
}

Markup power_off(const Source& source) {
  const auto cut = worst_cut(source);
  Markup text = wrap("h2", prose("Power off: tonight, in this order"));
  if (!cut) return wrap("div", text + not_known(source, "how long a power cut may last"), "card");
  text += tonight_list(source, *cut);
  const bool guessed = report::leans(source.answer, Lean::frost_hold);
  text += paragraph("Counted from the lowest setting, each weather as if it had lasted",
                    guessed ? "; the hours lean on our guesses." : ".");
  return wrap("div", text + hours_table(source) + caution_about(Caution::frost), "card");
}

/// How long it lasts and how long the way back takes, for those who would rather look.
Markup in_pictures(const Source& source) {
  const Markup plots = plot_figures(source.q, {"hours", "outage", "recovery"});
  return plots.html.empty() ? Markup{} : wrap("div", wrap("h2", prose("In pictures")) + plots, "card long");
}

}  // namespace

std::optional<SheetBody> frost_card(const Source& source) {
  if (!source.answer.loops) return std::nullopt;
  const Markup cards = source.answer.freeze
                           ? every_day(source) + power_off(source) + in_pictures(source)
                           : wrap("div", not_known(source, "how low the floor may be left") + call_list(), "card");
  return SheetBody{wrap("div", cards, "cards wall")};
}

}  // namespace slabwright::sheets
