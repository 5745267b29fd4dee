// What slabs, grounds, insulations, coverings and tubes are made of; each figure with where it comes from.
#pragma once
#include <array>
#include <span>
#include <string_view>

namespace slabwright {

/// A solid. `source` is "practice", "from memory" or the name of a source.
struct Material {
  std::string_view name;
  double conductivity_W_per_mK = 0.0;
  double density_kg_per_m3 = 0.0;
  double heat_J_per_kgK = 0.0;
  std::string_view source;
  std::array<std::string_view, 4> also;  ///< other words for it
};

std::span<const Material> concretes();
std::span<const Material> insulations();
/// EN 1264-2 Annex D and US practice; density and heat are not given (0).
std::span<const Material> tube_materials();

/// An insulation by its name alone ("XPS", "glass wool", "EPS type IX"): the reader has taken the thickness off.
/// Case, spaces, hyphens and points do not count. Null where the name is unknown.
const Material* find_insulation(std::string_view name);

/// A ground; ISO 13370 groups them by three.
struct Soil {
  std::string_view name;
  double conductivity_W_per_mK = 0.0;
  double volumetric_J_per_m3K = 0.0;
  double penetration_m = 0.0;  ///< delta as the standard's table rounds it
  std::string_view source;
};
std::span<const Soil> soils();
const Soil* find_soil(std::string_view name);

/// A floor covering with its usual resistance, for a file that names it without one.
struct Covering {
  std::string_view name;
  double layer_m2K_per_W = 0.0;
  std::string_view source;
};
std::span<const Covering> coverings();
const Covering* find_covering(std::string_view name);

}  // namespace slabwright
