#include "slabwright/envelope.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

template <>
struct Choices<EdgeKind> {
  static constexpr auto names = std::to_array<std::string_view>({"wall", "big door"});
};

Record record_of(RoomLoss& x) {
  static constexpr Key keys[] = {
      key<&RoomLoss::name>({.meaning = "What the room is called."}),
      key<&RoomLoss::floor_m2>({.meaning = "Its floor."}),
      key<&RoomLoss::indoor_degC>({.meaning = "Temperature wanted in it."}),
      key<&RoomLoss::heated_floor>({.meaning = "Whether tube lies in its floor."}),
      key<&RoomLoss::walls_W_per_K>({.meaning = "Outer walls."}),
      key<&RoomLoss::roof_W_per_K>({.meaning = "Roof or ceiling."}),
      key<&RoomLoss::openings_W_per_K>({.meaning = "Doors and windows."}),
      key<&RoomLoss::air_W_per_K>({.meaning = "Air that leaks in, at the altitude's density."}),
      key<&RoomLoss::by_area_W_per_K>({.meaning = "Everything by floor area, where the building is not described."}),
      key<&RoomLoss::unheated_floor_W_per_K>({.meaning = "Floor without tube, on its worst day."}),
      key<&RoomLoss::exhaust_W_per_K>({.meaning = "Exhaust fans while they run."}),
      key<&RoomLoss::exhaust_counted_W_per_K>({.meaning = "Those of them whose make-up air comes in cold."}),
      key<&RoomLoss::gains_W>({.meaning = "Heat that can be counted on."}),
      key<&RoomLoss::total_W_per_K>({.meaning = "What the room loses per kelvin."}),
      key<&RoomLoss::loss_W>({.meaning = "Its loss at the outdoor temperature planned for."}),
      key<&RoomLoss::wanted_W>({.meaning = "Heat that its floor must give."})};
  return {keys, &x};
}

Record record_of(EdgeStretch& x) {
  static constexpr Key keys[] = {
      key<&EdgeStretch::name>({.meaning = "Which edge."}), key<&EdgeStretch::kind>({.meaning = "How it is built."}),
      key<&EdgeStretch::room>({.meaning = "Row of its room, from 0."}),
      key<&EdgeStretch::length_m>({.meaning = "Its length."}),
      key<&EdgeStretch::tube_in_m>({.meaning = "Axis of the nearest tube, from the inner face."})};
  return {keys, &x};
}

Record record_of(GroundOpinion& x) {
  static constexpr Key keys[] = {
      key<&GroundOpinion::plane_W_per_m2K>({.meaning = "From the tube plane to the ground."}),
      key<&GroundOpinion::effective_degC>({.meaning = "What the heat goes down to in the worst month."}),
      key<&GroundOpinion::swing_share>({.meaning = "Its periodic over its steady coefficient."}),
      key<&GroundOpinion::difference_share>({.meaning = "Its conductance less the field's, over the field's."})};
  return {keys, &x};
}

Record record_of(GroundPath& x) {
  static constexpr Key keys[] = {
      key<&GroundPath::plane_W_per_m2K>({.meaning = "From the tube plane to the ground."}),
      key<&GroundPath::underside_W_per_m2K>({.meaning = "From the underside of the concrete to the ground."}),
      key<&GroundPath::effective_degC>({.meaning = "What the heat goes down to on the worst day."}),
      key<&GroundPath::outdoor_share>({.meaning = "Share of the steady heat that goes to the outdoor air."}),
      key<&GroundPath::deep_share>({.meaning = "Share of it that goes to deep ground."}),
      key<&GroundPath::swing_share>(
          {.meaning = "Share of the yearly swing outdoors that the heat to the air follows."}),
      key<&GroundPath::spell_share>({.meaning = "Share of a cold spell outdoors that it follows."}),
      key<&GroundPath::dimension_m>({.meaning = "Floor area over half its exposed perimeter."}),
      key<&GroundPath::iso13370>({.meaning = "ISO 13370 for the same floor, as a second opinion."})};
  return {keys, &x};
}

Record record_of(Envelope& x) {
  static constexpr Key keys[] = {key<&Envelope::room>({.meaning = "The rooms."}),
                                 key<&Envelope::edge>({.meaning = "The edges of the slab."}),
                                 key<&Envelope::ground>({.meaning = "The slab's way down."}),
                                 key<&Envelope::outdoor_degC>({.meaning = "Outdoor temperature planned for."}),
                                 key<&Envelope::total_W_per_K>({.meaning = "All rooms together, per kelvin."}),
                                 key<&Envelope::loss_W>({.meaning = "All rooms together."}),
                                 key<&Envelope::exhaust_W>({.meaning = "All fans while they run, counted or not."})};
  return {keys, &x};
}

}  // namespace slabwright
