// A row of tubes in a slab warming up (SL-1: 1.8 W/mK, 150 mm, tubes of 20 mm every 0.3 m at mid depth, 10.8 and 0.5
// W/m2K, 2300 kg/m3 x 880 J/kgK). The round tube stands as the square that passes as much heat into endless material:
// of side diameter / (2 x 0.59017): the outer radius of a square of side 1 is Gamma(1/4)^2 / (4 pi^(3/2)).
#include "slabwright/conduction_time.hpp"
#include "slabwright/units_exact.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Kind = FieldDriver::Kind;
constexpr FieldDriverId tube{0}, room{1}, below{2};
constexpr double half_spacing_m = 0.15, axis_m = -0.075, bottom_m = -0.15;
constexpr double half_side_m = 0.020 / (2.0 * 0.59017) / 2.0;

FieldSection half_of_one_tube() {
  const double top_m = axis_m + half_side_m, low_m = axis_m - half_side_m;
  const FixedTemperature held{tube, tube};
  FieldSection section;
  section.drivers = {{"tube", Kind::temperature}, {"room", Kind::temperature}, {"below", Kind::temperature}};
  section.materials = {{0.0, half_spacing_m, bottom_m, 0.0, 1.8, 2300.0 * 880.0},
                       {0.0, half_side_m, low_m, top_m, 1.8, 0.0}};
  section.boundaries = {{{{0.0, 0.0}, {half_spacing_m, 0.0}}, SurfaceFilm{10.8, room}},
                        {{{0.0, bottom_m}, {half_spacing_m, bottom_m}}, SurfaceFilm{0.5, below}},
                        {{{0.0, top_m}, {half_side_m, top_m}}, held},
                        {{{half_side_m, top_m}, {half_side_m, low_m}}, held},
                        {{{half_side_m, low_m}, {0.0, low_m}}, held}};
  return section;
}

}  // namespace

TEST_CASE("a row of tubes warming a slab") {
  const auto rows = read_table("conduction_in_time/tube_row_warm_up.csv");
  std::vector<double> times_s;
  for (const auto& row : rows) times_s.push_back(number(row, "hours") * hour_s);
  const StepResponses steps =
      step_responses(half_of_one_tube(), {{0.0, 0.0}, {half_spacing_m, 0.0}}, times_s, {{0.0005, 1.15, 0.004, false}});
  const Source source{"Tube row warming a slab, by quadratic elements", "SL-1, tube stepped to 1 K", Oracle::derived};
  for (std::size_t time = 0; time < rows.size(); ++time) {
    const auto check = [&](const char* column, double ours) {
      CHECK_PUBLISHED(source, column + std::string(" after ") + rows[time].at("hours") + " h", rows[time].at(column),
                      ours, Within{0.0001, 0.005, "a square for a circle"});
    };
    check("q_up", -steps.heat_in[time][0][tube.at] / half_spacing_m);
    check("q_down", -steps.heat_in[time][1][tube.at] / half_spacing_m);
    check("top_over", steps.weights[time][0][tube.at]);
    check("top_mid", steps.weights[time][1][tube.at]);
    check("stored_Wh_per_m2", steps.stored_J_per_m[time][tube.at] / half_spacing_m / 3600.0);
  }
}
