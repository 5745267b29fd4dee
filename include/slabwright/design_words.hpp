// Values that a design file writes as one text. Each reads and writes itself; `read_words` returns a sentence that says
// what to write, or nothing where it read; `takes` and `example` are for the reference page and for such sentences.
#pragma once
#include <string>
#include <string_view>

#include "handbook_calendar.hpp"
#include "units.hpp"

namespace slabwright {

/// A rectangle: "36 ft x 30 ft", "36 x 30 ft", "18 x 9 m".
struct Size {
  static constexpr std::string_view takes = "two lengths", example = "36 ft x 30 ft";
  double width_m = 0.0;  ///< along x
  double depth_m = 0.0;  ///< along y
  friend bool operator==(const Size&, const Size&) = default;
};
std::string read_words(std::string_view text, Size& size);
std::string write_words(const Size& size, System system);

/// A place on the plan, x to the right, y up, from the lower left inside corner of the form: "26 ft, 14 ft", "8, 5 m".
struct Place {
  static constexpr std::string_view takes = "a place", example = "26 ft, 14 ft";
  double x_m = 0.0;
  double y_m = 0.0;
  friend bool operator==(const Place&, const Place&) = default;
};
std::string read_words(std::string_view text, Place& place);
std::string write_words(const Place& place, System system);

/// A place on the plan, as coordinates or in words: "12 ft 4 in from west wall, 7 ft from door wall".
struct PlanPlace {
  static constexpr std::string_view takes = "a place", example = "12 ft 4 in from west wall, 7 ft from south wall";
  Place at;                              ///< where no walls are named
  std::string first_wall, second_wall;   ///< as written; both or neither
  double first_m = 0.0, second_m = 0.0;  ///< from their inner faces
  friend bool operator==(const PlanPlace&, const PlanPlace&) = default;
};
std::string read_words(std::string_view text, PlanPlace& place);
std::string write_words(const PlanPlace& place, System system);

/// An opening in a partition: its width, and how far its near side lies from where the partition begins.
struct Gap {
  static constexpr std::string_view takes = "a width at a distance", example = "4 ft at 10 ft";
  double width_m = 0.0;
  double at_m = 0.0;
  friend bool operator==(const Gap&, const Gap&) = default;
};
std::string read_words(std::string_view text, Gap& gap);
std::string write_words(const Gap& gap, System system);

/// A tube size by its trade name, as the tube table has it: "1/2 in", "16 x 2 mm".
struct TubeName {
  static constexpr std::string_view takes = "a tube size", example = "1/2 in";
  std::string name;
  friend bool operator==(const TubeName&, const TubeName&) = default;
};
std::string read_words(std::string_view text, TubeName& name);
std::string write_words(const TubeName& name, System system);

/// Insulation as R ("R-10", "1.8 m2K/W"), or a thickness with a material ("2 in XPS", "50 mm EPS"), or "none".
/// A U-value is refused with the reason.
struct Insulation {
  static constexpr std::string_view takes = "R, or thickness with a material", example = "R-10";
  double resistance_m2K_per_W = 0.0;
  friend bool operator==(const Insulation&, const Insulation&) = default;
};
std::string read_words(std::string_view text, Insulation& insulation);
std::string write_words(const Insulation& insulation, System system);

/// Glycol in the mixture: "30 %" is by volume; "30 % by mass" is converted for the fluid's kind when the file is
/// settled.
struct GlycolShare {
  static constexpr std::string_view takes = "a share", example = "30 %";
  double share = 0.0;  ///< 0..1, as written
  bool by_mass = false;
  friend bool operator==(const GlycolShare&, const GlycolShare&) = default;
};
std::string read_words(std::string_view text, GlycolShare& share);
std::string write_words(const GlycolShare& share, System system);

/// The run to the manifold: "included" in the loop's length, or a length "15 ft each way" to be added.
struct Leaders {
  static constexpr std::string_view takes = "included, or a length each way", example = "15 ft each way";
  bool included = true;
  double each_way_m = 0.0;
  friend bool operator==(const Leaders&, const Leaders&) = default;
};
std::string read_words(std::string_view text, Leaders& leaders);
std::string write_words(const Leaders& leaders, System system);

/// One point of a pump's curve: "15 ft at 3 gpm". (hydraulics has a PumpPoint and a Pump of its own.)
struct PumpCurvePoint {
  static constexpr std::string_view takes = "a head at a flow", example = "15 ft at 3 gpm";
  double head_m = 0.0;
  double flow_m3_per_s = 0.0;
  friend bool operator==(const PumpCurvePoint&, const PumpCurvePoint&) = default;
};
std::string read_words(std::string_view text, PumpCurvePoint& point);
std::string write_words(const PumpCurvePoint& point, System system);

/// One point of a balancing valve's curve: "Kv 0.45 at 2 turns".
struct ValvePoint {
  static constexpr std::string_view takes = "a Kv or Cv at turns", example = "Kv 0.45 at 2 turns";
  double coefficient_kv = 0.0;
  double open_turns = 0.0;
  friend bool operator==(const ValvePoint&, const ValvePoint&) = default;
};
std::string read_words(std::string_view text, ValvePoint& point);
std::string write_words(const ValvePoint& point, System system);

/// The lowest temperature of one day of a cold snap: "-24 F".
struct DayLow {
  static constexpr std::string_view takes = "a day's lowest temperature", example = "-24 F";
  double lowest_degC = 0.0;
  friend bool operator==(const DayLow&, const DayLow&) = default;
};
std::string read_words(std::string_view text, DayLow& low);
std::string write_words(const DayLow& low, System system);

/// A time of day: "7:00", "19:30".
struct ClockTime {
  static constexpr std::string_view takes = "a time of day", example = "7:00";
  double after_midnight_s = 0.0;  ///< 0 to a day
  friend bool operator==(const ClockTime&, const ClockTime&) = default;
};
std::string read_words(std::string_view text, ClockTime& time);
std::string write_words(const ClockTime& time, System system);

/// A span of the day, "7:00 to 17:00"; one that ends before it begins goes over midnight.
struct ClockSpan {
  static constexpr std::string_view takes = "a span of the day", example = "7:00 to 17:00";
  double from_s = 0.0;  ///< after midnight, 0 to below a day
  double to_s = 0.0;    ///< above 0, to a day
  friend bool operator==(const ClockSpan&, const ClockSpan&) = default;
};
std::string read_words(std::string_view text, ClockSpan& span);
std::string write_words(const ClockSpan& span, System system);

/// A day of the calendar, year first: "2026-09-14". Other forms are refused: nobody knows which of 9/4/2026 is the
/// month.
struct Date {
  static constexpr std::string_view takes = "a date", example = "2026-09-14";
  CivilDate on;
  friend bool operator==(const Date&, const Date&) = default;
};
std::string read_words(std::string_view text, Date& date);
std::string write_words(const Date& date, System system);

/// A coil of tube as it is sold: "300 ft", "200 m".
struct CoilLength {
  static constexpr std::string_view takes = "a length", example = "300 ft";
  double length_m = 0.0;
  friend bool operator==(const CoilLength&, const CoilLength&) = default;
};
std::string read_words(std::string_view text, CoilLength& coil);
std::string write_words(const CoilLength& coil, System system);

/// A row of a heat pump's table: "5 F: 17,000 Btu/h, COP 2.0".
struct SourcePoint {
  static constexpr std::string_view takes = "heat and COP at an outdoor temperature",
                                    example = "5 F: 17000 Btu/h, COP 2.0";
  double outdoor_degC = 0.0, capacity_W = 0.0, cop_number = 0.0;
  friend bool operator==(const SourcePoint&, const SourcePoint&) = default;
};
std::string read_words(std::string_view text, SourcePoint& point);
std::string write_words(const SourcePoint& point, System system);

}  // namespace slabwright
