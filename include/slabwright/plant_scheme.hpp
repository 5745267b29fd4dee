// The plant as a scheme to be drawn: its graph's nodes in ranks from the source outward, its branches with what they
// hold in words.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/plant_sizes.hpp"

namespace slabwright {

/// What a part of the plant is drawn as.
enum class SchemeKind {
  boiler,
  pump,
  mixing_valve,
  check_valve,
  bypass_valve,
  shared_piece,  ///< closely spaced tees, separator, buffer tank
  pipe,
  bar,
  balancing_valve,
  tube,
  return_valve,
  zone_valve,
  relief_valve,
  low_water,
  air_separator,
  tank,
  fill
};

/// One or more elements of the graph under one word, or a device that the graph does without.
struct SchemeElement {
  SchemeKind kind = SchemeKind::pipe;
  std::string word;
  int stands_for_number = 0;           ///< so many elements of the graph's branch
  bool by_others = false;              ///< not of this design: by others, as the local code asks
  std::optional<double> length_m{};    ///< of pipe or tube
  std::optional<double> power_W{};     ///< of a boiler
  std::optional<double> volume_m3{};   ///< of a tank
  std::optional<double> opening_Pa{};  ///< gauge, of a relief valve; what a bypass valve opens at; what is filled to
};

enum class SchemeSide { supply, return_side };

/// Where branches meet.
struct SchemeNode {
  std::string name;
  SchemeSide side = SchemeSide::supply;
  int rank_number = 0;  ///< branches between it and the heater, on its own side
  /// Where nothing crosses from side to side here: the column it has for itself, from 1; else 0.
  int column_number = 0;
  std::optional<double> water_degC{};  ///< at the mains: what is sent, what comes back
};

/// Elements in the order of the flow. A branch from one side to the other stands in a column of its own; one within a
/// side lies along it.
struct SchemeBranch {
  std::string name;
  std::size_t from = 0, to = 0;  ///< rows of `node`
  int column_number = 0;         ///< from 1, from the source outward; 0: lies along its side
  std::string loop_name{};       ///< of a loop; else empty
  std::optional<double> flow_m3_per_s{};
  bool runs_back = false;            ///< water moves from its end to its beginning
  std::optional<double> out_degC{};  ///< of a heater: the water that it gives
  std::vector<SchemeElement> element{};
};

/// A device on a node, beside the flow.
struct SchemeDevice {
  std::size_t node = 0;  ///< row of `node`
  int column_number = 0;
  SchemeElement element;
};

struct PipingScheme {
  int columns_number = 0;
  std::vector<SchemeNode> node;      ///< a row for each node of the graph
  std::vector<SchemeBranch> branch;  ///< a row for each branch of the graph
  std::vector<SchemeDevice> device;
};

/// From the graph: the supply side is what lies on a way from the heater to a loop, the return side what lies on a way
/// back. Columns run from the source outward, one manifold after the other. Flows are the operating point's, where one
/// is known; each meeting's add up. Devices that the design says nothing of are marked as by others.
PipingScheme piping_scheme(const Plant& plant, const OperatingPoint* point, const PlantSizes* sizes);

Record record_of(SchemeElement&);
Record record_of(SchemeNode&);
Record record_of(SchemeBranch&);
Record record_of(SchemeDevice&);
Record record_of(PipingScheme&);

}  // namespace slabwright
