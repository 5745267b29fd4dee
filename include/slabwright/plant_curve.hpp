// What the plant makes of its supply temperature: operating points as a table, for those that need thousands of them.
#pragma once
#include <vector>

#include "slabwright/plant.hpp"

namespace slabwright {

/// An operating point under steady rooms.
struct WaterRow {
  double supply_degC = 0.0, return_degC = 0.0;
  double flow_m3_per_s = 0.0;
  double up_W = 0.0, water_W = 0.0;
};

/// Rows by rising supply, all of them reached; empty where the plant gives no heat.
struct WaterCurve {
  double room_degC = 0.0;  ///< mean of the rooms, by the heat their floors give
  std::vector<WaterRow> row;
};

/// From operate() at supplies from little above the rooms to the hottest water; five rows, as heat is nearly straight
/// in the supply and only the water's viscosity bends it.
WaterCurve curve_of(const Plant& plant, const Conditions& conditions, double hottest_degC);

}  // namespace slabwright
