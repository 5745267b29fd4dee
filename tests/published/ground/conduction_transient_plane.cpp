// Plane bodies in time: a deep body, a plane wall, a slab with heat let free in a plane. Series and error functions of
// the textbooks.
#include "slabwright/conduction_time.hpp"
#include "slabwright/units_exact.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Row = std::map<std::string, std::string>;
using Kind = FieldDriver::Kind;
constexpr FieldDriverId air{0}, heat{1};
constexpr double stored = 2300.0 * 880.0;
constexpr double high_m = 0.01;

/// From its face at x = 0, which answers to the air, to the adiabatic one; as high as it needs to be.
FieldSection body(double deep_m, double conductivity, std::variant<SurfaceFilm, FixedTemperature> face) {
  FieldSection section;
  section.drivers = {{"air", Kind::temperature}, {"heat", Kind::heat}};
  section.materials = {{0.0, deep_m, 0.0, high_m, conductivity, stored}};
  section.boundaries = {{{{0.0, 0.0}, {0.0, high_m}}, face}};
  return section;
}

/// Cells start small at named lines inside and at ends of stretches only: here all are small.
TimeOptions fine(double cell_m) { return {{cell_m, 1.0, cell_m, false}, 1e-6, 1e-4}; }

/// Depths where the reference looks are grid lines of these cells.
const Within plane_tolerance{0.0005, 0.0, "cells of 5 mm and less; 0.003 is asked of a ground solver"};

std::vector<double> seconds(const std::vector<double>& hours) {
  std::vector<double> times_s;
  for (const double hour : hours) times_s.push_back(hour * hour_s);
  return times_s;
}

}  // namespace

TEST_CASE("a deep body stepped at its surface or in its air") {
  const std::vector<double> hours{1.0, 6.0, 12.0, 24.0, 48.0, 72.0};
  const std::vector<Row> rows = read_table("conduction_in_time/semi_infinite.csv");
  std::vector<FieldPoint> points;
  for (const Row& row : rows) points.push_back({number(row, "depth_m"), 0.0});
  const auto steps_with = [&](std::variant<SurfaceFilm, FixedTemperature> face) {
    return step_responses(body(3.0, 1.75, face), points, seconds(hours), fine(0.005));
  };
  const StepResponses held = steps_with(FixedTemperature{air, air}), film = steps_with(SurfaceFilm{8.0, air});
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto hour = std::find(hours.begin(), hours.end(), number(rows[i], "hours")) - hours.begin();
    const StepResponses& steps = rows[i].at("surface") == "step" ? held : film;
    CHECK_PUBLISHED(Source{"Deep body stepped to 1", rows[i].at("surface"), Oracle::derived},
                    "depth " + rows[i].at("depth_m") + " m, " + rows[i].at("hours") + " h", rows[i].at("temperature"),
                    steps.weights[static_cast<std::size_t>(hour)][i][air.at], plane_tolerance);
  }
  const Source flux{"Deep body stepped to 1", "k dT / sqrt(pi alpha t), 20 K", Oracle::derived};
  const double per_m2 = 20.0 / high_m;
  CHECK_PUBLISHED(flux, "heat at 1 h, W/m2", "353.939", per_m2 * held.heat_in[0][0][air.at],
                  Within{0.0, 0.002, "cells of 5 mm where heat has gone 0.11 m"});
  CHECK_PUBLISHED(flux, "heat at 24 h, W/m2", "72.247", per_m2 * held.heat_in[3][0][air.at],
                  Within{0.0, 0.001, "cells of 5 mm where heat has gone 0.55 m"});
}

TEST_CASE("a plane wall let cool beyond a film") {
  const double deep_m = 0.15, conductivity = 1.75;
  const std::vector<const char*> fourier{"0.2", "0.5", "1", "2"};
  std::vector<double> times_s;
  for (const char* number_of : fourier)
    times_s.push_back(std::stod(number_of) * deep_m * deep_m * stored / conductivity);
  for (const Row& row : read_table("conduction_in_time/plane_wall.csv")) {
    const FieldSection section =
        body(deep_m, conductivity, SurfaceFilm{number(row, "biot") * conductivity / deep_m, air});
    const double x_m = row.at("face") == "film" ? 0.0 : deep_m;
    const StepResponses steps = step_responses(section, {{x_m, 0.0}}, times_s, fine(0.0025));
    for (std::size_t time = 0; time < fourier.size(); ++time) {
      CHECK_PUBLISHED(Source{"Plane wall cooling beyond a film", "eigenfunction series", Oracle::derived},
                      "Bi " + row.at("biot") + ", " + row.at("face") + " face, Fo " + fourier[time],
                      row.at(fourier[time]), 1.0 - steps.weights[time][0][air.at], plane_tolerance);
    }
  }
}

TEST_CASE("a slab of 150 mm let cool beyond a film of 8") {
  const std::vector<double> hours{1.0, 3.0, 6.0, 12.0, 24.0};
  const std::vector<const char*> bottom{"0.985889", "0.865288", "0.688381", "0.434596", "0.173216"};
  const std::vector<const char*> top{"0.766591", "0.638298", "0.506322", "0.319646", "0.127400"};
  const StepResponses steps =
      step_responses(body(0.15, 1.75, SurfaceFilm{8.0, air}), {{0.15, 0.0}, {0.0, 0.0}}, seconds(hours), fine(0.0025));
  const Source source{"Plane wall cooling beyond a film", "150 mm of concrete, 8 W/m2K", Oracle::derived};
  for (std::size_t time = 0; time < hours.size(); ++time) {
    const std::string when = std::to_string(static_cast<int>(hours[time])) + " h";
    CHECK_PUBLISHED(source, "bottom, " + when, bottom[time], 1.0 - steps.weights[time][0][air.at], plane_tolerance);
    CHECK_PUBLISHED(source, "top, " + when, top[time], 1.0 - steps.weights[time][1][air.at], plane_tolerance);
  }
}

TEST_CASE("a slab with heat let free at mid depth") {
  const std::vector<double> hours{0.5, 1.0, 2.0, 4.0, 8.0, 12.0, 24.0, 48.0};
  const std::vector<const char*> rise{"0.2376", "0.6856", "1.5035", "2.8813", "4.9397", "6.3336", "8.3503", "9.1715"};
  FieldSection section = body(0.15, 1.8, SurfaceFilm{10.8, air});
  section.planes = {{{{0.075, 0.0}, {0.075, high_m}}, heat}};
  const StepResponses steps = step_responses(section, {{0.0, 0.0}}, seconds(hours), fine(0.0025));
  const Source source{"Slab with a plane source", "150 mm, 1.8 W/mK, 10.8 W/m2K, 100 W/m2", Oracle::derived};
  for (std::size_t time = 0; time < hours.size(); ++time) {
    CHECK_PUBLISHED(source, "rise of the top after " + std::to_string(hours[time]).substr(0, 4) + " h, K", rise[time],
                    100.0 * steps.weights[time][0][heat.at],
                    Within{0.002, 0.0, "cells of 2.5 mm; 0.03 % of the steady"});
  }
}
