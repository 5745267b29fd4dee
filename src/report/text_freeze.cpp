// freeze: how low may the floor be left, and why not lower.
#include <fmt/format.h>

#include <algorithm>

#include "report/text.hpp"

namespace slabwright::report {
namespace {

std::string dial(const Reader& reader, double degC) { return reader(Kind::dial, degC, Figure::frost_hold); }

/// The verdict, in the one sentence that is acted upon.
std::string verdict(const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.freeze) return "HOW LOW CANNOT BE SAID YET.";
  const Freeze& freeze = *answer.freeze;
  if (freeze.verdict == FreezeVerdict::no_setting) return "NO SETTING IS SAFE. " + freeze.reason;
  if (freeze.verdict == FreezeVerdict::cannot_be_called) return "IT CANNOT BE CALLED SAFE. " + freeze.reason;
  return fmt::format("SET THE WALL THERMOSTAT TO {}, or the slab sensor to {}.", dial(reader, freeze.air_dial_degC),
                     dial(reader, freeze.slab_dial_degC));
}

/// Both settings of a building that nobody has described.
void add_ranges(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.air_dial_degC || !answer.slab_dial_degC) return;
  const System system = reader.system();
  add_text(page, fmt::format("The building is not described: wall thermostat {}, slab sensor {}. Take the higher "
                             "until you know.",
                             ranged(Kind::dial, *answer.air_dial_degC, system),
                             ranged(Kind::dial, *answer.slab_dial_degC, system)));
}

/// Which door was taken where the file has none: the careful side.
void add_door_guess(Page& page, const Reader& reader) {
  const auto& assumed = reader.answer.file.assumed;
  const bool door = std::any_of(assumed.begin(), assumed.end(), [](const Assumption& a) {
    return a.path.substr(0, 8) == "opening[" && a.path.back() == ']';
  });
  if (!door) return;
  const bool bare_door = reader.design().edge.door_strip.resistance_m2K_per_W <= 0.0;
  add_text(page, fmt::format("Our guess ~: one big door{}, the first tube {} inside it.",
                             bare_door ? ", the slab run through under its leaf" : "",
                             reader(Kind::short_length, reader.design().tube.from_doors_m)));
}

void add_setting(Page& page, const Reader& reader) {
  const Freeze& freeze = *reader.answer.freeze;
  if (freeze.decides.empty()) return;
  add_text(page, fmt::format("Wall thermostat: {}. Slab sensor: {}.", freeze.air_sensor, freeze.slab_sensor));
  add_text(page, fmt::format("Tried: the coldest hour, {}, taken as if it lasted: careful.",
                             reader(Kind::degree, freeze.outdoor_degC, Figure::coldest)));
}

bool freeze_verdict(const Diagnostic& said) {
  return said.code == "freeze.no-setting" || said.code == "freeze.cannot-be-called";
}

/// What fails or wants mending beside the setting itself.
void add_other_reasons(Page& page, const Reader& reader) {
  constexpr std::size_t most_reason_lines = 6;
  std::vector<Diagnostic> others = reader.answer.verdict.reasons;
  others.erase(std::remove_if(others.begin(), others.end(), freeze_verdict), others.end());
  if (others.empty()) return;
  const bool fails = any(others, Severity::failure);
  add_text(page, fails ? "BUT THE SHOP DOES NOT WORK AS IT STANDS:" : "To mend:");
  add_reasons(page, reader, others, most_reason_lines);
}

/// What decides and what would decide next, at the best figure before the sensor's error.
void add_places(Page& page, const Reader& reader) {
  constexpr std::size_t most_places = 4;
  const Freeze& freeze = *reader.answer.freeze;
  const System system = reader.system();
  Table table{{left_column(fmt::format("Place, in {}", unit(Kind::degree, system))),
               {"coldest"},
               {"kept", "above"},
               {"freezes", "at"},
               {"to", "spare"},
               left_column("")},
              {},
              0};
  for (const PlaceAtSetting& place : freeze.place) {
    if (!place.decides || (!reader.options.full && table.rows.size() == most_places)) continue;
    table.rows.push_back({place.name, bare(Kind::fine_degree, place.coldest_degC, system),
                          bare(Kind::fine_degree, place.limit_degC, system),
                          bare(Kind::fine_degree, place.freezes_degC, system), bare(Kind::rise, place.spare_K, system),
                          place.name == freeze.decides ? "decides"
                          : !place.asks_slab_degC      ? "fails"
                                                       : ""});
  }
  if (!table.rows.empty()) add_table(page, table);
  if (freeze.verdict == FreezeVerdict::cannot_be_called) return;  // the verdict has named what is not known
  for (const UnknownPlace& place : freeze.unknown) {
    add_text(page, fmt::format("{}: not known, {}.", place.name, place.why), "  ");
  }
}

