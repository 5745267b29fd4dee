// Power cuts and the way back to work.
#include <algorithm>
#include <cmath>

#include "sheets/plots_parts.hpp"

namespace slabwright::sheets {
namespace {

constexpr PlotInk weather_inks[] = {PlotInk::solid, PlotInk::dashes, PlotInk::dash_dot, PlotInk::rings, PlotInk::heavy};

/// The line of one weather, from row `from` on; empty where nothing freezes while the clock runs.
PlotLine hours_line(const Quotes& q, std::size_t from, PlotInk ink, const InUnits& degree) {
  const std::vector<HoursAtSetting>& rows = q.answer().courses->setting;
  PlotLine line = line_of(ink, {});
  line.dots = true;
  for (std::size_t k = from; k < rows.size() && rows[k].outdoor_degC == rows[from].outdoor_degC; ++k) {
    if (rows[k].lasts_s) line.at.push_back({degree(rows[k].air_dial_degC), hours(*rows[k].lasts_s)});
  }
  line.words = {
      tell(q.figure(key_of_row("courses.setting", from, "outdoor_degC"), Kind::degree, Lean::frost_hold), " outside")};
  return line;
}

std::size_t coldest_row(const std::vector<OutageCourse>& rows) {
  const auto colder = [](const OutageCourse& a, const OutageCourse& b) { return a.outdoor_degC < b.outdoor_degC; };
  return static_cast<std::size_t>(std::min_element(rows.begin(), rows.end(), colder) - rows.begin());
}

/// Two lines that nobody could tell apart.
bool alike(const std::vector<double>& a_degC, const std::vector<double>& b_degC) {
  constexpr double seen_K = 0.5;
  return std::equal(a_degC.begin(), a_degC.end(), b_degC.begin(), b_degC.end(),
                    [](double a, double b) { return std::abs(a - b) < seen_K; });
}

PlotPanel recovery_panel(const Quotes& q, std::size_t row, const InUnits& degree) {
  const RecoveryCourse& course = q.answer().courses->recovery[row];
  const auto key = [&](const char* member) { return key_of_row("courses.recovery", row, member); };
  PlotPanel panel;
  panel.y = degree.axis("temperature");
  if (row > 0) panel.y.title.clear();
  panel.heading = {tell(q.figure(key("outdoor_degC"), Kind::degree), " outside, from ",
                        q.figure(key("from_air_degC"), Kind::dial, Lean::frost_hold), " to ",
                        q.figure(key("to_air_degC"), Kind::dial))};
  panel.line = {course_of(line_of(PlotInk::solid, {tell("air")}), course.air_degC, course.every_s, degree),
                course_of(line_of(PlotInk::heavy, {tell("slab")}), course.slab_degC, course.every_s, degree),
                course_of(line_of(PlotInk::dashes, {tell("floor's face")}), course.floor_degC, course.every_s, degree)};
  if (course.takes_s)
    panel.mark.push_back({{hours(*course.takes_s), degree(course.to_air_degC)},
                          {tell("after ", q.figure(key("takes_s"), Kind::hours, Lean::frost_hold))},
                          false});
  return panel;
}

}  // namespace

std::optional<DrawnPlot> hours_plot(const Quotes& q) {
  if (!q.answer().courses) return std::nullopt;
  const std::vector<HoursAtSetting>& rows = q.answer().courses->setting;
  const InUnits degree(Kind::degree, q.system());
  PlotPanel panel;
  for (std::size_t k = 0; k < rows.size(); ++k) {
    if (k > 0 && rows[k].outdoor_degC == rows[k - 1].outdoor_degC) continue;
    PlotLine line = hours_line(q, k, weather_inks[panel.line.size() % std::size(weather_inks)], degree);
    if (!line.at.empty()) panel.line.push_back(std::move(line));
  }
  if (panel.line.empty()) return std::nullopt;
  panel.y = hours_axis("hours until the first place freezes");
  panel.y.least = 0.0;
  panel.height_m = 0.05;
  return draw_plot({"Hours to freezing",
                    "The higher the setting before a power cut, and the milder the weather, the longer it lasts.",
                    degree.axis("wall thermostat before the cut"),
                    {panel}});
}

std::optional<DrawnPlot> outage_plot(const Quotes& q) {
  if (!q.answer().courses || q.answer().courses->outage.empty()) return std::nullopt;
  const std::size_t row = coldest_row(q.answer().courses->outage);
  const OutageCourse& course = q.answer().courses->outage[row];
  const auto key = [&](const char* member) { return key_of_row("courses.outage", row, member); };
  const InUnits degree(Kind::degree, q.system());
  const auto line = [&](PlotInk ink, PlotWords words, const std::vector<double>& degC) {
    return course_of(line_of(ink, std::move(words)), degC, course.every_s, degree);
  };
  PlotPanel panel;
  panel.y = degree.axis("temperature");
  panel.heading = {tell("no power, ", q.figure(key("outdoor_degC"), Kind::degree, Lean::coldest), " outside")};
  panel.line.push_back(line(PlotInk::heavy, {tell("slab")}, course.slab_degC));
  if (!alike(course.air_degC, course.place_degC))
    panel.line.push_back(line(PlotInk::dashes, {tell("air")}, course.air_degC));
  panel.line.push_back(line(PlotInk::solid, {}, course.place_degC));
  if (!course.first.empty()) panel.line.back().words = {tell(q.words(key("first")))};
  panel.wall.push_back({degree(course.freezes_degC),
                        PlotBeyond::below,
                        {tell("freezes at ", q.figure(key("freezes_degC"), Kind::degree))}});
  if (course.lasts_s)
    panel.mark.push_back({{hours(*course.lasts_s), degree(course.freezes_degC)},
                          {tell("after ", q.figure(key("lasts_s"), Kind::hours, Lean::frost_hold))},
                          true});
  panel.height_m = 0.05;
  return draw_plot({"A power cut",
                    "Slab and air fall from the cut on until the first place freezes.",
                    hours_axis("hours after the cut"),
                    {panel}});
}

std::optional<DrawnPlot> recovery_plot(const Quotes& q) {
  if (!q.answer().courses || q.answer().courses->recovery.empty()) return std::nullopt;
  const InUnits degree(Kind::degree, q.system());
  Plot plot{"Back to work",
            "Air, slab and the floor's face rise from the frost hold to working temperature.",
            hours_axis("hours at full heat"),
            {}};
  for (std::size_t k = 0; k < q.answer().courses->recovery.size(); ++k)
    plot.panel.push_back(recovery_panel(q, k, degree));
  return draw_plot(plot);
}

}  // namespace slabwright::sheets
