// What stands on the plan: walls, partitions, no-tube areas, joints, anchors, and the places of doors and manifolds.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "design/judge.hpp"
#include "design/polygons.hpp"

namespace slabwright {
namespace {

constexpr double place_slack_m = 0.05;  ///< a place may be typed as far beyond the form as this
constexpr double at_wall_m = 0.6;       ///< an opening's middle is measured to the wall, give or take its thickness
constexpr double shortest_m = 0.01;

std::string row_of(std::string_view section, std::size_t i) { return fmt::format("{}[{}]", section, i + 1); }

class PlanJudge {
 public:
  explicit PlanJudge(Judge& judge) : judge_(judge), design_(judge.design) {
    for (const Place& p : floor_shape(design_.slab).outline) form_.push_back({p.x_m, p.y_m});
    if (!form_.empty()) walls_ = plan_walls(design_);
  }

  void run() {
    if (form_.empty()) return without_form();
    for (std::size_t i = 0; i < design_.wall.size(); ++i) {
      line(row_of("wall", i), design_.wall[i].from, design_.wall[i].to);
      band(row_of("wall", i), design_.wall[i].tube_spacing_m, design_.wall[i].band_width_m);
    }
    for (std::size_t i = 0; i < design_.partition.size(); ++i) partition(i);
    for (std::size_t i = 0; i < design_.opening.size(); ++i) opening(i);
    for (std::size_t i = 0; i < design_.no_tube.size(); ++i) no_tube(i);
    for (std::size_t i = 0; i < design_.joint.size(); ++i) joint(i);
    for (std::size_t i = 0; i < design_.border.size(); ++i) {
      line(row_of("border", i), design_.border[i].from, design_.border[i].to);
    }
    for (std::size_t i = 0; i < design_.anchor.size(); ++i) {
      const std::string path = row_of("anchor", i) + ".place";
      if (!judge_.given(path)) missing(row_of("anchor", i), "an anchor takes a place.");
      if (judge_.given(path)) on_floor(path, design_.anchor[i].place);
    }
    for (std::size_t i = 0; i < design_.manifold.size(); ++i) {
      if (design_.manifold[i].place) on_floor(row_of("manifold", i) + ".place", *design_.manifold[i].place);
    }
    for (std::size_t i = 0; i < design_.loop.size(); ++i) path(row_of("loop", i), design_.loop[i].path);
  }

 private:
  /// Nothing can be placed on a slab whose shape nobody knows.
  void without_form() {
    const auto refuse = [&](const std::string& path) {
      if (!judge_.sound({"slab.size", "slab.outline"})) return;
      judge_.problem(path, "plan.no-form",
                     "a place on the plan needs the slab's shape: write its size or outline in [slab].");
    };
    if (!design_.wall.empty()) refuse("wall[1]");
    if (!design_.partition.empty()) refuse("partition[1]");
    if (!design_.no_tube.empty()) refuse("no_tube[1]");
    if (!design_.joint.empty()) refuse("joint[1]");
    if (!design_.border.empty()) refuse("border[1]");
    for (std::size_t i = 0; i < design_.loop.size(); ++i) {
      if (!design_.loop[i].path.empty()) refuse(row_of("loop", i) + ".path");
    }
    for (std::size_t i = 0; i < design_.opening.size(); ++i) {
      if (design_.opening[i].place) refuse(row_of("opening", i) + ".place");
    }
    for (std::size_t i = 0; i < design_.manifold.size(); ++i) {
      if (design_.manifold[i].place && judge_.given(row_of("manifold", i) + ".place"))
        refuse(row_of("manifold", i) + ".place");
    }
  }

  void missing(const std::string& row, std::string_view sentence) {
    judge_.problem(row, "plan.missing", fmt::format("{} Write place = \"{}\".", sentence, Place::example));
  }

  bool inside_form(Point p) const {
    return where_is(p, form_) != Where::outside || distance_to_boundary_m(p, form_) <= place_slack_m;
  }

  void beyond(const std::string& path) {
    judge_.problem(path, "plan.outside", "this lies beyond the slab: places count from its lower left inside corner.");
  }

