// Outlines, areas, and the tube in the concrete.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "design/judge.hpp"
#include "design/polygons.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr double agreement_share = 0.01;  // two ways of stating one area may round differently
constexpr double tape_slack_m = 0.010;    // a tape's reading: rooms are not measured to less
// Beyond this a floor in feet was more likely typed in inches: 60 000 ft2 is ten county garages.
constexpr double doubtful_area_m2 = 60000 * foot_m * foot_m;

using measured::area;
using measured::length;

struct Box {
  double width_m = 0.0, depth_m = 0.0;
};

Box box_of(const std::vector<Place>& outline) {
  Box box;
  for (const Place& a : outline) {
    for (const Place& b : outline) {
      box.width_m = std::max(box.width_m, a.x_m - b.x_m);
      box.depth_m = std::max(box.depth_m, a.y_m - b.y_m);
    }
  }
  return box;
}

std::string feet(double m) { return fmt::format("{:.0f}", m / foot_m); }

void judge_inches(Judge& judge, const std::string& path, Box box, bool area_given) {
  if (judge.design.units != System::us || area_given) return;
  if (box.width_m * box.depth_m < doubtful_area_m2) return;
  judge.problem(path, "floor.inches",
                fmt::format("{} is {} x {} ft: did you mean inches?", path.substr(path.find('.') + 1),
                            feet(box.width_m), feet(box.depth_m)));
}

bool judge_outline(Judge& judge, const std::string& path, const std::vector<Place>& outline) {
  const Polygon polygon = polygon_of(outline);
  const auto on_one_line = [&](Point corner) { return side_of(polygon[0], polygon[1], corner) == Side::on; };
  if (polygon.size() < 3 || std::all_of(polygon.begin(), polygon.end(), on_one_line)) {
    judge.problem(path, "floor.flat", "an outline takes three corners or more, not all in one line.");
    return false;
  }
  const auto crossing = self_crossing(polygon);
  if (!crossing) return true;
  const auto side = [&](std::size_t i) {
    const Point a = polygon[i], b = polygon[i + 1 < polygon.size() ? i + 1 : 0];
    return fmt::format("({}) to ({})", write_words(Place{a.x_m, a.y_m}, judge.design.units),
                       write_words(Place{b.x_m, b.y_m}, judge.design.units));
  };
  judge.problem(path, "floor.crossing",
                fmt::format("the outline crosses itself: {} and {}.", side(crossing->first), side(crossing->second)));
  return false;
}

/// Size, area and outline say the same thing where more than one is given.
template <class Floor>
bool judge_shape(Judge& judge, const Floor& floor, const std::string& prefix) {
  if (!judge.sound({prefix + "size", prefix + "area", prefix + "outline"})) return false;
  const bool outline_given = judge.given(prefix + "outline"), area_given = judge.given(prefix + "area");
  if (outline_given && !judge_outline(judge, prefix + "outline", floor.outline)) return false;
  struct Said {
    std::string word;
    double m2;
  };
  std::vector<Said> said;
  if (outline_given) said.push_back({"outline", signed_area_m2(polygon_of(floor.outline))});
  if (judge.given(prefix + "size")) said.push_back({"size", floor.size->width_m * floor.size->depth_m});
  if (area_given) said.push_back({"area", *floor.area_m2});
  for (std::size_t i = 1; i < said.size(); ++i) {
    if (std::abs(said[i].m2 - said[0].m2) <= agreement_share * said[0].m2) continue;
    judge.problem(prefix + said[i].word, "floor.area",
                  fmt::format("{} has {{}}, {} says {{}}: remove one.", said[0].word, said[i].word),
                  {area(said[0].m2), area(said[i].m2)});
    return false;
  }
  if (outline_given) judge_inches(judge, prefix + "outline", box_of(floor.outline), area_given);
  if (judge.given(prefix + "size")) {
    judge_inches(judge, prefix + "size", {floor.size->width_m, floor.size->depth_m}, area_given);
  }
  return true;
}

