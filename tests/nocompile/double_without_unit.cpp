// Refused: a double's name must end in its unit
#include "slabwright/key.hpp"

namespace slabwright {

struct Slab {
  double thickness = 0.0;
};
constexpr Key thickness = key<&Slab::thickness>({"Depth of concrete."});

}  // namespace slabwright