  /// The point, where the walls it names are there.
  std::optional<Point> found(const std::string& path, const PlanPlace& place) {
    if (!judge_.sound({path})) return std::nullopt;
    const auto point = point_on_plan(walls_, place);
    if (point) return point;
    for (const std::string& name : {place.first_wall, place.second_wall}) {
      if (find_wall(walls_, name)) continue;
      judge_.problem(path, "plan.no-wall",
                     fmt::format("there is no \"{}\"; walls are {}.", excerpt(name), wall_names()));
      return std::nullopt;
    }
    judge_.problem(path, "plan.same-wall", "two walls that run alongside each other give no place: name one across.");
    return std::nullopt;
  }

  std::string wall_names() const {
    std::string names;
    for (const PlanWall& wall : walls_) names += fmt::format("{}\"{}\"", names.empty() ? "" : ", ", excerpt(wall.name));
    return names + " (or west, east, south and north, with north up)";
  }

  void on_floor(const std::string& path, const PlanPlace& place) {
    const auto point = found(path, place);
    if (point && !inside_form(*point)) beyond(path);
  }

  void line(const std::string& row, const Place& from, const Place& to) {
    if (!judge_.sound({row + ".from", row + ".to"})) return;
    const Point a{from.x_m, from.y_m}, b{to.x_m, to.y_m};
    if (distance_m(a, b) < shortest_m) {
      judge_.problem(row, "plan.no-line",
                     "it begins where it ends: write from = \"0 ft, 0 ft\" and to = \"30 ft, 0 ft\".");
    } else if (!inside_form(a)) {
      beyond(row + ".from");
    } else if (!inside_form(b)) {
      beyond(row + ".to");
    }
  }

  void band(const std::string& row, const std::optional<double>& spacing_m, const std::optional<double>& width_m) {
    if (width_m && !spacing_m && judge_.given(row + ".band_width")) {
      judge_.problem(row + ".band_width", "plan.band-alone",
                     "this says nothing without tube_spacing: write tube_spacing = \"8 in\" or \"200 mm\".");
    }
    if (!spacing_m || !judge_.sound({row + ".tube_spacing", "tube.spacing"})) return;
    if (*spacing_m < design_.tube.spacing_m) return;
    judge_.problem(
        row + ".tube_spacing", "plan.band-wide",
        fmt::format("this is no closer than the tube elsewhere, {} apart.", short_words(design_.tube.spacing_m)));
  }

  void partition(std::size_t i) {
    const Partition& wall = design_.partition[i];
    const std::string row = row_of("partition", i);
    line(row, wall.from, wall.to);
    if (!judge_.sound({row + ".from", row + ".to", row + ".openings"})) return;
    const double length = distance_m({wall.from.x_m, wall.from.y_m}, {wall.to.x_m, wall.to.y_m});
    for (const Gap& gap : wall.openings) {
      if (gap.at_m + gap.width_m <= length + place_slack_m) continue;
      judge_.problem(row + ".openings", "plan.opening-beyond", "an opening ends {} along a partition of {}.",
                     {Measured{gap.at_m + gap.width_m, Dimension::length}, Measured{length, Dimension::length}});
    }
  }

  void opening(std::size_t i) {
    const Opening& opening = design_.opening[i];
    const std::string row = row_of("opening", i);
    band(row, opening.tube_spacing_m, opening.band_width_m);
    if (!opening.place) return;
    const auto point = found(row + ".place", *opening.place);
    if (!point || distance_to_boundary_m(*point, form_) <= at_wall_m) return;
    judge_.problem(row + ".place", "plan.opening-off-wall",
                   "an opening lies in an outer wall, and this is {} from the nearest: give the middle of the opening.",
                   {Measured{distance_to_boundary_m(*point, form_), Dimension::length}});
  }

