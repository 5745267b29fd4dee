#include "plant/apron_sleeves.hpp"

#include <algorithm>
#include <cmath>

namespace slabwright::plant {
namespace {

constexpr double floor_limit_degC = 29.0;  ///< EN 1264-2, where people stand
/// Sleeves are cut to this.
constexpr double sleeve_step_m = 0.25;

bool in(const Polygon& area, Point where) { return where_is(where, area) != Where::outside; }

/// Left of a trial's solution: a hundredth of a kelvin.
constexpr double trial_share = 1e-5;

class Apron {
 public:
  Apron(const Plant& plant, const FloorPlanCells& cells, const LaidFloor& laid, std::size_t manifold)
      : plant_(plant),
        cells_(cells),
        laid_(laid),
        manifold_(manifold),
        area_(laid.apron[manifold]),
        window_{{1e9, 1e9}, {-1e9, -1e9}} {
    for (const Point corner : area_) {
      window_.low = {std::min(window_.low.x_m, corner.x_m), std::min(window_.low.y_m, corner.y_m)};
      window_.high = {std::max(window_.high.x_m, corner.x_m), std::max(window_.high.y_m, corner.y_m)};
    }
  }

  ApronField of(const PlanField& field) const {
    ApronField apron;
    if (manifold_ < plant_.design.manifold.size()) apron.manifold = plant_.design.manifold[manifold_].name;
    apron.floor_m2 = std::abs(signed_area_m2(area_));
    apron.limit_degC = floor_limit_degC;
    for (const PlanTubeState& tube : field.tube) {
      for (const PlanPiece& piece : tube.piece) {
        if (in(area_, {piece.where.x_m, piece.where.y_m})) apron.tube_m += piece.length_m;
      }
    }
    apron.warmest = warmest(field);
    if (apron.warmest.surface_degC > floor_limit_degC) propose(apron, field);
    return apron;
  }

 private:
  FloorSpot warmest(const PlanField& field) const {
    return warmest_where(cells_, field, [&](Point where) { return in(area_, where); }).value_or(FloorSpot{});
  }

  /// How far its leaders run in it, the longest of them.
  double longest_leader_m(const PlanField& field) const {
    double longest = 0.0;
    for (std::size_t i = 0; i < field.tube.size(); ++i) {
      if (plant_.loops.loop[i].manifold != manifold_) continue;
      double leader = 0.0;
      for (const PlanPiece& piece : field.tube[i].piece) {
        if (!in(area_, {piece.where.x_m, piece.where.y_m})) break;
        leader = piece.at_m + 0.5 * piece.length_m;
      }
      longest = std::max(longest, leader);
    }
    return longest;
  }

  std::vector<TubeOnFloor> sleeved(double sleeve_m, bool both) const {
    std::vector<TubeOnFloor> tubes = laid_.tube;
    for (std::size_t i = 0; i < tubes.size(); ++i) {
      if (plant_.loops.loop[i].manifold != manifold_) continue;
      tubes[i].sleeved_supply_m = std::max(tubes[i].sleeved_supply_m, sleeve_m);
      if (both) tubes[i].sleeved_return_m = std::max(tubes[i].sleeved_return_m, sleeve_m);
    }
    return tubes;
  }

  /// Under the films of the bare leaders, which is quick and a little cool.
  FloorSpot warmest_with(double sleeve_m, bool both, const PlanField& from) const {
    const PlanOptions trial{.start = &from, .top_within = window_, .left_share = trial_share};
    return warmest(solve(cells_, sleeved(sleeve_m, both), trial));
  }

  /// Under the films that the sleeves themselves leave.
  double settled_degC(double sleeve_m, bool both, const PlanField& from) const {
    const std::vector<TubeOnFloor> tubes = sleeved(sleeve_m, both);
    FloorPlanCells own = cells_;
    const PlanField first = solve(own, tubes, {.start = &from, .top_within = window_, .left_share = trial_share});
    set_films(own, plant_.floor->section, first.up_W);
    return warmest(solve(own, tubes, {.start = &first, .top_within = window_, .left_share = trial_share})).surface_degC;
  }

  /// Longer sleeves leave less heat here: the least is found by halving.
  void propose(ApronField& apron, const PlanField& field) const {
    const int most = static_cast<int>(std::ceil(longest_leader_m(field) / sleeve_step_m));
    for (const bool both : {false, true}) {
      if (warmest_with(most * sleeve_step_m, both, field).surface_degC > floor_limit_degC) continue;
      int low = 0, high = most;
      while (high - low > 1) {
        const int middle = (low + high) / 2;
        const double degC = warmest_with(middle * sleeve_step_m, both, field).surface_degC;
        (degC > floor_limit_degC ? low : high) = middle;
      }
      double found_degC = settled_degC(high * sleeve_step_m, both, field);
      while (found_degC > floor_limit_degC && high < most)
        found_degC = settled_degC(++high * sleeve_step_m, both, field);
      if (found_degC > floor_limit_degC) continue;
      apron.sleeve_m = high * sleeve_step_m;
      apron.sleeve_both = both;
      apron.sleeved_degC = found_degC;
      return;
    }
  }

  const Plant& plant_;
  const FloorPlanCells& cells_;
  const LaidFloor& laid_;
  std::size_t manifold_;
  const Polygon& area_;
  PlanWindow window_;
};

}  // namespace

std::vector<ApronField> aprons_of(const Plant& plant, const FloorPlanCells& cells, const LaidFloor& laid,
                                  const PlanField& field) {
  std::vector<ApronField> aprons;
  for (std::size_t i = 0; i < laid.apron.size(); ++i) {
    if (laid.apron[i].size() < 3)
      aprons.push_back({});
    else
      aprons.push_back(Apron(plant, cells, laid, i).of(field));
  }
  return aprons;
}

}  // namespace slabwright::plant
