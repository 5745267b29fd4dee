// How well it is known where the tube lies: what practice says of tube tied down and poured over, and what was measured
// later. Numbers in, numbers out: nothing here knows a design. Metres; x to the right, y up.
#pragma once
#include <optional>
#include <vector>

#include "slabwright/geometry_path.hpp"
#include "slabwright/units.hpp"

namespace slabwright {

/// How far tube lies from where it is drawn, as standard deviations.
struct Placing {
  double sideways_m = 0.0;  ///< on the plan, in any direction
  double depth_m = 0.0;     ///< of the concrete above it
};

/// Practice: of tube tied to mesh 19 of 20 places lie within 1.5 in or 40 mm of the drawing, and within 0.5 in or 12 mm
/// of its depth. Half of that is one standard deviation.
Placing usual_placing(System system);

/// A place where tube was found.
struct FoundPoint {
  Point place;
  std::optional<Point> drawn;  ///< the same spot of tube on the drawing, where it can be told, as a turn's end can
};

struct RefitOptions {
  double measured_m = 0.012;   ///< standard deviation of a measured place; practice
  double fades_m = 1.0;        ///< what one place tells of another is e^-1/2 of it this far away; practice
  double strange_ratio = 3.5;  ///< a place this many standard deviations from what the others say is left out
};

/// What became of one measured place.
struct FoundTube {
  Point place;
  Point drawn;            ///< the nearest tube of the drawing, or the spot given
  double off_m = 0.0;     ///< between the two
  double left_m = 0.0;    ///< what the re-fitted drawing is still off there, square to the tube
  bool left_out = false;  ///< does not fit the others
};

/// One thing that a measured place says: the tube at `drawn` lies `off_m` from the drawing in a direction.
struct Sighting {
  Point drawn;
  Point direction;  ///< of length 1
  double off_m = 0.0;
};

/// A drawing laid over what was found. The tube's displacement is taken as a normal field: a shift and a small turn of
/// the whole (standard deviation `sideways_m` each, the turn at the tube's mean distance from its middle) and a local
/// part of standard deviation `sideways_m` that fades as exp(-r^2 / 2 fades^2). The estimate is the least squares of
/// both together; with the field's covariance K, its weights are K^-1 off.
struct Refit {
  Placing usual;
  RefitOptions options;
  Point middle;             ///< the turn is about this point
  double mean_arm_m = 1.0;  ///< of the tube from its middle
  Point shift;              ///< of the whole drawing
  double turn_deg = 0.0;    ///< of the whole drawing, counter-clockwise
  std::vector<FoundTube> found;
  std::vector<Sighting> sighting;                   ///< of the places that fit
  std::vector<double> weight_per_m;                 ///< one for each sighting
  std::vector<std::vector<double>> inverse_per_m2;  ///< of the sightings' covariance
};

/// Lays the drawing over the places found, nearest tube first, three times over. Where there are three places or more,
/// those that the others speak against are left out one by one, at most a quarter of them and one at least: measure
/// them again. Asks for a path with a piece and a place at least.
Refit refit(const std::vector<Path>& loops, const Placing& usual, const std::vector<FoundPoint>& found,
            const RefitOptions& options = {});

/// What is known of where the tube lies.
struct TubeDoubt {
  Placing usual;
  std::optional<Refit> refit;
};

/// By how much the drawing is moved here: nothing where nothing was measured.
Point displacement_at(const TubeDoubt& doubt, Point place);

/// The standard deviation of tube here in a direction of length 1. No more than `usual.sideways_m`, but near a measured
/// place that was left out.
double sideways_at_m(const TubeDoubt& doubt, Point place, Point direction);

}  // namespace slabwright