  void no_tube(std::size_t i) {
    const NoTubeEntry& area = design_.no_tube[i];
    const std::string row = row_of("no_tube", i);
    if (!judge_.sound({row + ".outline", row + ".place", row + ".size", row + ".diameter"})) return;
    const bool outlined = !area.outline.empty(), placed = area.place && (area.size || area.diameter_m);
    if (!outlined && !placed) {
      judge_.problem(
          row, "plan.no-tube-shape",
          fmt::format("it has no shape. Write place = \"{}\" with size = \"4 x 4 ft\" or diameter = \"1 ft\".",
                      Place::example));
      return;
    }
    if (area.place && !outlined && !found(row + ".place", *area.place)) return;
    const Polygon outline = outline_of(area, walls_);
    if (outline.size() < 3 || self_crossing(outline)) {
      judge_.problem(row + ".outline", "plan.no-tube-shape", "its corners make no area: go round it once.");
    } else if (std::none_of(outline.begin(), outline.end(), [&](Point p) { return inside_form(p); }) &&
               std::none_of(form_.begin(), form_.end(),
                            [&](Point p) { return where_is(p, outline) == Where::inside; })) {
      beyond(outlined ? row + ".outline" : row + ".place");
    }
  }

  void joint(std::size_t i) {
    const Joint& joint = design_.joint[i];
    const std::string row = row_of("joint", i);
    line(row, joint.from, joint.to);
    if (joint.kind == JointKind::expansion && judge_.given(row + ".saw_depth")) {
      judge_.problem(row + ".saw_depth", "plan.not-sawn", "an expansion joint is not sawn: remove saw_depth.");
    }
    if (!joint.saw_depth_m || !judge_.sound({row + ".saw_depth", "slab.thickness"})) return;
    if (*joint.saw_depth_m < floor_thickness_m(design_.slab)) return;
    judge_.problem(row + ".saw_depth", "plan.sawn-through",
                   fmt::format("the saw goes {} deep in {} of concrete.", short_words(*joint.saw_depth_m),
                               short_words(floor_thickness_m(design_.slab))));
  }

  /// Corners of a loop's tube.
  void path(const std::string& row, const std::vector<Place>& places) {
    const std::string about = row + ".path";
    if (!judge_.given(about) || !judge_.sound({about})) return;
    if (judge_.given(row + ".length")) {
      judge_.problem(row + ".length", "loop.length-and-path", "its path says how long it is: remove length.");
    }
    std::vector<Point> corner;
    for (const Place& p : places) {
      const Point at{p.x_m, p.y_m};
      if (corner.empty() || distance_m(corner.back(), at) >= shortest_m) corner.push_back(at);
    }
    const auto words = [&](Point p) { return write_words(Place{p.x_m, p.y_m}, design_.units); };
    if (corner.size() < 2) {
      return judge_.problem(
          about, "loop.no-path",
          "a path takes the corners of the tube, two or more: [\"18 ft, 0 ft\", \"18 ft, 29 ft\", ...].");
    }
    for (const Point at : corner) {
      if (inside_form(at)) continue;
      return judge_.problem(about, "plan.outside",
                            fmt::format("its corner at ({}) lies beyond the slab: places count from the slab's lower "
                                        "left inside corner.",
                                        words(at)));
    }
    for (std::size_t i = 1; i + 1 < corner.size(); ++i) {
      if (!turns_on_spot(corner[i - 1], corner[i], corner[i + 1])) continue;
      return judge_.problem(about, "loop.turns-on-spot",
                            fmt::format("it turns back on itself at ({}): a U-turn takes two corners, as far apart as "
                                        "its two tubes.",
                                        words(corner[i])));
    }
  }

  /// By 170 degrees or more.
  static bool turns_on_spot(Point before, Point at, Point after) {
    constexpr double cosine = -0.985;
    const Point a{at.x_m - before.x_m, at.y_m - before.y_m}, b{after.x_m - at.x_m, after.y_m - at.y_m};
    return a.x_m * b.x_m + a.y_m * b.y_m < cosine * distance_m(before, at) * distance_m(at, after);
  }

  std::string short_words(double m) const {
    const bool us = design_.units == System::us;
    return show_as(m, Dimension::length, us ? "in" : "mm", us ? 2 : 0);
  }

  Judge& judge_;
  const Design& design_;
  Polygon form_;
  std::vector<PlanWall> walls_;
};

}  // namespace

void judge_plan(Judge& judge) {
  if (!judge.sound({"slab.size", "slab.outline"})) return;
  PlanJudge(judge).run();
}

}  // namespace slabwright
