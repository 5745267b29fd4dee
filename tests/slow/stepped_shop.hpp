// Rooms of two nodes each, air and inner faces, over every edge's full field, stepped together: no few states, no
// film in place of another, no iteration. Implicit and of first order, so that steps of minutes are wanted. Slow; what
// a year's steps are held against.
#pragma once
#include <Eigen/Dense>
#include <memory>
#include <vector>

#include "conduction/time_factors.hpp"
#include "conduction/time_field.hpp"
#include "slabwright/building_year.hpp"

namespace slabwright::test {

struct SteppedStrip {
  struct Contact {
    Eigen::Index unknown;
    std::size_t driver;
    double W_per_mK;  ///< as made
  };
  const FloorStrip* of = nullptr;
  std::size_t room = 0;
  conduction::TimeField field;
  std::vector<Contact> floor;  ///< where its face meets the room, and air near the edge
  conduction::Assembly now;    ///< under the film of this moment
  std::unique_ptr<conduction::ShiftedSystem> system;
  double film_share = 1.0;  ///< what the floor's film passes, over as made
  Eigen::VectorXd degC;     ///< [unknown]
  Eigen::MatrixXd gain;     ///< [unknown][driver]: of a step
};

/// What acts through a step; all but the second source are known before it.
struct SteppedDrivers {
  double outdoor_degC = 0.0;
  std::vector<double> more_W_per_K, air_W, faces_W, floor_W_per_m2;  ///< [room]
  double tube_W_per_m2 = 0.0;
};

class SteppedShop {
 public:
  SteppedShop(const YearShop& shop, const Design& design, const Envelope& envelope, const ZoneHistory& history,
              double since_coldest_s);
  /// Air of the main room at the end of a step: without the second source, and what 1 W of it adds.
  StepEnd reach(const SteppedDrivers& drivers, double dt_s);
  void take(double source_W);
  const std::vector<double>& air_degC() const { return air_degC_; }  ///< [room]
  /// Mean plane of the tubes at the sensor, less what it misses midway between two tubes.
  double sensor_degC() const;
  double up_W() const;

 private:
  void set_films(double dt_s);
  void step_fields();
  void balance_rooms();
  DriverValues drivers_of(const SteppedStrip& strip, double over_degC) const;

  const YearShop& shop_;
  std::vector<SteppedStrip> strips_;
  std::vector<double> air_degC_, faces_degC_, up_W_, floor_m2_, film_W_per_m2K_;  ///< [room]
  double covering_m2K_per_W_ = 0.0, dt_s_ = 0.0, made_dt_s_ = 0.0, sensed_W_per_m2_ = 0.0;
  SteppedDrivers drivers_;
  std::vector<Eigen::VectorXd> free_;          ///< [strip]: what the last step left of its temperatures
  std::vector<double> into_W_, into_W_per_K_;  ///< [strip]: heat into it, its room's side at 0 degC, and per kelvin
  Eigen::VectorXd idle_, per_source_;          ///< [2 rooms]: air, then faces
};

}  // namespace slabwright::test
