// The drilling guide of a design.
#include <algorithm>
#include <cmath>

#include "sitework/nearest.hpp"
#include "slabwright/sitework_guide.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using sitework::dot;
using sitework::minus;
using sitework::unit;

/// Where a shift is not enough.
constexpr double most_turn_deg = 5.0;

Diagnostic said(Severity severity, std::string code, std::string about, std::string sentence) {
  return {severity, std::move(code), std::move(about), std::move(sentence), {}};
}

bool side_by_side(const PlanWall& a, const PlanWall& b) {
  constexpr double least_sine = 0.05;
  return std::abs(sitework::cross(unit(minus(a.to, a.from)), unit(minus(b.to, b.from)))) < least_sine;
}

/// An anchor of the file, or the hole asked about, as holes on the plan.
struct WantedHole {
  std::string name, about;
  AnchorPattern pattern;
};

class Guiding {
 public:
  Guiding(const Design& design, const LoopPlan& plan, const DrillAsked& asked)
      : design_(design), plan_(plan), asked_(asked), walls_(plan_walls(design)), usual_(usual_hole(design.units)) {
    for (const Place& p : floor_shape(design.slab).outline) outline_.push_back({p.x_m, p.y_m});
  }

  Checked<DrillGuide> result() {
    const auto walls = told_from(design_, asked_.at);
    if (!is_drawn(plan_) || !walls) {
      return refused("drill.no-drawing", "loop",
                     "where the tube lies is not known: a drilling guide needs loops that are drawn, all of them");
    }
    first_ = walls->first;
    second_ = walls->second;
    const std::vector<WantedHole> wanted = all_wanted();
    if (!said_.empty()) return {std::nullopt, std::move(said_)};
    if (wanted.empty()) {
      return refused("drill.no-hole", "anchor",
                     "no hole is asked about: give --at \"12 ft 4 in from west wall, 7 ft from south wall\", or an "
                     "[[anchor]] in the file");
    }
    gather_tube();
    if (!gather_found()) return {std::nullopt, std::move(said_)};
    for (const WantedHole& one : wanted) guide_.anchor.push_back(anchor(one));
    return {std::move(guide_), std::move(said_)};
  }

 private:
  Checked<DrillGuide> refused(std::string code, std::string about, std::string sentence) const {
    return {std::nullopt, {said(Severity::warning, std::move(code), std::move(about), std::move(sentence))}};
  }

  /// Why two walls make no place.
  Diagnostic no_point(const PlanPlace& place, const std::string& about) const {
    for (const std::string& name : {place.first_wall, place.second_wall}) {
      if (find_wall(walls_, name)) continue;
      std::string names;
      for (const PlanWall& wall : walls_) names += (names.empty() ? "" : ", ") + wall.name;
      Diagnostic d = said(Severity::warning, "drill.no-wall", about, "no wall on the plan is called {}. There are: {}");
      d.parts = {excerpt(name), names};
      return d;
    }
    Diagnostic d = said(Severity::warning, "drill.no-wall", about,
                        "{} and {} run side by side: a place takes two walls that meet");
    d.parts = {excerpt(place.first_wall), excerpt(place.second_wall)};
    return d;
  }

  /// A point of the slab, or nothing with the reason said.
  std::optional<Point> place_of(const PlanPlace& place, const std::string& about) {
    const auto point = point_on_plan(walls_, place);
    if (!point) said_.push_back(no_point(place, about));
    return point;
  }

  void must_lie_on_slab(Point point, const std::string& name, const std::string& about) {
    if (where_is(point, outline_) != Where::outside) return;
    Diagnostic d =
        said(Severity::warning, "drill.off-slab", about, "{} lies off the slab: it is {} from {} and {} from {}");
    const GuidePlace at = told(point);
    d.parts = {name, Measured{at.from_first_m, Dimension::length}, first_.name,
               Measured{at.from_second_m, Dimension::length}, second_.name};
    said_.push_back(std::move(d));
  }

