// What readers are told of several stages together: sums, shares and differences of an answer's figures.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/fields.hpp"

namespace slabwright {

struct Answer;

struct ManifoldSum {
  std::string name;
  int loops = 0;
  int ports = 0;  ///< the file's, or one more than there are loops
  int spare = 0;
  double tube_m = 0.0;         ///< of its loops, leaders included
  double flow_m3_per_s = 0.0;  ///< as they run
};

struct LoopSum {
  std::string loop;
  double leader_m = 0.0;   ///< both ways together
  double heating_m = 0.0;  ///< the rest
  double drop_K = 0.0;     ///< supply less its return
};

/// A way of running, the year together; row for row of Winter::way.
struct WaySum {
  std::string way;
  double boiler_J = 0.0, source_J = 0.0, pump_J = 0.0;  ///< electric
  double floor_heat_J = 0.0, source_heat_J = 0.0;
  std::optional<double> source_cop_number;     ///< heat over electricity; absent where it never ran
  std::optional<double> saved_J, saved_money;  ///< against the way it was run before; below 0: it takes more
  std::optional<double> saved_share;           ///< of money, or of energy without a price
  std::optional<double> warm_share;            ///< of working time; absent where nobody works
  double wet_s = 0.0, spring_wet_s = 0.0;      ///< the floor sweats, in the year and from March to May
  std::string nearest;                         ///< the deciding place with the least to spare
  std::optional<double> spare_K;               ///< that it has over its limit
};

struct AnswerSums {
  double wanted_W = 0.0;              ///< asked of all floors, upward
  std::optional<double> drop_K;       ///< supply less mixed return in the weather planned for
  std::optional<double> more_share;   ///< that floors give over what is asked, as one room needs warmer water
  std::optional<double> purge_s;      ///< the longest that a loop's air takes, in whole minutes, rounded up
  std::vector<ManifoldSum> manifold;  ///< row for row of the design's
  std::vector<LoopSum> loop;          ///< row for row of the loops
  std::vector<WaySum> way;
};
/// Of what the answer has; absent without loops.
std::optional<AnswerSums> sums_of(const Answer& answer);

Record record_of(ManifoldSum&);
Record record_of(LoopSum&);
Record record_of(WaySum&);
Record record_of(AnswerSums&);

}  // namespace slabwright
