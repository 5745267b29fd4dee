// Where along its edges a floor loses more than in its middle.
#include <algorithm>
#include <cmath>
#include <numeric>
#include <variant>

#include "envelope/floors.hpp"
#include "slabwright/envelope.hpp"

namespace slabwright {
namespace {

/// Strips double in width from this on.
constexpr double first_strip_m = 0.3;

double beyond_face_m(const EdgeDetail& detail) {
  if (const auto* wall = std::get_if<WallEdge>(&detail.kind)) return wall->width_m;
  const DoorEdge& door = std::get<DoorEdge>(detail.kind);
  return door.leaf_m + door.nose_m;
}

/// The outermost strip takes in all that leaves through the concrete's rim: its heat leaves the end of the tube plane
/// within a slab's thickness. What is left at the line of symmetry is the middle.
std::vector<double> cuts_of(const EdgeDetail& detail) {
  const double middle_m = detail.half_width_m - beyond_face_m(detail);
  std::vector<double> cuts;
  double at_m = detail.last_tube_in_m + detail.slab_thickness_m;
  for (double width_m = first_strip_m; at_m + width_m < middle_m; width_m *= 2.0) {
    cuts.push_back(at_m);
    at_m += width_m;
  }
  if (cuts.empty()) cuts.push_back(detail.last_tube_in_m + 0.5 * (middle_m - detail.last_tube_in_m));
  return cuts;
}

/// On the day of GroundPath a metre of edge loses steady (plane - mean) + less.
struct DayHeat {
  double steady_W_per_mK = 0.0;
  double less_W_per_m = 0.0;
};

/// The year's share of each strip is in step with the whole floor's.
class Day {
 public:
  Day(const Design& design, const std::vector<EdgeStretch>& edges, EdgeFields& fields) : climate_(design.climate) {
    double with = 0.0, behind = 0.0;
    for (const EdgeStretch& edge : edges) {
      const EdgeHeat heat = fields.heat_down(edge.detail);
      with += edge.length_m * heat.year_with_W_per_mK;
      behind += edge.length_m * heat.year_behind_W_per_mK;
    }
    const double all = std::hypot(with, behind);
    if (all > 0.0) with_ = with / all, behind_ = behind / all;
  }

  DayHeat of(const EdgeHeat& heat) const {
    const double month_degC = climate_.mean_degC - climate_.half_swing_K;
    const double spell_K = std::max(0.0, month_degC - climate_.outdoor_degC.value_or(month_degC));
    const double year_W_per_mK = with_ * heat.year_with_W_per_mK + behind_ * heat.year_behind_W_per_mK;
    return {heat.outdoor_W_per_mK + heat.ground_W_per_mK,
            year_W_per_mK * climate_.half_swing_K + heat.spell_W_per_mK * spell_K};
  }

 private:
  Climate climate_;
  double with_ = 1.0, behind_ = 0.0;
};

ColdEdge cold_edge(const EdgeDetail& detail, const Day& day, double mean_degC, EdgeFields& fields) {
  const std::vector<double> cuts = cuts_of(detail);
  const std::vector<EdgeHeat> heat = fields.heat_down(detail, cuts);
  const DayHeat middle = day.of(heat.back());
  const double middle_m = detail.half_width_m - beyond_face_m(detail) - cuts.back();
  ColdEdge edge;
  edge.held_m = detail.last_tube_in_m;
  edge.indoor_film_m2K_per_W = detail.indoor_film_m2K_per_W;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const double from_m = i == 0 ? 0.0 : cuts[i - 1];
    const double as_middle = (cuts[i] - from_m) / middle_m;
    const DayHeat own = day.of(heat[i]);
    const double more = own.steady_W_per_mK - as_middle * middle.steady_W_per_mK;
    const double less = own.less_W_per_m - as_middle * middle.less_W_per_m;
    if (more > 0.0) edge.strip.push_back({from_m, cuts[i], more, mean_degC - less / more});
  }
  return edge;
}

}  // namespace

std::vector<ColdEdge> cold_edges(const Design& design, const std::vector<EdgeStretch>& edges, EdgeFields& fields) {
  const Day day(design, edges, fields);
  const double given_m = std::accumulate(edges.begin(), edges.end(), 0.0,
                                         [](double sum, const EdgeStretch& edge) { return sum + edge.length_m; });
  std::vector<ColdEdge> cold;
  for (const EdgeStretch& edge : edges) {
    cold.push_back(cold_edge(edge.detail, day, design.climate.mean_degC, fields));
    cold.back().length_share = envelope::whole_floor(design).exposed_m / given_m;
  }
  return cold;
}

}  // namespace slabwright
