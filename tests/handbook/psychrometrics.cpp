// Vapour goes there and back, the curves meet at the triple point, and a wet floor dries as it sweats.
#include "slabwright/handbook_psychrometrics.hpp"

#include <cmath>

#include "support/catch.hpp"

using namespace slabwright;

TEST_CASE("the dew point undoes saturation from -100 to 200 degC") {
  double before = 0.0;
  for (double at_degC = -100.0; at_degC <= 200.0; at_degC += 0.37) {
    const double vapour = saturation_Pa(at_degC);
    CHECK(vapour > before);
    before = vapour;
    REQUIRE(std::abs(dew_point_degC(vapour) - at_degC) < 1e-9);
  }
  CHECK_THROWS_AS(dew_point_degC(0.0), std::logic_error);
  CHECK_THROWS_AS(dew_point_degC(2e6), std::logic_error);
}

TEST_CASE("ice holds less vapour than undercooled drops, and they meet at the triple point") {
  CHECK(saturation_over_ice_Pa(0.01) == Approx(saturation_over_water_Pa(0.01)).epsilon(1e-8));
  double before = 1.0;
  for (const double at_degC : {-1.0, -5.0, -10.0, -20.0, -40.0}) {
    const double share = saturation_over_ice_Pa(at_degC) / saturation_over_water_Pa(at_degC);
    CHECK(share < before);
    before = share;
  }
  CHECK_THROWS_AS(saturation_over_ice_Pa(1.0), std::logic_error);
}

TEST_CASE("humidity ratios go there and back, and thin air holds more to the kilogram") {
  for (const double total_Pa : {70000.0, 101325.0}) {
    for (const double vapour : {0.0, 100.0, 2000.0})
      CHECK(vapour_of_ratio_Pa(humidity_ratio(vapour, total_Pa), total_Pa) == Approx(vapour).margin(1e-9));
  }
  CHECK(humidity_ratio_of(5.0, 1.0, 80000.0) > humidity_ratio_of(5.0, 1.0, 101325.0));
  CHECK_THROWS_AS(humidity_ratio(1e5, 1e5), std::logic_error);
  CHECK_THROWS_AS(humidity_ratio_of(5.0, 1.1, 1e5), std::logic_error);
}

TEST_CASE("nothing settles at the dew point, and a surface above it dries") {
  const double vapour = 0.7 * saturation_Pa(15.0), total_Pa = 98000.0, dew = dew_point_degC(vapour);
  const double air = humidity_ratio(vapour, total_Pa);
  const auto settles = [&](double surface_degC) {
    return settling_kg_per_sm2(3.0, air, humidity_ratio_of(surface_degC, 1.0, total_Pa));
  };
  CHECK(std::abs(settles(dew)) < 1e-12);
  CHECK(settles(dew - 1.0) > 0.0);
  CHECK(settles(dew + 1.0) < 0.0);
  CHECK(surface_humidity_share(vapour, dew) == Approx(1.0));
  CHECK(surface_humidity_share(vapour, dew + 4.0) < 0.8);
  CHECK(surface_humidity_share(vapour, dew + 2.0) > 0.8);
}
