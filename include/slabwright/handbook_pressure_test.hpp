// Is the pressure test of laid tube leaking? What a gauge reads later if nothing leaks, and how sure that is. Air
// follows the gas law; a tube of PE-X full of water follows the tube, and nobody knows its stiffness well.
#pragma once
#include "slabwright/fields.hpp"
#include "slabwright/handbook_practice.hpp"

namespace slabwright {

enum class TestMedium { air, water };

/// A gauge and a thermometer, read together.
struct TestReading {
  double gauge_Pa = 0.0;  ///< over the air outside, 0 or more
  double degC = 0.0;      ///< of what is in the tube
};

/// What air shut in at a constant volume reads at another temperature: absolute pressures go as absolute temperatures.
double air_reading_Pa(const TestReading& then, double degC, double atmosphere_Pa);

/// A bore's growth with the pressure in it, dV/V per pascal: Lame's thick wall of a closed tube that is free to grow,
/// (2 ((k2 + 1)/(k2 - 1) + nu - nu/(k2 - 1)) + (1 - 2 nu)/(k2 - 1)) / E, k2 the square of outside over inside diameter.
double bore_give_per_Pa(double outside_over_inside, double modulus_Pa, double poisson);

/// PE-X, all from memory: its bore grows with warmth three times as much as its length (1.4 to 2.0e-4 per kelvin), and
/// with pressure by 7.8 over its modulus for a wall of a ninth of the outside diameter; the modulus is 1000 MPa at once
/// in the cold and 400 MPa after a day in the warm. A tenth of its stiffness goes for each tenfold of time.
struct PexBore {
  double least_growth_per_K = 4.2e-4, most_growth_per_K = 6.0e-4;
  double least_give_per_Pa = 0.8e-8, most_give_per_Pa = 2.0e-8;
  double relaxes_share = 0.1;
};

/// How much a water-filled PE-X tube's reading moves for a kelvin, both ends below 0: the bore grows more than the
/// water, so that warmth lowers the reading. `water_growth_per_K` is the water's own by volume, below 4e-4 (to about 40
/// degC; above, both ends may meet at 0). Up to one part in a hundred of air left in the tube makes it softer.
struct WaterSwing {
  double least_Pa_per_K = 0.0;  ///< nearest to 0
  double most_Pa_per_K = 0.0;
};
WaterSwing water_swing(double water_growth_per_K, double absolute_Pa);

/// How far one reading may be off.
struct TestErrors {
  double gauge_Pa = 0.0;
  double thermometer_K = 1.0;   ///< practice: in the shade, beside the tube
  double barometer_Pa = 1.0e3;  ///< by which the air outside may change between readings; practice
};

/// 2 % of the smallest usual scale that is read below three quarters of its end. Practice.
struct UsualGauge {
  double scale_Pa = 0.0;
  double error_Pa = 0.0;
};
UsualGauge usual_gauge(double reading_Pa, Customary);

enum class TestVerdict { holds, cannot_tell, leaks };

/// Why that is the verdict.
enum class TestWhy {
  within,      ///< reads as a tight tube would
  fell,        ///< lower than errors explain twice over
  in_between,  ///< lower than errors explain once
  rose,        ///< higher than a tight tube would
  too_coarse,  ///< as a tight tube would, but this gauge and thermometer would not see a leak
  unlike,      ///< water at another temperature
  frozen       ///< water at or below freezing
};

struct JudgedTest {
  double expected_Pa = 0.0;    ///< if nothing leaks
  double least_Pa = 0.0;       ///< what a tight tube may read, errors counted ...
  double most_Pa = 0.0;        ///< ... from here to here
  double off_Pa = 0.0;         ///< now less expected
  double doubt_Pa = 0.0;       ///< root of the sum of the errors' squares
  double tube_Pa = 0.0;        ///< by which the tube itself, yielding, may lower the reading
  double one_kelvin_Pa = 0.0;  ///< by which temperature moves the reading
  TestVerdict verdict = TestVerdict::cannot_tell;
  TestWhy why = TestWhy::within;
};

/// A leak is called one when the reading is lower than all that lowers it, and the errors once more. A doubt above a
/// tenth of the first reading is too coarse to say that it holds; trade practice lets a test fall by as much.
JudgedTest judge_air(const TestReading& then, const TestReading& now, const TestErrors&, double atmosphere_Pa);

/// Water is judged at like temperature only, which is one that the two thermometer readings cannot tell apart.
JudgedTest judge_water(const TestReading& then, const TestReading& now, const TestErrors&, const WaterSwing&);

Record record_of(JudgedTest&);

}  // namespace slabwright
