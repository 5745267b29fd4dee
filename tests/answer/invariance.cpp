// A shop mirrored, turned a quarter, or written in another order is the same shop.
#include <algorithm>

#include "slabwright/answer.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

void mirror(std::vector<Place>& outline) {
  for (Place& place : outline) place.x_m = -place.x_m;
}

void turn(std::vector<Place>& outline) {
  for (Place& place : outline) std::swap(place.x_m, place.y_m);
}

void turn(std::optional<Size>& size) {
  if (size) std::swap(size->width_m, size->depth_m);
}

DesignFile mirrored(DesignFile file) {
  mirror(file.design.slab.outline);
  for (Room& room : file.design.room) mirror(room.outline);
  return file;
}

DesignFile turned(DesignFile file) {
  turn(file.design.slab.outline);
  turn(file.design.slab.size);
  for (Room& room : file.design.room) {
    turn(room.outline);
    turn(room.size);
  }
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
  CHECK(other.verdict.kind == one.verdict.kind);
  CHECK(other.loops->tube_m == Approx(one.loops->tube_m).epsilon(settled));
  CHECK(other.envelope->loss_W == Approx(one.envelope->loss_W).epsilon(settled));
  CHECK(other.point->supply_degC == Approx(one.point->supply_degC).epsilon(settled));
  CHECK(other.sizes->boiler.wanted_W == Approx(one.sizes->boiler.wanted_W).epsilon(settled));
  CHECK(other.sizes->pump.head_m == Approx(one.sizes->pump.head_m).epsilon(1e-4));
  CHECK(other.freeze->slab_degC == Approx(one.freeze->slab_degC).epsilon(settled));
  CHECK(other.freeze->air_degC == Approx(one.freeze->air_degC).epsilon(settled));
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
