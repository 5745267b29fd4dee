#include "slabwright/key.hpp"
#include "slabwright/plant_curves.hpp"

namespace slabwright {

Record record_of(CurveRow& x) {
  static constexpr Key keys[] = {
      key<&CurveRow::flow_m3_per_s>({.meaning = "Flow through the floor's pumps together."}),
      key<&CurveRow::system_Pa>({.meaning = "Asked for by all piping, valves as they are set."}),
      key<&CurveRow::system_head_m>({.meaning = "The same as a head."}),
      key<&CurveRow::pump_Pa>({.meaning = "Given by the pumps; below 0 where water is driven through them."}),
      key<&CurveRow::pump_head_m>({.meaning = "The same as a head."}),
      key<&CurveRow::loop_m3_per_s>({.meaning = "Flow in the hardest loop then."}),
      key<&CurveRow::loop_Pa>({.meaning = "Lost in the hardest loop alone, port to port."}),
      key<&CurveRow::loop_head_m>({.meaning = "The same as a head."})};
  return {keys, &x};
}

Record record_of(CurvePlace& x) {
  static constexpr Key keys[] = {key<&CurvePlace::flow_m3_per_s>({.meaning = "Flow."}),
                                 key<&CurvePlace::pressure_Pa>({.meaning = "Pressure."}),
                                 key<&CurvePlace::head_m>({.meaning = "The same as a head."})};
  return {keys, &x};
}

Record record_of(PlantCurves& x) {
  static constexpr Key keys[] = {
      key<&PlantCurves::loop>({.meaning = "The hardest loop."}),
      key<&PlantCurves::hardest_loop>({.meaning = "Its row, from 0."}),
      key<&PlantCurves::runs>({.meaning = "Where pump and system meet."}),
      key<&PlantCurves::duty>({.meaning = "The duty to buy."}),
      key<&PlantCurves::pump_end>({.meaning = "Where the pump's curve ends."}),
      key<&PlantCurves::row>({.meaning = "From no flow, by tenths of the flow it runs at."})};
  return {keys, &x};
}

}  // namespace slabwright
