#include "slabwright/freeze_bands.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

Record record_of(BandInput& x) {
  static constexpr Key keys[] = {
      key<&BandInput::what>({.meaning = "What is not known."}),
      key<&BandInput::air_K>({.meaning = "What it alone does to the wall thermostat, from end to end of its range."}),
      key<&BandInput::slab_K>({.meaning = "And to the slab sensor."})};
  return {keys, &x};
}

Record record_of(Bands& x) {
  static constexpr Key keys[] = {
      key<&Bands::air_low_degC>({.meaning = "Wall thermostat that is enough in 5 of 100 draws."}),
      key<&Bands::air_middle_degC>({.meaning = "In half of them."}),
      key<&Bands::air_high_degC>({.meaning = "In 95 of 100."}),
      key<&Bands::slab_low_degC>({.meaning = "Slab sensor that is enough in 5 of 100 draws."}),
      key<&Bands::slab_middle_degC>({.meaning = "In half of them."}),
      key<&Bands::slab_high_degC>({.meaning = "In 95 of 100."}),
      key<&Bands::lasts_low_s>({.meaning = "Power cut in the coldest hour: 95 of 100 last longer."}),
      key<&Bands::lasts_middle_s>({.meaning = "Half of them last longer."}),
      key<&Bands::lasts_high_s>({.meaning = "5 of 100 last longer."}),
      key<&Bands::air_error_K>({.meaning = "Largest error of the surface, in the band already."}),
      key<&Bands::slab_error_K>({.meaning = "The same for the slab sensor."}),
      key<&Bands::lasts_error_share>({.meaning = "The same for the hours, as a share."}),
      key<&Bands::solves>({.meaning = "Whole solves behind the surface."}),
      key<&Bands::checks>({.meaning = "Further solves that it was held against."}),
      key<&Bands::samples>({.meaning = "Draws."}),
      key<&Bands::input>({.meaning = "What moves most first."})};
  return {keys, &x};
}

}  // namespace slabwright
