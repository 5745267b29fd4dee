// The pressure test on the record sheet: by code, by weather, by temperature.
#include "slabwright/sitework_pressure.hpp"

#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

using Months = std::array<double, 12>;

Months all_at(double degC) {
  Months months{};
  months.fill(degC);
  return months;
}

PressureTest test_of(const std::string& text, const Months& months = all_at(15.0)) {
  const ReadDesign read = read_design(text);
  REQUIRE(read.checked);
  return pressure_test(read.checked.value->design, months);
}

}  // namespace

TEST_CASE("North America asks for a hundred psi, or one and a half times what the relief valve lets through") {
  const PressureTest test = test_of("units = \"US\"\n");
  REQUIRE(test.rule.size() == 3);
  for (std::size_t i : {0, 1}) CHECK(test.rule[i].least_Pa == Approx(100.0 * psi_Pa));
  CHECK(test.rule[0].source.find("IRC M2101.10") == 0);
  CHECK(test.rule[2].source == "common practice");
  CHECK(test.pumped_Pa == Approx(100.0 * psi_Pa));
  const PressureTest high = test_of("units = \"US\"\n[pressure]\nrelief = \"80 psi\"\n");
  CHECK(high.rule[0].least_Pa == Approx(120.0 * psi_Pa));
}

TEST_CASE("Europe asks for bands, more for water than for air; without codes there is practice") {
  const PressureTest test = test_of("units = \"SI\"\n");
  REQUIRE(test.rule.size() == 3);
  CHECK(test.rule[0].medium == TestMedium::water);
  CHECK(test.rule[0].least_Pa == Approx(4e5));
  CHECK(*test.rule[0].most_Pa == Approx(6e5));
  CHECK(test.rule[1].medium == TestMedium::air);
  CHECK(test.rule[1].least_Pa == Approx(2e5));
  CHECK(*test.rule[1].most_Pa == Approx(3e5));
  CHECK(test.pumped_Pa == Approx(3e5));
  const PressureTest none = test_of("units = \"SI\"\ncodes = \"none\"\n");
  REQUIRE(none.rule.size() == 1);
  CHECK(none.rule[0].source == "common practice");
  CHECK(none.pumped_Pa == Approx(3.5e5));
}

TEST_CASE("the table holds the start and follows the gas law in round steps") {
  for (const std::string units : {"US", "SI"}) {
    const PressureTest test = test_of("units = \"" + units + "\"\n");
    REQUIRE(test.at.size() == 7);
    CHECK(test.at[3].air_degC == Approx(test.pumped_degC));
    CHECK(test.at[3].test_Pa == Approx(test.pumped_Pa));
    CHECK(test.at[3].pour_Pa == Approx(test.pour_Pa));
    for (std::size_t i = 1; i < test.at.size(); ++i) {
      CHECK(test.at[i].test_Pa > test.at[i - 1].test_Pa);
      CHECK(test.at[i].air_degC - test.at[i - 1].air_degC == Approx(units == "US" ? 10.0 / 1.8 : 5.0));
    }
    CHECK(test.pour_least_Pa <= test.pour_Pa);
    CHECK(test.pour_Pa <= test.pour_most_Pa);
  }
}

TEST_CASE("the month of the pour picks the medium and the table's middle") {
  Months months = all_at(15.0);
  months[11] = -8.0;
  const PressureTest cold = test_of("[project]\npoured = \"2026-12-14\"\n", months);
  CHECK(cold.medium == TestMedium::air);
  CHECK(cold.pumped_degC == Approx((20.0 - 32.0) / 1.8));
  const PressureTest mild = test_of("[project]\npoured = \"2026-09-14\"\n", months);
  CHECK(mild.medium == TestMedium::water);
  CHECK(mild.pumped_degC == Approx((60.0 - 32.0) / 1.8));
  CHECK(test_of("units = \"US\"\n", months).medium == TestMedium::water);
}

TEST_CASE("high up the air outside is thinner and the readings fall less") {
  const PressureTest sea = test_of("units = \"US\"\n"),
                     high = test_of("units = \"US\"\n[climate]\naltitude = \"8,000 ft\"\n");
  CHECK(high.at[0].test_Pa > sea.at[0].test_Pa);
  CHECK(high.at[3].test_Pa == Approx(sea.at[3].test_Pa));
}
