#include "slabwright/key.hpp"
#include "slabwright/plant_floor_field.hpp"

namespace slabwright {

Record record_of(FloorSpot& x) {
  static constexpr Key keys[] = {key<&FloorSpot::x_m>({.meaning = "Place, to the right of the form's corner."}),
                                 key<&FloorSpot::y_m>({.meaning = "Place, up from it."}),
                                 key<&FloorSpot::surface_degC>({.meaning = "The floor's surface there."})};
  return {keys, &x};
}

Record record_of(Evenness& x) {
  static constexpr Key keys[] = {
      key<&Evenness::spread_K>({.meaning = "Standard deviation of the surface over area."}),
      key<&Evenness::span_K>({.meaning = "Warmest less coldest."}),
      key<&Evenness::wide_spread_K>({.meaning = "Standard deviation of means over squares a spacing wide."}),
      key<&Evenness::wide_span_K>({.meaning = "Warmest less coldest of those."})};
  return {keys, &x};
}

Record record_of(RoomField& x) {
  static constexpr Key keys[] = {key<&RoomField::room>({.meaning = "The room."}),
                                 key<&RoomField::floor_m2>({.meaning = "Its floor, by cells."}),
                                 key<&RoomField::up_W>({.meaning = "Heat to the room, by where tube truly lies."}),
                                 key<&RoomField::tube_m>({.meaning = "Tube under it, leaders included."}),
                                 key<&RoomField::tube_W>({.meaning = "Heat that this tube gives."}),
                                 key<&RoomField::mean_degC>({.meaning = "Its surface on average."}),
                                 key<&RoomField::evenness>({.meaning = "How even it is."}),
                                 key<&RoomField::coldest>({.meaning = "Its coldest place."}),
                                 key<&RoomField::warmest>({.meaning = "Its warmest place."})};
  return {keys, &x};
}

Record record_of(LoopField& x) {
  static constexpr Key keys[] = {key<&LoopField::name>({.meaning = "The loop."}),
                                 key<&LoopField::return_degC>({.meaning = "Water coming back, by where it lies."}),
                                 key<&LoopField::heat_W>({.meaning = "Heat that it gives."})};
  return {keys, &x};
}

Record record_of(ApronField& x) {
  static constexpr Key keys[] = {
      key<&ApronField::manifold>({.meaning = "The manifold."}),
      key<&ApronField::floor_m2>({.meaning = "Floor before it where leaders spread."}),
      key<&ApronField::tube_m>({.meaning = "Tube in it."}),
      key<&ApronField::warmest>({.meaning = "Its warmest place."}),
      key<&ApronField::limit_degC>({.meaning = "Where people stand (EN 1264-2)."}),
      key<&ApronField::sleeve_m>({.meaning = "Foam sleeve on each leader, from its port on, that mends a warmer one."}),
      key<&ApronField::sleeve_both>({.meaning = "Whether returns need it too."}),
      key<&ApronField::sleeved_degC>({.meaning = "Its warmest place with the sleeves."})};
  return {keys, &x};
}

Record record_of(FloorField& x) {
  static constexpr Key keys[] = {
      key<&FloorField::up_W>({.meaning = "Heat to the rooms."}),
      key<&FloorField::down_W>({.meaning = "Heat to the ground, straight down."}),
      key<&FloorField::cold_W>(
          {.meaning = "Heat that goes out along edges and at doors, over as much floor of the middle."}),
      key<&FloorField::water_W>({.meaning = "Heat the water gives up."}),
      key<&FloorField::room>({.meaning = "Room by room."}),
      key<&FloorField::loop>({.meaning = "Loop by loop."}),
      key<&FloorField::apron>({.meaning = "Where leaders spread, by manifold."}),
      key<&FloorField::coldest>({.meaning = "The coldest place."}),
      key<&FloorField::warmest>({.meaning = "The warmest place."})};
  return {keys, &x};
}

}  // namespace slabwright
