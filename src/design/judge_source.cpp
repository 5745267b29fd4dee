// What cannot be meant of the second source.
#include <fmt/format.h>

#include "design/judge.hpp"
#include "slabwright/heater_curves.hpp"

namespace slabwright {
namespace {

/// Air as it leaves a heat pump's coil: its COP is held against the most that any machine could do between there and
/// outdoors.
constexpr double warm_air_degC = 40.0;

using measured::degree;

constexpr const char* of_a_source[] = {"capacity",    "cut_out",       "points",    "defrost", "cut_in",
                                       "start_above", "least_setting", "drain_pan", "room",    "gradient"};

void judge_without(Judge& judge) {
  if (judge.design.second_source.kind != SecondSourceKind::none || !judge.sound({"second_source.kind"})) return;
  for (const char* word : of_a_source) {
    const std::string path = fmt::format("second_source.{}", word);
    if (!judge.given(path)) continue;
    judge.problem(path, "second-source.none",
                  fmt::format("{} of what? There is no second source: write kind = \"heat pump\".", word));
  }
}

void judge_cut_in(Judge& judge) {
  const SecondSource& source = judge.design.second_source;
  const std::string path = "second_source.cut_in";
  if (!judge.given(path) || !judge.sound({"second_source.cut_out"})) return;
  if (!source.cut_out_degC)
    return judge.problem(path, "second-source.cut-in", "cut_in stands beside cut_out: write cut_out too.");
  if (*source.cut_in_degC >= *source.cut_out_degC) return;
  judge.problem(path, "second-source.cut-in", "it stops below {} and cannot start again at {}: cut_in is the warmer.",
                {degree(*source.cut_out_degC), degree(*source.cut_in_degC)});
}

/// What no machine can do, and what no machine does as it gets warmer.
void judge_row(Judge& judge, const SourcePoint& point) {
  const double most = believable_carnot_share * carnot_cop(warm_air_degC, point.outdoor_degC);
  if (point.cop_number <= most) return;
  judge.problem(
      "second_source.points", "second-source.cop",
      fmt::format("COP {} at {{}} is more than such a machine can do: at most {:.1f} there.", point.cop_number, most),
      {degree(point.outdoor_degC)});
}

void judge_pair(Judge& judge, const SourcePoint& colder, const SourcePoint& warmer) {
  const std::string path = "second_source.points";
  const System units = judge.design.units;
  const std::string both = fmt::format("from \"{}\" to \"{}\"", write_words(colder, units), write_words(warmer, units));
  if (warmer.outdoor_degC <= colder.outdoor_degC)
    return judge.problem(path, "second-source.order", fmt::format("it gets no warmer {}. Coldest first.", both));
  if (warmer.capacity_W < colder.capacity_W || warmer.cop_number < colder.cop_number)
    judge.warning(path, "second-source.falling",
                  fmt::format("a heat pump does not do worse as it gets warmer, as it does {}: see its table", both));
}

void judge_points(Judge& judge) {
  const auto& points = judge.design.second_source.points;
  if (!judge.given("second_source.points") || !judge.sound({"second_source.points"})) return;
  if (points.size() < 2)
    return judge.problem("second_source.points", "second-source.points", "a heat pump's table takes two rows or more.");
  for (std::size_t i = 0; i < points.size(); ++i) {
    judge_row(judge, points[i]);
    if (i > 0) judge_pair(judge, points[i - 1], points[i]);
  }
}

}  // namespace

void judge_second_source(Judge& judge) {
  judge_without(judge);
  judge_cut_in(judge);
  judge_points(judge);
}

}  // namespace slabwright
