// Curves of the plant: pump against piping, heat against weather.
#include <algorithm>
#include <cmath>

#include "sheets/plots_parts.hpp"

namespace slabwright::sheets {
namespace {

/// What the pump must overcome: a head in the US, a pressure elsewhere.
struct Against {
  bool head;
  InUnits units;
  explicit Against(System system) : head(system == System::us), units(head ? Kind::head : Kind::pressure, system) {}

  double operator()(double head_m, double pressure_Pa) const { return units(head ? head_m : pressure_Pa); }
  Quote quote(const Quotes& q, const std::string& head_key, const std::string& pressure_key) const {
    return head ? q.figure(head_key, Kind::head, Lean::pump) : q.figure(pressure_key, Kind::pressure, Lean::pump);
  }
};

/// Two marks this near to each other are one to the eye: of the flow, of the head.
constexpr double same_flow_share = 0.06, same_head_share = 0.12;
bool apart(const CurveRow& runs, const CurvePlace& duty) {
  return std::abs(duty.flow_m3_per_s - runs.flow_m3_per_s) > same_flow_share * runs.flow_m3_per_s ||
         std::abs(duty.pressure_Pa - runs.pump_Pa) > same_head_share * runs.pump_Pa;
}

/// Where the pump's curve ends, or where the piping asks for far more than any pump of its size gives.
double last_flow_m3_per_s(const PlantCurves& curves) {
  constexpr double far_beyond_ratio = 1.5;
  for (const CurveRow& row : curves.row) {
    if (row.system_Pa > far_beyond_ratio * curves.row.front().pump_Pa || row.pump_Pa <= 0.0)
      return std::min(row.flow_m3_per_s, curves.pump_end.flow_m3_per_s);
  }
  return curves.row.back().flow_m3_per_s;
}

void add_pump_lines(PlotPanel& panel, const PlantCurves& curves, const InUnits& flow, const Against& against) {
  PlotLine pump = line_of(PlotInk::solid, {tell("pump")});
  PlotLine piping = line_of(PlotInk::dashes, {tell("all piping")});
  PlotLine loop = line_of(PlotInk::dash_dot, {tell("hardest loop alone")});
  const double last = last_flow_m3_per_s(curves);
  for (const CurveRow& row : curves.row) {
    const double x = flow(row.flow_m3_per_s);
    pump.at.push_back({x, against(row.pump_head_m, row.pump_Pa)});
    piping.at.push_back({x, against(row.system_head_m, row.system_Pa)});
    loop.at.push_back({x, against(row.loop_head_m, row.loop_Pa)});
    if (row.flow_m3_per_s >= last) break;  // cut off at the axis' end
  }
  panel.line = {pump, piping, loop};
}

void add_pump_marks(PlotPanel& panel, const Quotes& q, const InUnits& flow, const Against& against) {
  const PlantCurves& curves = *q.answer().curves;
  PlotMark runs{{flow(curves.runs.flow_m3_per_s), against(curves.runs.pump_head_m, curves.runs.pump_Pa)}, {}, false};
  runs.words = {tell("runs at"), tell(q.figure("curves.runs.flow_m3_per_s", Kind::flow, Lean::pump)),
                tell(against.quote(q, "curves.runs.pump_head_m", "curves.runs.pump_Pa"))};
  PlotMark duty{{flow(curves.duty.flow_m3_per_s), against(curves.duty.head_m, curves.duty.pressure_Pa)}, {}, true};
  duty.words = {tell("duty to buy"), tell(q.figure("curves.duty.flow_m3_per_s", Kind::flow, Lean::pump)),
                tell(against.quote(q, "curves.duty.head_m", "curves.duty.pressure_Pa"))};
  panel.mark = {runs};
  if (apart(curves.runs, curves.duty)) panel.mark.push_back(duty);
}

PlotLine by_weather(PlotInk ink, const char* words, const HeatByOutdoor& by_outdoor, const InUnits& degree,
                    const InUnits& heat, std::optional<double> (*value)(const OutdoorRow&)) {
  PlotLine line = line_of(ink, {tell(words)});
  for (const OutdoorRow& row : by_outdoor.row) {
    if (const auto w = value(row)) line.at.push_back({degree(row.outdoor_degC), heat(*w)});
  }
  return line;
}

}  // namespace

std::optional<DrawnPlot> pump_plot(const Quotes& q) {
  const auto& curves = q.answer().curves;
  // Where pumps stand there is no flow to draw it over.
  if (!curves || curves->row.size() < 2 || last_flow_m3_per_s(*curves) <= 0.0) return std::nullopt;
  const InUnits flow(Kind::flow, q.system());
  const Against against(q.system());
  PlotPanel panel;
  add_pump_lines(panel, *curves, flow, against);
  add_pump_marks(panel, q, flow, against);
  panel.y = against.units.axis(against.head ? "head" : "pressure");
  panel.y.least = 0.0;
  panel.height_m = 0.05;
  Plot plot{"Pump and piping",
            "The pump's curve falls with the flow, what the piping asks for rises; the floor runs where they meet.",
            flow.axis("flow of the whole floor"),
            {panel}};
  plot.x.least = 0.0;
  plot.x.most = flow(last_flow_m3_per_s(*curves));
  return draw_plot(plot);
}

std::optional<DrawnPlot> heat_plot(const Quotes& q) {
  const auto& by = q.answer().by_outdoor;
  if (!by || by->row.size() < 2) return std::nullopt;
  const InUnits degree(Kind::degree, q.system()), heat(Kind::heat, q.system());
  PlotPanel panel;
  const auto line = [&](PlotInk ink, const char* words, std::optional<double> (*value)(const OutdoorRow&)) {
    return by_weather(ink, words, *by, degree, heat, value);
  };
  panel.line.push_back(line(PlotInk::solid, "wanted by the floor",
                            [](const OutdoorRow& row) { return std::optional<double>(row.water_W); }));
  PlotLine source = line(PlotInk::dashes, "second source", [](const OutdoorRow& row) {
    return row.source_locked ? std::optional<double>() : row.source_W;
  });
  if (!source.at.empty()) {
    panel.line.push_back(source);
    panel.line.push_back(line(PlotInk::rings, "wanted without the floor",
                              [](const OutdoorRow& row) { return std::optional<double>(row.alone_W); }));
  }
  if (by->boiler_W) {
    PlotLine most =
        line_of(PlotInk::dash_dot, {tell("boiler, ", q.figure("by_outdoor.boiler_W", Kind::boiler, Lean::boiler))});
    for (const OutdoorRow* row : {&by->row.front(), &by->row.back()})
      most.at.push_back({degree(row->outdoor_degC), heat(*by->boiler_W)});
    panel.line.push_back(most);
  }
  if (by->cross_over_degC && by->cross_over_W)
    panel.mark.push_back({{degree(*by->cross_over_degC), heat(*by->cross_over_W)},
                          {tell("cross-over"), tell(q.figure("by_outdoor.cross_over_degC", Kind::degree, Lean::heat))},
                          false});
  if (by->cut_out_degC && *by->cut_out_degC > by->row.front().outdoor_degC && !source.at.empty())
    panel.wall.push_back(
        {degree(*by->cut_out_degC),
         PlotBeyond::left,
         {tell("second source stands"), tell("below ", q.figure("by_outdoor.cut_out_degC", Kind::degree))}});
  panel.y = heat.axis("heat");
  panel.y.least = 0.0;
  panel.height_m = 0.055;
  return draw_plot({"Heat against the weather",
                    "The colder it is outside the more heat is wanted; a second source gives less and less of it.",
                    degree.axis("outdoor temperature"),
                    {panel}});
}

}  // namespace slabwright::sheets
