// Sizes of tube: what tables of dimensions print of water contents, bend radii and longest loops.
#include "published/fluid/worst.hpp"
#include "slabwright/tube.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double us_gallon_m3 = 3.785411784e-3;
constexpr double inch_m = 0.0254;
constexpr double foot_m = 0.3048;

const Source dimensions{"Table of PEX CTS dimensions", "a county's public record, after ASTM F876/F877"};
const Source mean_wall{"Table of PEX CTS dimensions", "least wall and half its tolerance", Oracle::derived};
const Source multilayer{"Data sheet of a multilayer tube", "water content"};
const Source longest{"CSA B214-12", "Table 1, clause 14.3.2 (reprint)"};

const TubeSize& size_of(const std::string& name) {
  const TubeSize* tube = find_tube(name);
  REQUIRE(tube != nullptr);
  return *tube;
}

}  // namespace

TEST_CASE("diameters of the inch sizes") {
  std::vector<Compared> outside, inside;
  for (auto& row : read_table("tube_pex_cts/sizes.csv")) {
    const TubeSize& tube = size_of(row["nominal"] + " in");
    outside.push_back(
        {fmt::format("{}, outside diameter, in", tube.name), row["OD_in"], tube.outside_diameter_m / inch_m});
    inside.push_back(
        {fmt::format("{}, mean inside diameter, in", tube.name), row["mean_ID_in"], tube.inside_diameter_m / inch_m});
  }
  CHECK_WORST_PUBLISHED(dimensions, outside, {0.000500001, 0.0, "half a unit of its last digit"});
  CHECK_WORST_PUBLISHED(mean_wall, inside, {0.000500001, 0.0, "half a unit of its last digit"});
}

TEST_CASE("water contents of the inch sizes") {
  // These confirm the mean wall: the least wall would hold 4 to 6 % more. The source's 1.83 for 3/4 in is its only
  // figure that is not rounded to the nearest: 0.671 in holds 1.837.
  const Within nearest{0.00500001, 0.0, "half a unit of its last digit"};
  const Within downward{0.01, 0.0, "the source cuts 1.837 to 1.83"};
  for (auto& row : read_table("tube_pex_cts/sizes.csv")) {
    const TubeSize& tube = size_of(row["nominal"] + " in");
    CHECK_PUBLISHED(dimensions, fmt::format("{}, water content, gal/100 ft", tube.name),
                    row["trade_table_gal_per_100ft"], water_content_m3_per_m(tube) * 100.0 * foot_m / us_gallon_m3,
                    tube.name == "3/4 in" ? downward : nearest);
  }
}

TEST_CASE("bend radii and longest loops of the inch sizes") {
  const char* printed[][3] = {{"3/8 in", "4", "76"},
                              {"1/2 in", "5", "91"},
                              {"5/8 in", "6", "122"},
                              {"3/4 in", "7", "152"},
                              {"1 in", "9", "229"}};
  std::vector<Compared> radii, lengths;
  for (const auto& [name, radius_in, length_m] : printed) {
    radii.push_back(
        {fmt::format("{}, free bend radius, in", name), radius_in, size_of(name).least_bend_radius_m / inch_m});
    lengths.push_back({fmt::format("{}, longest loop, m", name), length_m, size_of(name).longest_loop_m});
  }
  CHECK_WORST_PUBLISHED(dimensions, radii, {0.500001, 0.0, "half a unit of its last digit"});
  CHECK_WORST_PUBLISHED(longest, lengths, {0.500001, 0.0, "half a unit of its last digit"});
}

TEST_CASE("water contents of the metric sizes") {
  const char* printed[][2] = {
      {"14 x 2 mm", "0.079"}, {"16 x 2 mm", "0.113"}, {"18 x 2 mm", "0.154"}, {"20 x 2 mm", "0.201"}};
  for (const auto& [name, litres] : printed)
    CHECK_PUBLISHED(multilayer, fmt::format("{}, water content, L/m", name), litres,
                    water_content_m3_per_m(size_of(name)) * 1e3);
}
