// The slab, what lies under and round it, and the tube in it.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "design_words.hpp"
#include "fields.hpp"

namespace slabwright {

struct Slab {
  std::optional<Size> size;
  std::optional<double> area_m2;
  std::vector<Place> outline;
  double thickness_m = 0.0;
  std::optional<double> concrete_above_tube_m;  ///< from the slab's top to the top of the tube; mid-depth when absent
  std::optional<double> exposed_perimeter_m;    ///< edge that faces outdoors; all of it when absent
  double conductivity_W_per_mK = 0.0;
  Insulation covering;  ///< on top of the concrete
  friend bool operator==(const Slab&, const Slab&) = default;
};

struct FloorInsulation {
  Insulation under;
  friend bool operator==(const FloorInsulation&, const FloorInsulation&) = default;
};

struct Edge {
  Insulation insulation;  ///< board upright outside the slab's edge
  double depth_m = 0.0;   ///< from grade down
  Insulation door_strip;  ///< foam across the slab under a big door
  friend bool operator==(const Edge&, const Edge&) = default;
};

struct Tube {
  TubeName size;
  double spacing_m = 0.0;
  double from_walls_m = 0.0;
  double from_doors_m = 0.0;
  double leader_m = 0.0;                 ///< the run to the manifold, each way
  std::optional<double> longest_loop_m;  ///< leaders included; the tube table's when absent
  std::optional<double> roughness_m;     ///< the tube table's when absent
  std::optional<double> conductivity_W_per_mK;
  friend bool operator==(const Tube&, const Tube&) = default;
};

struct Manifold {
  std::string name;
  std::optional<double> loops_number;  ///< how many loops leave it, where that is all that is known
  std::optional<double> ports_number;  ///< loops and spares; as many as are needed and one spare when absent
  friend bool operator==(const Manifold&, const Manifold&) = default;
};

struct Mains {
  double length_m = 0.0;  ///< boiler to manifold, one way
  double inside_diameter_m = 0.0;
  friend bool operator==(const Mains&, const Mains&) = default;
};

/// One loop by its length, where it is known.
struct LoopEntry {
  std::string name;
  std::string room;
  std::string manifold;
  double length_m = 0.0;
  std::optional<Leaders> leaders;  ///< included in the length when absent
  friend bool operator==(const LoopEntry&, const LoopEntry&) = default;
};

Record record_of(Slab&);
Record record_of(FloorInsulation&);
Record record_of(Edge&);
Record record_of(Tube&);
Record record_of(Manifold&);
Record record_of(Mains&);
Record record_of(LoopEntry&);

}  // namespace slabwright
