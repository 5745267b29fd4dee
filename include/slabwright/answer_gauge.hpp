// Is the pressure test leaking? The one question that needs no design.
#pragma once
#include <optional>
#include <string>

#include "slabwright/fields.hpp"
#include "slabwright/handbook_pressure_test.hpp"

namespace slabwright {

struct GaugeAsked {
  TestReading then, now;
  TestMedium medium = TestMedium::air;
  std::optional<double> gauge_error_Pa, thermometer_error_K;  ///< of one reading
  double altitude_m = 0.0;
  std::optional<double> after_s;  ///< from the first reading to the second, above 0
  System system = System::us;     ///< whose usual gauges are meant
};

struct GaugeAnswer {
  std::string medium;  ///< "air" or "water"
  double then_Pa = 0.0, then_degC = 0.0, now_Pa = 0.0, now_degC = 0.0;
  double atmosphere_Pa = 0.0;
  JudgedTest judged;
  double gauge_error_Pa = 0.0;
  std::optional<double> scale_Pa;  ///< of the gauge that was taken, where its error is our guess
  double thermometer_error_K = 0.0;
  std::optional<double> swing_least_Pa, swing_most_Pa;  ///< of water: what a kelvin does, from here to here
  std::optional<double> after_s;
  std::optional<double> hourly_Pa;  ///< lost in an hour, where it leaks and the time is known
  double wait_s = 0.0;  ///< until the hour of the first reading comes again; from it, where no time is known
};

/// Readings as judge_air() and judge_water() take them.
GaugeAnswer gauge_answer(const GaugeAsked& asked);

/// 0 holds, 3 leaks, 2 cannot tell yet.
int exit_code(const GaugeAnswer& answer);

Record record_of(GaugeAnswer&);

}  // namespace slabwright
