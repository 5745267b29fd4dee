// What nobody can know about a shop, and how wide it makes the lowest settings and the hours of a power cut.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/freeze.hpp"
#include "slabwright/progress.hpp"

namespace slabwright {

/// How far what is not known may lie from what was entered or guessed. All practice. A range of 0 is known.
struct Unknowns {
  double soil_share = 0.3;      ///< soil conductivity, both ways
  double leak_share = 0.4;      ///< air that leaks in, both ways
  double wet_share = 0.5;       ///< foam conducts more by up to this
  double crushed_share = 0.1;   ///< and has lost up to this of its thickness
  double tube_m = 0.05;         ///< tubes lie nearer to the edge or farther from it
  double sensor_error_K = 0.0;  ///< both ways
};
/// The usual ranges; the sensor's from the design.
Unknowns usual_unknowns(const Design& design);

struct BandOptions {
  std::size_t solves = 40;  ///< fields and runs of the whole shop that the surface is fitted to
  std::size_t checks = 20;  ///< and those that tell how far it is off
  std::size_t samples = 4096;
  std::uint64_t seed = 1;
};

/// What one unknown alone does, from one end of its range to the other.
struct BandInput {
  std::string what;
  double air_K = 0.0;            ///< of the wall thermostat's setting
  std::optional<double> slab_K;  ///< of the slab sensor's
};

/// 5, 50 and 95 of 100 draws: low, middle, high. Settings hold sensor error and what a real thermostat adds; the
/// surface's largest error is added on both sides. The slab sensor's are absent where no setting of it is enough.
struct Bands {
  double air_low_degC = 0.0, air_middle_degC = 0.0, air_high_degC = 0.0;
  std::optional<double> slab_low_degC, slab_middle_degC, slab_high_degC;
  /// Of a power cut in the coldest hour, from the wall thermostat's dial; at most the clock.
  double lasts_low_s = 0.0, lasts_middle_s = 0.0, lasts_high_s = 0.0;
  double air_error_K = 0.0, lasts_error_share = 0.0;  ///< of the surface, largest of the checks
  std::optional<double> slab_error_K;
  int solves = 0, checks = 0, samples = 0;
  std::vector<BandInput> input;  ///< what moves most first
};

/// Seeded and quasi-random: the same design has the same band. A surface of second degree over all unknowns but the
/// sensor's error stands for whole solves: edges as few states, snap and power cut. Absent where there is no setting.
std::optional<Bands> freeze_bands(const HeldShop& held, const Freeze& freeze, const Unknowns& unknowns,
                                  const BandOptions& options = {}, const Progress& progress = {});

/// What is enough in 95 of 100 draws.
LeastDials covering(const Bands& bands);

Record record_of(BandInput&);
Record record_of(Bands&);

}  // namespace slabwright
