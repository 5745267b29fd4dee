#include "slabwright/answer_gauge.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

Record record_of(GaugeAnswer& x) {
  static constexpr Key keys[] = {
      key<&GaugeAnswer::medium>({.meaning = "What the tube was filled with."}),
      key<&GaugeAnswer::then_Pa>({.meaning = "The first reading, gauge."}),
      key<&GaugeAnswer::then_degC>({.meaning = "Its temperature."}),
      key<&GaugeAnswer::now_Pa>({.meaning = "The second reading."}),
      key<&GaugeAnswer::now_degC>({.meaning = "Its temperature."}),
      key<&GaugeAnswer::atmosphere_Pa>({.meaning = "The air outside, absolute."}),
      key<&GaugeAnswer::judged>({.meaning = "What a tight tube reads, and the verdict."}),
      key<&GaugeAnswer::gauge_error_Pa>({.meaning = "How far one reading may be off."}),
      key<&GaugeAnswer::scale_Pa>({.meaning = "End of the scale that is a guess of ours, where that error is."}),
      key<&GaugeAnswer::thermometer_error_K>({.meaning = "How far one temperature may be off."}),
      key<&GaugeAnswer::swing_least_Pa>({.meaning = "Of water: what a kelvin does, at least ..."}),
      key<&GaugeAnswer::swing_most_Pa>({.meaning = "... and at most."}),
      key<&GaugeAnswer::after_s>({.meaning = "From the first reading to the second."}),
      key<&GaugeAnswer::hourly_Pa>({.meaning = "Lost in an hour beyond what temperature explains, where it leaks."}),
      key<&GaugeAnswer::wait_s>({.meaning =
                                     "Until it is the hour of the first reading again; from that reading where the "
                                     "time between them is not known."})};
  return {keys, &x};
}

}  // namespace slabwright
