// What a plan tells in numbers: tapes that add up, sleeves in order, numbers that no two loops share.
#include "slabwright/sitework_plan.hpp"

#include <set>

#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

namespace {

PlanFigures figures_of(const std::string& name) {
  const DesignFile file = test::layout(name).file;
  LaidBefore laid;
  const auto plan = plan_loops(file.design, &laid);
  REQUIRE(plan);
  const auto figures = plan_figures(file.design, *plan.value);
  REQUIRE(figures);
  return *figures;
}

}  // namespace

TEST_CASE("the tapes of a side follow one another and add up to the whole") {
  for (const char* name : {"frame-shop", "county-garage", "potting-house", "ten-lines"}) {
    INFO(name);
    const PlanFigures figures = figures_of(name);
    for (const PlanSide side : {PlanSide::below, PlanSide::left}) {
      double sum = 0.0, whole = 0.0;
      int parts = 0;
      for (const PlanDimension& one : figures.dimension) {
        if (one.side != side) continue;
        const double off = side == PlanSide::below ? one.to_x_m - one.from_x_m : one.to_y_m - one.from_y_m;
        CHECK(one.length_m == Approx(off));
        (one.whole ? whole : sum) += one.length_m;
        parts += !one.whole;
      }
      CHECK(whole == Approx(side == PlanSide::below ? figures.width_m : figures.height_m));
      if (parts > 0) CHECK(sum == Approx(whole));
    }
  }
}

TEST_CASE("the garage's doors, sleeves and loops are told") {
  const PlanFigures garage = figures_of("county-garage");
  REQUIRE(garage.door.size() == 4);
  CHECK(garage.door[2].name == "bay 3");
  CHECK(garage.door[2].width_m == Approx(16.0 * 0.3048));
  CHECK(garage.width_m == Approx(120.0 * 0.3048));
  for (std::size_t k = 0; k < garage.sleeve.size(); ++k) CHECK(garage.sleeve[k].number == static_cast<int>(k) + 1);
  CHECK(garage.sleeve.size() > 10);
  std::set<std::string> numbers;
  for (const PlanLoop& loop : garage.loop) numbers.insert(loop.number);
  CHECK(numbers.size() == garage.loop.size());
  // 2.75 in of concrete, and half of a tube of 3/4 in outside.
  CHECK(garage.tube_depth_m == Approx((2.75 + 0.375) * 0.0254));
}

TEST_CASE("loops that are not drawn have no plan") {
  const DesignFile file = test::from_keys({{"slab.size", "30 x 20 ft"}, {"tube.spacing", "12 in"}});
  const auto plan = plan_loops(file.design);
  REQUIRE(plan);
  CHECK_FALSE(plan_figures(file.design, *plan.value));
}
