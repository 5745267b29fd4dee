#include "slabwright/building_section.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

Record record_of(SectionPart& x) {
  static constexpr Key keys[] = {
      key<&SectionPart::what>({.meaning = "What it is."}),
      key<&SectionPart::material>({.meaning = "Concrete, foam, ground or other."}),
      key<&SectionPart::in_from_m>({.meaning = "Where it begins, from the inner face of wall or leaf into the room."}),
      key<&SectionPart::in_to_m>({.meaning = "Where it ends."}),
      key<&SectionPart::depth_from_m>({.meaning = "Its top, below the floor."}),
      key<&SectionPart::depth_to_m>({.meaning = "Its underside."}),
      key<&SectionPart::conductivity_W_per_mK>({.meaning = "Its conductivity."}),
      key<&SectionPart::thickness_m>({.meaning = "Thickness of a board or the slab."}),
      key<&SectionPart::resistance_m2K_per_W>({.meaning = "Resistance across a board, as it lies in the ground."})};
  return {keys, &x};
}

Record record_of(SectionPlace& x) {
  static constexpr Key keys[] = {
      key<&SectionPlace::name>({.meaning = "Which watched place."}),
      key<&SectionPlace::in_m>({.meaning = "From the inner face of wall or leaf into the room."}),
      key<&SectionPlace::depth_m>({.meaning = "Below the floor."}),
      key<&SectionPlace::temperature_degC>({.meaning = "Its temperature here: steady, with the pump running."})};
  return {keys, &x};
}

Record record_of(SectionTube& x) {
  static constexpr Key keys[] = {
      key<&SectionTube::in_m>({.meaning = "Its axis, from the inner face of wall or leaf into the room."})};
  return {keys, &x};
}

Record record_of(SectionPoint& x) {
  static constexpr Key keys[] = {
      key<&SectionPoint::in_m>({.meaning = "From the inner face of wall or leaf into the room."}),
      key<&SectionPoint::depth_m>({.meaning = "Below the floor."}),
      key<&SectionPoint::temperature_degC>({.meaning = "Temperature there."})};
  return {keys, &x};
}

Record record_of(SectionField& x) {
  static constexpr Key keys[] = {
      key<&SectionField::name>({.meaning = "Which edge."}),
      key<&SectionField::at>({.meaning = "Wall or big door."}),
      key<&SectionField::edge>({.meaning = "Its row in the envelope's edges, from 0."}),
      key<&SectionField::outdoor_degC>({.meaning = "Outdoor air, as if it lasted for ever."}),
      key<&SectionField::room_degC>({.meaning = "The room, at the frost hold's wall thermostat less its error."}),
      key<&SectionField::near_air_degC>({.meaning = "Air on the first metre of floor at a big door."}),
      key<&SectionField::ground_degC>({.meaning = "Deep ground."}),
      key<&SectionField::tube_W_per_m2>({.meaning = "Heat of the tubes, up and down."}),
      key<&SectionField::face_m>({.meaning = "Thickness of wall or leaf."}),
      key<&SectionField::nose_m>({.meaning = "Bare slab beyond a leaf."}),
      key<&SectionField::covered_m>({.meaning = "Board beyond the slab's outer face that the wall covers."}),
      key<&SectionField::floor_above_ground_m>({.meaning = "From the ground outside up to the floor."}),
      key<&SectionField::slab_m>({.meaning = "Thickness of the slab, topping included."}),
      key<&SectionField::concrete_above_tube_m>({.meaning = "From the tube's crown up to the floor."}),
      key<&SectionField::tube_depth_m>({.meaning = "From the floor down to the tube's axis."}),
      key<&SectionField::tube_diameter_m>({.meaning = "Outside diameter of the tube."}),
      key<&SectionField::tube_spacing_m>({.meaning = "From tube to tube."}),
      key<&SectionField::covering_m2K_per_W>({.meaning = "Resistance of the covering, where there is one."}),
      key<&SectionField::part>({.meaning = "Rectangles of material; later ones cover earlier ones."}),
      key<&SectionField::tube>({.meaning = "Tubes from the edge in."}),
      key<&SectionField::place>({.meaning = "Watched places of this section."}),
      key<&SectionField::coldest_floor_degC>({.meaning = "The floor's coldest surface, inside wall or leaf."}),
      key<&SectionField::coldest_slab_degC>({.meaning = "The slab's coldest concrete there."}),
      key<&SectionField::freezing_in_m>({.meaning = "Furthest in that the slab is below the freezing point of water."}),
      key<&SectionField::error_K>({.meaning = "How far temperatures within the slab may be off."}),
      key<&SectionField::point>({.meaning = "Temperatures at points of the section."})};
  return {keys, &x};
}

}  // namespace slabwright
