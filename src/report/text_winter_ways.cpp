// All ways of running beside each other, what fails, and which month hurts.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "report/text_winter.hpp"

namespace slabwright::report {
namespace {

/// The heating season, in the order in which it is lived.
constexpr std::array<int, 7> season{10, 11, 12, 1, 2, 3, 4};

/// That a screen has room for.
constexpr std::size_t most_ways = 8;

std::string change_cell(const WayResult* before, const WayResult& way) {
  if (!before || cost_of(*before) <= 0.0) return "";
  if (before == &way) return "before";
  const double share = cost_of(way) / cost_of(*before) - 1.0;
  return fmt::format("{:+.0f} %", std::abs(share) < 0.005 ? 0.0 : 100.0 * share);
}

std::string warm_cell(const Comfort& comfort) {
  return comfort.worked_s > 0.0 ? percent(1.0 - comfort.cold_s / comfort.worked_s) : "-";
}

std::string spare_cell(const Reader& reader, const WayResult& way) {
  const PlaceInWinter* place = nearest_place(way);
  return place ? bare(Kind::rise, place->coldest_degC - place->limit_degC, reader.system()) : "-";
}

std::string_view verdict_cell(const WayFails& fails) {
  if (!fails.any()) return "passes";
  if (fails.frost_hold) return "frost";
  return fails.comfort ? "cold" : "boiler";
}

/// "more than 3.6 F too cold for 31 % of the work, 46 F at the lowest".
std::string cold_words(const Reader& reader, const Comfort& comfort) {
  return fmt::format("more than {} too cold for {} of the work, {} at the lowest", reader(Kind::rise, cold_K),
                     percent(comfort.cold_s / std::max(1.0, comfort.worked_s)),
                     reader(Kind::degree, comfort.lowest_degC));
}

std::string frost_words(const Reader& reader, const WayResult& way) {
  const PlaceInWinter* place = nearest_place(way);
  if (!place) return "something comes too near freezing";
  return fmt::format("{} falls to {}, kept above {}", place->name, reader(Kind::fine_degree, place->coldest_degC),
                     reader(Kind::fine_degree, place->limit_degC));
}

std::string why_it_fails(const Reader& reader, const WayResult& way) {
  std::vector<std::string> parts;
  if (way.fails.frost_hold) parts.push_back(frost_words(reader, way));
  if (way.fails.comfort) parts.push_back(cold_words(reader, way.comfort));
  if (way.fails.boiler)
    parts.push_back(fmt::format("the boiler is too small for {}", whole_h(reader, way.boiler_short_s)));
  return fmt::format("{}", fmt::join(parts, "; "));
}

/// Where the line has room for it.
std::string left_words(std::size_t left, std::size_t used) {
  const std::string words = fmt::format(" And {} more: --full.", counted(left));
  return used + words.size() <= page_width ? words : "";
}

Page failing_ways(const Reader& reader, std::size_t most) {
  Page page;
  std::size_t shown = 0, left = 0;
  for (const WayResult& way : reader.answer.winter->way) {
    if (!way.fails.any()) continue;
    if (shown == most) {
      ++left;
      continue;
    }
    ++shown;
    add_text(page, fmt::format("Fails: {}: {}.", quoted_name(way), why_it_fails(reader, way)));
  }
  if (left > 0) page.lines.back() += left_words(left, page.lines.back().size());
  return page;
}

using OfMonth = double (*)(const WayMonth&);

std::vector<std::string> month_row(const std::string& word, const WayResult& way, OfMonth of,
                                   const std::function<std::string(double)>& print) {
  std::vector<std::string> cells{word};
  double year = 0.0, shown = 0.0;
  for (const WayMonth& month : way.month) year += of(month);
  for (const int month : season) {
    shown += of(way.month[static_cast<std::size_t>(month - 1)]);
    cells.push_back(print(of(way.month[static_cast<std::size_t>(month - 1)])));
  }
  // May to September: standing charges, and what keeps frost out in a cold spring.
  cells.push_back(print(year - shown));
  cells.push_back(print(year));
  return cells;
}

double boiler_and_pump_J(const WayMonth& month) { return month.boiler_J + month.pump_J; }
double second_source_J(const WayMonth& month) { return month.source_J; }
double month_money(const WayMonth& month) { return month.money.value_or(0.0); }

}  // namespace

Page ways(const Reader& reader) {
  const Winter& winter = *reader.answer.winter;
  const WayResult* before = run_before(winter);
  const System system = reader.system();
  Table table{{left_column("Way of running"),
               {"a year,", marked(cost_unit(reader), reader.answer, Figure::winter)},
               {"change"},
               {"warm at", "work"},
               {"cold", "starts"},
               {"spare", marked(std::string(unit(Kind::rise, system)), reader.answer, Figure::frost_hold)},
               {"most", "kW"},
               left_column("")},
              {},
              0};
  if (!before) table.columns.erase(table.columns.begin() + 2);
  for (const WayResult& way : winter.way) {
    if (!reader.options.full && table.rows.size() == most_ways) break;
    std::vector<std::string> cells{way_name(way),
                                   way.money ? amount(reader, *way.money) : bare(Kind::energy, way.use_J, system)};
    if (before) cells.push_back(change_cell(before, way));
    const std::string mornings =
        way.comfort.mornings > 0 ? fmt::format("{}/{}", way.comfort.failed_mornings, way.comfort.mornings) : "-";
    for (const std::string& cell : {warm_cell(way.comfort), mornings, spare_cell(reader, way),
                                    bare(Kind::boiler, way.peak_W, system), std::string(verdict_cell(way.fails))})
      cells.push_back(cell);
    table.rows.push_back(std::move(cells));
  }
  Page page;
  add_table(page, table);
  if (const std::size_t left = winter.way.size() - table.rows.size(); left > 0)
    add_text(page, fmt::format("And {} more, no better: add --full.", counted(left)), "  ");
  return page;
}

Block failing(const Reader& reader) {
  constexpr std::size_t all = 100;
  return {failing_ways(reader, all), failing_ways(reader, 1), 14, false};
}

void add_months(Page& page, const Reader& reader, const WayResult& way) {
  const auto in_kWh = [&](double J) { return bare(Kind::energy, J, reader.system()); };
  // One column of money has either no decimals or two.
  constexpr double least_whole = 99.995;
  const Kind kind = std::any_of(way.month.begin(), way.month.end(),
                                [](const WayMonth& month) { return month_money(month) >= least_whole; })
                        ? Kind::count
                        : Kind::money;
  const auto in_money = [&](double cost) { return bare(kind, cost, reader.system()); };
  Table table{{left_column("kWh")}, {}, 0};
  for (const int month : season) table.columns.push_back({month_name_of(month).substr(0, 3)});
  table.columns.push_back({"rest"});
  table.columns.push_back({"year"});
  const auto uses = [&](OfMonth of) {
    return std::any_of(way.month.begin(), way.month.end(), [&](const WayMonth& month) { return of(month) > 0.0; });
  };
  if (uses(boiler_and_pump_J)) table.rows.push_back(month_row("boiler", way, boiler_and_pump_J, in_kWh));
  if (uses(second_source_J)) table.rows.push_back(month_row("source", way, second_source_J, in_kWh));
  if (way.money) table.rows.push_back(month_row(cost_unit(reader), way, month_money, in_money));
  if (!table.rows.empty()) add_table(page, table);
}

Block months(const Reader& reader) {
  const WayResult& best = shown_way(*reader.answer.winter);
  const WayMonth& worst = best.month[static_cast<std::size_t>(best.worst_month - 1)];
  const double used_J = boiler_and_pump_J(worst) + worst.source_J;
  Page page, shorter;
  const std::string which =
      fmt::format("{} {} most: {}", month_name_of(best.worst_month), best.money ? "costs" : "uses",
                  marked(cost_words(reader, used_J, worst.money), reader.answer, Figure::winter));
  add_text(shorter, which + fmt::format(" of {}.", cost_words(reader, best)));
  add_text(page, fmt::format("By month. {}.", which));
  add_months(page, reader, best);
  return {page, shorter, 5};
}

}  // namespace slabwright::report
