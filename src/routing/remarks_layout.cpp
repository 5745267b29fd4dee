#include "remarks_layout.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bands.hpp"

namespace slabwright::routing {
namespace {

/// Beyond this, loops of one manifold are not easily balanced (practice).
constexpr double even_spread = 0.10;
/// Floor more than a spacing from tube is left over at columns and slanted walls; more than this is worth a word.
constexpr double far_floor = 0.005;
/// As in LayoutCheck::sound().
constexpr double least_separation = 0.93, least_bulb_separation = 0.6;

Measured length(double m) { return {m, Dimension::length}; }
Measured share(double ratio) { return {ratio, Dimension::share}; }
std::string number(int count) { return fmt::format("{}", count); }

Diagnostic said(Severity severity, std::string code, std::string about, std::string sentence,
                std::vector<std::variant<std::string, Measured>> parts) {
  return {severity, std::move(code), std::move(about), std::move(sentence), std::move(parts)};
}

}  // namespace

Diagnostic bend_too_wide(const LayoutTask& task) {
  return said(Severity::problem, "layout.bend-too-wide", "tube.spacing",
              "tube that bends to {} cannot be laid {} apart: take {} or more, or a smaller tube",
              {length(task.bend_radius_m), length(least_spacing_m(task)), length(task.bend_radius_m / 0.9)});
}

std::string manifold_named(const LayoutTask& task, std::size_t row) {
  return task.manifold.size() == 1 ? "manifold" : fmt::format("manifold[{}]", row + 1);
}

Diagnostic no_floor_at_manifold(const std::string& manifold) {
  return said(
      Severity::problem, "layout.no-floor", manifold,
      "there is no floor before the manifold that tube fits on: look at its place, at which way it faces, and at "
      "the no-tube areas",
      {});
}

Diagnostic too_few_ports(const LayoutTask& task, int loops, int ports, double tube_m) {
  const bool one = task.manifold.size() == 1;
  return said(Severity::problem, "layout.too-few-ports", "manifold",
              one ? "{} of tube {} apart needs {} loops of at most {}; the manifold serves {}: more ports, a wider "
                    "spacing or a second manifold"
                  : "{} of tube {} apart needs {} loops of at most {}; the manifolds serve {}: more ports, a wider "
                    "spacing or one more manifold",
              {length(tube_m), length(task.spacing_m), number(loops), length(task.longest_loop_m), number(ports)});
}

Diagnostic no_room_for_apron(const std::string& manifold, int loops) {
  return said(Severity::problem, "layout.no-apron", manifold,
              "the leaders of {} loops have no room to spread before the manifold: move it to a wider floor, or split "
              "it in two",
              {number(loops)});
}

Diagnostic floor_not_shared_out(const std::string& manifold, int loops) {
  return said(
      Severity::problem, "layout.not-shared-out", manifold,
      "no cuts share the floor out among {} loops so that each finds its way to the manifold: move it to a wider "
      "floor, or split it in two",
      {number(loops)});
}

Diagnostic floor_out_of_reach(const std::string& manifold, double area_m2) {
  return said(Severity::warning, "layout.floor-out-of-reach", manifold,
              "{} of floor cannot be reached from the manifold: no way to it is two spacings wide",
              {Measured{area_m2, Dimension::area}});
}

Diagnostic opening_closed(const Opening& opening, Point place, double spacing_m) {
  return said(Severity::note, "layout.narrow-opening", "slab",
              "the opening {} wide at {} across, {} up is passed by no loop: two tubes with their clearances need {}, "
              "more where rows of tube fall badly",
              {length(opening.width_m()), length(place.x_m), length(place.y_m), length(opening.least_m(spacing_m))});
}

Diagnostic neck_too_narrow(const Neck& neck, Point place) {
  return said(
      Severity::warning, "layout.neck", "slab",
      "{} of floor beyond {} across, {} up needs {} loops, and {} can pass there side by side: widen the way, or "
      "place a manifold beyond it",
      {Measured{neck.beyond_m2, Dimension::area}, length(place.x_m), length(place.y_m), number(neck.needed_number),
       number(neck.passing_number)});
}

Diagnostic floor_left_over(const LayoutTask& task, const std::string& manifold, double width_m) {
  return said(Severity::note, "layout.floor-left-over", manifold,
              "tube exactly {} apart leaves a strip {} wide along a wall without a row of its own; stretched spacings "
              "would fill it",
              {length(task.spacing_m), length(width_m)});
}

Diagnostic manifolds_not_parted() {
  return said(Severity::problem, "layout.not-parted", "manifold",
              "no straight border gives each manifold floor of its own for as many loops as its ports serve: move them "
              "apart, or give more ports to the one with more floor",
              {});
}

Diagnostic no_port_for_rest() {
  return said(
      Severity::problem, "layout.no-port-left", "manifold",
      "the drawn loops take every port, and none is left for the rest of the floor: give the manifold more ports", {});
}

Diagnostic drawn_in_the_way() {
  return said(
      Severity::problem, "layout.round-drawn", "tube.lay_rest",
      "the rest of the floor finds no room round the drawn loops: let those begin at one end of the row of ports "
      "and leave that side of the manifold to them",
      {});
}

Diagnostic own_floor_not_reached(int loops) {
  return said(
      Severity::problem, "layout.own-loops", "room",
      "with {} loops none finds a way of its own to a room that owns its loops and leaves the rest of the floor "
      "to the others: give that room a manifold of its own, widen its opening, or remove own_loops",
      {number(loops)});
}

namespace {

Diagnostic joints_crossed(const LayoutCheck& check) {
  const bool several = check.joint_crossings_number > 1, slanted = check.slanted_crossings_number > 0;
  Diagnostic joints = said(Severity::note, "layout.joints", "slab", "", {});
  if (several) {
    joints.sentence = "tube crosses joints in {} places, at most {} of one loop";
    joints.parts = {number(check.joint_crossings_number), number(check.most_crossings_number)};
  } else {
    joints.sentence = "tube crosses a joint in one place";
  }
  if (slanted && several) {
    joints.sentence += "; {} of them more than 10 degrees off square";
    joints.parts.emplace_back(number(check.slanted_crossings_number));
  } else if (slanted) {
    joints.sentence += ", more than 10 degrees off square";
  }
  joints.sentence += several ? ". Each needs a sleeve" : ". It needs a sleeve";
  return joints;
}

}  // namespace

std::vector<Diagnostic> notes_on_lie(const LayoutTask& task, const LayoutCheck& check) {
  std::vector<Diagnostic> all;
  if (check.joint_crossings_number > 0) {
    all.push_back(joints_crossed(check));
  }
  if (check.far_floor_ratio > far_floor) {
    all.push_back(said(Severity::note, "layout.far-floor", "slab", "{} of the floor lies more than {} from any tube",
                       {share(check.far_floor_ratio), length(task.spacing_m)}));
  }
  return all;
}

std::vector<Diagnostic> shortfalls(const LayoutTask& task, const LayoutCheck& check) {
  std::vector<Diagnostic> all;
  if (check.over_limit_number > 0) {
    all.push_back(said(Severity::failure, "layout.too-long", "tube",
                       "{} loops come out longer than {}; the longest is {}",
                       {number(check.over_limit_number), length(task.longest_loop_m), length(check.longest_m)}));
  }
  if (!task.loss.empty() && check.heat_spread_ratio > even_spread) {
    all.push_back(said(Severity::warning, "layout.uneven", "manifold",
                       "loops differ in the heat that they make up for by {} of their mean: one is shut in by its "
                       "neighbours; another place for the manifold would serve better",
                       {share(check.heat_spread_ratio)}));
  }
  if (task.loss.empty() && check.spread_ratio > even_spread) {
    all.push_back(
        said(Severity::warning, "layout.uneven", "manifold",
             "loops differ in length by {} of their mean: one is shut in by its neighbours; another place for "
             "the manifold would serve better",
             {share(check.spread_ratio)}));
  }
  if (check.tight_bends_number > 0) {
    all.push_back(said(Severity::failure, "layout.tight-bends", "tube.spacing", "{} bends come out tighter than {}",
                       {number(check.tight_bends_number), length(task.bend_radius_m)}));
  }
  if (check.too_near_number > 0) {
    all.push_back(said(Severity::failure, "layout.too-near", "slab",
                       "tube comes as near as {} to a wall or nearer to a no-tube area than its clearance",
                       {length(check.clearance_m)}));
  }
  if (check.separation_ratio < least_separation || check.bulb_separation_ratio < least_bulb_separation) {
    const double ratio = std::min(check.separation_ratio, check.bulb_separation_ratio);
    all.push_back(said(Severity::failure, "layout.too-close", "tube.spacing",
                       "tube comes as near as {} to other tube; its spacing is {}",
                       {length(ratio * task.spacing_m), length(task.spacing_m)}));
  }
  const std::vector<Diagnostic> notes = notes_on_lie(task, check);
  all.insert(all.end(), notes.begin(), notes.end());
  return all;
}

}  // namespace slabwright::routing
