// One step: strips first, under an air not yet known; then rooms, by the mean of what flows; then both.
#include <cmath>

#include "building/year_inside.hpp"

namespace slabwright {

using namespace building;

namespace {

struct Course {
  double over_start_degC, outdoor_start_degC, outdoor_end_degC;
};

/// The innermost loop of a year: apart, so that nothing in it can be taken for what it writes.
void carry(const YearStrip& strip, const StripStep& step, const double* __restrict x, const Course& course,
           double* __restrict end) {
  const double* keep = step.keep.data();
  const double* over = step.over_start.data();
  const double* before = step.outdoor_start.data();
  const double* after = step.outdoor_end.data();
  const double* fixed = step.fixed.data();
  for (std::size_t k = 0; k < strip.states; ++k)
    end[k] = keep[k] * x[k] + over[k] * course.over_start_degC + before[k] * course.outdoor_start_degC +
             after[k] * course.outdoor_end_degC + fixed[k];
}

struct TubesCourse {
  double over_start_K, tube_W_per_m2;
};

/// The same for what tube heat alone makes; heat into the floor by it, without what the film's end adds.
double carry_tubes(const YearStrip& strip, const StripStep& step, const TubesCourse& course, double* __restrict x) {
  const double* keep = step.keep.data();
  const double* over = step.over_start.data();
  const double* tube = step.tube.data();
  const double* enters = strip.sum[entering].data();
  double sum = 0.0;
  for (std::size_t k = 0; k < strip.states; ++k) {
    x[k] = keep[k] * x[k] + over[k] * course.over_start_K + tube[k] * course.tube_W_per_m2;
    sum += enters[k] * x[k];
  }
  return sum;
}

}  // namespace

/// Of air and faces as the film weighs them, with the sun on the floor as kelvins over it.
double ShopRun::Inside::over_room(std::size_t room, double air_degC, double faces_degC) const {
  const YearFilm& by = film[room];
  return by.to_air_share * air_degC + (1.0 - by.to_air_share) * faces_degC +
         of_room(drivers.floor_W_per_m2, room) / by.film_W_per_m2K;
}

/// The strip's states at the end of the step, all but what the air at its end and the tubes will add.
void ShopRun::Inside::begin_strip(std::size_t index) {
  const YearStrip& strip = strips[index];
  const StripStep& step = step_of(index);
  const double extra = film[strip.room].extra_m2K_per_W / strip.width_m;
  Passing& pass = passing[index];
  const double room_degC = over_room(strip.room, state.air_degC[strip.room], state.faces_degC[strip.room]);
  const double start_W_per_m =
      sums[index][entering] + strip.into_floor.at({0.0, state.outdoor_degC}, state.tube_W_per_m2);
  pass.start_degC = (room_degC - extra * start_W_per_m) / (1.0 + extra * strip.into_floor.per_over);
  const double over = pass.start_degC, before = state.outdoor_degC, after = drivers.outdoor_degC;
  const double* x = state.strip.data() + first[index];
  double* end = free.data() + first[index];
  carry(strip, step, x, {over, before, after}, end);
  double in = 0.0, store_in = 0.0, store_out = 0.0;
  for (std::size_t k = 0; k < strip.states; ++k) {
    in += strip.sum[entering][k] * end[k];
    store_in += strip.sum[store_of_entering][k] * end[k];
    store_out += strip.sum[store_of_leaving][k] * end[k];
  }
  pass.sums = {in, store_in, store_out};
  const double end_W_per_m = in + strip.into_floor.at({0.0, after}, 0.0);
  const double per_over = step.per_over[entering] + strip.into_floor.per_over;
  const double per_tube = step.per_tube[entering] + strip.into_floor.per_tube;
  pass.share = 1.0 / (1.0 + extra * per_over);
  pass.fixed_degC = -pass.share * extra * end_W_per_m;
  pass.per_tube_K = -pass.share * extra * per_tube;
}

/// Mean heat into the floor: what steady drivers of the mean would bring, less what the states lag behind.
void ShopRun::Inside::add_strip(std::size_t index) {
  const YearStrip& strip = strips[index];
  const StripStep& step = step_of(index);
  const Passing& pass = passing[index];
  const double dt_s = step.dt_s;
  const double fixed =
      strip.steady_in.at({0.5 * pass.start_degC, 0.5 * (state.outdoor_degC + drivers.outdoor_degC)}, 0.0) -
      (pass.sums[store_of_entering] - sums[index][store_of_entering]) / dt_s;
  const double per_over = 0.5 * strip.steady_in.per_over - step.per_over[store_of_entering] / dt_s;
  const double per_tube = strip.steady_in.per_tube - step.per_tube[store_of_entering] / dt_s;
  FloorFlow& floor = system.floor[strip.room];
  floor.up_W -= strip.length_m * (fixed + per_over * pass.fixed_degC);
  floor.up_W_per_K -= strip.length_m * per_over * pass.share;
  floor.up_m2 -= strip.length_m * (per_tube + per_over * pass.per_tube_K);
}

void ShopRun::Inside::add_room(std::size_t row) {
  const ShopRoom& room = shop->room[row];
  const YearFilm& by = film[row];
  const double radiant = floor_radiative_W_per_m2K, convective = by.film_W_per_m2K - radiant;
  RoomStep& step = system.room[row];
  step.to_air_share = by.to_air_share;
  step.air_J_per_K = room.air_J_per_K + room.contents_J_per_K;
  step.faces_J_per_K = room.faces_J_per_K;
  step.between_W_per_K = room.air_faces_W_per_K + strip_m2[row] * convective * radiant / by.film_W_per_m2K;
  step.air_out_W_per_K = room.light_W_per_K + of_room(drivers.more_W_per_K, row);
  step.faces_out_W_per_K = room.opaque_W_per_K;
  step.air_W = of_room(drivers.air_W, row);
  step.faces_W = of_room(drivers.faces_W, row);
  step.beside_W_per_K = of_room(drivers.beside_W_per_K, row);
  step.beside_W = of_room(drivers.beside_W, row);
  step.sun_on_floor_K = of_room(drivers.floor_W_per_m2, row) / by.film_W_per_m2K;
  system.floor[row].up_W += of_room(drivers.floor_W_per_m2, row) * strip_m2[row];
}

double ShopRun::Inside::plane_free(std::size_t index) const {
  const YearStrip& strip = strips[index];
  double sum = 0.0;
  for (std::size_t k = 0; k < strip.states; ++k) sum += strip.watched[k] * free[first[index] + k];
  return sum;
}

void ShopRun::Inside::find_reach() {
  const std::size_t main = shop->main, index = shop->zone.sensor_strip;
  reached.air_degC = {system.solved.air[main].idle_degC, system.solved.air[main].per_tube_m2K_per_W,
                      system.solved.air[main].per_source_K_per_W};
  const YearStrip& strip = strips[index];
  const StripStep& step = step_of(index);
  const Passing& pass = passing[index];
  const double per_over = step.plane_per_over, per_tube = step.plane_per_tube;
  const StepEnd& air = system.solved.air[strip.room];
  const StepEnd& faces = system.solved.faces[strip.room];
  const double air_share = film[strip.room].to_air_share, faces_share = 1.0 - air_share;
  const double sun_K = of_room(drivers.floor_W_per_m2, strip.room) / film[strip.room].film_W_per_m2K;
  const auto over = [&](double of_air, double of_faces) { return air_share * of_air + faces_share * of_faces; };
  const Zone& zone = shop->zone;
  const double follows = sensor_follows[length == StepLength::quarter];
  reached.sensor_degC.idle_degC =
      plane_free(index) + strip.straight[0].at({0.0, drivers.outdoor_degC}, 0.0) +
      per_over * (pass.share * (over(air.idle_degC, faces.idle_degC) + sun_K) + pass.fixed_degC) -
      zone.midway_m2K_per_W * (1.0 - follows) * state.sensed_W_per_m2;
  reached.sensor_degC.per_tube_m2K_per_W =
      per_tube + per_over * (pass.share * over(air.per_tube_m2K_per_W, faces.per_tube_m2K_per_W) + pass.per_tube_K) -
      zone.midway_m2K_per_W * follows;
  reached.sensor_degC.per_source_K_per_W =
      per_over * pass.share * over(air.per_source_K_per_W, faces.per_source_K_per_W);
}

/// The same step for what tube heat alone makes: the film holds it back as it does all heat.
void ShopRun::Inside::end_tubes(std::size_t index, double tube_W_per_m2) {
  const YearStrip& strip = strips[index];
  const StripStep& step = step_of(index);
  const double extra = film[strip.room].extra_m2K_per_W / strip.width_m;
  double& entering_W_per_m = tubes_entering_W_per_m[index];
  const double start_K = -extra * (entering_W_per_m + strip.into_floor.per_tube * state.tube_W_per_m2) /
                         (1.0 + extra * strip.into_floor.per_over);
  double* x = state.of_tubes.data() + first[index];
  entering_W_per_m = carry_tubes(strip, step, {start_K, tube_W_per_m2}, x);
  const double end_K = -extra * passing[index].share * (entering_W_per_m + strip.into_floor.per_tube * tube_W_per_m2);
  const double* over_end = step.over_end.data();
  for (std::size_t k = 0; k < strip.states; ++k) x[k] += over_end[k] * end_K;
  entering_W_per_m += step.per_over[entering] * end_K;
  state.tubes_over_K[index] = end_K;
}

void ShopRun::Inside::end_strip(std::size_t index, double over_degC, double tube_W_per_m2) {
  const YearStrip& strip = strips[index];
  const StripStep& step = step_of(index);
  const Passing& pass = passing[index];
  double* x = state.strip.data() + first[index];
  const double* end = free.data() + first[index];
  for (std::size_t k = 0; k < strip.states; ++k)
    x[k] = end[k] + step.over_end[k] * over_degC + step.tube[k] * tube_W_per_m2;
  if (tubes_apart[index]) end_tubes(index, tube_W_per_m2);
  const double dt_s = step.dt_s;
  const Pulls mean{0.5 * (pass.start_degC + over_degC), 0.5 * (state.outdoor_degC + drivers.outdoor_degC)};
  std::array<double, 3> now{};
  for (std::size_t which = 0; which < now.size(); ++which)
    now[which] = pass.sums[which] + step.per_over[which] * over_degC + step.per_tube[which] * tube_W_per_m2;
  const double in_J_per_m =
      strip.steady_in.at(mean, tube_W_per_m2) * dt_s - (now[store_of_entering] - sums[index][store_of_entering]);
  const double out_J_per_m =
      strip.steady_out.at(mean, tube_W_per_m2) * dt_s - (now[store_of_leaving] - sums[index][store_of_leaving]);
  flown.floor_up_J -= strip.length_m * in_J_per_m;
  flown.ground_J -= strip.length_m * out_J_per_m;
  sums[index] = now;
  state.effective_degC[index] = over_degC;
}

double ShopRun::Inside::into_floor_W_per_m2(std::size_t index) const {
  const YearStrip& strip = strips[index];
  const Pulls pulls{state.effective_degC[index], state.outdoor_degC};
  return (sums[index][entering] + strip.into_floor.at(pulls, state.tube_W_per_m2)) / strip.width_m;
}

double ShopRun::Inside::watched_degC(std::size_t index, std::size_t point, const std::vector<double>& states,
                                     double tube_W_per_m2) const {
  const YearStrip& strip = strips[index];
  double sum = strip.straight[point].at({state.effective_degC[index], state.outdoor_degC}, tube_W_per_m2);
  for (std::size_t k = 0; k < strip.states; ++k)
    sum += strip.watched[point * strip.states + k] * states[first[index] + k];
  return sum;
}

void ShopRun::Inside::count(const std::vector<double>& air_degC, const std::vector<double>& faces_degC,
                            double tube_W_per_m2, double source_W) {
  const double dt_s = step_s(), outdoor_degC = 0.5 * (state.outdoor_degC + drivers.outdoor_degC);
  flown.tubes_J += dt_s * tube_W_per_m2 * tubes_m2(*shop);
  flown.source_J += dt_s * source_W;
  flown.layered_J += dt_s * source_W * drivers.layered_share;
  for (std::size_t row = 0; row < shop->room.size(); ++row) {
    const ShopRoom& room = shop->room[row];
    const double air_K = 0.5 * (state.air_degC[row] + air_degC[row]) - outdoor_degC;
    const double faces_K = 0.5 * (state.faces_degC[row] + faces_degC[row]) - outdoor_degC;
    const double beside_W = of_room(drivers.beside_W, row) - of_room(drivers.beside_W_per_K, row) * air_degC[row];
    flown.air_gains_J += dt_s * (of_room(drivers.air_W, row) + beside_W);
    flown.faces_gains_J += dt_s * of_room(drivers.faces_W, row);
    flown.sun_J += dt_s * of_room(drivers.floor_W_per_m2, row) * strip_m2[row];
    flown.floor_up_J += dt_s * of_room(drivers.floor_W_per_m2, row) * strip_m2[row];
    flown.light_J += dt_s * room.light_W_per_K * air_K;
    flown.more_J += dt_s * of_room(drivers.more_W_per_K, row) * air_K;
    flown.opaque_J += dt_s * room.opaque_W_per_K * faces_K;
  }
}

}  // namespace slabwright
