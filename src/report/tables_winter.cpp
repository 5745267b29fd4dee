// The winter for a spreadsheet: every way in a row, and the best one hour by hour.
#include <fmt/format.h>

#include "slabwright/units_exact.hpp"

#include "report/csv.hpp"
#include "report/text_winter.hpp"

namespace slabwright::report {
namespace {

std::string kWh_cell(double J) { return fmt::format("{:.1f}", J / 3.6e6); }
std::string hours_of(double s) { return fmt::format("{:.1f}", s / hour_s); }

std::string fails_cell(const WayFails& fails) {
  std::string words;
  const auto add = [&](bool fails_so, std::string_view word) {
    if (fails_so) words.append(words.empty() ? "" : " ").append(word);
  };
  add(fails.comfort, "cold");
  add(fails.frost_hold, "frost");
  add(fails.boiler, "boiler");
  return words;
}

std::string ways_csv(const Reader& reader) {
  Csv csv(reader.system());
  for (const std::string_view word :
       {"way", "fails by", "use (kWh a year)", "money a year", "most power (kW)", "boiler (kWh)", "second source (kWh)",
        "pump (kWh)", "mornings", "cold mornings", "work (h)", "cold at work (h)", "second source locked out (h)"})
    csv.head(word);
  csv.head("nearest place");
  csv.head("its coldest", Kind::fine_degree);
  csv.head("kept above", Kind::fine_degree);
  csv.end_row();
  for (const WayResult& way : reader.answer.winter->way) {
    WayMonth year;
    for (const WayMonth& month : way.month) {
      year.boiler_J += month.boiler_J;
      year.source_J += month.source_J;
      year.pump_J += month.pump_J;
    }
    csv.cell(way_name(way));
    csv.cell(fails_cell(way.fails));
    csv.number(kWh_cell(way.use_J));
    csv.number(way.money ? fmt::format("{:.2f}", *way.money) : "");
    csv.number(fmt::format("{:.1f}", way.peak_W / 1e3));
    for (const double J : {year.boiler_J, year.source_J, year.pump_J}) csv.number(kWh_cell(J));
    csv.number(fmt::format("{}", way.comfort.mornings));
    csv.number(fmt::format("{}", way.comfort.failed_mornings));
    for (const double s : {way.comfort.worked_s, way.comfort.cold_s, way.source.locked_s}) csv.number(hours_of(s));
    const PlaceInWinter* place = nearest_place(way);
    csv.cell(place ? place->name : "");
    for (double PlaceInWinter::*degC : {&PlaceInWinter::coldest_degC, &PlaceInWinter::limit_degC})
      place ? csv.cell(Kind::fine_degree, place->*degC) : csv.cell("");
    csv.end_row();
  }
  return csv.content();
}

/// From the first hour of January on.
std::string hours_csv(const Reader& reader, const WayResult& way) {
  Csv csv(reader.system());
  csv.head("hour of the year");
  for (const std::string_view word : {"outdoors", "air", "floor", "slab"}) csv.head(word, Kind::fine_degree);
  csv.head("use (kWh)");
  csv.end_row();
  for (std::size_t i = 0; i < way.use_hour_J.size(); ++i) {
    csv.number(fmt::format("{}", i + 1));
    for (const auto* series : {&way.outdoor_degC, &way.air_degC, &way.floor_degC, &way.slab_degC})
      csv.cell(Kind::fine_degree, series->at(i));
    csv.number(fmt::format("{:.2f}", way.use_hour_J[i] / 3.6e6));
    csv.end_row();
  }
  return csv.content();
}

}  // namespace

std::vector<Sheet> winter_tables_of(const Answer& answer) {
  if (!answer.winter || answer.winter->way.empty()) return {};
  const ReportOptions options;
  const Reader reader{answer, options};
  return {{"winter-ways.csv", ways_csv(reader)}, {"winter-hours.csv", hours_csv(reader, shown_way(*answer.winter))}};
}

}  // namespace slabwright::report
