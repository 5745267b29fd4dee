// Return values of the yearly minimum, ASHRAE Fundamentals, climate chapter; values computed by a second program.
#include "slabwright/handbook_extremes.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("n-year factors and minima") {
  const Source table{"ASHRAE Fundamentals, climate chapter", "n-year return values (formula from memory)",
                     Oracle::derived};
  struct Row {
    double years;
    const char *factor, *minimum;
  };
  for (const Row& r : {Row{5, "0.7195", "-27.52"}, Row{10, "1.3046", "-29.57"}, Row{20, "1.8658", "-31.53"},
                       Row{50, "2.5923", "-34.07"}, Row{100, "3.1367", "-35.98"}}) {
    const std::string once = "once in " + std::to_string(static_cast<int>(r.years)) + " years: ";
    CHECK_PUBLISHED(table, once + "F", r.factor, n_year_factor(r.years));
    CHECK_PUBLISHED(table, once + "minimum of -25.0 and 3.5 K, degC", r.minimum,
                    n_year_minimum_degC(-25.0, 3.5, r.years));
  }
}
