#include "conduction/time_freezing.hpp"

#include <algorithm>
#include <cmath>

#include "conduction/index.hpp"
#include "slabwright/contract.hpp"

namespace slabwright::conduction {
namespace {

constexpr std::size_t is_known = static_cast<std::size_t>(-1);

void expect_sound(const FreezingMaterial& freezing, const FieldSection& section) {
  expects(freezing.material < section.materials.size(), "conduction: no such material to freeze");
  expects(freezing.frozen_conductivity_W_per_mK > 0.0, "conduction: frozen conductivity must be above 0");
  expects(std::min(freezing.latent_J_per_m3, freezing.frozen_heat_capacity_J_per_m3K) >= 0.0,
          "conduction: latent heat and frozen heat capacity must not be below 0");
  expects(freezing.frozen_at_degC < freezing.thawed_at_degC, "conduction: a material freezes over a range");
}

}  // namespace

double frozen_share(const FreezingMaterial& freezing, double temperature_degC) {
  const double range_K = freezing.thawed_at_degC - freezing.frozen_at_degC;
  return std::clamp((freezing.thawed_at_degC - temperature_degC) / range_K, 0.0, 1.0);
}

HeatContent heat_content(const MaterialRectangle& thawed, const FreezingMaterial* freezing, double temperature_degC) {
  const double thawed_stores = thawed.heat_capacity_J_per_m3K;
  if (!freezing) return {thawed_stores * temperature_degC, thawed_stores};
  const double frozen_stores = freezing->frozen_heat_capacity_J_per_m3K;
  const double above_frozen_K = temperature_degC - freezing->frozen_at_degC;
  const double range_K = freezing->thawed_at_degC - freezing->frozen_at_degC;
  const double freezing_stores = freezing->latent_J_per_m3 / range_K + (thawed_stores + frozen_stores) / 2.0;
  if (above_frozen_K < 0.0) return {frozen_stores * above_frozen_K, frozen_stores};
  if (above_frozen_K < range_K) return {freezing_stores * above_frozen_K, freezing_stores};
  return {freezing_stores * range_K + thawed_stores * (above_frozen_K - range_K), thawed_stores};
}

double held_at_bends(const FreezingMaterial& freezing, double from_degC, double to_degC) {
  const double frozen = freezing.frozen_at_degC, thawed = freezing.thawed_at_degC;
  // Far enough over the bend to be on its other side, too little to matter.
  const double over_K = 1e-9 * (thawed - frozen);
  if (from_degC < frozen) return std::min(to_degC, frozen + over_K);
  if (from_degC < thawed) return std::clamp(to_degC, frozen - over_K, thawed + over_K);
  return std::max(to_degC, thawed - over_K);
}

FreezingField::FreezingField(const FieldSection& section, const std::vector<FieldPoint>& watched,
                             const std::vector<FreezingMaterial>& freezing, const FieldOptions& grid)
    : section_(section),
      watched_(watched),
      freezing_of_material_(section.materials.size(), nullptr),
      field_(time_field(section, watched, grid)),
      cell_material_(cell_materials(field_.grid, section.materials)) {
  for (const FreezingMaterial& row : freezing) {
    expect_sound(row, section);
    freezing_of_material_[row.material] = &row;
  }
  std::vector<std::size_t> unknown_of(field_.grid.nodes(), is_known);
  for (std::size_t u = 0; u < field_.assembly.unknown_nodes.size(); ++u)
    unknown_of[field_.assembly.unknown_nodes[u]] = u;
  for_each_quarter(field_.grid, [&](std::size_t cell, std::size_t node, double quarter_m2) {
    if (cell_material_[cell] != no_material && unknown_of[node] != is_known)
      parts_.push_back({unknown_of[node], cell_material_[cell], quarter_m2});
  });
}

Eigen::VectorXd FreezingField::contents(const Eigen::VectorXd& temperatures) const {
  Eigen::VectorXd contents = Eigen::VectorXd::Zero(temperatures.size());
  for (const auto& [unknown, material, area_m2] : parts_) {
    const double degC = temperatures(at(unknown));
    contents(at(unknown)) +=
        area_m2 * heat_content(section_.materials[material], freezing_of_material_[material], degC).content_J_per_m3;
  }
  return contents;
}

Eigen::VectorXd FreezingField::slopes(const Eigen::VectorXd& temperatures) const {
  Eigen::VectorXd slopes = Eigen::VectorXd::Zero(temperatures.size());
  for (const auto& [unknown, material, area_m2] : parts_) {
    const double degC = temperatures(at(unknown));
    slopes(at(unknown)) +=
        area_m2 * heat_content(section_.materials[material], freezing_of_material_[material], degC).slope_J_per_m3K;
  }
  return slopes;
}

Eigen::VectorXd FreezingField::held(const Eigen::VectorXd& from, Eigen::VectorXd to) const {
  for (const NodePart& part : parts_) {
    double& degC = to(at(part.unknown));
    if (const FreezingMaterial* freezing = freezing_of_material_[part.material])
      degC = held_at_bends(*freezing, from(at(part.unknown)), degC);
  }
  return to;
}

void FreezingField::conduct_as_at(const Eigen::VectorXd& temperatures, const Eigen::VectorXd& drivers) {
  Eigen::VectorXd by_node = field_.assembly.fixed_temperatures * drivers;
  for (std::size_t u = 0; u < field_.assembly.unknown_nodes.size(); ++u)
    by_node(at(field_.assembly.unknown_nodes[u])) = temperatures(at(u));
  std::vector<double> conductivity(field_.grid.conductivity_W_per_mK.size(), 0.0);
  for_each_quarter(field_.grid, [&](std::size_t cell, std::size_t node, double) {
    if (cell_material_[cell] == no_material) return;
    const double thawed = section_.materials[cell_material_[cell]].conductivity_W_per_mK;
    const FreezingMaterial* freezing = freezing_of_material_[cell_material_[cell]];
    const double frozen = freezing ? frozen_share(*freezing, by_node(at(node))) : 0.0;
    conductivity[cell] +=
        (freezing ? thawed + frozen * (freezing->frozen_conductivity_W_per_mK - thawed) : thawed) / 4.0;
  });
  if (conductivity == field_.grid.conductivity_W_per_mK) return;
  field_.grid.conductivity_W_per_mK = conductivity;
  field_.network = network_of(section_, field_.grid);
  field_.assembly = assemble(field_.network, section_.drivers.size());
  field_.outputs = output_map(field_.grid, field_.network, field_.assembly, watched_, section_.boundaries.size());
}

}  // namespace slabwright::conduction
