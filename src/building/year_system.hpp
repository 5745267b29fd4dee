// Rooms at the end of a step: two temperatures each, air and inner faces, all of them at once.
#pragma once
#include <vector>

#include "slabwright/building_year.hpp"

namespace slabwright::building {

/// Mean heat upward through a step: fixed, per kelvin over the floor at its end, and per W/m2 of tube heat.
struct FloorFlow {
  double up_W = 0.0, up_W_per_K = 0.0, up_m2 = 0.0;
};

struct RoomStep {
  double to_air_share = 0.0;  ///< of what the floor gives; the rest goes to the faces
  double air_J_per_K = 0.0, faces_J_per_K = 0.0;
  double between_W_per_K = 0.0, air_out_W_per_K = 0.0, faces_out_W_per_K = 0.0;
  double air_W = 0.0, faces_W = 0.0;
  double beside_W_per_K = 0.0, beside_W = 0.0;
  double sun_on_floor_K = 0.0;
};

struct RoomsReached {
  std::vector<StepEnd> air, faces;  ///< [room]
};

struct YearSystem {
  std::vector<FloorFlow> floor;  ///< [room]
  std::vector<RoomStep> room;
  std::vector<ShopLink> link;
  std::size_t main = 0;
  RoomsReached solved;
  std::vector<double> air_degC, faces_degC;  ///< [room] room for the end of a step
  std::vector<double> matrix;                ///< [2 rooms x (2 rooms + 3)], worked on in place
};
YearSystem year_system(const YearShop& shop);

/// Trapezoidal: what is stored over the step is what flows by the mean of both ends, through the floor by its exact
/// mean. Fills `solved`.
void solve(YearSystem& system, const ShopState& from, const ShopDrivers& drivers, double dt_s);

}  // namespace slabwright::building
