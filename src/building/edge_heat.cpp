#include "building/edge_heat.hpp"

#include "slabwright/handbook_floor_film.hpp"

namespace slabwright::building {

EdgeDetail with_heat_going_up(EdgeDetail detail, const Design& design) {
  const FloorFilm film = floor_film(floor_film_rise_K(typical_up_W_per_m2));
  detail.indoor_film_m2K_per_W = 1.0 / film.coefficient_W_per_m2K + design.slab.covering.resistance_m2K_per_W;
  return detail;
}

}  // namespace slabwright::building
