#include "paper.hpp"

#include "slabwright/units_exact.hpp"

namespace slabwright::drawn {
namespace {

constexpr Paper us_papers[] = {{11.0 * inch_m, 8.5 * inch_m, "8.5 x 11 in"},
                               {17.0 * inch_m, 11.0 * inch_m, "11 x 17 in"},
                               {22.0 * inch_m, 17.0 * inch_m, "17 x 22 in"},
                               {34.0 * inch_m, 22.0 * inch_m, "22 x 34 in"},
                               {44.0 * inch_m, 34.0 * inch_m, "34 x 44 in"}};
constexpr Paper si_papers[] = {
    {0.297, 0.210, "A4"}, {0.420, 0.297, "A3"}, {0.594, 0.420, "A2"}, {0.841, 0.594, "A1"}, {1.189, 0.841, "A0"}};

}  // namespace

std::span<const Paper> papers(System system) {
  if (system == System::us) return us_papers;
  return si_papers;
}

}  // namespace slabwright::drawn
