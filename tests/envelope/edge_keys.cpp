// Every key of the slab's edge moves an edge, one at a time.
#include <set>

#include "slabwright/envelope.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

constexpr std::string_view with_everything = R"(units = "SI"
[slab]
size = "12 m x 9 m"
thickness = "120 mm"
[tube]
from_walls = "250 mm"
from_doors = "300 mm"
[insulation]
under = "1.8 m2K/W"
more_layers = ["0.9 m2K/W"]
wet = "20 %"
crushed = "5 %"
[edge]
insulation = "1.8 m2K/W"
depth = "600 mm"
door_strip = "0.9 m2K/W"
wet = "10 %"
crushed = "3 %"
floor_above_grade = "150 mm"
stem_wall = "200 mm"
footing_depth = "1.1 m"
footing_width = "400 mm"
footing_thickness = "200 mm"
inside_insulation = "1.8 m2K/W"
inside_depth = "500 mm"
flat_insulation = "0.9 m2K/W"
flat_width = "700 mm"
wing_insulation = "1.8 m2K/W"
wing_width = "800 mm"
wing_depth = "300 mm"
apron_thickness = "120 mm"
apron_length = "1.5 m"
apron_gap = "0.5 m2K/W"
[[edge_part]]
where = "walls"
material = "clay or silt"
in_from = "-3 m"
in_to = "-1 m"
depth_from = "600 mm"
depth_to = "1.5 m"
[[edge_part]]
where = "big door"
conductivity = "0.2 W/mK"
in_from = "-200 mm"
in_to = "-150 mm"
depth_from = "130 mm"
depth_to = "300 mm"
[[opening]]
name = "big door"
kind = "big door"
size = "3 m x 3 m"
)";

DesignFile file_of(std::string_view text) {
  const ReadDesign read = read_design(text);
  INFO(problems_text(read, "shop.toml"));
  REQUIRE(read.checked.value);
  return *read.checked.value;
}

/// Heat down and the tube's weights at each edge.
std::vector<double> edge_numbers(const Design& design) {
  static EdgeFields fields({.first_cell_m = 0.02, .growth = 1.5});
  std::vector<double> numbers;
  for (const EdgeStretch& edge : edges_of(design)) {
    const EdgeHeat heat = fields.heat_down(edge.detail);
    numbers.insert(numbers.end(), {heat.outdoor_W_per_mK, heat.ground_W_per_mK});
  }
  return numbers;
}

std::string nudged(const Key& key, const Slot& slot) {
  const auto up = [&](double now) { return write_quantity(now * 1.1 + 1e-3, key.unit->dimension, System::si); };
  if (const auto* number = std::get_if<Number>(&slot)) return up(*number->at);
  if (const auto* maybe = std::get_if<MaybeNumber>(&slot)) return *maybe->at ? up(**maybe->at) : "";
  if (std::holds_alternative<Worded>(slot)) return "2.5 m2K/W";
  if (key.word == "where") return write_out(key, slot, System::si) == "walls" ? "big door" : "walls";
  if (key.word == "material") return write_out(key, slot, System::si).empty() ? "" : "XPS";
  return {};
}

}  // namespace

TEST_CASE("every key of the edge moves an edge") {
  const DesignFile file = file_of(with_everything);
  const std::vector<double> before = edge_numbers(file.design);
  std::set<std::string> moved;
  Design design = file.design;
  walk(record_of(design), [&](const std::string& path, const Key& key, const Slot& slot) {
    const std::string section = path.substr(0, path.find_first_of(".["));
    if (section != "edge" && section != "edge_part" && section != "insulation") return;
    const std::string text = nudged(key, slot);
    if (text.empty()) return;
    INFO(path << " = " << text);
    const auto changed = with_key(file, path, text);
    REQUIRE(changed);
    CHECK(edge_numbers(changed->design) != before);
    moved.insert(std::string(key.word));
  });
  CHECK(moved.size() >= 28);
  // A thickened edge and a stem wall cannot stand together, and a list has no step of its own.
  const auto numbers_of = [](std::string_view more) {
    return edge_numbers(file_of("units = \"SI\"\n[slab]\nsize = \"12 m x 9 m\"\n" + std::string(more)).design);
  };
  const auto plain = numbers_of(""), deeper = numbers_of("[edge]\nthickened_depth = \"400 mm\"");
  CHECK(deeper != plain);
  CHECK(numbers_of("[edge]\nthickened_depth = \"400 mm\"\nthickened_width = \"500 mm\"") != deeper);
  CHECK(numbers_of("[insulation]\nmore_layers = [\"0.5 m2K/W\"]") != plain);
}

