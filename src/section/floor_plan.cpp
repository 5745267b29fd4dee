// Every room's floor against the heat that its room asks for.
#include <fmt/format.h>

#include <algorithm>

#include "response.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/maths.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

constexpr double floor_limit_degC = 29.0;  ///< EN 1264-2, where people stand
constexpr double strip_limit_degC = 35.0;  ///< EN 1264-2, strip of at most 1 m along outer walls
/// More covering than this is not for heated floors (EN 1264-2's tables end there).
constexpr double most_covering_m2K_per_W = 0.15;
/// A limit met to a thousandth of a kelvin is met.
constexpr double limit_tolerance_K = 1e-3;

using measured::degree;
using measured::power;

/// Wall and nominal film of the tube.
double nominal_tube_mK_per_W(const Design& design, const Section& section) {
  const TubeSize* tube = find_tube(design.tube.size.name);
  expects(tube != nullptr, "floor_of: a tube that the table does not have");
  const Film film{nominal_film_W_per_m2K, Regime::turbulent, 0.0};
  return section.wall_mK_per_W + film_resistance_mK_per_W(film, tube->inside_diameter_m);
}

/// The most heat that keeps the floor over the tubes within its limit; at most `wanted`.
double within_limit_W_per_m2(const Section& section, double wanted_W_per_m2, double tube_mK_per_W, double room_degC) {
  const auto over_limit_K = [&](double up_W_per_m2) {
    return water_for(section, up_W_per_m2, tube_mK_per_W, room_degC).floor.floor_over_tube_degC - floor_limit_degC;
  };
  if (over_limit_K(wanted_W_per_m2) <= limit_tolerance_K) return wanted_W_per_m2;
  if (over_limit_K(0.0) >= 0.0) return 0.0;
  return root_in_bracket(over_limit_K, 0.0, wanted_W_per_m2, {0.0, limit_tolerance_K * limit_tolerance_K, 100}).x;
}

RoomFloor with_tube(const Section& section, const RoomLoss& loss, double heated_m2, double tube_mK_per_W) {
  RoomFloor floor;
  floor.room = loss.name;
  floor.heated_m2 = heated_m2;
  floor.limit_degC = floor_limit_degC;
  floor.wanted_W_per_m2 = loss.wanted_W / heated_m2;
  floor.given_W_per_m2 = within_limit_W_per_m2(section, floor.wanted_W_per_m2, tube_mK_per_W, loss.indoor_degC);
  floor.shortfall_W = (floor.wanted_W_per_m2 - floor.given_W_per_m2) * heated_m2;
  const WaterWanted water = water_for(section, floor.given_W_per_m2, tube_mK_per_W, loss.indoor_degC);
  floor.water_degC = water.water_degC;
  floor.floor = water.floor;
  return floor;
}

/// A room whose floor carries no tube gives nothing.
RoomFloor without_tube(const RoomLoss& loss) {
  RoomFloor floor;
  floor.room = loss.name;
  floor.shortfall_W = loss.heated_floor ? loss.wanted_W : 0.0;
  return floor;
}

Diagnostic too_warm(const RoomFloor& floor, double wanted_over_degC, std::size_t room) {
  return {Severity::failure,
          "floor.too-warm",
          fmt::format("room[{}]", room + 1),
          "the floor of {} gives at most {} of the {} its room asks for, {} short: over the tubes it may be {} "
          "(EN 1264-2) and would be {}. Closer tubes, less loss or a second source mend it; a strip of 1 m along the "
          "outer walls may be {}",
          {floor.room, power(floor.given_W_per_m2 * floor.heated_m2), power(floor.wanted_W_per_m2 * floor.heated_m2),
           power(floor.shortfall_W), degree(floor_limit_degC), degree(wanted_over_degC), degree(strip_limit_degC)}};
}

Diagnostic no_tube(const RoomLoss& loss, std::size_t room) {
  return {Severity::failure,
          "floor.no-tube",
          fmt::format("room[{}]", room + 1),
          "{} asks its floor for {}, and no tube lies in it",
          {loss.name, power(loss.wanted_W)}};
}

std::vector<Diagnostic> remarks_on(const Design& design, const FloorPlan& plan) {
  std::vector<Diagnostic> said;
  const double covering = design.slab.covering.resistance_m2K_per_W;
  if (covering > most_covering_m2K_per_W)
    said.push_back(
        {Severity::warning,
         "covering.too-thick",
         "slab.covering",
         "the covering resists {}; over a heated floor at most {} (EN 1264-2)",
         {Measured{covering, Dimension::insulance}, Measured{most_covering_m2K_per_W, Dimension::insulance}}});
  for (const SectionOpinion& opinion : plan.opinion) {
    const bool known =
        opinion.difference_share >= opinion.least_known_share && opinion.difference_share <= opinion.most_known_share;
    if (!opinion.made_for || known) continue;
    said.push_back({Severity::warning,
                    "section.opinions-differ",
                    "slab",
                    "{} differs by {} from our heat upward, more than the two are known to",
                    {opinion.name, Measured{opinion.difference_share, Dimension::share}}});
  }
  return said;
}

Diagnostic tube_does_not_fit(const Section& section) {
  return {
      Severity::problem,
      "slab.tube-does-not-fit",
      "slab.concrete_above_tube",
      "a tube {} thick with its axis {} below the top of the concrete does not lie within it",
      {Measured{section.outside_diameter_m, Dimension::length}, Measured{section.cover_above_m, Dimension::length}}};
}

}  // namespace

Checked<FloorPlan> floor_of(const Design& design, const LoopPlan& loops, const Envelope& envelope) {
  expects(loops.room_tube_m.size() == envelope.room.size(), "floor_of: loops and losses of two designs");
  FloorPlan plan;
  plan.section = section_of(design, envelope.ground);
  if (!section::tube_fits(plan.section)) return {std::nullopt, {tube_does_not_fit(plan.section)}};
  plan.section = with_field(plan.section);
  plan.opinion = opinions_on(plan.section);

  std::vector<Diagnostic> said = remarks_on(design, plan);
  const double tube_mK_per_W = nominal_tube_mK_per_W(design, plan.section);
  for (std::size_t i = 0; i < envelope.room.size(); ++i) {
    const RoomLoss& loss = envelope.room[i];
    const double heated_m2 = loops.room_heated_m2[i];
    if (heated_m2 <= 0.0) {
      plan.room.push_back(without_tube(loss));
      if (loss.wanted_W > 0.0) said.push_back(no_tube(loss, i));
      continue;
    }
    const RoomFloor floor = with_tube(plan.section, loss, heated_m2, tube_mK_per_W);
    plan.room.push_back(floor);
    plan.down_W += floor.floor.down_W_per_m2 * heated_m2;
    plan.tube_heat_W += (floor.floor.up_W_per_m2 + floor.floor.down_W_per_m2) * heated_m2;
    if (floor.given_W_per_m2 >= floor.wanted_W_per_m2) continue;
    const auto unlimited = water_for(plan.section, floor.wanted_W_per_m2, tube_mK_per_W, loss.indoor_degC);
    said.push_back(too_warm(floor, unlimited.floor.floor_over_tube_degC, i));
  }
  return {std::move(plan), std::move(said)};
}

}  // namespace slabwright