/// The door line: a nuisance, not a burst tube.
void add_ice(Page& page, const Reader& reader) {
  const Freeze& freeze = *reader.answer.freeze;
  const PlaceAtSetting* first = nullptr;  // where ice comes soonest
  for (const PlaceAtSetting& place : freeze.place) {
    if (place.decides || place.kind != PlaceKind::floor_line || !place.ice_below_degC) continue;
    if (!first || *place.ice_below_degC > *first->ice_below_degC) first = &place;
  }
  if (!first) return;
  if (*first->ice_below_degC <= freeze.outdoor_degC) {
    return add_text(page, fmt::format("No ice at the {}, even in the coldest hour.", first->name));
  }
  add_text(page, fmt::format("Ice at the {} below {} outside: a nuisance, it decides nothing.", first->name,
                             reader(Kind::degree, *first->ice_below_degC, Figure::frost_hold)));
}

/// Whether a change leads to another setting than the one there is.
bool helps(const Freeze& freeze, const FreezeChange& change) {
  constexpr double rounding_K = 1e-6;
  return freeze.verdict != FreezeVerdict::found || change.air_dial_degC < freeze.air_dial_degC - rounding_K ||
         change.slab_dial_degC < freeze.slab_dial_degC - rounding_K;
}

void add_changes(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  const bool found = answer.freeze->verdict == FreezeVerdict::found;
  Table table{
      {left_column(found ? "What would lower it" : "What would help"), {"wall", "thermostat"}, {"slab", "sensor"}},
      {},
      0};
  std::vector<std::string> idle;
  for (const FreezeChange& change : answer.change) {
    const std::string what = change.what + (change.before_pour ? " (before the pour only)" : "");
    if (!helps(*answer.freeze, change))
      idle.push_back(change.what);
    else
      table.rows.push_back({what, reader(Kind::dial, change.air_dial_degC), reader(Kind::dial, change.slab_dial_degC)});
  }
  if (!table.rows.empty()) add_table(page, table);
  if (!idle.empty()) add_text(page, fmt::format("Tried, and lowers nothing: {}.", fmt::join(idle, "; ")));
}

bool any_code(const std::vector<Diagnostic>& reasons, std::string_view code) {
  return std::any_of(reasons.begin(), reasons.end(), [&](const Diagnostic& d) { return d.code == code; });
}

void add_boiler(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  const Freeze& freeze = *answer.freeze;
  if (freeze.decides.empty()) return;
  if (!reader.options.full && any_code(answer.verdict.reasons, "freeze.boiler-too-small")) return;  // told as a reason
  const std::string holds =
      fmt::format("Holding that takes {} in the coldest hour", reader(Kind::heat, freeze.hold_W, Figure::frost_hold));
  if (!freeze.boiler_keeps_to_degC || !answer.sizes) return add_text(page, holds + ".");
  const BoilerSize& boiler = answer.sizes->boiler;
  add_text(page, fmt::format("{}; the {} {} keeps it {} outside.", holds,
                             reader(Kind::boiler, boiler.power_W, Figure::boiler), boiler_words(boiler.kind),
                             keeps_to(reader, *freeze.boiler_keeps_to_degC, Figure::frost_hold)));
}

void add_found(Page& page, const Reader& reader) {
  add_setting(page, reader);
  add_ranges(page, reader);
  add_door_guess(page, reader);
  add_other_reasons(page, reader);
  add_blank(page);
  add_places(page, reader);
  add_ice(page, reader);
  add_blank(page);
  add_outage(page, reader);
  add_blank(page);
  add_changes(page, reader);
}

/// Nothing is safe yet: what would help stands before what was found.
void add_refused(Page& page, const Reader& reader) {
  add_door_guess(page, reader);
  add_blank(page);
  add_changes(page, reader);
  add_other_reasons(page, reader);
  add_blank(page);
  add_places(page, reader);
  add_ice(page, reader);
  add_outage(page, reader);
  add_setting(page, reader);
}

}  // namespace

void add_freeze(Page& page, const Reader& reader) {
  constexpr std::size_t most_reason_lines = 6;
  const Answer& answer = reader.answer;
  add_first_line(page, reader, "how low may the floor be left?");
  add_text(page, verdict(reader));
  if (!answer.freeze) {
    add_lacking(page, reader);
    add_reasons(page, reader, answer.verdict.reasons, most_reason_lines);
    return add_end(page, reader, "freeze", answer.envelope ? "" : "--outdoor \"-12 F\"");
  }
  const bool found = answer.freeze->verdict == FreezeVerdict::found;
  if (found)
    add_found(page, reader);
  else
    add_refused(page, reader);
  add_boiler(page, reader);
  add_notes(page, reader, "freeze.");
  add_lacking(page, reader);
  if (reader.options.full) add_full(page, reader);
  if (found) return add_end(page, reader, "design");
  add_end(page, reader, "freeze", "--door \"R-10\"");
}

}  // namespace slabwright::report