TEST_CASE("foam that is wet or crushed insulates less") {
  const auto heat = [](std::string_view more) {
    const auto file = file_of("units = \"SI\"\n[slab]\nsize = \"12 m x 9 m\"\n[edge]\ninsulation = \"1.8 m2K/W\"\n" +
                              std::string(more));
    return ground_of(file.design).plane_W_per_m2K;
  };
  const double dry = heat("");
  CHECK(heat("wet = \"50 %\"") > dry);
  CHECK(heat("crushed = \"30 %\"") > dry);
  CHECK(heat("[insulation]\nwet = \"50 %\"") > 1.02 * dry);
  CHECK(heat("[insulation]\ncrushed = \"50 %\"") > 1.02 * dry);
  CHECK(heat("[insulation]\nwet = \"0 %\"") == dry);
}

TEST_CASE("two layers under the slab are as good as one of both") {
  const auto heat = [](std::string_view insulation) {
    return ground_of(file_of("units = \"SI\"\n[slab]\nsize = \"12 m x 9 m\"\n" + std::string(insulation)).design)
        .plane_W_per_m2K;
  };
  const double one = heat("[insulation]\nunder = \"1.8 m2K/W\"");
  CHECK(heat("[insulation]\nunder = \"0.9 m2K/W\"\nmore_layers = [\"0.9 m2K/W\"]") == Approx(one).epsilon(2e-3));
}

TEST_CASE("no file that reads makes an edge that breaks") {
  for (const std::string_view text :
       {"[slab]\narea = \"11 ft2\"\n[edge]\nthickened_depth = \"40 in\"\nthickened_width = \"3 ft\"",
        "[slab]\narea = \"11 ft2\"\n[edge]\nstem_wall = \"22 in\"\nfooting_width = \"58 in\"",
        "[edge]\nstem_wall = \"8 in\"\ninside_insulation = \"R-10\"\ninside_depth = \"3 in\"",
        "[edge]\napron_thickness = \"5 in\"\napron_length = \"45 ft\"\napron_gap = \"R-100\"",
        "[edge]\nwing_insulation = \"R-100\"\nwing_width = \"9 ft\"\ninsulation = \"R-100\"\ndepth = \"9 ft\""}) {
    INFO(text);
    const DesignFile file = file_of(std::string("units = \"US\"\n") + std::string(text));
    for (const EdgeStretch& edge : edges_of(file.design)) CHECK_NOTHROW(edge_section(edge.detail));
    if (floor_shape(file.design.slab).area_m2 > 0.0) CHECK(ground_of(file.design).plane_W_per_m2K > 0.0);
  }
}

TEST_CASE("a board that is none and a step of no height leave every edge as it was") {
  const auto numbers = [](std::string_view edge) {
    const std::string text = "units = \"SI\"\n[slab]\nsize = \"12 m x 9 m\"\n[edge]\n" + std::string(edge);
    return edge_numbers(file_of(text).design);
  };
  const std::vector<double> plain = numbers("");
  for (const std::string_view none : {"floor_above_grade = \"0 mm\"", "wing_insulation = \"none\"",
                                      "flat_insulation = \"none\"", "[insulation]\nmore_layers = [\"none\"]"}) {
    INFO(none);
    CHECK(numbers(none) == plain);
  }
}

TEST_CASE("what stands at walls alone leaves the door alone") {
  const auto doors = [](std::string_view edge) {
    const std::string text = "units = \"SI\"\n[slab]\nsize = \"12 m x 9 m\"\n[edge]\n" + std::string(edge);
    const std::vector<double> all = edge_numbers(file_of(text).design);
    return std::vector<double>(all.end() - 2, all.end());
  };
  const std::vector<double> plain = doors("");
  CHECK(doors("insulation = \"1.8 m2K/W\"\nwing_insulation = \"1.8 m2K/W\"\nfloor_above_grade = \"100 mm\"") == plain);
  CHECK(doors("apron_thickness = \"120 mm\"") != plain);
}
