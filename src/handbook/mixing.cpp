#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/handbook_mixing.hpp"

namespace slabwright {

std::optional<double> mixing_share(double supply_degC, double return_degC, double boiler_degC) {
  if (!(return_degC < boiler_degC) || !(supply_degC >= return_degC) || !(supply_degC <= boiler_degC))
    return std::nullopt;
  return (supply_degC - return_degC) / (boiler_degC - return_degC);
}

Separated separate(const Separator& s) {
  expects(s.boiler_kg_per_s > 0.0 && s.floor_kg_per_s > 0.0, "a separator needs flow on both sides");
  const auto mixed = [](double part_kg_per_s, double part_degC, double whole_kg_per_s, double rest_degC) {
    return (part_kg_per_s * part_degC + (whole_kg_per_s - part_kg_per_s) * rest_degC) / whole_kg_per_s;
  };
  Separated out{s.boiler_supply_degC, s.floor_return_degC};
  if (s.boiler_kg_per_s < s.floor_kg_per_s)
    out.floor_supply_degC = mixed(s.boiler_kg_per_s, s.boiler_supply_degC, s.floor_kg_per_s, s.floor_return_degC);
  else
    out.boiler_return_degC = mixed(s.floor_kg_per_s, s.floor_return_degC, s.boiler_kg_per_s, s.boiler_supply_degC);
  return out;
}

double run_end_degC(double in_degC, double around_degC, double loss_W_per_K, double capacity_W_per_K) {
  expects(loss_W_per_K >= 0.0 && capacity_W_per_K >= 0.0, "a loss or a flow below zero");
  if (capacity_W_per_K == 0.0) return around_degC;
  return around_degC + (in_degC - around_degC) * std::exp(-loss_W_per_K / capacity_W_per_K);
}

}  // namespace slabwright
