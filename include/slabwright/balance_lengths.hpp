// Slabs that were poured and the papers lost: the lengths of all loops fitted to readings.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/balance_readings.hpp"

namespace slabwright {

/// How well lengths are known before anything is read. Above 0. Practice.
struct LengthsBefore {
  double each_error_share = 0.35;   ///< a loop by count is the floor over the number of loops
  double total_error_share = 0.10;  ///< floor over spacing
};

struct FittedLength {
  std::string loop;
  double guess_m = 0.0;
  double length_m = 0.0;
  double error_m = 0.0;  ///< standard error
  /// Of what was not known before, how much the readings took away: 0 nothing, 1 all.
  double learned_share = 0.0;
  bool told = false;  ///< the readings took away more than half
};

struct FittedLengths {
  std::vector<FittedLength> loop;
  double total_m = 0.0;
  double total_error_m = 0.0;
  double common_share = 1.0;  ///< flow of the whole manifold over the model's: the pump
  double common_error_share = 0.0;
  double heat_share = 1.0;     ///< drops over the model's
  double misfit_number = 0.0;  ///< root mean square of readings' leftovers, in their errors: 1 is usual
  /// Whose flow does not go with what else is known of it: it is choked, or its meter shows wrong. Empty: none. The
  /// lengths are then those that fit with that taken into account.
  std::string odd_loop;
  Cause odd_cause = Cause::none;  ///< `restricted` or `meter` where the readings tell the two apart
  Stop stop = Stop::rounds_spent;
  std::optional<Balance> settings;  ///< of the plant with these lengths; see set_fitted()
};

/// Weighted least squares over the logarithms of all lengths and of what flows and drops have in common, the network
/// and the loops' returns as model, what was known before as further data. Said: loops whose length the readings
/// hardly tell, a port that reads nothing (its flow is left out), a flow that is odd, a fit that cannot be good.
/// Refused as by read_back().
Checked<FittedLengths> fit_lengths(const Plant& plant, const Readings& readings, const Conditions& conditions,
                                   const LengthsBefore& before = {});

/// The plant with other lengths, a row for each loop: to be balanced anew, or read against.
Plant with_lengths(const Plant& plant, const std::vector<double>& length_m);

/// New settings for `target`, which is that of with_lengths(): all ports opened first. Said as by balance_plant().
Checked<Balance> set_fitted(const Plant& plant, const FlowTarget& target, double water_degC);

Record record_of(FittedLength&);
Record record_of(FittedLengths&);

}  // namespace slabwright
