// ISO 10211, Annex A: the two plane cases by which a program for thermal bridges is known to be fit.
#include "slabwright/conduction.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Kind = FieldDriver::Kind;
constexpr FieldDriverId warm{0}, cold{1};
const std::vector<FieldDriver> drivers{{"warm", Kind::temperature}, {"cold", Kind::temperature}};
constexpr double warm_degC = 20.0;
const char* const columns[] = {"x1", "x2", "x3", "x4"};

/// Half width 0.5, height 1.
FieldSection column() {
  const FixedTemperature at_warm{warm, warm}, at_cold{cold, cold};
  return {
      {{0.0, 0.5, 0.0, 1.0, 1.0}},
      {{{{0.0, 1.0}, {0.5, 1.0}}, at_warm}, {{{0.0, 0.0}, {0.5, 0.0}}, at_cold}, {{{0.0, 0.0}, {0.0, 1.0}}, at_cold}},
      {},
      {},
      drivers};
}

void check_column(const Source& source, const std::string& table, double cell_m, Within within) {
  for (const auto& row : read_table(table)) {
    const double y_m = 1.0 - number(row, "row") / 8.0;
    const UnitResponses responses =
        unit_responses(column(), {{0.125, y_m}, {0.25, y_m}, {0.375, y_m}, {0.5, y_m}}, {cell_m, 1.0, cell_m, false});
    for (std::size_t i = 0; i < 4; ++i) {
      CHECK_PUBLISHED(source, "temperature in row " + row.at("row") + ", " + columns[i] + ", degC", row.at(columns[i]),
                      warm_degC * responses.weights[i][warm.at], within);
    }
  }
}

/// Layers from the outside (top) in; where nothing else lies there is insulation.
FieldSection framed_roof() {
  const double concrete = 1.15, wood = 0.12, insulation = 0.029, aluminium = 230.0;
  return {{{0.0, 0.5, 0.0, 0.0475, insulation},
           {0.0, 0.5, 0.0415, 0.0475, concrete},
           {0.0, 0.015, 0.0365, 0.0415, wood},
           {0.0, 0.5, 0.0, 0.0015, aluminium},
           {0.0, 0.0015, 0.0, 0.0365, aluminium},
           {0.0, 0.015, 0.035, 0.0365, aluminium}},
          {{{{0.0, 0.0}, {0.5, 0.0}}, SurfaceFilm{1.0 / 0.11, warm}},
           {{{0.0, 0.0475}, {0.5, 0.0475}}, SurfaceFilm{1.0 / 0.06, cold}}},
          {},
          {},
          drivers};
}

}  // namespace

TEST_CASE("ISO 10211 case 1 within the tenth of a kelvin it asks for") {
  check_column({"ISO 10211", "Annex A, case 1"}, "iso10211_annex_a/case1.csv", 1.0 / 64.0,
               {0.1, 0.0, "limit set by the standard"});
}

TEST_CASE("ISO 10211 case 1 against its series") {
  check_column({"ISO 10211", "Annex A, case 1, by its series", Oracle::derived}, "iso10211_annex_a/case1_series.csv",
               1.0 / 256.0, {0.0005, 0.0, "second order: 0.005 K on 64 cells to the height, 0.0003 K on 256"});
}

TEST_CASE("ISO 10211 case 2: aluminium in insulation, 8000 to 1") {
  const Source source{"ISO 10211", "Annex A, case 2"};
  std::vector<FieldPoint> points;
  const auto rows = read_table("iso10211_annex_a/case2.csv");
  for (const auto& row : rows) points.push_back({number(row, "x_m"), number(row, "y_m")});
  const UnitResponses responses = unit_responses(framed_roof(), points, {0.0005, 1.3, 0.01, false});
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CHECK_PUBLISHED(source, "temperature at " + rows[i].at("point") + ", degC", rows[i].at("degC"),
                    warm_degC * responses.weights[i][warm.at], {0.1, 0.0, "limit set by the standard"});
  }
  CHECK_PUBLISHED(source, "heat flow, W/m", "9.5", warm_degC * responses.heat_in[0][warm.at],
                  {0.1, 0.0, "limit set by the standard"});
  CHECK(responses.imbalance_share < 1e-6);  // the standard asks for 1e-4 of the flow
}
