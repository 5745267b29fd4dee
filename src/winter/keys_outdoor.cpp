#include "slabwright/key.hpp"
#include "slabwright/winter_outdoor.hpp"

namespace slabwright {

Record record_of(OutdoorRow& x) {
  static constexpr Key keys[] = {
      key<&OutdoorRow::outdoor_degC>({.meaning = "Outdoors."}),
      key<&OutdoorRow::loss_W>({.meaning = "What the rooms over heated floor lose to the outdoor air."}),
      key<&OutdoorRow::gains_W>({.meaning = "Gains that the floor is sized with."}),
      key<&OutdoorRow::wanted_W>({.meaning = "Loss less gains, what the floor must give upward."}),
      key<&OutdoorRow::down_W>({.meaning = "What it then gives to ground and edge."}),
      key<&OutdoorRow::load_W>({.meaning = "Both: what heats the water gives in the mean."}),
      key<&OutdoorRow::water_W>({.meaning = "What the water gives while it runs so warm, up and down."}),
      key<&OutdoorRow::supply_degC>({.meaning = "Supply that this wants; absent where no floor is wanted."}),
      key<&OutdoorRow::return_degC>({.meaning = "Its return."}),
      key<&OutdoorRow::flow_m3_per_s>({.meaning = "Flow through the floor then."}),
      key<&OutdoorRow::boiler_spare_W>({.meaning = "The boiler's power less what the water gives."}),
      key<&OutdoorRow::alone_W>({.meaning = "What warms the air alone must give, a cold floor's share included."}),
      key<&OutdoorRow::source_W>({.meaning = "The second source at full load; 0 where it stands."}),
      key<&OutdoorRow::source_cop_number>({.meaning = "Its COP."}),
      key<&OutdoorRow::source_electric_W>({.meaning = "What it draws."}),
      key<&OutdoorRow::source_locked>({.meaning = "Colder than where it cuts out."}),
      key<&OutdoorRow::unit_least_m3_per_s>({.meaning = "Flow that such a unit wants where it heats the water."}),
      key<&OutdoorRow::unit_buffer_m3>({.meaning = "Water to add so that such a unit runs long enough."})};
  return {keys, &x};
}

Record record_of(HeatByOutdoor& x) {
  static constexpr Key keys[] = {
      key<&HeatByOutdoor::row>({.meaning = "By rising outdoor temperature."}),
      key<&HeatByOutdoor::fitter>({.meaning = "In the weather planned for, then at four round temperatures."}),
      key<&HeatByOutdoor::boiler_W>({.meaning = "The most that the boiler gives."}),
      key<&HeatByOutdoor::hottest_degC>({.meaning = "The hottest water that it can be set to."}),
      key<&HeatByOutdoor::floor_most_W>({.meaning = "What the floor gives upward with that water."}),
      key<&HeatByOutdoor::water_most_W>({.meaning = "What that water gives, up and down."}),
      key<&HeatByOutdoor::cross_over_degC>({.meaning = "Down to here the second source alone carries the shop."}),
      key<&HeatByOutdoor::cross_over_W>({.meaning = "What that takes."}),
      key<&HeatByOutdoor::cut_out_degC>({.meaning = "Colder, and the second source stands."}),
      key<&HeatByOutdoor::idle_above_degC>({.meaning = "Warmer, and gains do alone."}),
      key<&HeatByOutdoor::glycol_share>({.meaning = "Glycol by volume, as it is filled."}),
      key<&HeatByOutdoor::freezes_degC>({.meaning = "What is filled freezes at."}),
      key<&HeatByOutdoor::unit_glycol_share>(
          {.meaning = "Glycol by volume that a unit outdoors wants in the coldest hour."}),
      key<&HeatByOutdoor::unit_least_on_s>({.meaning = "How long a unit should run at a time."}),
      key<&HeatByOutdoor::unit_differential_K>({.meaning = "How far its water swings."})};
  return {keys, &x};
}

}  // namespace slabwright
