// What freezing materials store and pass on, by temperature.
#pragma once
#include <Eigen/Dense>
#include <optional>
#include <vector>

#include "conduction/time_field.hpp"
#include "slabwright/conduction_time.hpp"

namespace slabwright::conduction {

/// J/m3 above the frozen end of the range (above 0 degC where nothing freezes), and its slope J/(m3 K).
struct HeatContent {
  double content_J_per_m3, slope_J_per_m3K;
};
/// The share that is frozen, 0 to 1.
double frozen_share(const FreezingMaterial& freezing, double temperature_degC);
HeatContent heat_content(const MaterialRectangle& thawed, const FreezingMaterial* freezing, double temperature_degC);
/// A step from one temperature toward another may not leap over an end of the range: heat content bends there.
double held_at_bends(const FreezingMaterial& freezing, double from_degC, double to_degC);

/// The parts of a node that store heat.
struct NodePart {
  std::size_t unknown, material;
  double area_m2;
};

class FreezingField {
 public:
  FreezingField(const FieldSection& section, const std::vector<FieldPoint>& watched,
                const std::vector<FreezingMaterial>& freezing, const FieldOptions& grid);

  const TimeField& field() const { return field_; }
  /// [unknown], J/m
  Eigen::VectorXd contents(const Eigen::VectorXd& temperatures) const;
  /// [unknown], J/(m K)
  Eigen::VectorXd slopes(const Eigen::VectorXd& temperatures) const;
  Eigen::VectorXd held(const Eigen::VectorXd& from, Eigen::VectorXd to) const;
  /// Cells conduct as the mean of their four nodes is frozen.
  void conduct_as_at(const Eigen::VectorXd& temperatures, const Eigen::VectorXd& drivers);

 private:
  const FieldSection& section_;
  const std::vector<FieldPoint>& watched_;
  std::vector<const FreezingMaterial*> freezing_of_material_;
  TimeField field_;
  std::vector<NodePart> parts_;
  std::vector<std::size_t> cell_material_;
};

}  // namespace slabwright::conduction
