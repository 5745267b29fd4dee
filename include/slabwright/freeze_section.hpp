// The cold edges of a shop in section, held by the frost hold.
#pragma once
#include <vector>

#include "slabwright/building_section.hpp"
#include "slabwright/freeze.hpp"

namespace slabwright {

/// The outer wall and the big door whose nearest tubes are coldest, in this order, as far as heated floors have any: in
/// the coldest weather as if it lasted, the wall thermostat on its dial and reading too high by its error, the pump
/// running. Empty where no place decides, or there is no coldest hour.
std::vector<SectionField> held_sections(const HeldShop& held, const Freeze& freeze);

}  // namespace slabwright
