// Colebrook and White's equation solved by other means: mpmath with 40 digits (the program fluids 1.0.22 agrees to
// 2e-14), and the errors of the explicit forms that engineers use.
#include <cmath>

#include "published/fluid/worst.hpp"
#include "slabwright/tube.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

const Source exact{"Colebrook-White", "Darcy friction factor, 40 digits by mpmath", Oracle::reference_code};
const Source explicit_forms{"Explicit friction factors", "largest error against Colebrook-White, %", Oracle::derived};

double swamee_jain(double re, double roughness) {
  const double x = std::log10(roughness / 3.7 + 5.74 / std::pow(re, 0.9));
  return 0.25 / (x * x);
}

double haaland(double re, double roughness) {
  const double x = -1.8 * std::log10(std::pow(roughness / 3.7, 1.11) + 6.9 / re);
  return 1.0 / (x * x);
}

double serghides(double re, double roughness) {
  const double a = -2.0 * std::log10(roughness / 3.7 + 12.0 / re);
  const double b = -2.0 * std::log10(roughness / 3.7 + 2.51 * a / re);
  const double c = -2.0 * std::log10(roughness / 3.7 + 2.51 * b / re);
  const double x = a - (b - a) * (b - a) / (c - 2.0 * b + a);
  return 1.0 / (x * x);
}

double blasius(double re, double) { return 0.3164 / std::pow(re, 0.25); }

// The error of largest size, with its sign, over a grid even in the logarithms (and the smooth tube).
double largest_error_percent(double (*form)(double, double), double re_to, double roughest) {
  double largest = 0.0;
  constexpr int steps = 400;
  for (int i = 0; i <= steps; ++i) {
    const double re = 4000.0 * std::pow(re_to / 4000.0, static_cast<double>(i) / steps);
    for (int j = 0; j <= steps; ++j) {
      const double roughness = j == 0 ? 0.0 : 1e-6 * std::pow(roughest / 1e-6, static_cast<double>(j) / steps);
      const double error = 100.0 * (form(re, roughness) / colebrook(re, roughness) - 1.0);
      if (std::abs(error) > std::abs(largest)) largest = error;
      if (roughest == 0.0) break;
    }
  }
  return largest;
}

}  // namespace

TEST_CASE("Colebrook's table, Reynolds 4000 and above") {
  std::vector<std::string> roughnesses;
  std::map<std::string, std::vector<Compared>> tables;
  for (auto& row : read_table("colebrook/exact.csv")) {
    const double re = number(row, "Re");
    if (re < 4000.0) continue;
    const double theirs = number(row, "f_darcy_exact");
    const double ours = colebrook(re, number(row, "eD"));
    CHECK(std::abs(ours - theirs) <= 5e-15 * theirs);  // half a unit of its fifteenth digit
    if (tables[row["eD"]].empty()) roughnesses.push_back(row["eD"]);
    tables[row["eD"]].push_back(
        {fmt::format("relative roughness {}, Re {}", row["eD"], row["Re"]), fmt::format("{:.13f}", theirs), ours});
  }
  REQUIRE(roughnesses.size() == 10);
  // The page shows twelve digits: the last three differ between C libraries.
  for (const std::string& roughness : roughnesses)
    CHECK_WORST_PUBLISHED(exact, tables[roughness], {0.5001e-13, 0.0, "half a unit of its twelfth digit"});
}

TEST_CASE("the explicit forms miss Colebrook by what is known of them") {
  CHECK_PUBLISHED(explicit_forms, "Serghides, Re 4e3 to 1e8, roughness to 0.05", "-0.0031",
                  largest_error_percent(serghides, 1e8, 0.05));
  CHECK_PUBLISHED(explicit_forms, "Swamee-Jain, Re 4e3 to 1e8, roughness to 0.05", "3.36",
                  largest_error_percent(swamee_jain, 1e8, 0.05));
  CHECK_PUBLISHED(explicit_forms, "Haaland, Re 4e3 to 1e8, roughness to 0.05", "-1.42",
                  largest_error_percent(haaland, 1e8, 0.05));
  CHECK_PUBLISHED(explicit_forms, "Serghides, Re 4e3 to 3e4, roughness to 0.001", "-0.0026",
                  largest_error_percent(serghides, 3e4, 1e-3));
  CHECK_PUBLISHED(explicit_forms, "Swamee-Jain, Re 4e3 to 3e4, roughness to 0.001", "1.92",
                  largest_error_percent(swamee_jain, 3e4, 1e-3));
  CHECK_PUBLISHED(explicit_forms, "Haaland, Re 4e3 to 3e4, roughness to 0.001", "1.29",
                  largest_error_percent(haaland, 3e4, 1e-3));
  CHECK_PUBLISHED(explicit_forms, "Blasius, smooth, Re 4e3 to 3e4", "2.84", largest_error_percent(blasius, 3e4, 0.0));
}
