// The two dials: how sure they are, where their sensors sit, what was tried, which place decides, what would lower
// them.
#include <fmt/format.h>

#include <algorithm>

#include "report/text_freeze.hpp"

namespace slabwright::report {
namespace {

/// How far both dials stand above those that know everything. Ranges are found without draws; the dials in them have to
/// cover the same.
struct Cover {
  double air_K = 0.0, slab_K = 0.0;
};
Cover cover_of(const Reader& reader) {
  const Freeze& freeze = *reader.answer.freeze;
  if (!reader.answer.bands) return {};
  const double error_K = reader.design().frost_hold.sensor_error_K;
  const auto over_K = [&](const std::optional<DialSetting>& one) {
    return one ? one->dial_degC - dial_mark_degC(one->best_degC + error_K, reader.system()) : 0.0;
  };
  return {over_K(freeze.air), over_K(freeze.slab)};
}

Three raised(const Three& three, double by_K) { return {three.tight + by_K, three.usual + by_K, three.poor + by_K}; }

/// What stands between the best figures and the dials.
void add_bands(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  const Freeze& freeze = *answer.freeze;
  const System system = reader.system();
  if (!answer.wishes.bands)
    return add_text(page,
                    "Quick: for what nobody can know (soil, leaks, foam, where the tubes lie) leave out --quick.");
  if (!answer.bands) return;
  if (!freeze.slab)
    return add_text(page,
                    fmt::format("Best figure {}; the setting also covers 95 of 100 draws of what nobody can know.",
                                figure(Kind::dial, freeze.air->best_degC, system)));
  add_text(page, fmt::format("Best figures {} and {}; the settings also cover 95 of 100 draws of what nobody can know "
                             "(soil, leaks, wet or crushed foam, where tubes lie, sensor error).",
                             spoken(Kind::dial, freeze.air->best_degC, system),
                             figure(Kind::dial, freeze.slab->best_degC, system)));
}

/// Both settings of a building that nobody has described.
void add_ranges(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.air_dial_degC || !answer.slab_dial_degC) return;
  const System system = reader.system();
  const Cover cover = cover_of(reader);
  add_text(page, fmt::format("The building is not described: wall thermostat {}, slab sensor {}. Take the higher "
                             "until you know.",
                             ranged(Kind::dial, raised(*answer.air_dial_degC, cover.air_K), system),
                             ranged(Kind::dial, raised(*answer.slab_dial_degC, cover.slab_K), system)));
}

/// The slab sensor's place without the room, where both are in the same.
std::string shared_room_once(const std::string& place, const std::string& other) {
  const std::size_t room = place.rfind(", in the ");
  if (room == std::string::npos || other.size() < place.size() - room) return place;
  return other.compare(other.size() - (place.size() - room), std::string::npos, place, room) == 0
             ? place.substr(0, room)
             : place;
}

void add_sensors(Page& page, const Reader& reader) {
  const Freeze& freeze = *reader.answer.freeze;
  add_text(page, fmt::format("Wall thermostat: {}. Slab sensor: {}. Deadband of either: {}.",
                             shared_room_once(freeze.air_sensor, freeze.slab_sensor), freeze.slab_sensor,
                             reader(Kind::rise, reader.design().frost_hold.deadband_K)));
}

void add_tried(Page& page, const Reader& reader) {
  const Freeze& freeze = *reader.answer.freeze;
  const double fooled_s = reader.design().frost_hold.satisfied_s;
  std::string tried = marked(freeze.tried, reader.answer, Figure::coldest);
  if (fooled_s > 0.0)
    tried += fmt::format("; something warm fools the thermostat for the coldest {}", reader(Kind::hours, fooled_s));
  add_text(page, fmt::format("Tried: {}.", tried));
}

/// What a place does, at the end of its row.
std::string part_of(const PlaceAtSetting& place, const Freeze& freeze) {
  if (!place.asks_air_degC) return "fails";
  const bool wall = freeze.air && place.name == freeze.air->decides;
  const bool slab = freeze.slab && place.name == freeze.slab->decides;
  if (wall) return slab ? "decides" : "decides, wall";
  return slab ? "decides, slab" : "";
}

/// What decides and what would decide next, at the best figure before the sensor's error.
Table table_of_places(const Reader& reader, std::size_t most_places) {
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
    if (!place.decides || table.rows.size() == most_places) continue;
    table.rows.push_back({place.name, bare(Kind::fine_degree, place.coldest_degC, system),
                          bare(Kind::fine_degree, place.limit_degC, system),
                          bare(Kind::fine_degree, place.freezes_degC, system), bare(Kind::rise, place.spare_K, system),
                          part_of(place, freeze)});
  }
  return table;
}

