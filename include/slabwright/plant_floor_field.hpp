// The floor's surface everywhere in plan, for tube as it lies and water as it cools on its way.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/geometry_path.hpp"
#include "slabwright/plant.hpp"

namespace slabwright {

/// A loop as it lies, with what of it runs in a sleeve of foam at either end.
struct TubeOnFloor {
  Path path;  ///< from its supply port to its return port
  double sleeved_supply_m = 0.0, sleeved_return_m = 0.0;
};

/// A straight piece of the floor's rim where it is built one way, the floor to its left.
struct LaidEdge {
  Point from, to;
  ColdEdge cold;
};

struct LaidFloor {
  std::vector<TubeOnFloor> tube;  ///< a row for each loop of the plant
  std::vector<Polygon> apron;     ///< a row for each manifold, or none at all
  /// Of the section's lower side so much lies along them as they say, and the rest is spread evenly: with the tubes'
  /// plane at one temperature it is the same heat. All of it is spread where there are none.
  std::vector<LaidEdge> edge;
};

/// The slab's outline as edges: big doors where they have a place, outer walls elsewhere. Walls share the heat of all
/// outer walls by length. Empty where the slab has no outline.
std::vector<LaidEdge> laid_edges(const Design& design, const Envelope& envelope, EdgeFields& fields);

/// A sleeve for leaders: foam 9 mm thick of 0.04 W/mK, practice. What it adds to a metre of this tube.
double leader_sleeve_mK_per_W(double outside_diameter_m);

/// Square cells, a quarter of the spacing wide, wider where there would be more than 700 000; the outermost ring lies
/// off the floor. Cell (i, j), i along x, is number j * columns + i.
struct FloorRaster {
  Point corner;  ///< lower left of cell (0, 0)
  double cell_m = 0.0;
  std::size_t columns = 0, rows = 0;
  std::vector<int> room;  ///< row in Design::room; -1 where there is no floor
};

struct FloorSpot {
  double x_m = 0.0, y_m = 0.0;
  double surface_degC = 0.0;
};

/// How even a surface is. `spread` is the standard deviation over area, `span` the warmest less the coldest.
struct Evenness {
  double spread_K = 0.0, span_K = 0.0;
  /// Of means over squares a spacing (four cells) wide: without the stripes over each tube, what somebody may feel who
  /// walks.
  double wide_spread_K = 0.0, wide_span_K = 0.0;
};

struct RoomField {
  std::string room;
  double floor_m2 = 0.0;  ///< of its cells
  double up_W = 0.0;      ///< heat to the room
  double tube_m = 0.0;    ///< that truly lies under it, leaders included
  double tube_W = 0.0;    ///< heat that tube gives
  double mean_degC = 0.0;
  Evenness evenness;
  FloorSpot coldest, warmest;
};

struct LoopField {
  std::string name;
  double return_degC = 0.0;
  double heat_W = 0.0;
};

/// The floor before a manifold, where leaders spread.
struct ApronField {
  std::string manifold;
  double floor_m2 = 0.0, tube_m = 0.0;
  FloorSpot warmest;
  double limit_degC = 0.0;  ///< 29, where people stand (EN 1264-2)
  /// Where it is too warm: the least length of sleeve from its ports on that mends it, on each supply leader or on
  /// both, computed with the sleeves in place. Absent where it need not be, or where sleeves as long as the leaders do
  /// not do.
  std::optional<double> sleeve_m;
  bool sleeve_both = false;
  std::optional<double> sleeved_degC;  ///< its warmest place with them
};

/// Water gives up + down + cold. Where no edges are named what goes out there is in the section's lower side, spread
/// over the floor, and a cold strip along a bare edge or under a door is not seen.
struct FloorField {
  FloorRaster raster;
  std::vector<double> surface_degC;  ///< [cell], the floor's own face above any covering, between mats
  std::vector<double> wide_degC;     ///< [cell], its mean over a square a spacing wide
  double up_W = 0.0, down_W = 0.0, cold_W = 0.0, water_W = 0.0;
  std::vector<RoomField> room;  ///< a row for each Design::room
  std::vector<LoopField> loop;
  std::vector<ApronField> apron;
  FloorSpot coldest, warmest;
  double left_share = 0.0;  ///< of the solution; below 1e-9 where it was found
};

/// At the operating point's supply temperature and flows. The floor's film follows the heat of each place: the field is
/// solved with each room's mean film, then once more with those that its heat gives, which moves them by 1 % at most.
/// Said: an apron warmer than its limit, with the sleeves that mend it; a warmer place elsewhere; heat to the rooms
/// more than 5 % from the operating point's. Absent where no room and no slab has a shape, or loops and paths do not
/// fit.
Checked<FloorField> floor_field(const Plant& plant, const Conditions& conditions, const OperatingPoint& point,
                                const LaidFloor& laid);

Record record_of(FloorSpot&);
Record record_of(Evenness&);
Record record_of(RoomField&);
Record record_of(LoopField&);
Record record_of(ApronField&);
Record record_of(FloorField&);

}  // namespace slabwright
