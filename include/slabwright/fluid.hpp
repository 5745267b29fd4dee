// Water and glycol mixtures.
#pragma once

namespace slabwright {

/// What friction needs to know of a fluid, at one temperature. Both greater than zero.
struct Liquid {
  double density_kg_per_m3 = 0.0;
  double viscosity_Pa_s = 0.0;
};

}  // namespace slabwright
