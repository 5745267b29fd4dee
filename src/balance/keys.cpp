#include "slabwright/balance.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

Record record_of(PortSetting& x) {
  static constexpr Key keys[] = {
      key<&PortSetting::loop>({.meaning = "The loop."}),
      key<&PortSetting::port>({.meaning = "Its port."}),
      key<&PortSetting::length_m>({.meaning = "Its length, leaders included."}),
      key<&PortSetting::open_m3_per_s>({.meaning = "Flow with all ports open."}),
      key<&PortSetting::aim_m3_per_s>({.meaning = "Flow to aim for."}),
      key<&PortSetting::least_m3_per_s>({.meaning = "Good enough from here ..."}),
      key<&PortSetting::most_m3_per_s>({.meaning = "... to here."}),
      key<&PortSetting::exact_kv>({.meaning = "Valve coefficient that would meet the aim exactly."}),
      key<&PortSetting::exact_turns>({.meaning = "Turns for that."}),
      key<&PortSetting::set_turns>({.meaning = "Turns from shut, rounded to a quarter."}),
      key<&PortSetting::open>({.meaning = "Left wide open."}),
      key<&PortSetting::after_m3_per_s>({.meaning = "Flow with all ports set."}),
      key<&PortSetting::authority_share>({.meaning = "Share of the loop's drop that its open valve takes."}),
      key<&PortSetting::within>({.meaning = "Whether that is good enough."}),
      key<&PortSetting::exchange_number>({.meaning = "UA over heat capacity of its water at the aim."})};
  return {keys, &x};
}

Record record_of(BalanceMove& x) {
  static constexpr Key keys[] = {
      key<&BalanceMove::loop>({.meaning = "The loop whose port is turned."}),
      key<&BalanceMove::port>({.meaning = "The port."}),
      key<&BalanceMove::until_m3_per_s>({.meaning = "Turn it down until its meter shows this."}),
      key<&BalanceMove::to_turns>({.meaning = "Turns from shut."}),
      key<&BalanceMove::then_m3_per_s>({.meaning = "What all meters then show, port by port."})};
  return {keys, &x};
}

Record record_of(Balance& x) {
  static constexpr Key keys[] = {
      key<&Balance::port>({.meaning = "Port by port."}),
      key<&Balance::open_is_enough>({.meaning = "Whether all ports wide open are good enough."}),
      key<&Balance::move>({.meaning = "Moves, in their order."}),
      key<&Balance::hardest>({.meaning = "Row of the hardest loop, from 0."}),
      key<&Balance::duty_Pa>({.meaning = "Pump pressure at the target flows."}),
      key<&Balance::aim_m3_per_s>({.meaning = "Total to aim for."}),
      key<&Balance::total_open_m3_per_s>({.meaning = "Total with all ports open."}),
      key<&Balance::total_after_m3_per_s>({.meaning = "Total with all ports set."}),
      key<&Balance::untouched_worst_share>({.meaning = "Worst miss of an aim if nothing is set."}),
      key<&Balance::meter_most_m3_per_s>({.meaning = "Highest mark of the flow meters: the file's, or one that shows "
                                                     "all flows well."}),
      key<&Balance::pump_speed_share>({.meaning = "Speed of the pump that the floor was tried on."}),
      key<&Balance::hold_Pa>({.meaning = "What the pump's own control holds, where it has one."}),
      key<&Balance::hold_m3_per_s>({.meaning = "The flow at which it holds that."}),
      key<&Balance::pump_reach_share>({.meaning = "Of the flow wanted that it could move at full speed."}),
      key<&Balance::least_speed_share>({.meaning = "Lowest speed at which every loop can be set to its target."}),
      key<&Balance::speed_saves_share>({.meaning = "Of the work on the water at full speed that this saves."})};
  return {keys, &x};
}

}  // namespace slabwright
