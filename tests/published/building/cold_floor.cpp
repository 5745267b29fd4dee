// What a slab of 127 mm takes out of air that is suddenly 13 K warmer than it, nothing going down: by few states of its
// section, and by the strips that a year is stepped with. Figures computed by a second program from the exact series.
#include <cmath>

#include "slabwright/building_year.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

using Kind = FieldDriver::Kind;

constexpr double film_W_per_m2K = 5.9, warm_K = 13.0, thickness_m = 0.127, hour_long_s = 3600.0;
constexpr int shift_h = 10;

/// One metre wide; drivers as an edge has them. Outdoor air and deep ground lie behind what no heat passes.
FieldSection slab() {
  FieldSection section;
  section.drivers = {{"indoor air", Kind::temperature},
                     {"outdoor air", Kind::temperature},
                     {"deep ground", Kind::temperature},
                     {"tube heat", Kind::heat}};
  section.materials = {{0.0, 1.0, -thickness_m, 0.0, 1.75, 2300.0 * 880.0}};
  const double none_W_per_m2K = 1e-9;
  section.boundaries = {{{{0.0, 0.0}, {1.0, 0.0}}, SurfaceFilm{film_W_per_m2K, {edge_row::indoor}}},
                        {{{1.0, -thickness_m}, {1.0, 0.0}}, SurfaceFilm{none_W_per_m2K, {edge_row::outdoor}}},
                        {{{0.0, -thickness_m}, {1.0, -thickness_m}}, SurfaceFilm{none_W_per_m2K, {edge_row::ground}}}};
  section.planes = {{{{0.0, -0.0635}, {1.0, -0.0635}}, {edge_row::tube_heat}}};
  return section;
}

/// Those that a year is run with by default have 74.7 W/m2 at the very first and 72.4 after five minutes, where the
/// series has 72.2; the first moment itself wants one state more.
FewStates states_of_slab() {
  StatesOptions options;
  options.swing_share = 1e-4;
  return few_states(slab(), {{0.5, -0.0635}}, options);
}
const Within hundredth{0.0, 0.01, "few states stand for the series"};

Source from_series(const std::string& by) {
  return {"Cold slab of 127 mm under air 13 K warmer", "exact series, " + by, Oracle::derived};
}

/// A metre of it in a room that nothing cools.
YearShop shop_of(const FewStates& states) {
  YearShop shop;
  FloorStrip strip;
  strip.states = states;
  strip.length_m = strip.width_m = strip.tubes_m = 1.0;
  shop.zone.floor = {strip};
  shop.zone.midway_lag_s = hour_long_s;
  ShopRoom room;
  room.floor_m2 = 1.0;
  room.air_J_per_K = room.faces_J_per_K = 1e15;
  shop.room = {room};
  shop.strip_room = {0};
  // The run's film of a floor that takes heat is the law's; the states' own stands in its place.
  shop.film_W_per_m2K = floor_film_down_W_per_m2K;
  shop.slab_J_per_K = thickness_m * 2300.0 * 880.0;
  return shop;
}

}  // namespace

TEST_CASE("a cold slab under warm air, by few states") {
  const FewStates states = states_of_slab();
  const DriverValues warm{warm_K, 0.0, 0.0, 0.0};
  const std::size_t indoor = states.points + edge_row::indoor;
  StateValues state(states.decay_per_s.size(), 0.0);
  const double first_W = watched_value(states, indoor, state, warm);
  double taken_J = 0.0;
  for (int minute = 0; minute < 60 * shift_h; ++minute) {
    const double before_W = watched_value(states, indoor, state, warm);
    state = after_constant(states, state, warm, minute_s);
    taken_J += 0.5 * minute_s * (before_W + watched_value(states, indoor, state, warm));
  }
  const Source source = from_series("few states");
  CHECK_PUBLISHED(source, "at first, W/m2", "76.7", first_W, hundredth);
  CHECK_PUBLISHED(source, "mean of 10 h, W/m2", "47.8", taken_J / (shift_h * hour_long_s), hundredth);
  CHECK_PUBLISHED(source, "after 10 h, W/m2", "32.4", watched_value(states, indoor, state, warm), hundredth);
}

TEST_CASE("a cold slab under warm air, by the steps of a year") {
  const YearShop shop = shop_of(states_of_slab());
  ShopState start = begun(shop, steady_history({0.0, 0.0, 0.0}), 0.0);
  start.air_degC = start.faces_degC = start.effective_degC = {warm_K};
  ShopRun run(shop, start);
  const double first_W = -run.now().up_W;
  for (int hour = 0; hour < shift_h; ++hour) {
    run.reach({}, StepLength::hour);
    run.take(0.0, 0.0);
  }
  const Source source = from_series("steps of a year");
  CHECK_PUBLISHED(source, "at first, W/m2", "76.7", first_W, hundredth);
  CHECK_PUBLISHED(source, "mean of 10 h, W/m2", "47.8", -run.heat().floor_up_J / (shift_h * hour_long_s), hundredth);
  CHECK_PUBLISHED(source, "after 10 h, W/m2", "32.4", -run.now().up_W, hundredth);
}
