// What an edge's section is drawn from beside its temperatures.
#pragma once
#include <vector>

#include "slabwright/building_section.hpp"

namespace slabwright::building {

/// What is drawn of a section, from the floor down.
struct SectionWindow {
  double in_from_m = 0.0, in_to_m = 0.0;
  double depth_to_m = 0.0;
};

/// Sizes of what stands on the slab, of slab and step.
void set_build(SectionField& field, const Design& design, const EdgeStretch& edge);

/// Wide enough for three tubes and for what is built outside, deep enough for what carries the edge.
SectionWindow window_of(const SectionField& field, const EdgeStretch& edge, double tube_spacing_m);

/// Ground and slab within the window, then the edge's own parts as they are.
std::vector<SectionPart> parts_in(const SectionWindow& window, const EdgeDetail& detail, double outer_in_m);

/// The watched places of this very section, without temperatures: no corners, which no section shows, and the tube at a
/// door also where the wall beside it was found colder. One place for each point.
std::vector<SectionPlace> places_at(const EdgeStretch& edge, std::size_t row, const WatchedPlaces& watched);

}  // namespace slabwright::building