Page page_of_places(const Reader& reader, std::size_t most_places) {
  const Freeze& freeze = *reader.answer.freeze;
  Page page;
  if (const Table table = table_of_places(reader, most_places); !table.rows.empty()) add_table(page, table);
  if (freeze.verdict == FreezeVerdict::cannot_be_called) return page;  // the verdict has named what is not known
  for (const UnknownPlace& place : freeze.unknown)
    add_text(page, fmt::format("{}: not known, {}.", place.name, place.why), "  ");
  return page;
}

/// Few dials go lower than this: practice.
constexpr double lowest_dial_us_degC = (40.0 - 32.0) / 1.8, lowest_dial_si_degC = 5.0;

std::string on_a_dial(const Reader& reader, double degC) {
  const double lowest_degC = reader.system() == System::us ? lowest_dial_us_degC : lowest_dial_si_degC;
  return degC < lowest_degC - 1e-6 ? "< " + reader(Kind::dial, lowest_degC) : reader(Kind::dial, degC);
}

Page page_of_changes(const Reader& reader, std::size_t most_rows, bool idle_too) {
  const Answer& answer = reader.answer;
  const bool found = answer.freeze->verdict == FreezeVerdict::found;
  Table table{{left_column(found ? "What would lower it" : "What would help"), {"wall"}, {"slab"}}, {}, 0};
  std::vector<std::string> idle;
  for (const FreezeChange& change : answer.change) {
    const std::string what = change.what + (change.before_pour ? " (before pour)" : "");
    if (!lowers(change, *answer.freeze))
      idle.push_back(change.what);
    else if (table.rows.size() < most_rows)
      table.rows.push_back({what, on_a_dial(reader, change.air_dial_degC),
                            change.slab_dial_degC ? on_a_dial(reader, *change.slab_dial_degC) : "none"});
  }
  Page page;
  if (!table.rows.empty()) add_table(page, table);
  if (!idle.empty() && !idle_too && table.rows.empty()) add_text(page, "Nothing that was tried would lower it.");
  if (!idle.empty() && idle_too) add_text(page, fmt::format("Tried, and lowers nothing: {}.", fmt::join(idle, "; ")));
  return page;
}

}  // namespace

Page setting(const Reader& reader) {
  Page page;
  if (!reader.answer.freeze->air) return page;
  if (reader.answer.freeze->verdict == FreezeVerdict::found) {
    add_bands(page, reader);
    add_ranges(page, reader);
  }
  add_sensors(page, reader);
  add_tried(page, reader);
  return page;
}

/// Which door was taken where the file has none: the careful side.
Page door_guess(const Reader& reader) {
  Page page;
  const auto& assumed = reader.answer.file.assumed;
  const bool door = std::any_of(assumed.begin(), assumed.end(), [](const Assumption& a) {
    return a.path.substr(0, 8) == "opening[" && a.path.back() == ']';
  });
  if (!door) return page;
  const bool bare_door = reader.design().edge.door_strip.resistance_m2K_per_W <= 0.0;
  add_text(page, fmt::format("Our guess ~: one big door{}, the first tube {} inside it.",
                             bare_door ? ", the slab run through under its leaf" : "",
                             reader(Kind::short_length, reader.design().tube.from_doors_m)));
  return page;
}

Block places(const Reader& reader) {
  constexpr std::size_t most_places = 4, fewer_places = 2;
  const std::size_t most = reader.options.full ? reader.answer.freeze->place.size() : most_places;
  return {page_of_places(reader, most), page_of_places(reader, fewer_places), 6};
}

/// The door line: a nuisance, not a burst tube.
Page ice(const Reader& reader) {
  const Freeze& freeze = *reader.answer.freeze;
  const PlaceAtSetting* first = nullptr;  // where ice comes soonest
  for (const PlaceAtSetting& place : freeze.place) {
    if (place.decides || place.kind != PlaceKind::floor_line || !place.ice_below_degC) continue;
    if (!first || *place.ice_below_degC > *first->ice_below_degC) first = &place;
  }
  Page page;
  if (!first) return page;
  if (*first->ice_below_degC <= freeze.outdoor_degC)
    add_text(page, fmt::format("No ice at the {}, even in the coldest hour.", first->name));
  else
    add_text(page, fmt::format("Ice at the {} below {} outside: a nuisance, it decides nothing.", first->name,
                               reader(Kind::degree, *first->ice_below_degC, Figure::frost_hold)));
  return page;
}

Block changes(const Reader& reader) {
  constexpr std::size_t all = 100, fewer_rows = 3;
  return {page_of_changes(reader, all, true), page_of_changes(reader, fewer_rows, false), 9};
}

}  // namespace slabwright::report