Polygon written_form(const Slab& slab) {
  if (!slab.outline.empty()) return polygon_of(slab.outline);
  return slab.size ? rectangle(slab.size->width_m, slab.size->depth_m) : Polygon{};
}

/// Whether each room by itself is.
bool judge_rooms(Judge& judge, bool slab_sound) {
  const Design& design = judge.design;
  const Polygon form = slab_sound ? written_form(design.slab) : Polygon{};
  double rooms_m2 = 0.0;
  bool all_sound = true;
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    const std::string prefix = fmt::format("room[{}].", i + 1);
    const bool sound = judge_shape(judge, design.room[i], prefix);
    all_sound = all_sound && sound;
    rooms_m2 += floor_shape(design.room[i]).area_m2;
    if (!sound || !judge.given(prefix + "outline") || form.empty()) continue;
    if (inside(polygon_of(design.room[i].outline), form, tape_slack_m)) continue;
    const std::string name = design.room[i].name.empty() ? "this room" : excerpt(design.room[i].name);
    judge.problem(prefix + "outline", "room.outside", fmt::format("{} reaches beyond the slab.", name));
  }
  const double slab_m2 = floor_shape(design.slab).area_m2;
  if (!slab_sound || !all_sound || slab_m2 <= 0.0 || rooms_m2 <= (1.0 + agreement_share) * slab_m2) return all_sound;
  judge.problem(fmt::format("room[{}]", design.room.size()), "room.too-large",
                "the rooms have {} together, the slab only {}.", {area(rooms_m2), area(slab_m2)});
  return all_sound;
}

/// A room without a size takes what the others leave; two of them cannot both.
void judge_unsized(Judge& judge) {
  const Design& design = judge.design;
  std::size_t unsized = 0;
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    const std::string prefix = fmt::format("room[{}].", i + 1);
    if (!judge.sound({prefix + "size", prefix + "area", prefix + "outline"})) return;
    if (floor_shape(design.room[i]).area_m2 > 0.0 || floor_shape(design.slab).area_m2 <= 0.0) continue;
    const bool alone = ++unsized == 1;
    if (alone && i + 1 < design.room.size()) continue;
    const std::string name = design.room[i].name.empty() ? "this room" : excerpt(design.room[i].name);
    judge.problem(prefix.substr(0, prefix.size() - 1), "room.no-size",
                  fmt::format("{} has no size{}. Write size = \"12 ft x 10 ft\" or area = \"120 ft2\".", name,
                              alone ? ", and the others fill the slab" : "; only one room may take what is left"));
  }
}

/// What rooms come to, or leave to one of them, has the limits of an area that is written.
void judge_worked_out(Judge& judge) {
  const Design& design = judge.design;
  const Key& of_slab = *find_path(reading(design), "slab.area")->key;
  const double slab_m2 = design.slab.area_m2.value_or(of_slab.says.least);
  if (!judge.given("slab.area") && (slab_m2 < of_slab.says.least || slab_m2 > of_slab.says.most))
    judge.problem(
        fmt::format("room[{}]", design.room.size()), "floor.extent",
        fmt::format("the rooms have {{}} together: no slab is so {}.", slab_m2 > of_slab.says.most ? "large" : "small"),
        {area(slab_m2)});
  for (std::size_t i = 0; i < design.room.size(); ++i) {
    const std::string path = fmt::format("room[{}]", i + 1);
    const double least_m2 = find_path(reading(design), path + ".area")->key->says.least;
    const double room_m2 = design.room[i].area_m2.value_or(least_m2);
    if (judge.given(path + ".area") || room_m2 >= least_m2) continue;
    judge.problem(path, "room.extent", "the other rooms leave {} of the slab here: no room is so small.",
                  {area(room_m2)});
  }
}

