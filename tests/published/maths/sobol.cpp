// Sobol's sequence with Joe and Kuo's direction numbers (SIAM J. Sci. Comput. 30(5), 2008) as an independent program
// has it: scipy 1.10.1, to the last digit.
#include "slabwright/maths_sampling.hpp"
#include "support/published.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("points of the sequence, every digit") {
  const auto points = sobol_points(100'004, sample_dimensions_most);
  const auto rows = read_table("sobol_joe_kuo/points.csv");
  REQUIRE(rows.size() == 6);
  for (const auto& row : rows) {
    const auto index = static_cast<std::size_t>(number(row, "index"));
    const Source source{"Sobol sequence by scipy 1.10.1", "point " + row.at("index"), Oracle::reference_code};
    for (std::size_t d = 0; d < sample_dimensions_most; ++d) {
      const std::string name = "x" + std::to_string(d + 1);
      CHECK_PUBLISHED(source, name, row.at(name), points[index][d]);
      CHECK(points[index][d] == number(row, name));
    }
  }
}
