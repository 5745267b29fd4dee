// One key set anew: the same as reading the changed text.
#include "design/support.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

DesignFile changed(const DesignFile& file, const std::string& path, std::string_view text) {
  const auto found = with_key(file, path, text);
  if (!found) throw std::runtime_error(path + " does not take " + std::string(text));
  return *found;
}

}  // namespace

TEST_CASE("a changed key gives what the changed text gives") {
  const std::string text = layout("ten-lines").text;
  const DesignFile file = must_read(text);
  struct Change {
    std::string path, value, more;
  };
  const std::vector<Change> changes{
      {"climate.coldest", "-20 F", "[climate]\ncoldest = \"-20 F\""},
      {"building.quality", "poor", "[building]\nquality = \"poor\""},
      {"building.air_changes", "0.6 per hour", "[building]\nair_changes = \"0.6 per hour\""},
      {"building.big_door", "false", "[building]\nbig_door = false"},
      {"fluid.kind", "propylene glycol", "[fluid]\nkind = \"propylene glycol\""},
      {"fluid.glycol", "35 %", "[fluid]\nglycol = \"35 %\""},
      {"opening[1].strip", "R-10", "[[opening]]\nstrip = \"R-10\""},
      {"opening[1].size", "9 x 8 ft", "[[opening]]\nsize = \"9 x 8 ft\""},
      {"room[1].indoor", "55 F", "[[room]]\nindoor = \"55 F\""},
      {"manifold[1].loops", "5", "[[manifold]]\nloops = 5"},
      {"loop[1].length", "200 ft", "[[loop]]\nlength = \"200 ft\""},
      {"codes", "none", ""},
  };
  for (const Change& change : changes) {
    INFO(change.path);
    // Sections of the ten lines are continued, not begun again.
    const bool climate = change.path.compare(0, 8, "climate.") == 0;
    const std::string more = climate ? change.more.substr(change.more.find('\n')) : change.more;
    const std::string other = change.path == "codes" ? "codes = \"none\"\n" + text : text + more;
    CHECK(changed(file, change.path, change.value) == must_read(other));
  }
}

TEST_CASE("a key of the file is replaced, and what follows from it settled anew") {
  const DesignFile file =
      must_read("[slab]\nsize = \"36 x 30 ft\"\nthickness = \"5 in\"\n[climate]\noutdoor = \"-12 F\"");
  CHECK(changed(file, "slab.thickness", "8 in") ==
        must_read("[slab]\nsize = \"36 x 30 ft\"\nthickness = \"8 in\"\n[climate]\noutdoor = \"-12 F\""));
  CHECK(changed(file, "climate.outdoor", "0 F") ==
        must_read("[slab]\nsize = \"36 x 30 ft\"\nthickness = \"5 in\"\n[climate]\noutdoor = \"0 F\""));
  CHECK(changed(file, "slab.area", "900 ft2") ==
        must_read("[slab]\narea = \"900 ft2\"\nthickness = \"5 in\"\n[climate]\noutdoor = \"-12 F\""));
}

TEST_CASE("changing there and back is no change, but for what has become the user's") {
  for (const Layout& each : layouts()) {
    INFO(each.name);
    const DesignFile once = changed(each.file, "ground.conductivity", "2.0 W/mK");
    const DesignFile there = changed(once, "ground.conductivity", "1.2 W/mK");
    CHECK_FALSE(there == once);
    CHECK(changed(there, "ground.conductivity", "2.0 W/mK") == once);
  }
}

TEST_CASE("every guess of every layout can be set to itself and changes nothing but its standing") {
  for (const Layout& each : layouts()) {
    for (const Assumption& assumption : each.file.assumed) {
      const Key* key = key_at(each.file.design, assumption.path);
      REQUIRE(key);
      if (key->says.us.empty()) continue;  // a row, or a value that follows from others and is rounded for the list
      INFO(each.name << " " << assumption.path << " = " << assumption.text);
      DesignFile same = changed(each.file, assumption.path, assumption.text);
      same.design.building.described = each.file.design.building.described;
      CHECK(same.design == each.file.design);
      CHECK(same.assumed.size() + 1 == each.file.assumed.size());
    }
  }
}

TEST_CASE("a text that does not fit changes nothing") {
  const DesignFile file = must_read(layout("ten-lines").text);
  CHECK_FALSE(with_key(file, "slab.thickness", "5"));
  CHECK_FALSE(with_key(file, "slab.thickness", "5 miles"));
  CHECK_FALSE(with_key(file, "slab.depth", "5 in"));
  CHECK_FALSE(with_key(file, "opening[3].strip", "R-10"));
  CHECK_FALSE(with_key(file, "opening[1]", "R-10"));
  CHECK_FALSE(with_key(file, "slab", "R-10"));
  CHECK_FALSE(with_key(file, "", "R-10"));
}
