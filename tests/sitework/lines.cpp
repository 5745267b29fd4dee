// Paths as rows for programs: nothing of the tube is lost on the way out and back.
#include "slabwright/sitework_lines.hpp"

#include "slabwright/fields.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

TEST_CASE("lines and arcs read back are the loops, to their length and their ends") {
  const Design design = test::layout("county-garage").file.design;
  LaidBefore before;
  const LoopPlan plan = plan_loops(design, &before).value.value();
  const LaidLines lines = laid_lines(design, plan).value();
  REQUIRE(lines.loop.size() == plan.loop.size());
  std::size_t crossings = 0;
  for (std::size_t i = 0; i < lines.loop.size(); ++i) {
    Path path;
    for (const LaidPiece& piece : lines.loop[i].piece) path.push_back(piece_of(piece));
    CHECK(lines.loop[i].loop == plan.loop[i].name);
    CHECK(length_m(path) == Approx(plan.loop[i].length_m));
    REQUIRE(path.size() == plan.loop[i].path->size());
    for (std::size_t k = 0; k < path.size(); ++k) {
      const Piece& own = (*plan.loop[i].path)[k];
      CHECK((path[k].from == own.from && path[k].to == own.to && path[k].turn == own.turn));
    }
    for (const LaidCrossing& at : lines.loop[i].crossing) {
      CHECK(distance_m(point_at(path, at.at_m), {at.x_m, at.y_m}) < 1e-3);
      CHECK_FALSE(at.joint.empty());
    }
    crossings += lines.loop[i].crossing.size();
  }
  CHECK(crossings > 0);
  REQUIRE(lines.apron.size() == design.manifold.size());
  for (const LaidApron& apron : lines.apron) CHECK(apron.corner.size() >= 3);
}

TEST_CASE("a straight piece has no radius and no centre") {
  LaidLines lines;
  lines.loop = {{"1", {{0.0, 0.0, 1.0, 0.0, {}, {}, {}, ""}, {1.0, 0.0, 1.0, 1.0, 0.5, 1.0, 0.5, "left"}}, {}}};
  std::vector<std::string> given;
  walk(reading(lines), [&](const std::string& path, const Key& key, const Slot& slot) {
    const auto* maybe = std::get_if<MaybeNumber>(&slot);
    if (maybe && maybe->at->has_value() && key.member == "radius_m") given.push_back(path);
  });
  CHECK(given == std::vector<std::string>{"loop[1].piece[2].radius"});
  CHECK(length_m(piece_of(lines.loop[0].piece[0])) == Approx(1.0));
  CHECK(length_m(piece_of(lines.loop[0].piece[1])) == Approx(3.14159265 * 0.5));
}

TEST_CASE("loops known by their lengths have no lines") {
  const Design design = test::from_keys({{"slab.area", "1080 sq ft"}}).design;
  CHECK_FALSE(laid_lines(design, plan_loops(design).value.value()));
}
