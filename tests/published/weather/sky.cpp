// Infrared from the sky.
#include "slabwright/climate_sun.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source dictionary{"US Department of Energy, EPW data dictionary", "horizontal infrared, worked example",
                        Oracle::published};
const Source script{"US Department of Energy, EPW data dictionary", "horizontal infrared, by a script",
                    Oracle::derived};

constexpr double freezing_K = 273.15;

}  // namespace

TEST_CASE("infrared from the sky by dew point and cover") {
  const Within rounded{0.001, 0.0, "the source rounds at each step"};
  // The source goes on with 0.815.
  const Within from_rounded{0.0, 0.001 / 0.815, "the source goes on with its rounded emissivity"};
  CHECK_PUBLISHED(dictionary, "air 293 K, dew point 283 K, clear: emissivity", "0.815",
                  sky_emissivity(283.0 - freezing_K, 0.0), rounded);
  CHECK_PUBLISHED(dictionary, "air 293 K, dew point 283 K, clear: W/m2", "340.6",
                  sky_infrared_W_per_m2(293.0 - freezing_K, 283.0 - freezing_K, 0.0), from_rounded);
  struct Row {
    std::string at;
    double air_K, dew_K, cover;
    const char *emissivity, *infrared, *sky_degC;
  };
  for (const Row& row :
       {Row{"air 293 K, dew point 283 K, clear: ", 293.0, 283.0, 0.0, "0.814485", "340.341", "5.20"},
        Row{"air 253.15 K, dew point 250 K, clear: ", 253.15, 250.0, 0.0, "0.719760", "167.594", "-39.98"},
        Row{"air 273.15 K, dew point 270 K, overcast: ", 273.15, 270.0, 1.0, "0.898456", "283.571", "-7.22"}}) {
    const double infrared = sky_infrared_W_per_m2(row.air_K - freezing_K, row.dew_K - freezing_K, row.cover);
    CHECK_PUBLISHED(script, row.at + "emissivity", row.emissivity, sky_emissivity(row.dew_K - freezing_K, row.cover));
    CHECK_PUBLISHED(script, row.at + "W/m2", row.infrared, infrared);
    CHECK_PUBLISHED(script, row.at + "sky, degC", row.sky_degC, sky_degC(infrared));
  }
}
