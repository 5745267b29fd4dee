#include "slabwright/freeze_courses.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

Record record_of(HoursAtSetting& x) {
  static constexpr Key keys[] = {
      key<&HoursAtSetting::outdoor_degC>({.meaning = "Outdoors, before and after the cut."}),
      key<&HoursAtSetting::air_dial_degC>({.meaning = "The wall thermostat's dial until the cut."}),
      key<&HoursAtSetting::slab_degC>({.meaning = "What a slab sensor reads at the cut."}),
      key<&HoursAtSetting::first>({.meaning = "What freezes first."}),
      key<&HoursAtSetting::lasts_s>({.meaning = "From the cut until it freezes; absent: longer than the clock runs."})};
  return {keys, &x};
}

Record record_of(OutageCourse& x) {
  static constexpr Key keys[] = {
      key<&OutageCourse::outdoor_degC>({.meaning = "Outdoors, before and after the cut."}),
      key<&OutageCourse::air_dial_degC>({.meaning = "The wall thermostat's dial until the cut."}),
      key<&OutageCourse::first>({.meaning = "What freezes first, or comes nearest."}),
      key<&OutageCourse::lasts_s>({.meaning = "From the cut until it freezes; absent: longer than the clock runs."}),
      key<&OutageCourse::freezes_degC>({.meaning = "What that place freezes at."}),
      key<&OutageCourse::every_s>({.meaning = "From one value to the next, the first at the cut."}),
      key<&OutageCourse::air_degC>({.meaning = "Air of the room with the thermostat."}),
      key<&OutageCourse::slab_degC>({.meaning = "Slab midway between two tubes."}),
      key<&OutageCourse::place_degC>({.meaning = "The place that freezes first."})};
  return {keys, &x};
}

Record record_of(RecoveryCourse& x) {
  static constexpr Key keys[] = {
      key<&RecoveryCourse::outdoor_degC>({.meaning = "Outdoors."}),
      key<&RecoveryCourse::from_air_degC>({.meaning = "The room before."}),
      key<&RecoveryCourse::to_air_degC>({.meaning = "The room wanted."}),
      key<&RecoveryCourse::takes_s>({.meaning = "How long it takes; absent: longer than four days."}),
      key<&RecoveryCourse::every_s>({.meaning = "From one value to the next, the first at the start."}),
      key<&RecoveryCourse::air_degC>({.meaning = "Air of the room with the thermostat."}),
      key<&RecoveryCourse::slab_degC>({.meaning = "Slab midway between two tubes."}),
      key<&RecoveryCourse::floor_degC>({.meaning = "The floor's face."})};
  return {keys, &x};
}

Record record_of(FreezeCourses& x) {
  static constexpr Key keys[] = {
      key<&FreezeCourses::setting>({.meaning = "Hours of a power cut by weather and setting."}),
      key<&FreezeCourses::outage>({.meaning = "Slab and air through a power cut from the wall thermostat's dial."}),
      key<&FreezeCourses::recovery>({.meaning = "Slab and air on the way back to work, row for row of `recovery`."})};
  return {keys, &x};
}

}  // namespace slabwright
