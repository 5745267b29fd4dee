#include <array>

#include "slabwright/key.hpp"
#include "slabwright/plant_scheme.hpp"

namespace slabwright {

template <>
struct Choices<SchemeKind> {
  static constexpr auto names =
      std::to_array<std::string_view>({"boiler", "pump", "mixing valve", "check valve", "bypass valve", "shared piece",
                                       "pipe", "bar", "balancing valve", "tube", "return valve", "zone valve",
                                       "relief valve", "low-water cut-off", "air separator", "tank", "fill"});
};

template <>
struct Choices<SchemeSide> {
  static constexpr auto names = std::to_array<std::string_view>({"supply", "return"});
};

Record record_of(SchemeElement& x) {
  static constexpr Key keys[] = {
      key<&SchemeElement::kind>({.meaning = "What it is drawn as."}),
      key<&SchemeElement::word>({.meaning = "What it is called."}),
      key<&SchemeElement::stands_for_number>({.meaning = "Elements of the graph's branch that it stands for."}),
      key<&SchemeElement::by_others>({.meaning = "Not of this design: by others, as the local code asks."}),
      key<&SchemeElement::length_m>({.meaning = "Of pipe or tube."}),
      key<&SchemeElement::power_W>({.meaning = "Of a boiler."}),
      key<&SchemeElement::volume_m3>({.meaning = "Of a tank."}),
      key<&SchemeElement::opening_Pa>({.meaning = "Gauge: what a relief valve opens at, what the system is filled to; "
                                                  "between supply and return, what a bypass opens at."})};
  return {keys, &x};
}

Record record_of(SchemeNode& x) {
  static constexpr Key keys[] = {
      key<&SchemeNode::name>({.meaning = "Where branches meet."}),
      key<&SchemeNode::side>({.meaning = "On a way from the heater to a loop, or on one back."}),
      key<&SchemeNode::rank_number>({.meaning = "Branches between it and the heater, on its own side."}),
      key<&SchemeNode::column_number>({.meaning = "The column it has for itself, from 1; 0: it has none."}),
      key<&SchemeNode::water_degC>({.meaning = "Water sent to the mains, or coming back from them."})};
  return {keys, &x};
}

Record record_of(SchemeBranch& x) {
  static constexpr Key keys[] = {
      key<&SchemeBranch::name>({.meaning = "Between which parts it runs, or whose loop it is."}),
      key<&SchemeBranch::from>({.meaning = "Row of the node where it begins, from 0."}),
      key<&SchemeBranch::to>({.meaning = "Row of the node where it ends."}),
      key<&SchemeBranch::column_number>({.meaning = "Its column, from 1; 0: it lies along its side."}),
      key<&SchemeBranch::loop_name>({.meaning = "The loop; empty: none."}),
      key<&SchemeBranch::flow_m3_per_s>({.meaning = "Flow at the operating point."}),
      key<&SchemeBranch::runs_back>({.meaning = "Whether water moves from its end to its beginning."}),
      key<&SchemeBranch::out_degC>({.meaning = "Water that a heater gives."}),
      key<&SchemeBranch::element>({.meaning = "What water passes, in order, and devices beside it."})};
  return {keys, &x};
}

Record record_of(SchemeDevice& x) {
  static constexpr Key keys[] = {key<&SchemeDevice::node>({.meaning = "Row of its node, from 0."}),
                                 key<&SchemeDevice::column_number>({.meaning = "Its column, from 1."}),
                                 key<&SchemeDevice::element>({.meaning = "What it is."})};
  return {keys, &x};
}

Record record_of(PipingScheme& x) {
  static constexpr Key keys[] = {
      key<&PipingScheme::columns_number>({.meaning = "Columns, from the source outward."}),
      key<&PipingScheme::node>({.meaning = "Where branches meet, one row for each node of the graph."}),
      key<&PipingScheme::branch>({.meaning = "One row for each branch of the graph."}),
      key<&PipingScheme::device>({.meaning = "Devices beside the flow."})};
  return {keys, &x};
}

}  // namespace slabwright
