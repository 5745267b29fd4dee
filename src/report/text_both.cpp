// As written beside as tried: what an option changes, before the answer it leads to.
#include <fmt/format.h>

#include <optional>

#include "report/text_winter.hpp"

namespace slabwright {
namespace report {
namespace {

std::string verdict_word(const Answer& answer) {
  switch (answer.verdict.kind) {
    case VerdictKind::works: return "works";
    case VerdictKind::mend: return fmt::format("works, {} to mend", answer.verdict.reasons.size());
    case VerdictKind::fails: return "does not work";
  }
  return {};
}

/// A headline number, where the answer has it.
std::string cell(const Answer& answer, Kind kind, std::optional<double> si) {
  return si ? figure(kind, *si, answer.file.design.units) : "-";
}

template <class Part, class Number>
std::optional<double> of(const std::optional<Part>& part, Number number) {
  return part ? std::optional<double>(number(*part)) : std::nullopt;
}

/// The value of a key as a file would write it.
std::string written_value(const DesignFile& file, const std::string& path) {
  const auto found = find_path(reading(file.design), path);
  if (!found) return "not there";
  const std::string text = write_out(*found->key, found->slot, file.design.units);
  return text.empty() ? "not given" : text;
}

/// The keys that options set, each with its two values.
void add_changed(Table& table, const Answer& written, const Answer& tried) {
  for (const std::string& path : tried.file.given) {
    const auto spot = tried.file.spots.find(path);
    if (spot == tried.file.spots.end() || spot->second.option.empty()) continue;
    table.rows.push_back({path, written_value(written.file, path), written_value(tried.file, path)});
  }
}

void add_figures(Table& table, const Answer& written, const Answer& tried) {
  const auto row = [&](std::string_view what, Kind kind, auto number) {
    const std::string before = cell(written, kind, number(written)), after = cell(tried, kind, number(tried));
    if (before != "-" || after != "-") table.rows.push_back({std::string(what), before, after});
  };
  row("tube", Kind::length, [](const Answer& a) { return of(a.loops, [](const LoopPlan& l) { return l.tube_m; }); });
  row("loops", Kind::count, [](const Answer& a) {
    return of(a.loops, [](const LoopPlan& l) { return static_cast<double>(l.loop.size()); });
  });
  row("shop loses", Kind::heat,
      [](const Answer& a) { return of(a.envelope, [](const Envelope& e) { return e.loss_W; }); });
  row("water out", Kind::degree,
      [](const Answer& a) { return of(a.point, [](const OperatingPoint& p) { return p.supply_degC; }); });
  row("boiler", Kind::boiler,
      [](const Answer& a) { return of(a.sizes, [](const PlantSizes& s) { return s.boiler.power_W; }); });
  row("pump flow", Kind::flow,
      [](const Answer& a) { return of(a.sizes, [](const PlantSizes& s) { return s.pump.flow_m3_per_s; }); });
  row("pump head", Kind::head,
      [](const Answer& a) { return of(a.sizes, [](const PlantSizes& s) { return s.pump.head_m; }); });
  row("frost hold, wall thermostat", Kind::dial,
      [](const Answer& a) { return found_dial_degC(a.freeze, &Freeze::air); });
  row("frost hold, slab sensor", Kind::dial, [](const Answer& a) { return found_dial_degC(a.freeze, &Freeze::slab); });
}

/// What the way that is shown costs or uses.
std::string year_cell(const Answer& answer, const ReportOptions& options) {
  if (!answer.winter || answer.winter->way.empty()) return "-";
  return cost_words({answer, options}, shown_way(*answer.winter));
}

void add_year(Table& table, const Answer& written, const Answer& tried, const ReportOptions& options) {
  const std::string before = year_cell(written, options), after = year_cell(tried, options);
  if (before != "-" || after != "-") table.rows.push_back({"a year, best way", before, after});
}

}  // namespace
}  // namespace report

std::string text_of_both(const Answer& written, const Answer& tried, const ReportOptions& options) {
  using namespace report;
  Table table{{left_column(""), {"as written"}, {"as tried"}}, {}, 0};
  add_changed(table, written, tried);
  add_figures(table, written, tried);
  add_year(table, written, tried, options);
  table.rows.push_back({"verdict", verdict_word(written), verdict_word(tried)});
  Page page;
  add_table(page, table);
  add_blank(page);
  page.lines.push_back("As tried:");
  return text_of(page) + slabwright::text_of(tried, options);
}

}  // namespace slabwright