/// A tube lies wholly in the layer that it is said to lie in.
void judge_tube_in(Judge& judge, const std::string& key, double above_m, std::string_view layer, double layer_m) {
  const TubeSize* size = find_tube(judge.design.tube.size.name);
  if (!size || above_m + size->outside_diameter_m <= layer_m) return;
  const bool us = judge.design.units == System::us;
  const auto in_own = [&](double m) { return show_as(m, Dimension::length, us ? "in" : "mm", us ? 2 : 0); };
  judge.problem(key, "slab.tube-below",
                fmt::format("the tube would lie below the {}: {} of {} and {} of tube, in {}.", layer, in_own(above_m),
                            layer == "slab" ? "concrete" : layer, in_own(size->outside_diameter_m), in_own(layer_m)));
}

void judge_tube_depth(Judge& judge) {
  const Slab& slab = judge.design.slab;
  const std::string in_slab = "slab.concrete_above_tube", in_topping = "slab.topping_above_tube";
  if (!judge.sound({"slab.thickness", "slab.topping", in_slab, in_topping, "tube.size"})) return;
  if (judge.given(in_slab) && judge.given(in_topping)) {
    judge.problem(in_topping, "slab.tube-twice",
                  "the tube lies in the slab or in the topping: remove concrete_above_tube or topping_above_tube.");
  } else if (slab.topping_above_tube_m && !slab.topping_m) {
    judge.problem(in_topping, "slab.no-topping",
                  "there is no topping for the tube to lie in. Write its thickness: topping = \"2 in\" or \"50 mm\".");
  } else if (slab.topping_above_tube_m) {
    judge_tube_in(judge, in_topping, *slab.topping_above_tube_m, "topping", *slab.topping_m);
  } else if (slab.concrete_above_tube_m) {
    judge_tube_in(judge, in_slab, *slab.concrete_above_tube_m, "slab", slab.thickness_m);
  }
}

/// What says how something is, without the thing.
void judge_alone(Judge& judge, const std::string& own, const std::string& of, std::string_view write) {
  if (!judge.given(own) || judge.given(of) || !judge.sound({of})) return;
  judge.problem(own, "slab.alone", fmt::format("this says nothing without {}: write {}.", of.substr(5), write));
}

void judge_door_width(Judge& judge) {
  const Design& design = judge.design;
  if (!design.slab.exposed_perimeter_m || !judge.sound({"slab.exposed_perimeter"})) return;
  double doors_m = 0.0;
  std::size_t last = 0;
  for (std::size_t i = 0; i < design.opening.size(); ++i) {
    if (design.opening[i].kind != OpeningKind::big_door) continue;
    if (!judge.sound({fmt::format("opening[{}].size", i + 1)})) return;
    doors_m += design.opening[i].size.width_m;
    last = i + 1;
  }
  if (doors_m <= *design.slab.exposed_perimeter_m) return;
  const bool guessed = !judge.given(fmt::format("opening[{}].size", last));
  judge.problem(guessed ? "slab.exposed_perimeter" : fmt::format("opening[{}].size", last), "floor.doors",
                guessed ? "the edge has {}, the big door that we guess {}: write big_door = false in [building]."
                        : "the edge has only {}, the big doors {} together.",
                {length(*design.slab.exposed_perimeter_m), length(doors_m)});
}

}  // namespace

void judge_floor(Judge& judge) {
  const bool slab_sound = judge_shape(judge, judge.design.slab, "slab.");
  const bool rooms_sound = judge_rooms(judge, slab_sound);
  if (slab_sound) judge_unsized(judge);
  if (slab_sound && rooms_sound) judge_worked_out(judge);
  judge_tube_depth(judge);
  judge_alone(judge, "slab.topping_conductivity", "slab.topping", "topping = \"2 in\" or \"50 mm\"");
  judge_alone(judge, "slab.mat_insulation", "slab.mats", "mats = \"20 %\"");
  if (slab_sound) judge_door_width(judge);
}

}  // namespace slabwright
