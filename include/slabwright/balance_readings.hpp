// Readings of a manifold taken back: which one cause on which loop explains them, how likely, what to try next, and
// what to set then.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/balance.hpp"

namespace slabwright {

/// What was read at one port; what was not read is absent.
struct PortReading {
  std::optional<double> flow_m3_per_s;  ///< on its meter, 0 or more
  std::optional<double> return_degC;
  std::optional<double> front_s;  ///< from hot water into a cold loop until its return gets warm: volume over flow
};

/// What was read at the manifolds, ports set as the plant's are, and how far it can be trusted.
struct Readings {
  std::vector<PortReading> port;              ///< a row for each loop of the plan
  std::optional<double> supply_degC;          ///< without it return temperatures say nothing
  double water_degC = 35.0;                   ///< mean in the loops, for viscosity, where no temperatures are read
  std::optional<double> scale_most_m3_per_s;  ///< a meter that shows this much may have more
  double meter_error_share = 0.10;            ///< of what flows. Practice: glass meters on manifolds
  double thermometer_error_K = 0.5;           ///< practice: contact thermometers, all of one kind
  double front_error_share = 0.06;            ///< practice: a hand on the tube and a watch
  double pump_error_share = 0.10;             ///< how well the common flow is known beforehand; 0: exactly. Practice
  double heat_error_share = 0.10;             ///< how well the drop of all loops is known; 0: exactly. Practice
};

/// What may be wrong with a loop, one thing at a time. Sizes are shares of what ought to be.
enum class Cause {
  none,
  longer,      ///< length over drawn
  shorter,     ///< length over drawn
  restricted,  ///< air, a kink, a valve partly shut: flow over the healthy flow
  stopped,     ///< nearly or wholly shut, or an air lock: flow over the healthy flow
  meter,       ///< reading over flow
  swapped      ///< tubes or labels of two ports of one manifold changed over
};

/// A cause with its stated range of sizes, all alike likely, and how likely it is before anything is read, all loops
/// (all pairs) together.
struct CauseRange {
  Cause cause = Cause::none;
  double least_share = 1.0;
  double most_share = 1.0;
  double before_share = 0.0;
};
/// Practice. None 1 in 7; longer by 20 to 50 %, flow cut to 30 to 70 %, a meter off by 30 to 50 % either way and a pair
/// swapped share the rest, but for 3 % that a loop stands and 1 % each of shorter, all but shut, a stuck meter.
const std::vector<CauseRange>& cause_ranges();

/// Causes that the readings at hand cannot tell apart count as one. With a flow alone at a port: `reads_less` is
/// longer, restricted, stopped or a meter that shows too little; `reads_more` is shorter or a meter that shows too
/// much.
enum class CauseGroup { healthy, reads_less, reads_more, longer, shorter, restricted, meter, swapped };

/// One cause at one loop, and the size that fits.
struct Suspect {
  Cause cause = Cause::none;
  std::size_t loop = 0;   ///< row in LoopPlan::loop; of no meaning for `none`
  std::size_t other = 0;  ///< the other loop of a swapped pair, else as `loop`
  double probability_share = 0.0;
  double size_share = 1.0;
  double size_error_share = 0.0;  ///< standard error of that
  double misfit_number = 0.0;     ///< root mean square of what is left over, in errors of the reading: 1 is usual
};

struct SuspectGroup {
  CauseGroup group = CauseGroup::healthy;
  std::size_t loop = 0;
  std::size_t other = 0;
  double probability_share = 0.0;
  std::vector<Suspect> member;  ///< most likely first
};

/// What to do next: `returns` puts a thermometer on the loop's return, `front` times its warm front, `bucket` measures
/// what its port really carries, `open_ports` reads all meters with every port wide open (where valves are nearly shut
/// they, and not the tubes, decide), `read_again` averages four more readings of all meters.
enum class TestKind { none, returns, front, bucket, open_ports, read_again };

/// The test that parts two suspects best, and what it will show under each: the first of the two most likely groups, or
/// within a group that counts as one, the first two that ask for different work.
struct NextTest {
  TestKind kind = TestKind::none;
  Suspect first, second;  ///< whom it parts
  std::size_t loop = 0;
  double apart_number = 0.0;  ///< in standard errors of the test; below 2 it does not tell them apart
  std::optional<double> first_flow_m3_per_s, second_flow_m3_per_s;
  std::optional<double> first_return_degC, second_return_degC;
  std::optional<double> first_front_s, second_front_s;
};

/// A fault is named where it is so many times as likely as that nothing is wrong. Over many draws that costs no more
/// than 2 right answers in 100 and spares three of four false alarms (theory-readings.md).
inline constexpr double named_times = 3.0;

struct ReadBack {
  /// Most likely first, but healthy stands first unless a fault is `named_times` as likely. Adds up to 1.
  std::vector<SuspectGroup> ranked;
  bool healthy = false;
  bool clear = false;                           ///< the first is ten times as likely as the second
  double common_share = 1.0;                    ///< flow of all ports over the model's, if the first is right: the pump
  std::vector<double> flow_m3_per_s;            ///< what the ports carry if the first is right, with this pump
  std::vector<double> healthy_m3_per_s;         ///< what they would carry if nothing were wrong, with this pump
  std::vector<double> least_seen_length_share;  ///< a length further off than this moves a loop's meter by its error
  NextTest next;
  std::optional<Balance> settings;  ///< of the plant with the first cause in it; none where a loop stands still
};

/// The plant with a cause put in, to be balanced or solved: lengths changed, a valve more in the loop, tubes changed
/// over. A meter changes nothing.
Plant with_cause(const Plant& plant, const Suspect& suspect, double water_degC);

/// Ranks the causes. `plant` has the settings and the speed that were read at. Return temperatures are held against
/// operate() at these conditions; without rooms there, or without a supply temperature, they are left out, which is
/// said. New settings where `target` has a total. Refused: rows that are not as many as loops, no flow read at all,
/// errors not above zero.
Checked<ReadBack> read_back(const Plant& plant, const Readings& readings, const Conditions& conditions,
                            const FlowTarget& target);

Record record_of(PortReading&);
Record record_of(Readings&);
Record record_of(Suspect&);
Record record_of(SuspectGroup&);
Record record_of(NextTest&);
Record record_of(ReadBack&);

}  // namespace slabwright
