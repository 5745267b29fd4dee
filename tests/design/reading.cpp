// What a file may look like and still be read.
#include "design/support.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double inch = 0.0254, foot = 0.3048;

const std::string ten_lines = layout("ten-lines").text;

std::string utf16(std::string_view ascii, bool little, bool mark) {
  std::string out = !mark ? "" : little ? "\xFF\xFE" : "\xFE\xFF";
  for (const char c : ascii) {
    if (!little) out += '\0';
    out += c;
    if (little) out += '\0';
  }
  return out;
}

std::string with_line_ends(std::string text, std::string_view end) {
  for (std::size_t at = 0; (at = text.find('\n', at)) != std::string::npos; at += end.size()) text.replace(at, 1, end);
  return text;
}

}  // namespace

TEST_CASE("the ten lines are read") {
  const DesignFile file = must_read(ten_lines);
  const Design& design = file.design;
  CHECK(design.units == System::us);
  CHECK(design.slab.size == Size{36 * foot, 30 * foot});
  CHECK(design.slab.thickness_m == Approx(5 * inch).epsilon(1e-15));
  CHECK(design.tube.size.name == "1/2 in");
  CHECK(design.tube.spacing_m == Approx(12 * inch).epsilon(1e-15));
  CHECK(*design.climate.outdoor_degC == Approx((-12.0 - 32.0) / 1.8).epsilon(1e-15));
  CHECK(design.climate.indoor_degC == Approx((60.0 - 32.0) / 1.8).epsilon(1e-15));
  CHECK(file.given == std::vector<std::string>{"units", "slab.size", "slab.thickness", "tube.size", "tube.spacing",
                                               "climate.outdoor", "climate.indoor"});
  CHECK(file.spots.at("slab.thickness").line == 4);
  CHECK(file.spots.at("slab.thickness").column == 13);
}

TEST_CASE("every layout is read without a problem") {
  CHECK(layouts().size() >= 5);
  for (const Layout& each : layouts()) CHECK(problems(each.text).empty());
}

TEST_CASE("line ends, marks and two-byte text do not change what is read") {
  const DesignFile plain = must_read(ten_lines);
  CHECK(must_read(with_line_ends(ten_lines, "\r\n")) == plain);
  CHECK(must_read(with_line_ends(ten_lines, "\r")) == plain);
  CHECK(must_read("\xEF\xBB\xBF" + ten_lines) == plain);
  for (const bool little : {true, false}) {
    CHECK(must_read(utf16(ten_lines, little, true)) == plain);
    CHECK(must_read(utf16(ten_lines, little, false)) == plain);
  }
  CHECK(must_read(with_line_ends(ten_lines, "\r\n")).spots.at("climate.indoor").line == 10);
}

TEST_CASE("other ways that TOML has of writing the same") {
  const DesignFile sections = must_read("[slab]\nsize = \"36 x 30 ft\"\n[[room]]\nname = \"shop\"\n");
  CHECK(must_read("slab.size = \"36 x 30 ft\"\nroom = [{ name = \"shop\" }]\n") == sections);
  CHECK(must_read("slab = { size = \"36 x 30 ft\" }\n[[room]]\n\"name\" = 'shop'") == sections);
  CHECK(must_read("[ slab ]\nsize = '''36 x 30 ft'''\n[[ room ]]  # remark\nname = \"\"\"\nshop\"\"\"") == sections);
  CHECK(must_read("[room]\nname = \"shop\"\n[slab]\nsize = \"36 x 30 ft\"") == sections);
}

TEST_CASE("an outline is the same closed or open, clockwise or not, on one line or on many") {
  const auto area = [](const std::string& corners) {
    const FloorShape shape = floor_shape(must_read("[slab]\noutline = " + corners).design.slab);
    CHECK(shape.outline.size() == 4);
    CHECK(shape.shape_known);
    return shape.area_m2;
  };
  const double expected = 40 * 18 * foot * foot;
  CHECK(area("[\"0, 0 ft\", \"40, 0 ft\", \"40, 18 ft\", \"0, 18 ft\"]") == Approx(expected));
  CHECK(area("[\"0 ft, 0 ft\", \"0, 18 ft\", \"40 ft, 18 ft\", \"40, 0 ft\", \"0, 0\"]") == Approx(expected));
  CHECK(area("[\n  \"0, 0\", # the corner\n\n  \"40 ft, 0\",\n  \"480 in, 18 ft\",\n  \"0, 18'\",\n]") ==
        Approx(expected));
}

