// Where else a machine could stand.
#include <cmath>

#include "floor.hpp"
#include "slabwright/sitework_drill.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double inch = 0.0254;
DrawnTube usual_floor() { return {{to_and_fro(12, 6.0, 12.0 * inch)}, 0.625 * inch, 2.0 * inch}; }
const TubeDoubt doubt{usual_placing(System::us), {}};

/// A plate with a hole at each corner, about a place.
AnchorPattern plate(Point middle, double width, double depth) {
  return {{{middle.x_m - width / 2, middle.y_m - depth / 2},
           {middle.x_m + width / 2, middle.y_m - depth / 2},
           {middle.x_m + width / 2, middle.y_m + depth / 2},
           {middle.x_m - width / 2, middle.y_m + depth / 2}},
          0.5 * inch,
          3.5 * inch};
}

}  // namespace

TEST_CASE("four holes strike no more often together than one by one") {
  const PatternReading reading = read_pattern(usual_floor(), doubt, plate({3.0, 0.3}, 0.25, 0.2));
  REQUIRE(reading.hole.size() == 4);
  double sum = 0.0, none = 1.0;
  for (const HoleReading& hole : reading.hole) {
    sum += hole.strike_share;
    none *= 1.0 - hole.strike_share;
  }
  CHECK(reading.strike_share == Approx(std::min(sum, 1.0)));
  CHECK(reading.strike_share >= 1.0 - none);
}

TEST_CASE("a plate over tube moves square off it, as far as it must and no farther") {
  const DrawnTube tube = usual_floor();
  // Holes 10 in apart along the rows, 12 in across: two of them on one row, two on the next.
  const AnchorPattern pattern = plate({3.0, 18.0 * inch}, 10.0 * inch, 12.0 * inch);
  CHECK(read_pattern(tube, doubt, pattern).word == Drilling::do_not_drill);
  const PatternMove move = least_risk_move(tube, doubt, pattern, {6.0 * inch, 0.25 * inch, 0.0});
  CHECK(move.clear);
  CHECK(move.shift.x_m == 0.0);
  CHECK(move.moved_m == Approx(std::abs(move.shift.y_m)));
  CHECK(move.turn_deg == 0.0);
  AnchorPattern there = pattern;
  there.hole = move.hole;
  CHECK(read_pattern(tube, doubt, there).word == Drilling::likely_clear);
  CHECK(read_pattern(tube, doubt, there).strike_share == Approx(move.strike_share));
  // A quarter of an inch less is not enough.
  for (Point& hole : there.hole) hole.y_m -= 0.25 * inch * (move.shift.y_m > 0.0 ? 1.0 : -1.0);
  CHECK(read_pattern(tube, doubt, there).word != Drilling::likely_clear);
}

TEST_CASE("a plate that is clear stays, and one that cannot be is moved to the least chance") {
  const DrawnTube tube = usual_floor();
  const AnchorPattern clear = plate({3.0, 12.0 * inch}, 10.0 * inch, 12.0 * inch);
  const PatternMove stays = least_risk_move(tube, doubt, clear, {6.0 * inch, 0.25 * inch, 0.0});
  CHECK(stays.moved_m == 0.0);
  CHECK(stays.clear);
  const AnchorPattern over = plate({3.0, 18.25 * inch}, 10.0 * inch, 12.0 * inch);
  const PatternMove least = least_risk_move(tube, doubt, over, {1.0 * inch, 0.25 * inch, 0.0});
  CHECK_FALSE(least.clear);
  CHECK(least.shift.y_m == Approx(1.0 * inch));
  CHECK(least.shift.x_m == 0.0);
  CHECK(least.strike_share < read_pattern(tube, doubt, over).strike_share);
}

TEST_CASE("a turn helps where no shift can") {
  const DrawnTube tube = usual_floor();
  // A long plate whose holes lie 6 in apart across the rows: each shift that clears one side brings the other near.
  const AnchorPattern pattern = plate({3.0, 18.0 * inch}, 48.0 * inch, 6.0 * inch);
  const MoveLimits shifts{3.0 * inch, 0.5 * inch, 0.0}, turns{3.0 * inch, 0.5 * inch, 8.0};
  const PatternMove shifted = least_risk_move(tube, doubt, pattern, shifts);
  const PatternMove turned = least_risk_move(tube, doubt, pattern, turns);
  CHECK(turned.moved_m <= shifted.moved_m + 1e-12);
  CHECK((turned.clear || turned.strike_share <= shifted.strike_share));
}

TEST_CASE("the same floor the other way round moves the plate the other way round") {
  const DrawnTube tube = usual_floor();
  DrawnTube mirrored = tube;
  for (Path& path : mirrored.loop) {
    for (Piece& piece : path) {
      for (Point* p : {&piece.from, &piece.to, &piece.centre}) p->y_m = -p->y_m;
      if (piece.turn != Side::on) piece.turn = piece.turn == Side::left ? Side::right : Side::left;
    }
  }
  AnchorPattern pattern = plate({3.0, 17.0 * inch}, 10.0 * inch, 12.0 * inch), below = pattern;
  for (Point& hole : below.hole) hole.y_m = -hole.y_m;
  const MoveLimits limits{6.0 * inch, 0.25 * inch, 0.0};
  const PatternMove up = least_risk_move(tube, doubt, pattern, limits);
  const PatternMove down = least_risk_move(mirrored, doubt, below, limits);
  CHECK(up.shift.y_m == Approx(-down.shift.y_m));
  CHECK(up.strike_share == Approx(down.strike_share));
}
