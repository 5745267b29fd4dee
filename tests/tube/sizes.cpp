// The table of sizes and the names that find a row of it.
#include <cmath>
#include <numbers>

#include "slabwright/tube.hpp"
#include "support/catch.hpp"

using namespace slabwright;

TEST_CASE("every size is found by its own name") {
  const std::vector<std::string_view> names = tube_names();
  CHECK(names.size() == 15);
  for (const std::string_view name : names) {
    const TubeSize* tube = find_tube(name);
    REQUIRE(tube != nullptr);
    CHECK(tube->name == name);
  }
}

TEST_CASE("what a person writes finds the size they mean") {
  for (const char* text : {"1/2 in", "1/2\"", "1/2 inch", "1/2in", "1/2-inch", "1/2 IN.", "1/2 inches", "1/2''",
                           "1/2\u2033", "1/2\u201d", "\u00bd in", " 1/2 in "}) {
    INFO(text);
    const TubeSize* tube = find_tube(text);
    REQUIRE(tube != nullptr);
    CHECK(tube->name == "1/2 in");
  }
  for (const char* text : {"16 x 2 mm", "16x2", "16 x 2.0 mm", "16X2mm", "16 mm x 2 mm", "16.0x2.0", "16 \u00d7 2 mm",
                           "16\u00a0x\u00a02\u00a0mm"}) {
    INFO(text);
    const TubeSize* tube = find_tube(text);
    REQUIRE(tube != nullptr);
    CHECK(tube->name == "16 x 2 mm");
  }
  REQUIRE(find_tube("16x2.20") != nullptr);
  CHECK(find_tube("16x2.20")->name == "16 x 2.2 mm");
  REQUIRE(find_tube("1 in") != nullptr);
  CHECK(find_tube("1 in")->name == "1 in");
}

TEST_CASE("what names no size, or more than one, finds none") {
  for (const char* text : {"", "1/2", "16", "16 mm", "16 x 3 mm", "16 x 2 in", "1/2 mm", "7/8 in", "x", "x2", "16x",
                           "2 x 16", "1/2 in pipe", "1 1/2 in", "0.5 in", "16,0 x 2,0"}) {
    INFO(text);
    CHECK(find_tube(text) == nullptr);
  }
}

TEST_CASE("a size is one with itself") {
  for (const std::string_view name : tube_names()) {
    const TubeSize& tube = *find_tube(name);
    INFO(name);
    CHECK(tube.inside_diameter_m == Approx(tube.outside_diameter_m - 2.0 * tube.wall_m).epsilon(1e-14));
    CHECK(tube.least_bend_radius_m == Approx(8.0 * tube.outside_diameter_m).epsilon(1e-14));
    CHECK(tube.metric == (name.find("mm") != std::string_view::npos));
    CHECK(tube.longest_loop_m >= 60.0);
    CHECK(tube.roughness_m == 7e-6);
    CHECK(tube.conductivity_W_per_mK == (tube.metric ? 0.35 : 0.38));
  }
}

TEST_CASE("a wider tube holds more, resists less and may run longer") {
  const TubeSize* last = nullptr;
  for (const char* name : {"3/8 in", "1/2 in", "5/8 in", "3/4 in", "1 in"}) {
    const TubeSize* tube = find_tube(name);
    REQUIRE(tube != nullptr);
    if (last) {
      CHECK(water_content_m3_per_m(*tube) > water_content_m3_per_m(*last));
      CHECK(tube->longest_loop_m > last->longest_loop_m);
    }
    last = tube;
  }
}

TEST_CASE("velocity fills the bore") {
  const TubeSize& tube = *find_tube("16 x 2 mm");
  CHECK(velocity_m_per_s(tube.inside_diameter_m, 0.5 * water_content_m3_per_m(tube)) == Approx(0.5).epsilon(1e-15));
  CHECK(velocity_m_per_s(tube.inside_diameter_m, -0.5 * water_content_m3_per_m(tube)) == Approx(-0.5).epsilon(1e-15));
  CHECK_THROWS(velocity_m_per_s(0.0, 1e-5));
}

TEST_CASE("the wall resists by the logarithm of its diameters") {
  TubeSize tube = *find_tube("16 x 2 mm");
  CHECK(wall_resistance_mK_per_W(tube) ==
        Approx(std::log(16.0 / 12.0) / (2.0 * std::numbers::pi * 0.35)).epsilon(1e-14));
  tube.inside_diameter_m = tube.outside_diameter_m;
  CHECK_THROWS(wall_resistance_mK_per_W(tube));
}

TEST_CASE("a bend loses by the angle it turns, either way") {
  CHECK(bend_loss_coefficient(std::numbers::pi) == Approx(0.2).epsilon(1e-15));
  CHECK(bend_loss_coefficient(-std::numbers::pi / 2.0) == Approx(0.1).epsilon(1e-15));
  CHECK(bend_loss_coefficient(0.0) == 0.0);
}

TEST_CASE("a length of tube keeps its bore and its roughness") {
  const TubeSize& tube = *find_tube("1/2 in");
  const Bore bore = bore_of(tube, 80.0);
  CHECK(bore.length_m == 80.0);
  CHECK(bore.inside_diameter_m == tube.inside_diameter_m);
  CHECK(bore.roughness_m == tube.roughness_m);
}
