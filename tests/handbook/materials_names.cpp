// Materials are found as people write them, and each row says where it comes from.
#include <set>
#include <string>

#include "slabwright/handbook_materials.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

double resistance_per_inch(const char* name) {
  const Material* found = find_insulation(name);
  REQUIRE(found);
  return 0.0254 / found->conductivity_W_per_mK / 0.17611018;
}

}  // namespace

TEST_CASE("insulation by its name in any dress") {
  for (const char* name : {"XPS", "xps", "Extruded Polystyrene", "extruded-polystyrene", "X.P.S.", " XPS foam "})
    CHECK(find_insulation(name) == find_insulation("XPS"));
  CHECK(find_insulation("glass wool") == find_insulation("Fiberglass"));
  CHECK(find_insulation("EPS type ii") == find_insulation("EPS"));
  CHECK(find_insulation("EPS type IX") != find_insulation("EPS"));
  CHECK(find_insulation("") == nullptr);
  CHECK(find_insulation("2") == nullptr);
  CHECK(find_insulation("straw of the moon") == nullptr);
  CHECK(find_insulation("XP") == nullptr);
}

TEST_CASE("boards resist per inch as the trade says") {
  CHECK(resistance_per_inch("XPS") == Approx(5.0).epsilon(1e-6));
  CHECK(resistance_per_inch("EPS") == Approx(4.0).epsilon(1e-6));
  CHECK(resistance_per_inch("buried XPS") == Approx(4.5).epsilon(1e-6));
  // Two inches of XPS are the R-10 of the usual shop.
  CHECK(0.0508 / find_insulation("XPS")->conductivity_W_per_mK == Approx(10.0 * 0.17611018).epsilon(1e-6));
  CHECK(find_insulation("buried EPS")->conductivity_W_per_mK > find_insulation("EPS")->conductivity_W_per_mK);
}

TEST_CASE("every row is possible, sourced and found by each of its words alone") {
  std::set<const Material*> found;
  for (const Material& m : insulations()) {
    CHECK(m.conductivity_W_per_mK > 0.015);
    CHECK(m.conductivity_W_per_mK < 0.1);
    CHECK(m.density_kg_per_m3 > 0.0);
    CHECK(m.heat_J_per_kgK > 0.0);
    CHECK_FALSE(m.source.empty());
    CAPTURE(std::string(m.name));
    CHECK(find_insulation(m.name) == &m);
    for (const std::string_view also : m.also)
      if (!also.empty()) CHECK(find_insulation(also) == &m);
  }
  for (const Material& m : tube_materials()) CHECK_FALSE(m.source.empty());
  for (const Material& m : concretes()) CHECK(m.density_kg_per_m3 * m.heat_J_per_kgK > 1.5e6);
}

TEST_CASE("grounds and coverings") {
  REQUIRE(find_soil("sand or gravel"));
  CHECK(find_soil("sand or gravel")->conductivity_W_per_mK == 2.0);
  CHECK(find_soil("jelly") == nullptr);
  REQUIRE(find_covering("Bare"));
  CHECK(find_covering("bare")->layer_m2K_per_W == 0.0);
  CHECK(find_covering("carpet")->layer_m2K_per_W > find_covering("vinyl")->layer_m2K_per_W);
  CHECK(find_covering("lava") == nullptr);
  for (const Covering& c : coverings()) CHECK_FALSE(c.source.empty());
}