TEST_CASE("units follow those typed for slab and tube, then those typed anywhere") {
  const auto units = [](std::string_view text) { return must_read(text).design.units; };
  CHECK(units("[slab]\nsize = \"18 x 9 m\"\n[climate]\noutdoor = \"-4 F\"") == System::si);
  CHECK(units("[tube]\nspacing = \"12 in\"\n[climate]\noutdoor = \"-20 C\"\nindoor = \"16 C\"") == System::us);
  CHECK(units("[climate]\noutdoor = \"-20 C\"") == System::si);
  CHECK(units("[project]\nname = \"shop\"") == System::us);
  CHECK(units("units = \"us\"\n[slab]\nsize = \"18 x 9 m\"") == System::us);
  CHECK(must_read("", {{"slab.area", "162 m2", "--area"}}).design.units == System::si);
  CHECK(guess(must_read("[slab]\nsize = \"18 x 9 m\""), "units") == "SI");
  CHECK(guess(must_read("[slab]\nsize = \"18 x 9 m\""), "codes") == "europe");
}

TEST_CASE("options win over the file, and take the place of a size stated another way") {
  const DesignFile file =
      must_read(ten_lines, {{"tube.spacing", "9 in", "--spacing"}, {"slab.area", "900 ft2", "--area"}});
  CHECK(file.design.tube.spacing_m == Approx(9 * inch));
  CHECK_FALSE(file.design.slab.size);
  CHECK_FALSE(gives(file, "slab.size"));
  CHECK(*file.design.slab.area_m2 == Approx(900 * foot * foot));
  CHECK(file.spots.at("tube.spacing").option == "--spacing");
  CHECK(file.spots.at("tube.spacing").line == 0);
}

TEST_CASE("options alone make a design, rows among them") {
  const DesignFile file = must_read("", {{"slab.size", "36 x 30 ft", "--size"},
                                         {"loop[1].length", "188 ft", "--lengths"},
                                         {"loop[2].length", "241 ft", "--lengths"},
                                         {"manifold[1].loops", "2", "--poured"}});
  REQUIRE(file.design.loop.size() == 2);
  CHECK(file.design.loop[1].length_m == Approx(241 * foot));
  CHECK(file.design.manifold.size() == 1);
}

TEST_CASE("an option that does not fit is placed by its name") {
  CHECK(problems("", {{"tube.spacing", "12", "--spacing"}}) ==
        "--spacing: spacing 12 has no unit. Write \"12 in\" or \"300 mm\".\n");
  CHECK(problems("[climate]\noutdoor = \"70 F\"", {{"climate.indoor", "50 F", "--indoor"}}) ==
        "--indoor: outdoor is warmer than indoor: 70 F outside, 50 F inside.\n");
  CHECK(problems("", {{"tube.pitch", "12 in", "--set"}}) == "--set: no key pitch in [tube]; it is called spacing.\n");
  CHECK(problems("", {{"pipe.size", "1/2 in", "--set"}}) == "--set: no section [pipe]; tubes go in [tube].\n");
  CHECK(problems("", {{"loop[5].length", "100 ft", "--set"}}) ==
        "--set: there is no loop[5]; rows count from 1: loop[1].\n");
  CHECK(problems("", {{"slab", "100 ft", "--set"}}) == "--set: slab is a section: name a key of it.\n");
}

TEST_CASE("problems come in file order, ten of them and a count, and nothing is computed") {
  std::string text;
  for (int i = 0; i < 13; ++i) text += "nonsense" + std::to_string(i) + " = 1\n";
  const std::string all = problems_text(read_design(text), "shop.toml");
  CHECK(std::count(all.begin(), all.end(), '\n') == 12);
  CHECK(all.find("shop.toml:1:1: ") == 0);
  CHECK(all.find("... and 3 more\nNothing was computed, nothing was written.\n") != std::string::npos);
  CHECK_FALSE(read_design(text).checked);
}

TEST_CASE("a glycol between 20 and 25 % is a warning, and the design stands") {
  const ReadDesign read = read_design("[fluid]\nkind = \"propylene glycol\"\nglycol = \"22 %\"");
  CHECK(read.checked);
  REQUIRE(read.checked.said.size() == 1);
  CHECK(read.checked.said[0].severity == Severity::warning);
  CHECK(read.checked.said[0].about == "fluid.glycol");
}
