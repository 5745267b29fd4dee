// Joints: where tube passes them, how often, and that nothing lies along them.
#include "drawn_floors.hpp"
#include "routing/joints.hpp"
#include "routing/remarks_layout.hpp"
#include "routing/tree.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::routing;
using namespace floors;

namespace {

JointLine joint(double x0_ft, double y0_ft, double x1_ft, double y1_ft) {
  return {{x0_ft * foot_m, y0_ft * foot_m}, {x1_ft * foot_m, y1_ft * foot_m}};
}

LayoutTask task_40x28() { return task_on(in_feet({{0, 0}, {40, 0}, {40, 28}, {0, 28}}), {20, 0}, {0, 1}); }

std::size_t listed(const TubeLayout& layout) {
  std::size_t sum = 0;
  for (const LaidLoop& loop : layout.loop) sum += loop.crossing.size();
  return sum;
}

}  // namespace

TEST_CASE("crossings of lines and arcs with joints are found where they are") {
  // Along x to 4, a half turn of radius 1 to the left, and back; derived by hand.
  const Path path{line({0, 0}, {4, 0}), arc({4, 0}, {4, 2}, {4, 1}, Side::left), line({4, 2}, {0, 2})};
  const auto at_1 = crossings_of(path, {{{1, -1}, {1, 3}}});
  REQUIRE(at_1.size() == 2);
  CHECK(at_1[0].place == Point{1, 0});
  CHECK(at_1[0].at_m == Approx(1.0));
  CHECK(at_1[1].place == Point{1, 2});
  CHECK(at_1[1].at_m == Approx(4.0 + 3.14159265358979 + 3.0));
  // Through the arc at half a radius beyond its centre: 30 degrees before and after the middle of it.
  const auto in_arc = crossings_of(path, {{{4.5, -1}, {4.5, 3}}});
  REQUIRE(in_arc.size() == 2);
  CHECK(in_arc[0].at_m == Approx(4.0 + 3.14159265358979 / 6.0));
  CHECK(in_arc[1].at_m == Approx(4.0 + 3.14159265358979 * 5.0 / 6.0));
  CHECK(in_arc[1].place.y_m == Approx(1.0 + std::sqrt(0.75)));
  // Where pieces join it passes once; where it only touches, or the joint ends before it, not at all.
  CHECK(crossings_of(path, {{{4, -1}, {4, 3}}}).size() == 2);
  CHECK(crossings_of(path, {{{5, -1}, {5, 3}}}).empty());
  CHECK(crossings_of(path, {{{1, 0.5}, {1, 1.5}}}).empty());
  CHECK(crossings_of(path, {{{1, 0.5}, {1, 3}}, {{3, -1}, {3, 1}}}).size() == 2);
  CHECK(crossings_of(path, {{{1, 0.5}, {1, 3}}, {{3, -1}, {3, 1}}})[0].joint == 1);
}

TEST_CASE("a tube that lies along a joint keeps 2 in off it; one that crosses need not") {
  const JointLine here = joint(0, 10, 20, 10);
  CHECK(lies_along(here, {1.0, 10 * foot_m + 0.05}, {2.0, 10 * foot_m + 0.05}));
  CHECK_FALSE(lies_along(here, {1.0, 10 * foot_m + 0.052}, {2.0, 10 * foot_m + 0.052}));
  CHECK_FALSE(lies_along(here, {1.0, 9 * foot_m}, {1.0, 11 * foot_m}));
}

