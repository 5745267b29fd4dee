// Figures as they are printed: in the reader's unit, to the digits that mean something.
#pragma once
#include <string>
#include <string_view>

#include "slabwright/answer.hpp"

namespace slabwright::report {

enum class Kind {
  length,        ///< of tube and loops
  short_length,  ///< spacing, thickness, distances
  area,
  degree,        ///< water, floor, weather
  dial,          ///< a thermostat's setting
  fine_degree,   ///< to a tenth, in tables
  typed_degree,  ///< to a tenth on both scales, without a zero
  rise,
  heat,
  boiler,  ///< kW in both systems
  watts,   ///< of pumps and small heaters
  flow,
  head,      ///< m of the fluid
  pressure,  ///< of a loop
  gauge,     ///< fill and relief
  volume,
  least_volume,  ///< of a tank to buy: rounded up
  velocity,
  current,
  voltage,
  share,
  ratio,  ///< to a tenth: a COP
  turns,
  hours,  ///< whole
  minutes,
  valve,  ///< Kv or Cv
  conductance,
  transmittance,
  line_conductance,
  conductivity,
  insulance,
  flux,
  film,    ///< inside a tube
  energy,  ///< kWh in both systems
  money,   ///< to a hundredth
  count
};

/// "0.63 gpm", "R-10.0". Throws std::logic_error for what is not a finite number.
std::string figure(Kind kind, double si, System system);
/// The same without its unit: in a sentence, and in a column whose head has the unit and whose points stand in line.
std::string spoken(Kind kind, double si, System system);
std::string bare(Kind kind, double si, System system);
/// The same without commas between thousands, for other programs.
std::string plain(Kind kind, double si, System system);
std::string_view unit(Kind kind, System system);

/// "8.0 ft of head", "24.1 kPa (2.46 m of head)": what a pump must overcome.
std::string against(double head_m, double pressure_Pa, System system);
/// "61 to 65 gpm", or one figure where both print alike.
std::string from_to(Kind kind, double least_si, double most_si, System system);
/// "23,100 Btu/h ~ (15,400 if tight, 34,700 if poor)".
std::string ranged(Kind kind, const Three& three, System system);

/// "one", "two", ... "ten", then digits.
std::string counted(std::size_t number);
/// "1 port", "4 ports".
std::string several(std::size_t number, std::string_view one);

}  // namespace slabwright::report
