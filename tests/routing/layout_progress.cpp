// What laying tube tells of how far it is.
#include <algorithm>
#include <vector>

#include "drawn_floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace floors;

namespace {

Polygon rect(double w, double d) { return in_feet({{0, 0}, {w, 0}, {w, d}, {0, d}}); }

PortRow row(double x_ft, double y_ft, Point facing) {
  return {{x_ft * foot_m, y_ft * foot_m}, facing, 30, 2.0 * inch_m};
}

/// One manifold; one that is refused; three; a drawn loop and the rest.
std::vector<LayoutTask> tasks() {
  std::vector<LayoutTask> all{task_on(rect(40, 28), {20, 0}, {0, 1}), task_on(rect(40, 28), {20, 0}, {0, 1})};
  all[1].manifold.front().loops_number = 1;
  all.push_back(task_on(rect(90, 40), {20, 0}, {0, 1}));
  all[2].manifold = {row(15, 0, {0, 1}), row(45, 40, {0, -1}), row(75, 0, {0, 1})};
  all.push_back(task_on(rect(40, 28), {20, 0}, {0, 1}));
  const double y = 14.0 * foot_m, x = 20.0 * foot_m, h = inch_m;
  all[3].drawn = {{0, {{x - h, 0.0}, {x - h, y}, {x - 13.0 * h, y}, {x - 13.0 * h, 0.0}}, false}};
  return all;
}

bool same(const Checked<TubeLayout>& a, const Checked<TubeLayout>& b) {
  if (a.value.has_value() != b.value.has_value() || a.said.size() != b.said.size()) return false;
  if (!a) return true;
  const auto length = [](const LaidLoop& one, const LaidLoop& other) { return one.length_m == other.length_m; };
  return std::equal(a.value->loop.begin(), a.value->loop.end(), b.value->loop.begin(), b.value->loop.end(), length);
}

void check_shares(const std::vector<double>& told) {
  REQUIRE_FALSE(told.empty());
  CHECK(std::is_sorted(told.begin(), told.end()));
  CHECK(told.front() >= 0.0);
  CHECK(told.back() == 1.0);
}

}  // namespace

TEST_CASE("laying tube tells how far it is, never less than before, and changes nothing by it") {
  std::size_t most = 0;
  for (const LayoutTask& task : tasks()) {
    std::vector<double> told;
    const auto laid = lay_tube(task, [&](double share) { told.push_back(share); });
    check_shares(told);
    CHECK(same(laid, lay_tube(task)));
    most = std::max(most, told.size());
  }
  // Several manifolds are laid one after the other, several ways.
  CHECK(most >= 8);
}

TEST_CASE("the search for a better place tells how far it is") {
  LayoutTask task = task_on(rect(60, 30), {4, 0}, {0, 1});
  std::vector<double> told;
  better_place(task, 0, [&](double share) { told.push_back(share); });
  check_shares(told);
  CHECK(told.size() >= 4);
}
