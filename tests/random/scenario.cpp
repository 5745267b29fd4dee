#include "random/scenario.hpp"

#include <fmt/format.h>

#include <cmath>

#include "random/by_key.hpp"

namespace slabwright::test {
namespace {

/// A floor in whole steps of half a foot or a tenth of a metre, so that places meet.
struct Plan {
  System system;
  int width = 0, depth = 0;          ///< in steps
  int cut_width = 0, cut_depth = 0;  ///< of the upper right corner; 0: a rectangle
  int wall = 0;                      ///< a wall from bottom to top, that many steps in; 0: one room

  double step_m() const { return system == System::us ? 0.3048 / 2.0 : 0.1; }
  std::string number(double steps) const {
    return fmt::format("{:g}", system == System::us ? 0.5 * steps : 0.1 * steps);
  }
  std::string unit() const { return system == System::us ? " ft" : " m"; }
  std::string length(double steps) const { return number(steps) + unit(); }
  std::string place(double x, double y) const { return number(x) + ", " + number(y) + unit(); }
  std::string size(double x, double y) const { return number(x) + " x " + number(y) + unit(); }
  int steps(double m) const { return static_cast<int>(std::lround(m / step_m())); }
  double height_at(double x) const { return cut_width > 0 && x >= width - cut_width ? depth - cut_depth : depth; }
};

Plan drawn_plan(System system, Draws& draws) {
  constexpr double least_m = 3.0, most_m = 13.0, cut_share = 0.4, wall_share = 0.35;
  Plan plan{system};
  plan.width = plan.steps(draws.between(least_m, most_m));
  plan.depth = plan.steps(draws.between(least_m, most_m));
  if (draws.chance(cut_share)) {
    plan.cut_width = static_cast<int>(plan.width * draws.between(0.15, 0.55));
    plan.cut_depth = static_cast<int>(plan.depth * draws.between(0.15, 0.55));
  }
  const int rest = plan.width - plan.cut_width;
  if (draws.chance(wall_share)) plan.wall = static_cast<int>(rest * draws.between(0.35, 0.65));
  return plan;
}

std::vector<std::string> outline(const Plan& plan, int from, int to) {
  const int corner = plan.width - plan.cut_width;
  std::vector<std::string> corners{plan.place(from, 0), plan.place(to, 0)};
  if (plan.cut_width > 0 && to > corner) {
    corners.push_back(plan.place(to, plan.depth - plan.cut_depth));
    corners.push_back(plan.place(corner, plan.depth - plan.cut_depth));
    corners.push_back(plan.place(corner, plan.depth));
  } else {
    corners.push_back(plan.place(to, plan.depth));
  }
  corners.push_back(plan.place(from, plan.depth));
  return corners;
}

void give_form(DesignText& text, const Plan& plan, Draws& draws) {
  if (plan.cut_width > 0)
    text.set_list("slab.outline", outline(plan, 0, plan.width));
  else
    text.set("slab.size", plan.size(plan.width, plan.depth));
  if (plan.wall == 0) return;
  text.set("room[1].name", "shop");
  text.set_list("room[1].outline", outline(plan, 0, plan.wall));
  text.set("room[2].name", draws.chance(0.5) ? "store" : "wash room");
  text.set_list("room[2].outline", outline(plan, plan.wall, plan.width));
  if (draws.chance(0.3)) text.set("room[2].heated_floor", "false");
  if (draws.chance(0.7)) {
    text.set("partition[1].from", plan.place(plan.wall, 0));
    text.set("partition[1].to", plan.place(plan.wall, plan.depth));
    const int wide = plan.steps(draws.between(0.8, 1.6));
    if (wide < plan.depth / 2)
      text.set_list("partition[1].openings",
                    {plan.length(wide) + " at " + plan.length(draws.whole(1, plan.depth - wide - 1))});
  }
}

void give_doors(DesignText& text, const Plan& plan, bool places, Draws& draws) {
  const int rest = plan.wall > 0 ? plan.wall : plan.width;
  if (draws.chance(0.6)) {
    const int wide = std::min(plan.steps(draws.between(2.0, 4.0)), rest - 2);
    text.set("opening[1].name", "big door");
    text.set("opening[1].size", plan.size(wide, plan.steps(draws.between(2.2, 3.6))));
    if (places) text.set("opening[1].place", plan.place(draws.whole(wide / 2 + 1, rest - wide / 2 - 1), 0));
  } else if (draws.chance(0.6)) {
    text.set("building.big_door", "false");
  }
  const int more = draws.whole(0, 2);
  for (int i = 0; i < more; ++i) {
    const std::string row = text.next_row("opening");
    text.set(row + ".name", fmt::format("opening {}", i + 2));
    text.set(row + ".kind", draws.chance(0.5) ? "door" : "window");
    text.set(row + ".size", plan.size(plan.steps(draws.between(0.8, 1.2)), plan.steps(draws.between(1.0, 2.1))));
  }
}

void give_obstacles(DesignText& text, const Plan& plan, Draws& draws) {
  const auto inside = [&](double x) { return draws.between(0.25, 0.75) * x; };
  for (int i = draws.whole(0, 5) - 3; i > 0; --i) {
    const std::string row = text.next_row("no_tube");
    text.set(row + ".name", fmt::format("area {}", i));
    text.set(row + ".place", plan.place(std::floor(inside(plan.width - plan.cut_width)),
                                        std::floor(inside(plan.depth - plan.cut_depth))));
    if (draws.chance(0.5))
      text.set(row + ".size", plan.size(plan.steps(draws.between(0.3, 1.2)), plan.steps(draws.between(0.3, 1.2))));
    else
      text.set(row + ".diameter", plan.length(plan.steps(draws.between(0.2, 0.8))));
  }
  if (draws.chance(0.2)) {
    const double x = std::floor(inside(plan.width - plan.cut_width));
    text.set("joint[1].from", plan.place(x, 0));
    text.set("joint[1].to", plan.place(x, plan.depth));
  }
  if (draws.chance(0.2)) {
    text.set("anchor[1].name", "bench feet");
    text.set("anchor[1].place", plan.place(std::floor(inside(plan.width - plan.cut_width)),
                                           std::floor(inside(plan.depth - plan.cut_depth))));
  }
}

void give_manifold(DesignText& text, const Plan& plan, Draws& draws) {
  text.set("manifold[1].name", "wall");
  const int rest = plan.wall > 0 ? plan.wall : plan.width - plan.cut_width;
  text.set("manifold[1].place", draws.chance(0.5) ? plan.place(0, draws.whole(plan.depth / 3, 2 * plan.depth / 3))
                                                  : plan.place(draws.whole(rest / 3, 2 * rest / 3), plan.depth));
}

void give_loops_by_length(DesignText& text, System system, Draws& draws) {
  const double usual_m = draws.between(30.0, 90.0);
  const int count = draws.whole(1, 9);
  for (int i = 0; i < count; ++i)
    text.set(text.next_row("loop") + ".length", typed(usual_m * draws.between(0.7, 1.3), Dimension::length, system));
}

void give_floor(DesignText& text, System system, Draws& draws) {
  const double kind = draws.unit();
  const Plan plan = drawn_plan(system, draws);
  if (kind < 0.06) return give_loops_by_length(text, system, draws);
  if (kind < 0.24) {
    text.set("slab.area", typed(draws.by_ratio(12.0, 600.0), Dimension::area, system));
    if (draws.chance(0.3)) text.set("manifold[1].loops", fmt::format("{}", draws.whole(1, 12)));
  } else {
    give_form(text, plan, draws);
    const bool drawn = kind > 0.6;
    give_doors(text, plan, drawn, draws);
    if (drawn) give_manifold(text, plan, draws);
    if (drawn || draws.chance(0.2)) give_obstacles(text, plan, draws);
    if (!drawn && draws.chance(0.25)) give_loops_by_length(text, system, draws);
  }
}

void give_climate(DesignText& text, System system, Draws& draws) {
  if (!draws.chance(0.94)) return;
  const double outdoor_degC = draws.between(-34.0, 2.0);
  text.set("climate.outdoor", typed(outdoor_degC, Dimension::degree, system));
  if (draws.chance(0.35))
    text.set("climate.coldest", typed(outdoor_degC - draws.between(0.0, 14.0), Dimension::degree, system));
}

void give_tube(DesignText& text, System system, Draws& draws) {
  if (draws.chance(0.7)) text.set("tube.spacing", typed(draws.between(0.15, 0.42), Dimension::length, system));
  if (draws.chance(0.5)) {
    const double slab_m = draws.between(0.09, 0.25);
    text.set("slab.thickness", typed(slab_m, Dimension::length, system));
    if (draws.chance(0.4))
      text.set("slab.concrete_above_tube", typed(slab_m * draws.between(0.25, 0.6), Dimension::length, system));
  }
}

void give_plant(DesignText& text, System system, Draws& draws) {
  if (draws.chance(0.35)) {
    text.set("fluid.kind", draws.chance(0.7) ? "propylene glycol" : "ethylene glycol");
    text.set("fluid.glycol", fmt::format("{} %", draws.whole(20, 55)));
  }
  if (draws.chance(0.35)) text.set("boiler.power", typed(draws.by_ratio(1500.0, 60000.0), Dimension::power, system));
  if (draws.chance(0.25)) {
    text.set("second_source.kind", "heat pump");
    text.set("second_source.capacity", typed(draws.by_ratio(2000.0, 20000.0), Dimension::power, system));
  }
  if (draws.chance(0.15)) {
    text.set("watch[1].name", "water line");
    text.set("watch[1].kind", draws.chance(0.5) ? "wall pipe" : "room pipe");
  }
}

void give_winter(DesignText& text, Draws& draws) {
  if (draws.chance(0.5)) text.set("electricity.price", fmt::format("{:.3f} /kWh", draws.between(0.05, 0.5)));
  const int ways = draws.whole(0, 5) - 3;
  for (int i = 0; i < ways; ++i) {
    const std::string row = text.next_row("way");
    text.set(row + ".name", fmt::format("way {}", i + 1));
    text.set(row + ".floor", draws.chance(0.5) ? "work" : "frost hold");
    if (text.has("second_source.kind") && draws.chance(0.5)) text.set(row + ".second_source", "in working hours");
  }
  if (draws.chance(0.1)) text.set(text.next_row("vehicle") + ".mass", "2000 kg");
  if (draws.chance(0.1)) text.set(text.next_row("exhaust") + ".flow", "300 cfm");
  if (draws.chance(0.15)) text.set(text.next_row("gains") + ".power", fmt::format("{} W", draws.whole(50, 2500)));
}

}  // namespace

DrawnDesign drawn_design(std::uint64_t number) {
  constexpr double nearly_broken_share = 0.35;
  Draws draws(number);
  DrawnDesign drawn;
  drawn.number = number;
  drawn.system = draws.chance(0.5) ? System::us : System::si;
  if (draws.chance(0.8)) drawn.text.set("units", drawn.system == System::us ? "US" : "SI");
  give_floor(drawn.text, drawn.system, draws);
  give_climate(drawn.text, drawn.system, draws);
  give_tube(drawn.text, drawn.system, draws);
  give_plant(drawn.text, drawn.system, draws);
  give_winter(drawn.text, draws);
  fill_by_description(drawn.text, drawn.system, draws);
  take_out_refused(drawn.text);
  drawn.nearly_broken = draws.chance(nearly_broken_share);
  if (drawn.nearly_broken) nearly_break(drawn.text, drawn.system, draws);
  return drawn;
}

}  // namespace slabwright::test
