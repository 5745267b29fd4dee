// A power cut: how long there is, and what to do first.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/text.hpp"

namespace slabwright::report {
namespace {

/// Whole hours, rounded down: who is told three has three.
std::string hours(std::optional<double> lasts_s, const Outage& outage, System system) {
  constexpr double hour_s = 3600.0;
  if (!lasts_s) return "over " + bare(Kind::hours, outage.longest_s, system);
  if (*lasts_s <= 0.0) return "none";
  if (*lasts_s < hour_s) return "under 1";
  return bare(Kind::hours, hour_s * std::floor(*lasts_s / hour_s), system);
}

/// Rows of one weather stand together, lowest setting first.
std::vector<std::vector<const OutageCase*>> by_weather(const Outage& outage) {
  std::vector<std::vector<const OutageCase*>> rows;
  for (const OutageCase& one : outage.row) {
    if (rows.empty() || rows.back().front()->outdoor_degC != one.outdoor_degC) rows.emplace_back();
    rows.back().push_back(&one);
  }
  return rows;
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
    for (const OutageCase* one : row) cells.push_back(hours(one->lasts_s, *reader.answer.outage, system));
    if (alone.empty()) cells.push_back(row.front()->first.empty() ? "nothing" : row.front()->first);
    table.rows.push_back(std::move(cells));
  }
  add_table(page, table);
}

/// What the pump alone is worth, where that is an hour or more.
std::string run_pump(const OutageCase& one, const Outage& outage, System system) {
  const std::string rests = hours(one.lasts_s, outage, system), runs = hours(one.pump_lasts_s, outage, system);
  const bool helps = rests != runs && (!one.pump_lasts_s || *one.pump_lasts_s > *one.lasts_s);
  const std::string worth =
      helps ? fmt::format("{} ~ hours at {}, not {}", runs, figure(Kind::degree, one.outdoor_degC, system), rests)
            : "it spreads the slab's heat";
  return fmt::format("run the pump alone on a small generator (about 100 W): {}", worth);
}

/// After the doors. Water in loops, boiler and manifold moves while the pump runs: they are emptied only without one.
std::string what_next(PlaceKind kind, const std::string& name, const std::string& pump) {
  switch (kind) {
    case PlaceKind::tube: return fmt::format("{}; without one, have the loop with the {} blown out", pump, name);
    case PlaceKind::room_air: return fmt::format("{}; without one, drain boiler and manifold", pump);
    case PlaceKind::drain_trap: return fmt::format("empty the {}; {}", name, pump);
    case PlaceKind::floor_line:
    case PlaceKind::slab_corner:
    case PlaceKind::soil:
    case PlaceKind::outdoor_line:
    case PlaceKind::room_pipe:
    case PlaceKind::wall_pipe: break;
  }
  return fmt::format("shut off and drain the {}; {}", name, pump);
}

void add_tonight(Page& page, const Reader& reader, const OutageCase& worst) {
  const auto& places = reader.answer.freeze->place;
  const auto place = std::find_if(places.begin(), places.end(), [&](const auto& p) { return p.name == worst.first; });
  if (place == places.end()) return;
  const std::string pump = run_pump(worst, *reader.answer.outage, reader.system());
  add_text(page, fmt::format("Tonight, in this order: keep the doors shut; {}. Engines and fuel heaters outdoors only: "
                             "carbon monoxide kills.",
                             what_next(place->kind, worst.first, pump)));
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
      cells.push_back(same == all.end() ? "" : hours(same->lasts_s, *reader.answer.outage, system));
    }
    table.rows.push_back(std::move(cells));
  }
  add_table(page, table);
}

}  // namespace

void add_outage(Page& page, const Reader& reader) {
  if (!reader.answer.outage || reader.answer.outage->row.empty()) return;
  const auto rows = by_weather(*reader.answer.outage);
  add_clock(page, reader, rows);
  if (reader.options.full) add_all_places(page, reader, rows);
  if (reader.answer.outage->floor_cools_air)
    add_text(page, "In some of these the cold floor takes heat from the air; the worse of two floor films was taken.");
  add_tonight(page, reader, *rows.back().front());
}

}  // namespace slabwright::report
