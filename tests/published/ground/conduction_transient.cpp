// A strip of a half-space stepped in temperature, exact, and steps of the drivers at floor edges by finite elements.
#include "edge_in_time.hpp"
#include "slabwright/conduction_time.hpp"
#include "slabwright/units_exact.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Row = std::map<std::string, std::string>;
using Kind = FieldDriver::Kind;

/// Heat has gone 21 m in five years by 2 sqrt(alpha t).
constexpr double far_m = 60.0;

FieldSection strip_of_half_space() {
  constexpr FieldDriverId strip{0}, rest{1};
  const double half_width_m = 6.0;
  FieldSection section;
  section.drivers = {{"strip", Kind::temperature}, {"rest", Kind::temperature}};
  section.materials = {{0.0, far_m, -far_m, 0.0, 1.9, 1490.0 * 1800.0}};
  section.boundaries = {{{{0.0, 0.0}, {half_width_m, 0.0}}, FixedTemperature{strip, strip}},
                        {{{half_width_m, 0.0}, {far_m, 0.0}}, FixedTemperature{rest, rest}}};
  return section;
}

std::vector<Row> rows_of(const std::string& detail) {
  std::vector<Row> rows;
  for (const Row& row : read_table("conduction_in_time/edge_steps.csv"))
    if (row.at("detail") == detail) rows.push_back(row);
  return rows;
}

}  // namespace

TEST_CASE("a strip of the surface of a half-space stepped to 1") {
  const std::vector<Row> rows = read_table("conduction_in_time/half_space_strip.csv");
  const std::vector<const char*> days{"30", "180", "365", "1825"};
  std::vector<FieldPoint> points;
  for (const Row& row : rows) points.push_back({number(row, "x_m"), -number(row, "z_m")});
  std::vector<double> times_s;
  for (const char* day : days) times_s.push_back(std::stod(day) * day_s);
  const StepResponses steps = step_responses(strip_of_half_space(), points, times_s);
  for (std::size_t time = 0; time < days.size(); ++time) {
    for (std::size_t i = 0; i < rows.size(); ++i) {
      CHECK_PUBLISHED(Source{"Strip of a half-space stepped to 1, exact", "x within 6 m", Oracle::derived},
                      "x " + rows[i].at("x_m") + " m, depth " + rows[i].at("z_m") + " m, " + days[time] + " d",
                      rows[i].at(days[time]), steps.weights[time][i][0],
                      Within{0.003, 0.0, "asked of a ground solver in time"});
    }
  }
  CHECK(steps.imbalance_share < 1e-9);
}

TEST_CASE("steps of the drivers at the edge of a floor") {
  const std::vector<const char*> hours{"6", "12", "24", "48", "96", "186"};
  std::vector<double> times_s;
  for (const char* hour : hours) times_s.push_back(std::stod(hour) * hour_s);
  const Source source{"Floor edges by quadratic finite elements", "steps", Oracle::derived};
  const Within tolerance{0.003, 0.0, "spread of two methods, twice"};
  for (const std::string detail : {"wall_under_edge", "door_under"}) {
    const std::vector<Row> rows = rows_of(detail);
    std::vector<FieldPoint> points;
    for (const Row& row : rows) points.push_back(edge_point(detail, number(row, "in_m"), number(row, "depth_m")));
    const FieldSection section = edge_in_time(detail);
    const StepResponses steps = step_responses(section, points, times_s);
    const UnitResponses steady = unit_responses(section, points);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const Row& row = rows[i];
      const std::size_t driver = (row.at("driver") == "indoor" ? edge_driver::indoor : edge_driver::outdoor).at;
      const std::string place = detail + ", " + row.at("point") + ", " + row.at("driver") + " step, ";
      for (std::size_t time = 0; time < hours.size(); ++time) {
        CHECK_PUBLISHED(source, place + hours[time] + " h", row.at(hours[time]), steps.weights[time][i][driver],
                        tolerance);
      }
      CHECK_PUBLISHED(source, place + "steady", row.at("steady"), steady.weights[i][driver], tolerance);
    }
    CHECK(steps.imbalance_share < 1e-9);
  }
}
