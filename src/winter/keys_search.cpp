// How the whole comparison is shown, its search, its balance of heat and last winter's bill.
#include "slabwright/key.hpp"
#include "slabwright/winter_keys.hpp"

namespace slabwright {

Record record_of(ShopHeat& x) {
  static constexpr Key keys[] = {
      key<&ShopHeat::tubes_J>({.meaning = "In: from the tubes."}),
      key<&ShopHeat::source_J>({.meaning = "In: from the second source."}),
      key<&ShopHeat::air_gains_J>({.meaning = "In: people and machines, less what cold vehicles take."}),
      key<&ShopHeat::faces_gains_J>({.meaning = "In: sun on walls and on inner faces."}),
      key<&ShopHeat::sun_J>({.meaning = "In: sun on the floor."}),
      key<&ShopHeat::light_J>({.meaning = "Out: windows, doors, leaks."}),
      key<&ShopHeat::more_J>({.meaning = "Out: fans and doors that stand open."}),
      key<&ShopHeat::opaque_J>({.meaning = "Out: walls and roof."}),
      key<&ShopHeat::layered_J>({.meaning = "Out: because it lies warm under the roof."}),
      key<&ShopHeat::ground_J>({.meaning = "Out: into the deep ground and by the edge."}),
      key<&ShopHeat::air_J>({.meaning = "Stored in the air."}),
      key<&ShopHeat::contents_J>({.meaning = "Stored in what stands in it."}),
      key<&ShopHeat::faces_J>({.meaning = "Stored in walls and roof."}),
      key<&ShopHeat::slab_J>({.meaning = "Stored in the slab."}),
      key<&ShopHeat::soil_J>({.meaning = "Stored in the soil."}),
      key<&ShopHeat::floor_up_J>({.meaning = "Within: from the floor into the rooms."})};
  return {keys, &x};
}

Record record_of(HoldCost& x) {
  static constexpr Key keys[] = {key<&HoldCost::air_degC>({.meaning = "Frost hold, by the wall thermostat."}),
                                 key<&HoldCost::use_J>({.meaning = "Electricity for heat in the year."}),
                                 key<&HoldCost::money>({.meaning = "What it costs; absent without a price."}),
                                 key<&HoldCost::fails>({.meaning = "What it fails by."}),
                                 key<&HoldCost::sweating>({.meaning = "When the floor is wet."})};
  return {keys, &x};
}

Record record_of(TriedWay& x) {
  static constexpr Key keys[] = {key<&TriedWay::hold_degC>({.meaning = "Frost hold, by the wall thermostat."}),
                                 key<&TriedWay::lead_h>({.meaning = "Hours before work the second source starts."}),
                                 key<&TriedWay::source_degC>({.meaning = "What its thermostat is set to."}),
                                 key<&TriedWay::use_J>({.meaning = "Electricity for heat in the year."}),
                                 key<&TriedWay::money>({.meaning = "What it costs; absent without a price."}),
                                 key<&TriedWay::fails>({.meaning = "What it fails by."})};
  return {keys, &x};
}

Record record_of(Search& x) {
  static constexpr Key keys[] = {key<&Search::way>({.meaning = "Of which way."}),
                                 key<&Search::best>({.meaning = "Row of `tried` that is best, from 0."}),
                                 key<&Search::hold_low_degC>({.meaning = "Frost holds from here ..."}),
                                 key<&Search::hold_high_degC>({.meaning = "... to here do as well within 2 %."}),
                                 key<&Search::lead_low_h>({.meaning = "Starts from so many hours before work ..."}),
                                 key<&Search::lead_high_h>({.meaning = "... to so many do as well."}),
                                 key<&Search::tried>({.meaning = "All that were tried."})};
  return {keys, &x};
}

Record record_of(PayBack& x) {
  static constexpr Key keys[] = {
      key<&PayBack::what>({.meaning = "A change of the shop."}),
      key<&PayBack::before_pour>({.meaning = "True where it is too late once the concrete is in."}),
      key<&PayBack::saved_J>({.meaning = "Electricity that it saves in a year of the best way."}),
      key<&PayBack::saved_money>({.meaning = "Money that it saves; absent without a price."})};
  return {keys, &x};
}

Record record_of(DoorInWinter& x) {
  static constexpr Key keys[] = {
      key<&DoorInWinter::name>({.meaning = "The door."}),
      key<&DoorInWinter::open_s>({.meaning = "How long it stands open each time."}),
      key<&DoorInWinter::lost_J>({.meaning = "Heat that one opening takes on a day of the coldest month."}),
      key<&DoorInWinter::coldest_degC>({.meaning = "The air at its coldest."}),
      key<&DoorInWinter::recovers_s>({.meaning = "From shutting it until the air is within 1 K of where it was."})};
  return {keys, &x};
}

Record record_of(BillFit& x) {
  static constexpr Key keys[] = {
      key<&BillFit::months>({.meaning = "How many months were held against the shop."}),
      key<&BillFit::misfit_share>({.meaning = "Root mean square of the months, over their mean."}),
      key<&BillFit::loss_share>({.meaning = "What the shop loses to air, over what the design says: best fit."}),
      key<&BillFit::loss_low_share>({.meaning = "5 of 100 are lower."}),
      key<&BillFit::loss_high_share>({.meaning = "5 of 100 are higher."}),
      key<&BillFit::ground_share>({.meaning = "The same of what goes into the ground: best fit."}),
      key<&BillFit::ground_low_share>({.meaning = "5 of 100 are lower."}),
      key<&BillFit::ground_high_share>({.meaning = "5 of 100 are higher."}),
      key<&BillFit::indoor_K>({.meaning = "Kept warmer than was said."}),
      key<&BillFit::indoor_low_K>({.meaning = "5 of 100 are lower."}),
      key<&BillFit::indoor_high_K>({.meaning = "5 of 100 are higher."}),
      key<&BillFit::other_share>({.meaning = "What is not heat, over what was said: best fit."}),
      key<&BillFit::other_low_share>({.meaning = "5 of 100 are lower."}),
      key<&BillFit::other_high_share>({.meaning = "5 of 100 are higher."}),
      key<&BillFit::surface_error_share>({.meaning = "Largest error of the surface, of a month's mean."}),
      key<&BillFit::ridge>({.meaning = "Pairs that fit as well, in words."}),
      key<&BillFit::implies>({.meaning = "What may be the cause, in words."}),
      key<&BillFit::paste>({.meaning = "Lines of a design file that put the fit into it."})};
  return {keys, &x};
}

Record record_of(Winter& x) {
  static constexpr Key keys[] = {
      key<&Winter::weather>({.meaning = "Which weather."}),
      key<&Winter::sun>({.meaning = "Whether the sun is counted."}),
      key<&Winter::way>({.meaning = "Every way, best first; one that fails after all that pass."}),
      key<&Winter::hold_way>({.meaning = "Which way `hold` and `search` are of; empty: none."}),
      key<&Winter::hold>({.meaning = "Frost holds and what they come to, by rising frost hold."}),
      key<&Winter::use_J_per_K>({.meaning = "Electricity that a kelvin of frost hold takes."}),
      key<&Winter::money_per_K>({.meaning = "What it costs; absent without a price."}),
      key<&Winter::dry_hold_degC>({.meaning = "The lowest frost hold under which the floor is dry in spring."}),
      key<&Winter::door>({.meaning = "Doors that are opened at work."}),
      key<&Winter::pay_back>({.meaning = "What changes of the shop would save."})};
  return {keys, &x};
}

}  // namespace slabwright
