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
  Insulation covering;                                  ///< on top of everything
  std::optional<double> topping_m = {};                 ///< screed or concrete poured over the slab
  std::optional<double> topping_conductivity_W_per_mK;  ///< settled where there is a topping
  std::optional<double> topping_above_tube_m;           ///< the tube lies in the topping, this far below its top
  std::optional<double> mats_share = {};                ///< of the floor that stands under pallets, benches or mats
  std::optional<Insulation> mat_insulation;             ///< settled where there are any
  std::optional<double> cure_s{};  ///< from the pour to the first heat, as the concrete's supplier says
  double daily_rise_K = 0.0;       ///< of the supply, a day of the first heating
  friend bool operator==(const Slab&, const Slab&) = default;
};

struct FloorInsulation {
  Insulation under;
  std::vector<Insulation> more_layers;       ///< below `under`, from the top down
  std::optional<double> wet_share = {};      ///< by which its conductivity has risen; dry when absent
  std::optional<double> crushed_share = {};  ///< of its thickness that is lost; none when absent
  friend bool operator==(const FloorInsulation&, const FloorInsulation&) = default;
};

/// Each board, wall and slab only where it is given; the sizes of one that is given are settled with it.
struct Edge {
  Insulation insulation;                                     ///< board upright outside the slab's edge
  double depth_m = 0.0;                                      ///< from the top of the slab down
  Insulation door_strip;                                     ///< foam across the slab under a big door
  std::optional<double> wet_share = {}, crushed_share = {};  ///< of all foam of the edge
  std::optional<double> floor_above_grade_m = {};            ///< flat when absent
  std::optional<double> stem_wall_m = {};                    ///< thickness; the wall stands on it
  std::optional<double> footing_depth_m = {};                ///< of the underside, below the floor
  std::optional<double> footing_width_m = {}, footing_thickness_m = {};
  std::optional<double> thickened_depth_m = {}, thickened_width_m = {};
  std::optional<Insulation> inside_insulation = {};  ///< upright between slab and stem wall
  std::optional<double> inside_depth_m = {};
  std::optional<Insulation> flat_insulation = {};  ///< under the slab's rim
  std::optional<double> flat_width_m = {};
  std::optional<Insulation> wing_insulation = {};  ///< flat in the ground outside
  std::optional<double> wing_width_m = {}, wing_depth_m = {};
  std::optional<double> apron_thickness_m = {}, apron_length_m = {};
  std::optional<Insulation> apron_gap = {};
  friend bool operator==(const Edge&, const Edge&) = default;
};

/// A rectangle of material at the edge, of the user's own.
struct EdgePartEntry {
  std::string where;  ///< "walls", or a big door's name; walls when empty
  double in_from_m = 0.0, in_to_m = 0.0;
  double depth_from_m = 0.0, depth_to_m = 0.0;
  std::string material;
  std::optional<double> conductivity_W_per_mK = {};
  friend bool operator==(const EdgePartEntry&, const EdgePartEntry&) = default;
};

/// Whether cells of tube are stretched to fill what lies between walls, or lie at the spacing asked for.
enum class TubeFit { stretched, exact };
/// Which way most tube runs: along the slab's longer side or its shorter one.
enum class Runs { as_they_fit, lengthwise, crosswise };
/// What loops have in common when they are balanced.
enum class BalanceBy { length, heat };

struct Tube {
  TubeName size;
  double spacing_m = 0.0;
  double from_walls_m = 0.0;
  double from_doors_m = 0.0;
  double leader_m = 0.0;                ///< the run to the manifold, each way, where loops are not drawn
  double tail_m = 0.0;                  ///< left over at each end of a loop, to work with at the manifold
  std::vector<CoilLength> coils{};      ///< as they are sold; the usual ones when empty
  std::optional<double> bend_radius_m;  ///< least, to the tube's centre line; the tube table's when absent
  TubeFit fit = TubeFit::stretched;
  BalanceBy balance_by = BalanceBy::length;
  Runs runs = Runs::as_they_fit;
  bool lay_rest = false;                 ///< loops with a path stay, and the floor they leave is laid
  std::optional<double> longest_loop_m;  ///< leaders included; the tube table's when absent
  std::optional<double> roughness_m;     ///< the tube table's when absent
  std::optional<double> conductivity_W_per_mK;
  friend bool operator==(const Tube&, const Tube&) = default;
};

/// Which way a manifold faces on the plan: into the floor.
enum class Facing { away_from_wall, up, down, left, right };

struct Manifold {
  std::string name;
  std::optional<PlanPlace> place;
  Facing facing = Facing::away_from_wall;
  double port_pitch_m = 0.0;
  std::optional<double> loops_number;  ///< how many loops leave it, where that is all that is known
  std::optional<double> ports_number;  ///< loops and spares; as many as are needed and one spare when absent
  bool reverse_return = false;         ///< the first loop on the supply bar is the last on the return bar
  friend bool operator==(const Manifold&, const Manifold&) = default;
};

/// How several manifolds hang on their mains: on mains of their own from the boiler; on common ones, the first manifold
/// the nearest on both; or so that the first on the supply is the last on the return.
enum class ReturnWay { each_its_own, direct, reverse };

struct Mains {
  double length_m = 0.0;  ///< boiler to manifold, one way
  double inside_diameter_m = 0.0;
  ReturnWay return_way = ReturnWay::each_its_own;
  std::optional<double> between_m;  ///< from manifold to manifold on common mains; `length_m` when absent
  friend bool operator==(const Mains&, const Mains&) = default;
};

/// One loop by its length, or by its path, where it is known.
struct LoopEntry {
  std::string name;
  std::string room;
  std::string manifold;
  double length_m = 0.0;           ///< measured along `path` where that is given
  std::optional<Leaders> leaders;  ///< included in the length when absent
  std::vector<Place> path{};       ///< as it lies or shall lie, from its supply port: corners, rounded by the tube
  bool shut = false;               ///< its zone valve
  friend bool operator==(const LoopEntry&, const LoopEntry&) = default;
};

Record record_of(Slab&);
Record record_of(FloorInsulation&);
Record record_of(Edge&);
Record record_of(EdgePartEntry&);
Record record_of(Tube&);
Record record_of(Manifold&);
Record record_of(Mains&);
Record record_of(LoopEntry&);

}  // namespace slabwright