TEST_CASE("joints are crossed seldom and square, wherever they lie; each crossing is listed") {
  const LayoutTask plain = task_40x28();
  for (const double at_ft : {7.0, 11.3, 13.6, 26.7, 31.9}) {
    CAPTURE(at_ft);
    LayoutTask task = plain;
    task.joint = {joint(at_ft, 0, at_ft, 28)};
    const auto laid = lay_tube(task);
    REQUIRE(laid);
    const LayoutCheck check = check_layout(task, *laid.value);
    CHECK(check.sound());
    CHECK(check.spread_ratio <= 0.05);
    // A loop that lives on both sides passes twice; one that goes out and comes back elsewhere, four times.
    CHECK(check.most_crossings_number <= 4);
    CHECK(check.joint_crossings_number <= 8);
    CHECK(check.slanted_crossings_number == 0);
    CHECK(check.along_joint_m == 0.0);
    CHECK(listed(*laid.value) == static_cast<std::size_t>(check.joint_crossings_number));
    for (const LaidLoop& loop : laid.value->loop) {
      for (const JointCrossing& crossing : loop.crossing) {
        CHECK(crossing.place.x_m == Approx(at_ft * foot_m).margin(1e-6));
        CHECK(distance_m(point_at(loop.path, crossing.at_m), crossing.place) < 1e-6);
      }
    }
    const LayoutCheck unaware = check_layout(task, *lay_tube(plain).value);
    CHECK(check.joint_crossings_number <= unaware.joint_crossings_number);
  }
}

TEST_CASE("joints both ways, and one on a slant") {
  LayoutTask task = task_40x28();
  task.joint = {joint(13.4, 0, 13.4, 28), joint(26.6, 0, 26.6, 28), joint(0, 14, 40, 14)};
  auto laid = lay_tube(task);
  REQUIRE(laid);
  LayoutCheck check = check_layout(task, *laid.value);
  CHECK(check.sound());
  CHECK(listed(*laid.value) == static_cast<std::size_t>(check.joint_crossings_number));
  CHECK(check.along_joint_m == 0.0);
  task.joint = {joint(0, 20, 20, 28)};
  laid = lay_tube(task);
  REQUIRE(laid);
  check = check_layout(task, *laid.value);
  CHECK(check.sound());
  CHECK(listed(*laid.value) == static_cast<std::size_t>(check.joint_crossings_number));
  CHECK(std::any_of(laid.said.begin(), laid.said.end(),
                    [](const Diagnostic& d) { return d.code == "layout.joints" && d.severity == Severity::note; }));
}

TEST_CASE("what is said of crossed joints has no clause about none") {
  const auto words = [](int crossings, int slanted) {
    LayoutCheck check;
    check.joint_crossings_number = crossings;
    check.most_crossings_number = std::min(crossings, 2);
    check.slanted_crossings_number = slanted;
    const auto said = notes_on_lie(task_40x28(), check);
    return said.empty() ? std::string{} : say(said.front(), System::us);
  };
  CHECK(words(0, 0).empty());
  CHECK(words(1, 0) == "tube crosses a joint in one place. It needs a sleeve");
  CHECK(words(1, 1) == "tube crosses a joint in one place, more than 10 degrees off square. It needs a sleeve");
  CHECK(words(6, 0) == "tube crosses joints in 6 places, at most 2 of one loop. Each needs a sleeve");
  CHECK(words(6, 2) ==
        "tube crosses joints in 6 places, at most 2 of one loop; 2 of them more than 10 degrees off square. Each needs "
        "a sleeve");
}

TEST_CASE("the check of joints sees what lies along them and what passes aslant") {
  LayoutTask task = task_40x28();
  const auto laid = lay_tube(task);
  REQUIRE(laid);
  const double tube_m = cells_of(seen_from_manifold(task), Fit{}).tube_x_m[4] + 20 * foot_m;
  task.joint = {{{tube_m + 0.02, 0.0}, {tube_m + 0.02, 28 * foot_m}}};
  CHECK(check_layout(task, *laid.value).along_joint_m > 1.0);
  task.joint = {joint(0, 0, 28, 28)};
  const LayoutCheck check = check_layout(task, *laid.value);
  CHECK(check.slanted_crossings_number > 10);
  CHECK(check.slanted_crossings_number <= check.joint_crossings_number);
}
