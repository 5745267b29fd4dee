// Where two waters meet, and how water cools along a loop.
#pragma once
#include <optional>

namespace slabwright {

/// The share of boiler water in the floor's supply: (supply - return) / (boiler - return).
/// Absent unless return < boiler and the supply lies between them.
std::optional<double> mixing_share(double supply_degC, double return_degC, double boiler_degC);

/// Flows and incoming temperatures of a hydraulic separator (or closely spaced tees).
struct Separator {
  double boiler_kg_per_s = 0.0;
  double floor_kg_per_s = 0.0;
  double boiler_supply_degC = 0.0;
  double floor_return_degC = 0.0;
};
struct Separated {
  double floor_supply_degC = 0.0;
  double boiler_return_degC = 0.0;
};
/// The larger flow takes part of the other side's water back; both flows positive. No heat is lost.
Separated separate(const Separator&);

/// Temperature at the end of a run in surroundings of one temperature: e + (in - e) exp(-UA / (m c)).
/// `capacity_W_per_K` is m c; no flow comes out at the surroundings' temperature.
double run_end_degC(double in_degC, double around_degC, double loss_W_per_K, double capacity_W_per_K);

}  // namespace slabwright
