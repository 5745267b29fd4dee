#include "slabwright/key.hpp"
#include "slabwright/section.hpp"

namespace slabwright {

Record record_of(FloorState& x) {
  static constexpr Key keys[] = {
      key<&FloorState::up_W_per_m2>({.meaning = "Heat to the room."}),
      key<&FloorState::down_W_per_m2>({.meaning = "Heat to the ground."}),
      key<&FloorState::film_W_per_m2K>({.meaning = "Between floor and room, convection and radiation."}),
      key<&FloorState::tube_outside_degC>({.meaning = "Outer face of the tube."}),
      key<&FloorState::floor_mean_degC>({.meaning = "The floor's surface, on average."}),
      key<&FloorState::floor_over_tube_degC>({.meaning = "The floor's surface over a tube: its warmest place."}),
      key<&FloorState::floor_midway_degC>({.meaning = "The floor's surface half way between two tubes."}),
      key<&FloorState::sensor_degC>({.meaning = "At the tubes' depth half way between two: a slab sensor."})};
  return {keys, &x};
}

Record record_of(SectionOpinion& x) {
  static constexpr Key keys[] = {
      key<&SectionOpinion::name>({.meaning = "The method."}),
      key<&SectionOpinion::up_W_per_m2K>({.meaning = "Heat upward per kelvin of water, on the method's own terms."}),
      key<&SectionOpinion::first_W_per_m2K>({.meaning = "Ours on the same terms."}),
      key<&SectionOpinion::difference_share>({.meaning = "The method's less ours, over ours."}),
      key<&SectionOpinion::made_for>({.meaning = "Whether the method was made for this slab."}),
      key<&SectionOpinion::why_not>({.meaning = "Why it was not."})};
  return {keys, &x};
}

Record record_of(RoomFloor& x) {
  static constexpr Key keys[] = {
      key<&RoomFloor::room>({.meaning = "The room."}),
      key<&RoomFloor::heated_m2>({.meaning = "Floor over tubes."}),
      key<&RoomFloor::wanted_W_per_m2>({.meaning = "Heat that the room asks of it."}),
      key<&RoomFloor::given_W_per_m2>({.meaning = "Heat that it gives within its limit."}),
      key<&RoomFloor::shortfall_W>({.meaning = "What is missing."}),
      key<&RoomFloor::water_degC>({.meaning = "Mean water temperature for what it gives, the water turbulent."}),
      key<&RoomFloor::floor>({.meaning = "The floor at that water temperature."}),
      key<&RoomFloor::limit_degC>({.meaning = "How warm it may be over the tubes."})};
  return {keys, &x};
}

Record record_of(Section& x) {
  static constexpr Key keys[] = {
      key<&Section::spacing_m>({.meaning = "From tube to tube."}),
      key<&Section::outside_diameter_m>({.meaning = "Of the tube."}),
      key<&Section::cover_above_m>({.meaning = "From the tube's axis to the top of the concrete."}),
      key<&Section::cover_below_m>({.meaning = "From the tube's axis to the underside of the concrete."}),
      key<&Section::concrete_W_per_mK>({.meaning = "Heat conductivity of the concrete."}),
      key<&Section::covering_m2K_per_W>({.meaning = "Of what lies on the concrete."}),
      key<&Section::underside_W_per_m2K>({.meaning = "Foam and ground from the concrete's underside."}),
      key<&Section::below_degC>({.meaning = "Temperature that the heat goes down to."}),
      key<&Section::wall_mK_per_W>({.meaning = "Wall of the tube, per metre of tube."})};
  return {keys, &x};
}

Record record_of(FloorPlan& x) {
  static constexpr Key keys[] = {key<&FloorPlan::section>({.meaning = "Slab and tube in section."}),
                                 key<&FloorPlan::room>({.meaning = "One row for each room; zeros where no tube lies."}),
                                 key<&FloorPlan::opinion>({.meaning = "Other methods on the heat upward."}),
                                 key<&FloorPlan::tube_heat_W>({.meaning = "Heat of all tubes, upward and downward."}),
                                 key<&FloorPlan::down_W>({.meaning = "Of it, downward."})};
  return {keys, &x};
}

}  // namespace slabwright