  std::vector<WantedHole> all_wanted() {
    std::vector<WantedHole> wanted;
    if (asked_.at) {
      guide_.hole_is_ours = !asked_.diameter_m || !asked_.depth_m;
      const auto point = place_of(*asked_.at, "--at");
      if (!point) return {};
      wanted.push_back(
          {"the hole",
           "--at",
           {{*point}, asked_.diameter_m.value_or(usual_.diameter_m), asked_.depth_m.value_or(usual_.depth_m)}});
    } else {
      for (std::size_t i = 0; i < design_.anchor.size(); ++i) add_anchor(i, wanted);
    }
    for (const WantedHole& one : wanted)
      for (const Point& hole : one.pattern.hole) must_lie_on_slab(hole, one.name, one.about);
    return wanted;
  }

  void add_anchor(std::size_t row, std::vector<WantedHole>& wanted) {
    const Anchor& anchor = design_.anchor[row];
    const std::string about = "anchor[" + std::to_string(row + 1) + "]";
    const auto point = place_of(anchor.place, about + ".place");
    if (!point) return;
    WantedHole one{anchor.name.empty() ? "anchor " + std::to_string(row + 1) : anchor.name,
                   about,
                   {{}, asked_.diameter_m.value_or(anchor.diameter_m), asked_.depth_m.value_or(anchor.depth_m)}};
    for (const Place& hole : anchor.holes) one.pattern.hole.push_back({point->x_m + hole.x_m, point->y_m + hole.y_m});
    if (anchor.holes.empty()) one.pattern.hole.push_back(*point);
    wanted.push_back(std::move(one));
  }

  void gather_tube() {
    tube_.outside_diameter_m = find_tube(design_.tube.size.name)->outside_diameter_m;
    tube_.concrete_above_m = tube_axis_depth_m(design_) - 0.5 * tube_.outside_diameter_m;
    for (const Loop& loop : plan_.loop) tube_.loop.push_back(*loop.path);
    doubt_.usual = usual_placing(design_.units);
    guide_.tolerance_is_ours = !asked_.tolerance_m;
    if (asked_.tolerance_m) doubt_.usual.sideways_m = 0.5 * *asked_.tolerance_m;
    guide_.first_wall = first_.name;
    guide_.second_wall = second_.name;
    guide_.outside_diameter_m = tube_.outside_diameter_m;
    guide_.concrete_above_m = tube_.concrete_above_m;
    guide_.tolerance_m = 2.0 * doubt_.usual.sideways_m;
    guide_.depth_tolerance_m = 2.0 * doubt_.usual.depth_m;
    guide_.may_move_m = asked_.may_move_m.value_or(usual_.may_move_m);
  }

  bool gather_found() {
    std::vector<FoundPoint> found;
    for (std::size_t i = 0; i < asked_.found.size(); ++i) {
      const std::string about = "found " + std::to_string(i + 1);
      const auto point = place_of(asked_.found[i].place, about);
      if (!point) continue;
      must_lie_on_slab(*point, about, about);
      found.push_back({*point, std::nullopt});
      if (asked_.found[i].drawn) found.back().drawn = place_of(*asked_.found[i].drawn, about);
    }
    if (!said_.empty()) return false;
    if (found.empty()) return true;
    doubt_.refit = refit(tube_.loop, doubt_.usual, found);
    guide_.shift_right_m = doubt_.refit->shift.x_m;
    guide_.shift_up_m = doubt_.refit->shift.y_m;
    for (std::size_t i = 0; i < doubt_.refit->found.size(); ++i) {
      const FoundTube& one = doubt_.refit->found[i];
      guide_.found.push_back({told(one.place), one.off_m, one.left_m, one.left_out});
      if (!one.left_out) continue;
      Diagnostic d = said(Severity::warning, "drill.strange-place", "found " + std::to_string(i + 1),
                          "tube found at place {} lies {} from the nearest tube drawn, which the other places speak "
                          "against: it is left out, and doubt is greater near it; measure it again");
      d.parts = {std::to_string(i + 1), Measured{one.off_m, Dimension::length}};
      said_.push_back(std::move(d));
    }
    return true;
  }

  GuidePlace told(Point place) const {
    return {place.x_m, place.y_m, from_wall_m(first_, place), from_wall_m(second_, place)};
  }

