// Valve coefficients, characteristics and authority, by algebra from their definitions.
#include "slabwright/hydraulics.hpp"
#include "support/published.hpp"

using namespace slabwright;
using slabwright::test::Oracle;
using slabwright::test::Source;
using slabwright::test::Within;

namespace {

const Source coefficients{"Definitions of Kv and Cv", "US gallon, psi and bar as defined", Oracle::derived};
const Source fluids{"fluids 1.0.22", "K from Kv with 1.6e9 D^4", Oracle::reference_code};
const Source travel{"Valve characteristics", "Kv over travel", Oracle::derived};
const Source installed{"Valve authority", "q / q open = 1 / sqrt(1 + N (1/phi^2 - 1))", Oracle::derived};

}  // namespace

TEST_CASE("Kv and Cv") {
  CHECK_PUBLISHED(coefficients, "Kv of Cv 1", "0.8649776554", kv_from_cv(1.0));
  CHECK_PUBLISHED(coefficients, "Cv of Kv 1", "1.1560992284", cv_from_kv(1.0));
}

TEST_CASE("K from Kv") {
  const Within rounded{0.0, 8e-4, "the source rounds 1.59888e9 to 1.6e9"};
  CHECK_PUBLISHED(fluids, "K of Kv 1.1 in 12.319 mm", "30.453445", loss_coefficient_from_kv(1.1, 0.012319), rounded);
}

TEST_CASE("equal percentage") {
  const EqualPercentageValve fifty{1.0, 1.0, 1.0 / 50.0}, thirty{1.0, 1.0, 1.0 / 30.0};
  CHECK_PUBLISHED(travel, "equal percentage, R 50, shut", "0.0200000", kv_at_turns(fifty, 0.0));
  CHECK_PUBLISHED(travel, "equal percentage, R 50, a quarter open", "0.0531830", kv_at_turns(fifty, 0.25));
  CHECK_PUBLISHED(travel, "equal percentage, R 50, half open", "0.1414214", kv_at_turns(fifty, 0.5));
  CHECK_PUBLISHED(travel, "equal percentage, R 50, three quarters open", "0.3760603", kv_at_turns(fifty, 0.75));
  CHECK_PUBLISHED(travel, "equal percentage, R 30, half open", "0.1825742", kv_at_turns(thirty, 0.5));
}

TEST_CASE("installed characteristic") {
  CHECK_PUBLISHED(installed, "phi 0.5, N 1", "0.5000000", installed_flow_share(0.5, 1.0));
  CHECK_PUBLISHED(installed, "phi 0.5, N 0.5", "0.6324555", installed_flow_share(0.5, 0.5));
  CHECK_PUBLISHED(installed, "phi 0.5, N 0.3", "0.7254763", installed_flow_share(0.5, 0.3));
  CHECK_PUBLISHED(installed, "phi 0.5, N 0.1", "0.8770580", installed_flow_share(0.5, 0.1));
  const double half = kv_at_turns(EqualPercentageValve{1.0, 1.0, 0.02}, 0.5);
  CHECK_PUBLISHED(installed, "equal percentage, R 50, half open, N 0.5", "0.1980295", installed_flow_share(half, 0.5));
  CHECK_PUBLISHED(installed, "equal percentage, R 50, half open, N 0.1", "0.4116935", installed_flow_share(half, 0.1));
}
