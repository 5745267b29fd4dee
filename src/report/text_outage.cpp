// A power cut: how long there is, and what to do in what order.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

#include "report/text_freeze.hpp"

namespace slabwright::report {
namespace {

/// Rows of one weather stand together, lowest setting first.
std::vector<std::vector<const OutageCase*>> by_weather(const Outage& outage) {
  std::vector<std::vector<const OutageCase*>> rows;
  for (const OutageCase& one : outage.row) {
    if (rows.empty() || rows.back().front()->outdoor_degC != one.outdoor_degC) rows.emplace_back();
    rows.back().push_back(&one);
  }
  return rows;
}

std::string hours(const Reader& reader, std::optional<double> lasts_s) {
  return whole_hours(lasts_s, reader.answer.outage->longest_s, reader.system());
}

/// The same place first in every weather, with a name that would break the table's lines; or nothing.
std::string long_first_of_all(const std::vector<std::vector<const OutageCase*>>& rows) {
  constexpr std::size_t fits_the_table = 30;
  const std::string& first = rows.back().front()->first;
  const bool same = std::all_of(rows.begin(), rows.end(), [&](const auto& row) { return row.front()->first == first; });
  return same && first.size() > fits_the_table ? first : "";
}

std::string outside(System system) { return fmt::format("outside, {}", unit(Kind::degree, system)); }

void add_clock(Page& page, const Reader& reader, const std::vector<std::vector<const OutageCase*>>& rows) {
  const System system = reader.system();
  const std::string alone = long_first_of_all(rows);
  const std::string what = alone.empty() ? "first place" : alone + ", the first of all,";
  add_text(page, fmt::format("Power off (all loops run until then): {} until the {} freezes",
                             marked("hours", reader.answer, Figure::frost_hold), what));
  Table table{{{outside(system)}}, {}, 0};
  for (const OutageCase* one : rows.front())
    table.columns.push_back({"from " + figure(Kind::dial, one->air_dial_degC, system)});
  if (alone.empty()) table.columns.push_back(left_column("first"));
  table.wraps = table.columns.size() - 1;
  for (const auto& row : rows) {
    std::vector<std::string> cells{spoken(Kind::degree, row.front()->outdoor_degC, system)};
    for (const OutageCase* one : row) cells.push_back(hours(reader, one->lasts_s));
    if (alone.empty()) cells.push_back(row.front()->first.empty() ? "nothing" : row.front()->first);
    table.rows.push_back(std::move(cells));
  }
  add_table(page, table);
}

/// How far the coldest row's first figure may be off.
void add_hours_band(Page& page, const Reader& reader, const OutageCase& worst) {
  if (!reader.answer.bands) return;
  const Bands& bands = *reader.answer.bands;
  const std::string least = hours(reader, bands.lasts_low_s);
  // A band that ends with the clock is longer than it.
  const bool past_clock = bands.lasts_high_s >= reader.answer.outage->longest_s;
  const std::string most = hours(reader, past_clock ? std::nullopt : std::optional<double>(bands.lasts_high_s));
  add_text(page,
           fmt::format("From {} at {} outside it is {} to {} hours in 9 of 10 draws.",
                       reader(Kind::dial, worst.air_dial_degC), reader(Kind::degree, worst.outdoor_degC), least, most),
           "  ");
}

/// Water that the pump moves on its way through the slab.
bool pump_moves(PlaceKind kind) { return kind == PlaceKind::tube || kind == PlaceKind::room_air; }

/// What is emptied by hand.
bool drained(PlaceKind kind) {
  return kind == PlaceKind::room_pipe || kind == PlaceKind::wall_pipe || kind == PlaceKind::drain_trap ||
         kind == PlaceKind::outdoor_line;
}

/// A place that freezes while the clock runs.
struct Due {
  PlaceKind kind = PlaceKind::tube;
  std::string name;
  double lasts_s = 0.0;
};

/// Soonest first.
std::vector<Due> due_in(const Reader& reader, const OutageCase& worst) {
  std::vector<Due> all;
  const auto& places = reader.answer.freeze->place;
  for (const OutagePlace& one : worst.place) {
    const auto place = std::find_if(places.begin(), places.end(), [&](const auto& p) { return p.name == one.name; });
    if (place != places.end() && one.lasts_s) all.push_back({place->kind, one.name, *one.lasts_s});
  }
  return all;
}

/// "within 5 h", "at once".
std::string within(const Reader& reader, double lasts_s) {
  return lasts_s < hour_s ? "at once" : fmt::format("within {} h", hours(reader, lasts_s));
}

/// "the sink line within 4 h, then the trap within 9 h": as many as somebody reads by torch light, all with --full.
std::string drain_list(const Reader& reader, const std::vector<Due>& due) {
  constexpr std::size_t most_named = 3;
  std::vector<std::string> names;
  std::size_t more = 0;
  for (const Due& place : due) {
    if (!drained(place.kind)) continue;
    if (!reader.options.full && names.size() == most_named)
      ++more;
    else
      names.push_back(fmt::format("the {} {}", place.name, within(reader, place.lasts_s)));
  }
  if (names.empty()) return {};
  return fmt::format("shut off and drain {}{}; ", fmt::join(names, ", then "),
                     more > 0 ? fmt::format(" and {} more", counted(more)) : "");
}

bool longer(std::optional<double> a, std::optional<double> b) { return b && (!a || *a > *b); }

/// What the pump alone is worth, and one element of the boiler with it, where that is an hour or more.
std::string generator(const Reader& reader, const OutageCase& one) {
  const std::string rests = hours(reader, one.lasts_s), pump = hours(reader, one.pump_lasts_s);
  const bool helps = rests != pump && longer(one.pump_lasts_s, one.lasts_s);
  std::string worth = helps
                          ? fmt::format("{} ~ hours at {}, not {}", pump, reader(Kind::degree, one.outdoor_degC), rests)
                          : "it spreads the slab's heat";
  if (reader.answer.outage->stage_W <= 0.0) return worth;
  const std::string stage = hours(reader, one.stage_lasts_s);
  const bool more = stage != pump && longer(one.stage_lasts_s, one.pump_lasts_s);
  const std::string element = reader(Kind::boiler, reader.answer.outage->stage_W);
  return worth + (more ? fmt::format("; with one {} element of the boiler too {} ~ hours", element, stage)
                       : fmt::format("; one {} element of the boiler adds nothing to that", element));
}

/// Without a generator: boiler and manifold by hand, tubes by somebody with a compressor.
std::string without_generator(const Reader& reader, const std::vector<Due>& due) {
  std::vector<std::string> parts;
  for (const Due& place : due) {
    if (!pump_moves(place.kind)) continue;

    const bool tube = place.kind == PlaceKind::tube;
    const std::string front = tube ? "have the loops blown out" : "drain boiler and manifold";
    const auto told = [&](const std::string& part) { return part.compare(0, front.size(), front) == 0; };
    if (std::any_of(parts.begin(), parts.end(), told)) continue;
    parts.push_back(fmt::format("{} {}", front, within(reader, place.lasts_s)));
  }
  if (parts.empty()) return {};
  return fmt::format("; without one, {}", fmt::join(parts, ", then "));
}

/// How long standing water takes to become ice, down to five minutes, or to hours where it is many.
std::string line_ice(const Reader& reader, const Outage& outage) {
  constexpr double mark_s = 300.0;
  if (outage.line_ice_s < mark_s) return {};
  const std::string time = outage.line_ice_s < 2.0 * hour_s
                               ? fmt::format("{:.0f} min", mark_s * std::floor(outage.line_ice_s / mark_s) / 60.0)
                               : whole_hours(outage.line_ice_s, outage.longest_s, reader.system()) + " h";
  return fmt::format("A bare 1/2 in line is solid {} after it gets to freezing. ", time);
}

/// Every place from the lowest setting.
void add_all_places(Page& page, const Reader& reader, const std::vector<std::vector<const OutageCase*>>& rows) {
  const System system = reader.system();
  Table table{{left_column(fmt::format("Hours from {}; outside:",
                                       figure(Kind::dial, rows.front().front()->air_dial_degC, system)))},
              {},
              0};
  for (const auto& row : rows) table.columns.push_back({figure(Kind::degree, row.front()->outdoor_degC, system)});
  for (const OutagePlace& place : rows.back().front()->place) {
    std::vector<std::string> cells{place.name};
    for (const auto& row : rows) {
      const auto& all = row.front()->place;
      const auto same = std::find_if(all.begin(), all.end(), [&](const auto& p) { return p.name == place.name; });
      cells.push_back(same == all.end() ? "" : hours(reader, same->lasts_s));
    }
    table.rows.push_back(std::move(cells));
  }
  add_table(page, table);
}

/// Concrete that has gone cold cracks, and its joints open, where it is warmed in a hurry: practice.
constexpr double warm_up_us_K = 9.0 / 1.8, warm_up_si_K = 5.0;

}  // namespace

std::string whole_hours(std::optional<double> lasts_s, double longest_s, System system) {
  if (!lasts_s) return "over " + bare(Kind::hours, longest_s, system);
  if (*lasts_s <= 0.0) return "none";
  if (*lasts_s < hour_s) return "under 1";
  return bare(Kind::hours, hour_s * std::floor(*lasts_s / hour_s), system);
}

Page outage(const Reader& reader) {
  Page page;
  if (!reader.answer.outage || reader.answer.outage->row.empty()) return page;
  const auto rows = by_weather(*reader.answer.outage);
  add_clock(page, reader, rows);
  add_hours_band(page, reader, *rows.back().front());
  if (!reader.options.full) return page;
  add_all_places(page, reader, rows);
  if (reader.answer.outage->floor_cools_air)
    add_text(page, "In some of these the cold floor takes heat from the air; the worse of two floor films was taken.");
  return page;
}

Page tonight(const Reader& reader) {
  Page page;
  if (!reader.answer.outage || reader.answer.outage->row.empty()) return page;
  const Outage& outage = *reader.answer.outage;
  const OutageCase& worst = *by_weather(outage).back().front();
  const std::vector<Due> due = due_in(reader, worst);
  if (due.empty()) return page;
  const bool us = reader.system() == System::us;
  add_text(page,
           fmt::format("Tonight, in this order: keep the doors shut; {}run the pump alone on a small generator "
                       "(100 W): {}{}. Engines and fuel heaters outdoors only: carbon monoxide kills. {}Afterwards "
                       "warm up slowly: water no more than {} a day over the slab.",
                       drain_list(reader, due), generator(reader, worst), without_generator(reader, due),
                       line_ice(reader, outage), reader(Kind::rise, us ? warm_up_us_K : warm_up_si_K)));
  return page;
}

}  // namespace slabwright::report
