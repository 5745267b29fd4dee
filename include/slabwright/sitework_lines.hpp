// The tube of drawn loops as lines and arcs, for programs that go on from there.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/routing.hpp"

namespace slabwright {

/// A straight line, or an arc of less than a full turn about its centre.
struct LaidPiece {
  double from_x_m = 0.0, from_y_m = 0.0;
  double to_x_m = 0.0, to_y_m = 0.0;
  std::optional<double> radius_m;  ///< of an arc, as are the next three
  std::optional<double> centre_x_m, centre_y_m;
  std::string turn;  ///< "left" or "right" on the way from its beginning; empty: straight
};

struct LaidCrossing {
  std::string joint;
  double x_m = 0.0, y_m = 0.0;
  double at_m = 0.0;  ///< from the supply port
};

/// From its supply port to its return port.
struct LaidLoopLines {
  std::string loop;
  std::vector<LaidPiece> piece;
  std::vector<LaidCrossing> crossing;
};

struct LaidCorner {
  double x_m = 0.0, y_m = 0.0;
};

/// Floor before a manifold where leaders spread.
struct LaidApron {
  std::string manifold;
  std::vector<LaidCorner> corner;
};

/// Metres on the floor, x to the right and y up from the form's lower left corner.
struct LaidLines {
  std::vector<LaidLoopLines> loop;
  std::vector<LaidApron> apron;
};

/// Absent where loops are not drawn, all of them.
std::optional<LaidLines> laid_lines(const Design& design, const LoopPlan& plan);

/// A piece again, for programs of our own and for tests.
Piece piece_of(const LaidPiece& piece);

Record record_of(LaidPiece&);
Record record_of(LaidCrossing&);
Record record_of(LaidLoopLines&);
Record record_of(LaidCorner&);
Record record_of(LaidApron&);
Record record_of(LaidLines&);

}  // namespace slabwright
