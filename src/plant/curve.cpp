#include "slabwright/plant_curve.hpp"

#include <algorithm>

namespace slabwright {
namespace {

constexpr std::size_t rows = 5;
/// Less than this over the warmest room, and heat is a matter of rounding.
constexpr double least_rise_K = 4.0;

}  // namespace

WaterCurve curve_of(const Plant& plant, const Conditions& conditions, double hottest_degC) {
  WaterCurve curve;
  if (!plant.floor || conditions.room_degC.empty()) return curve;
  const double warmest_degC = *std::max_element(conditions.room_degC.begin(), conditions.room_degC.end());
  const double from_degC = warmest_degC + least_rise_K, to_degC = std::max(hottest_degC, from_degC + least_rise_K);
  OperatingPoint last;
  for (std::size_t i = 0; i < rows; ++i) {
    const double supply_degC = from_degC + (to_degC - from_degC) * static_cast<double>(i) / (rows - 1.0);
    last = operate(plant, conditions, supply_degC, i > 0 ? &last : nullptr);
    if (last.stop != Stop::converged) continue;
    curve.row.push_back({supply_degC, last.return_degC, last.flow_m3_per_s, last.up_W, last.water_W});
  }
  double up_W = 0.0;
  for (std::size_t room = 0; room < last.room_up_W.size(); ++room) {
    curve.room_degC += last.room_up_W[room] * conditions.room_degC[room];
    up_W += last.room_up_W[room];
  }
  curve.room_degC = up_W > 0.0 ? curve.room_degC / up_W : warmest_degC;
  return curve;
}

}  // namespace slabwright