  GuideAnchor anchor(const WantedHole& one) {
    const PatternReading reading = read_pattern(tube_, doubt_, one.pattern);
    GuideAnchor anchor{one.name, one.pattern.diameter_m, one.pattern.depth_m, {}, reading.strike_share, reading.word,
                       {}};
    for (std::size_t i = 0; i < reading.hole.size(); ++i) {
      const HoleReading& h = reading.hole[i];
      anchor.hole.push_back({told(one.pattern.hole[i]), plan_.loop[h.loop].name, h.along_m, h.distance_m, h.clear_m,
                             h.depth_margin_m, h.sideways_m, h.over_share, h.deep_share, h.strike_share, h.word});
    }
    add_move(one, anchor);
    say_of(one, anchor);
    return anchor;
  }

  /// A shift first; a turn with it only where shifts alone leave doubt and there is something to turn.
  void add_move(const WantedHole& one, GuideAnchor& anchor) const {
    if (anchor.word == Drilling::likely_clear || guide_.may_move_m < usual_.step_m) return;
    MoveLimits limits{guide_.may_move_m, usual_.step_m, 0.0, 1.0};
    PatternMove best = least_risk_move(tube_, doubt_, one.pattern, limits);
    if (!best.clear && one.pattern.hole.size() > 1) {
      limits.turn_deg = most_turn_deg;
      limits.step_m *= 2.0;
      const PatternMove turned = least_risk_move(tube_, doubt_, one.pattern, limits);
      if (turned.clear || turned.strike_share < 0.9 * best.strike_share) best = turned;
    }
    if (best.moved_m <= 0.0) return;
    GuideMove move{best.shift.x_m, best.shift.y_m, best.turn_deg, best.moved_m, {}, best.strike_share, best.clear};
    for (const Point& hole : best.hole) {
      if (where_is(hole, outline_) == Where::outside) return;
      move.hole.push_back(told(hole));
    }
    anchor.move.push_back(std::move(move));
  }

  void say_of(const WantedHole& one, const GuideAnchor& anchor) {
    if (anchor.depth_m >= floor_thickness_m(design_.slab)) {
      Diagnostic d = said(Severity::warning, "drill.through", one.about, "{} goes {} deep, through the {} of concrete");
      d.parts = {one.name, Measured{anchor.depth_m, Dimension::length},
                 Measured{floor_thickness_m(design_.slab), Dimension::length}};
      said_.push_back(std::move(d));
    }
    if (anchor.word == Drilling::likely_clear) return;
    const bool never = anchor.word == Drilling::do_not_drill;
    Diagnostic d =
        said(never ? Severity::failure : Severity::warning, never ? "drill.strike" : "drill.doubt", one.about,
             never ? "{}: a chance of {} to strike tube as it is placed"
                   : "{} is in doubt: a chance of {} to strike tube as it is placed");
    d.parts = {one.name, Measured{anchor.strike_share, Dimension::share}};
    said_.push_back(std::move(d));
  }

  const Design& design_;
  const LoopPlan& plan_;
  const DrillAsked& asked_;
  std::vector<PlanWall> walls_;
  UsualHole usual_;
  Polygon outline_;
  PlanWall first_, second_;
  DrawnTube tube_;
  TubeDoubt doubt_;
  DrillGuide guide_;
  std::vector<Diagnostic> said_;
};

}  // namespace

UsualHole usual_hole(System system) {
  if (system == System::si) return {0.012, 0.080, 0.150, 0.005};
  return {0.5 * inch_m, 3.0 * inch_m, 6.0 * inch_m, 0.25 * inch_m};
}

std::optional<std::pair<PlanWall, PlanWall>> told_from(const Design& design, const std::optional<PlanPlace>& place) {
  const std::vector<PlanWall> walls = plan_walls(design);
  if (place && !place->first_wall.empty()) {
    const PlanWall *first = find_wall(walls, place->first_wall), *second = find_wall(walls, place->second_wall);
    if (first && second && !side_by_side(*first, *second)) {
      // Called as the reader calls them.
      return std::pair{PlanWall{place->first_wall, first->from, first->to},
                       PlanWall{place->second_wall, second->from, second->to}};
    }
  }
  return walls_told_from(design);
}

Checked<DrillGuide> drill_at(const Design& design, const LoopPlan& plan, const DrillAsked& asked) {
  return Guiding(design, plan, asked).result();
}

}  // namespace slabwright
