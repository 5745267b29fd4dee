// A shop mirrored, turned a quarter, or written in another order is the same shop.
#include <algorithm>

#include "slabwright/answer.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// A plan seen in a mirror: `to` moves each place, `turn` each direction.
template <class To, class Turn>
void move_plan(Design& design, const To& to, const Turn& turn) {
  const std::vector<PlanWall> walls = plan_walls(design);
  const auto move = [&](Place& place) { place = to(place); };
  const auto resolve = [&](PlanPlace& place) {
    const Point at = point_on_plan(walls, place).value();
    place = {to({at.x_m, at.y_m}), {}, {}, 0.0, 0.0};
  };
  for (Opening& opening : design.opening) {
    if (opening.place) resolve(*opening.place);
  }
  for (NoTubeEntry& area : design.no_tube) {
    if (area.place) resolve(*area.place);
    std::for_each(area.outline.begin(), area.outline.end(), move);
  }
  for (Manifold& manifold : design.manifold) {
    if (manifold.place) resolve(*manifold.place);
    manifold.facing = turn(manifold.facing);
  }
  for (Partition& wall : design.partition) move(wall.from), move(wall.to);
  for (Joint& joint : design.joint) move(joint.from), move(joint.to);
  for (Anchor& anchor : design.anchor) resolve(anchor.place);
  std::for_each(design.slab.outline.begin(), design.slab.outline.end(), move);
  for (Room& room : design.room) std::for_each(room.outline.begin(), room.outline.end(), move);
}

DesignFile mirrored(DesignFile file) {
  const double width_m = file.design.slab.size ? file.design.slab.size->width_m : 0.0;
  move_plan(
      file.design,
      [&](Place p) {
        return Place{width_m - p.x_m, p.y_m};
      },
      [](Facing f) { return f == Facing::left    ? Facing::right
                            : f == Facing::right ? Facing::left
                                                 : f; });
  return file;
}

void turn(std::optional<Size>& size) {
  if (size) std::swap(size->width_m, size->depth_m);
}

DesignFile turned(DesignFile file) {
  move_plan(
      file.design,
      [](Place p) {
        return Place{p.y_m, p.x_m};
      },
      [](Facing f) {
        switch (f) {
          case Facing::up: return Facing::right;
          case Facing::right: return Facing::up;
          case Facing::down: return Facing::left;
          case Facing::left: return Facing::down;
          default: return f;
        }
      });
  turn(file.design.slab.size);
  for (Room& room : file.design.room) turn(room.size);
  for (NoTubeEntry& area : file.design.no_tube) turn(area.size);
  return file;
}

/// Rows whose order says nothing: the first room and the first manifold are the ones that others name by leaving out.
DesignFile reordered(DesignFile file) {
  std::reverse(file.design.opening.begin(), file.design.opening.end());
  std::reverse(file.design.exhaust.begin(), file.design.exhaust.end());
  std::reverse(file.design.gains.begin(), file.design.gains.end());
  if (file.design.room.size() > 2) std::reverse(file.design.room.begin() + 1, file.design.room.end());
  return file;
}

void check_same(const Answer& one, const Answer& other) {
  // Sums in another order, and a supply temperature settled to 1e-4 K.
  constexpr double settled = 1e-5;
  // Port 1 is the nearest to the mains: in a mirror that is what was the last port, with another loop on it.
  const double along_bars = one.loops->drawing ? 2e-3 : settled;
  CHECK(other.verdict.kind == one.verdict.kind);
  CHECK(other.loops->tube_m == Approx(one.loops->tube_m).epsilon(settled));
  CHECK(other.envelope->loss_W == Approx(one.envelope->loss_W).epsilon(settled));
  CHECK(other.point->supply_degC == Approx(one.point->supply_degC).epsilon(along_bars));
  CHECK(other.sizes->boiler.wanted_W == Approx(one.sizes->boiler.wanted_W).epsilon(along_bars));
  CHECK(other.sizes->pump.head_m == Approx(one.sizes->pump.head_m).epsilon(one.loops->drawing ? 1e-2 : 1e-4));
  CHECK(other.freeze->slab->best_degC == Approx(one.freeze->slab->best_degC).epsilon(settled));
  CHECK(other.freeze->air->best_degC == Approx(one.freeze->air->best_degC).epsilon(settled));
  CHECK(other.freeze->place.size() == one.freeze->place.size());
}

}  // namespace

TEST_CASE("a shop mirrored, turned or written in another order is the same shop", "[whole]") {
  const Wishes wishes{Question::design, false};
  for (const Layout& layout : layouts()) {
    const Answer one = answer(layout.file, wishes);
    INFO(layout.name);
    {
      INFO("mirrored");
      check_same(one, answer(mirrored(layout.file), wishes));
    }
    {
      INFO("turned");
      check_same(one, answer(turned(layout.file), wishes));
    }
    {
      INFO("reordered");
      check_same(one, answer(reordered(layout.file), wishes));
    }
  }
}
