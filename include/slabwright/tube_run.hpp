// A run of tube that is asked for its loss again and again, as a network's solver does.
#pragma once
#include "slabwright/tube.hpp"

namespace slabwright {

/// The same figures as tube_loss(), to rounding, several times faster. What does not depend on the flow is worked out
/// once, and the root of Colebrook's equation is sought from the one found last: a flow near the last one needs one
/// logarithm, not three.
class TubeRun {
 public:
  TubeRun() = default;  ///< no tube: loses nothing
  TubeRun(const Bore& bore, const Liquid& liquid);

  bool empty() const { return square_coefficient_ == 0.0; }
  Loss loss(double flow_m3_per_s);

  /// About what a flow meets in pressure for each m3/s, before anything is known: laminar, or with f = 0.03.
  double rough_chord_Pa_s_per_m3(double flow_m3_per_s) const;

 private:
  double laminar_Pa_s_per_m3() const { return 64.0 * square_coefficient_ / unit_flow_reynolds_; }
  Loss blended(double flow_m3_per_s, double reynolds);
  double inverse_root(double film, double reynolds);

  double square_coefficient_ = 0.0;  ///< Pa in (m3/s)^2 at a friction factor of one
  double unit_flow_reynolds_ = 1.0;
  double wall_ratio_ = 0.0;                ///< relative roughness / 3.7
  double inverse_root_coefficient_ = 0.0;  ///< 1 / sqrt f found last; 0 before the first
  double blend_slope_coefficient_ = 0.0;   ///< d f / d Re between 2300 and 4000; 0 before it was needed
};

}  // namespace slabwright
