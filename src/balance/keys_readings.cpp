#include <array>

#include "slabwright/balance_lengths.hpp"
#include "slabwright/balance_readings.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

template <>
struct Choices<Cause> {
  static constexpr auto names =
      std::to_array<std::string_view>({"none", "longer", "shorter", "restricted", "stopped", "meter wrong", "swapped"});
};
template <>
struct Choices<CauseGroup> {
  static constexpr auto names = std::to_array<std::string_view>(
      {"healthy", "reads less", "reads more", "longer", "shorter", "restricted", "meter wrong", "swapped"});
};
template <>
struct Choices<TestKind> {
  static constexpr auto names = std::to_array<std::string_view>(
      {"none", "return temperature", "warm front", "bucket", "open ports", "read again"});
};
template <>
struct Choices<Stop> {
  static constexpr auto names =
      std::to_array<std::string_view>({"converged", "rounds spent", "no solution", "not finite"});
};

Record record_of(PortReading& x) {
  static constexpr Key keys[] = {
      key<&PortReading::flow_m3_per_s>({.meaning = "Flow on its meter."}),
      key<&PortReading::return_degC>({.meaning = "Water coming back."}),
      key<&PortReading::front_s>({.meaning = "Until hot water sent into the cold loop comes back."})};
  return {keys, &x};
}

Record record_of(Readings& x) {
  static constexpr Key keys[] = {
      key<&Readings::port>({.meaning = "Port by port."}),
      key<&Readings::supply_degC>({.meaning = "Water going out."}),
      key<&Readings::water_degC>({.meaning = "Mean water in the loops, where no temperatures are read."}),
      key<&Readings::scale_most_m3_per_s>({.meaning = "End of the meters' scale."}),
      key<&Readings::meter_error_share>({.meaning = "Error of a meter."}),
      key<&Readings::thermometer_error_K>({.meaning = "Error of a thermometer."}),
      key<&Readings::front_error_share>({.meaning = "Error of a warm front's time."}),
      key<&Readings::pump_error_share>({.meaning = "How well the common flow is known."}),
      key<&Readings::heat_error_share>({.meaning = "How well the common drop is known."})};
  return {keys, &x};
}

Record record_of(Suspect& x) {
  static constexpr Key keys[] = {
      key<&Suspect::cause>({.meaning = "What may be wrong."}),
      key<&Suspect::loop>({.meaning = "Row of the loop, from 0."}),
      key<&Suspect::other>({.meaning = "Row of the other loop of a pair."}),
      key<&Suspect::probability_share>({.meaning = "How likely."}),
      key<&Suspect::size_share>(
          {.meaning = "Size that fits: length over drawn, flow over healthy, reading over flow."}),
      key<&Suspect::size_error_share>({.meaning = "Standard error of the size."}),
      key<&Suspect::misfit_number>({.meaning = "What it leaves over, in errors of the readings; 1 is usual."})};
  return {keys, &x};
}

Record record_of(SuspectGroup& x) {
  static constexpr Key keys[] = {
      key<&SuspectGroup::group>({.meaning = "Causes that these readings cannot tell apart."}),
      key<&SuspectGroup::loop>({.meaning = "Row of the loop, from 0."}),
      key<&SuspectGroup::other>({.meaning = "Row of the other loop of a pair."}),
      key<&SuspectGroup::probability_share>({.meaning = "How likely."}),
      key<&SuspectGroup::member>({.meaning = "Its causes, most likely first."})};
  return {keys, &x};
}

Record record_of(NextTest& x) {
  static constexpr Key keys[] = {
      key<&NextTest::kind>({.meaning = "What to do next."}),
      key<&NextTest::first>({.meaning = "One of the two suspects that it parts ..."}),
      key<&NextTest::second>({.meaning = "... and the other."}),
      key<&NextTest::loop>({.meaning = "Row of the loop, from 0."}),
      key<&NextTest::apart_number>({.meaning = "How far it parts the first two, in its errors."}),
      key<&NextTest::first_flow_m3_per_s>({.meaning = "What it shows if the first is right: flow ..."}),
      key<&NextTest::first_return_degC>({.meaning = "... return ..."}),
      key<&NextTest::first_front_s>({.meaning = "... or time."}),
      key<&NextTest::second_flow_m3_per_s>({.meaning = "What it shows if the second is right: flow ..."}),
      key<&NextTest::second_return_degC>({.meaning = "... return ..."}),
      key<&NextTest::second_front_s>({.meaning = "... or time."})};
  return {keys, &x};
}

Record record_of(ReadBack& x) {
  static constexpr Key keys[] = {
      key<&ReadBack::healthy>({.meaning = "Nothing is wrong that the readings show."}),
      key<&ReadBack::clear>({.meaning = "The first is ten times as likely as the second."}),
      key<&ReadBack::ranked>({.meaning = "What may be wrong, most likely first."}),
      key<&ReadBack::common_share>({.meaning = "Flow of all ports over the model's: the pump."}),
      key<&ReadBack::flow_m3_per_s>({.meaning = "What the ports carry if the first is right."}),
      key<&ReadBack::healthy_m3_per_s>({.meaning = "What they would carry if nothing were wrong."}),
      key<&ReadBack::least_seen_length_share>({.meaning = "Lengths off by less than this move no meter."}),
      key<&ReadBack::next>({.meaning = "The next test."})};
  return {keys, &x};
}

Record record_of(FittedLength& x) {
  static constexpr Key keys[] = {
      key<&FittedLength::loop>({.meaning = "The loop."}),
      key<&FittedLength::guess_m>({.meaning = "Length guessed before."}),
      key<&FittedLength::length_m>({.meaning = "Length that fits."}),
      key<&FittedLength::error_m>({.meaning = "Standard error of that."}),
      key<&FittedLength::learned_share>({.meaning = "Of what was not known before, gone by the readings."}),
      key<&FittedLength::told>({.meaning = "Whether that is more than half."})};
  return {keys, &x};
}

Record record_of(FittedLengths& x) {
  static constexpr Key keys[] = {
      key<&FittedLengths::loop>({.meaning = "Loop by loop."}),
      key<&FittedLengths::total_m>({.meaning = "All tube."}),
      key<&FittedLengths::total_error_m>({.meaning = "Standard error of that."}),
      key<&FittedLengths::common_share>({.meaning = "Flow of the manifold over the model's."}),
      key<&FittedLengths::common_error_share>({.meaning = "Standard error of that."}),
      key<&FittedLengths::heat_share>({.meaning = "Temperature drops over the model's."}),
      key<&FittedLengths::misfit_number>({.meaning = "What is left over, in errors of the readings; 1 is usual."}),
      key<&FittedLengths::odd_loop>({.meaning = "Loop whose flow does not go with its other readings."}),
      key<&FittedLengths::odd_cause>({.meaning = "What is wrong there, where the readings tell."}),
      key<&FittedLengths::stop>({.meaning = "How the fit ended."})};
  return {keys, &x};
}

}  // namespace slabwright
