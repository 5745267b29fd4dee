// What stands behind every way, under --full: months, comfort, places, and where the heat came from and went.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

#include "report/text_winter.hpp"

namespace slabwright::report {
namespace {

std::string kWh(const Reader& reader, double J) { return bare(Kind::energy, J, reader.system()); }

std::string tenths(double number) { return fmt::format("{:.1f}", number); }

/// A line of the balance: what came in, what went out, what the stores took up.
struct HeatRow {
  std::string_view side, word;
  double ShopHeat::*J;
};
constexpr HeatRow heat_rows[] = {
    {"in", "tubes", &ShopHeat::tubes_J},
    {"in", "second source", &ShopHeat::source_J},
    {"in", "people, machines, cold vehicles", &ShopHeat::air_gains_J},
    {"in", "sun on walls and inside", &ShopHeat::faces_gains_J},
    {"in", "sun on the floor", &ShopHeat::sun_J},
    {"out", "windows, doors, leaks", &ShopHeat::light_J},
    {"out", "fans, doors that stand open", &ShopHeat::more_J},
    {"out", "walls and roof", &ShopHeat::opaque_J},
    {"out", "warm air under the roof", &ShopHeat::layered_J},
    {"out", "ground and edge", &ShopHeat::ground_J},
    {"stored", "air", &ShopHeat::air_J},
    {"stored", "what stands in it", &ShopHeat::contents_J},
    {"stored", "walls and roof", &ShopHeat::faces_J},
    {"stored", "slab", &ShopHeat::slab_J},
    {"stored", "soil", &ShopHeat::soil_J},
};

/// Ways as columns, by number; their names stand above.
void add_heat(Page& page, const Reader& reader) {
  const std::vector<WayResult>& ways = reader.answer.winter->way;
  constexpr std::size_t most_columns = 5;
  for (std::size_t from = 0; from < ways.size(); from += most_columns) {
    const std::size_t to = std::min(ways.size(), from + most_columns);
    Table table{{left_column("kWh a year"), left_column("")}, {}, 1};
    for (std::size_t i = from; i < to; ++i) table.columns.push_back({fmt::format("way {}", i + 1)});
    const auto add = [&](std::string_view side, std::string_view word, const auto& cell) {
      std::vector<std::string> cells{std::string(side), std::string(word)};
      for (std::size_t i = from; i < to; ++i) cells.push_back(cell(ways[i].heat));
      table.rows.push_back(std::move(cells));
    };
    for (const HeatRow& row : heat_rows) {
      const bool any = std::any_of(ways.begin(), ways.end(), [&](const WayResult& w) { return w.heat.*row.J != 0.0; });
      if (any) add(row.side, row.word, [&](const ShopHeat& heat) { return kWh(reader, heat.*row.J); });
    }
    add("missing", "in less out less stored, over in", [](const ShopHeat& heat) {
      return fmt::format("{:.0e}", heat.in_J() > 0.0 ? heat.missing_J() / heat.in_J() : 0.0);
    });
    add_section(page, "WHERE THE HEAT CAME FROM AND WENT", table);
  }
}

void add_comfort(Page& page, const Reader& reader, const WayResult& way) {
  const Comfort& comfort = way.comfort;
  const double degree_K = reader.system() == System::us ? 5.0 / 9.0 : 1.0;
  const std::string_view degree = unit(Kind::rise, reader.system());
  add_text(page,
           fmt::format("At work {}: below working temperature {} ({} {} h), more than {} below {}, more than {} above "
                       "{}; lowest {}; {} of {} mornings cold.",
                       whole_h(reader, comfort.worked_s), whole_h(reader, comfort.below_s),
                       tenths(comfort.below_Ks / degree_K / hour_s), degree, reader(Kind::rise, cold_K),
                       whole_h(reader, comfort.cold_s), reader(Kind::rise, warm_K), whole_h(reader, comfort.above_s),
                       reader(Kind::fine_degree, comfort.lowest_degC), comfort.failed_mornings, comfort.mornings),
           "  ");
  add_text(page,
           fmt::format("Swing of a day: air {}, slab {}. A cold floor takes {} kWh a day of work out of the air. Most "
                       "power {}.",
                       reader(Kind::rise, comfort.air_swing_K), reader(Kind::rise, comfort.slab_swing_K),
                       tenths(way.cold_floor_J / 3.6e6), reader(Kind::boiler, way.peak_W)),
           "  ");
  if (way.boiler_short_s > 0.0)
    add_text(page, fmt::format("The boiler is too small for {}.", whole_h(reader, way.boiler_short_s)), "  ");
  if (way.carbon_kg)
    add_text(page, fmt::format("Carbon dioxide of the electricity: {:.0f} kg a year.", *way.carbon_kg), "  ");
}

void add_source(Page& page, const Reader& reader, const WayResult& way) {
  if (way.way.second_source == WaySource::off) return;
  const SourceWinter& source = way.source;
  double heat_J = 0.0, electric_J = 0.0;
  for (const WayMonth& month : way.month) {
    heat_J += month.source_heat_J;
    electric_J += month.source_J;
  }
  const std::string cop = electric_J > 0.0 ? fmt::format(" (COP {:.2f})", heat_J / electric_J) : "";
  add_text(page,
           fmt::format("Second source: {} kWh of heat{}; ran {}, too cold outdoors {}, {} at one stretch, too cold "
                       "inside to start {}; short at work {}.",
                       kWh(reader, heat_J), cop, whole_h(reader, source.ran_s), whole_h(reader, source.locked_s),
                       whole_h(reader, source.longest_locked_s), whole_h(reader, source.cold_start_s),
                       whole_h(reader, source.short_s)),
           "  ");
}

void add_places(Page& page, const Reader& reader, const WayResult& way) {
  const auto degrees = [&](double degC) { return bare(Kind::fine_degree, degC, reader.system()); };
  Table table{{left_column(fmt::format("Coldest, in {}", unit(Kind::degree, reader.system()))),
               {"this way", "for years"},
               {"as run", "before"},
               {"new", "building"},
               {"kept", "above"},
               {"", "when"}},
              {},
              0};
  for (const PlaceInWinter& place : way.place)
    table.rows.push_back({place.name, degrees(place.coldest_degC), degrees(place.as_before_degC),
                          degrees(place.new_building_degC), place.decides ? degrees(place.limit_degC) : "reported",
                          fmt::format("{} {}", place.day, month_name_of(place.month).substr(0, 3))});
  if (!table.rows.empty()) add_table(page, table);
}

std::string starts_of(const Reader& reader, const WayResult& way) {
  std::string words;
  if (way.source_lead_h > 0) words += fmt::format("; second source from {}", starts_at(reader, way.source_lead_h));
  if (way.floor_lead_h > 0) words += fmt::format("; floor from {}", starts_at(reader, way.floor_lead_h));
  if (way.way.charge_to_degC) words += fmt::format("; charged to {}", reader(Kind::dial, *way.way.charge_to_degC));
  return words;
}

void add_holds(Page& page, const Reader& reader) {
  Table table{{left_column("frost hold"), {"kWh a year"}, {"floor wet, h"}, {"verdict"}}, {}, 0};
  if (priced(reader)) table.columns.insert(table.columns.begin() + 2, {cost_unit(reader)});
  for (const HoldCost& row : reader.answer.winter->hold) {
    double wet_s = 0.0;
    for (const double s : row.sweating.wet_s) wet_s += s;
    std::vector<std::string> cells{reader(Kind::dial, row.air_degC), kWh(reader, row.use_J)};
    if (priced(reader)) cells.push_back(row.money ? amount(reader, *row.money) : "-");
    cells.push_back(spoken(Kind::hours, wet_s, reader.system()));
    cells.push_back(row.fails.any() ? "fails" : "passes");
    table.rows.push_back(std::move(cells));
  }
  add_section(page, fmt::format("FROST HOLDS OF {}", upper(reader.answer.winter->hold_way)), table);
}

}  // namespace

void add_winter_full(Page& page, const Reader& reader) {
  add_gap(page);
  const std::vector<WayResult>& ways = reader.answer.winter->way;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    add_text(page, fmt::format("WAY {}: {}{}", i + 1, way_name(ways[i]), starts_of(reader, ways[i])));
    add_months(page, reader, ways[i]);
    add_comfort(page, reader, ways[i]);
    add_source(page, reader, ways[i]);
    add_places(page, reader, ways[i]);
    add_blank(page);
  }
  add_heat(page, reader);
  add_holds(page, reader);
}

}  // namespace slabwright::report
