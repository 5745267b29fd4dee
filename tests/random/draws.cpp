#include "random/draws.hpp"

#include <cmath>

namespace slabwright::test {

Draws::Draws(std::uint64_t seed) : engine_(seed) {
  // Neighbouring seeds begin alike.
  constexpr int passed_over = 16;
  for (int i = 0; i < passed_over; ++i) engine_();
}

double Draws::unit() { return static_cast<double>(engine_() >> 11) / 9007199254740992.0; }

bool Draws::chance(double share) { return unit() < share; }

int Draws::whole(int least, int most) {
  return least + static_cast<int>(engine_() % static_cast<std::uint64_t>(most - least + 1));
}

double Draws::between(double low, double high) { return low + (high - low) * unit(); }

double Draws::by_ratio(double low, double high) {
  constexpr int halvings = 20;
  for (int i = 0; i < halvings; ++i) {
    const double middle = std::sqrt(low * high);
    (engine_() % 2 == 0 ? low : high) = middle;
  }
  return low;
}

}  // namespace slabwright::test
