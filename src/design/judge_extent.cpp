// How much of a floor one design may have: so that every answer ends within a minute, see manuals/theory-numerics.md.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "design/judge.hpp"
#include "design/polygons.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

// As many loops as may be listed; a hundred metres each, at the usual spacing 6000 m2 of floor.
constexpr double most_loops = 200.0, most_tube_m = 20000.0, most_floor_m2 = 1e5;
// Each hole is held against all tube, and again wherever the machine might be moved.
constexpr std::size_t most_holes = 400;
constexpr std::string_view cut_it = "Cut the floor into designs of their own.";

/// Whole units of the reader's: nobody refuses a floor to the inch.
std::string about(const Judge& judge, double si, Dimension dimension) {
  const bool us = judge.design.units == System::us, area = dimension == Dimension::area;
  return show_as(si, dimension, area ? (us ? "ft2" : "m2") : us ? "ft" : "m", 0);
}

/// The key that says how large the floor is; the tube's spacing where none does.
std::string floor_key(const Judge& judge) {
  for (const char* path : {"slab.size", "slab.outline", "slab.area"}) {
    if (judge.given(path)) return path;
  }
  for (std::size_t i = 1; i <= judge.design.room.size(); ++i) {
    for (const char* word : {"size", "outline", "area"}) {
      if (std::string path = fmt::format("room[{}].{}", i, word); judge.given(path)) return path;
    }
  }
  return "tube.spacing";
}

void judge_count(Judge& judge) {
  double loops = 0.0;
  for (std::size_t i = 0; i < judge.design.manifold.size(); ++i) {
    loops += judge.design.manifold[i].loops_number.value_or(0.0);
    if (loops <= most_loops) continue;
    judge.problem(fmt::format("manifold[{}].loops", i + 1), "floor.loops",
                  fmt::format("the manifolds have more than {} loops together. {}", most_loops, cut_it));
    return;
  }
}

void judge_holes(Judge& judge) {
  std::size_t holes = 0;
  for (std::size_t i = 0; i < judge.design.anchor.size(); ++i) {
    holes += std::max<std::size_t>(1, judge.design.anchor[i].holes.size());
    if (holes <= most_holes) continue;
    judge.problem(
        fmt::format("anchor[{}].holes", i + 1), "floor.holes",
        fmt::format("the anchors have more than {} holes together. Ask for the rest in a second design.", most_holes));
    return;
  }
}

void judge_paths(Judge& judge) {
  double drawn_m = 0.0;
  for (std::size_t i = 0; i < judge.design.loop.size(); ++i) {
    const std::vector<Place>& path = judge.design.loop[i].path;
    for (std::size_t k = 1; k < path.size(); ++k)
      drawn_m += std::hypot(path[k].x_m - path[k - 1].x_m, path[k].y_m - path[k - 1].y_m);
    if (drawn_m <= most_tube_m) continue;
    judge.problem(fmt::format("loop[{}].path", i + 1), "floor.tube",
                  fmt::format("the paths have more than {} of tube together. {}",
                              about(judge, most_tube_m, Dimension::length), cut_it));
    return;
  }
}

/// Tube that the floor asks for, and its loops, where nobody lists them.
void judge_asked(Judge& judge) {
  const Design& design = judge.design;
  const TubeSize* size = find_tube(design.tube.size.name);
  const double longest_m = design.tube.longest_loop_m.value_or(size ? size->longest_loop_m : 0.0);
  const double most_m = longest_m - 2.0 * design.tube.leader_m;
  double floor_m2 = 0.0, loops = 0.0;
  const std::vector<double> rooms_m2 = room_floors_m2(design);
  for (std::size_t i = 0; i < rooms_m2.size(); ++i) {
    if (!design.room[i].heated_floor) continue;
    floor_m2 += rooms_m2[i];
    if (most_m > 0.0) loops += std::ceil(rooms_m2[i] / design.tube.spacing_m / most_m);
  }
  const double tube_m = floor_m2 / design.tube.spacing_m;
  if (tube_m > most_tube_m) {
    judge.problem(floor_key(judge), "floor.tube",
                  fmt::format("this floor takes {} of tube; at most {}. {}", about(judge, tube_m, Dimension::length),
                              about(judge, most_tube_m, Dimension::length), cut_it));
  } else if (loops > most_loops) {
    judge.problem(floor_key(judge), "floor.loops",
                  fmt::format("this floor takes about {:.0f} loops of {} with their leaders; at most {:.0f}. {}", loops,
                              about(judge, longest_m, Dimension::length), most_loops, cut_it));
  }
}

}  // namespace

void judge_extent(Judge& judge) {
  const Design& design = judge.design;
  const double slab_m2 = floor_shape(design.slab).area_m2;
  if (slab_m2 > most_floor_m2) {
    judge.problem(floor_key(judge), "floor.large",
                  fmt::format("this floor has {}; at most {}. {}", about(judge, slab_m2, Dimension::area),
                              about(judge, most_floor_m2, Dimension::area), cut_it));
    return;
  }
  judge_count(judge);
  judge_holes(judge);
  judge_paths(judge);
  bool counted = false;
  for (const Manifold& manifold : design.manifold) counted = counted || manifold.loops_number;
  if (!counted && (design.loop.empty() || design.tube.lay_rest)) judge_asked(judge);
}

}  // namespace slabwright
