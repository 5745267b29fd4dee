// Written and read again: the same design with the same guesses.
#include "design/support.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

int drawn(int from, int to) { return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(from, to + 1)); }

/// A value for a key: a name that needs care, an example, or a number between its limits.
std::string drawn_text(const Key& key, const Slot& slot) {
  const System system = drawn(0, 1) ? System::us : System::si;
  if (std::holds_alternative<Text>(slot)) {
    const std::string_view names[] = {"", "the \"old\" shop", "back\\slash", "für # 2", "'", "x = [1]"};
    return std::string(names[static_cast<std::size_t>(drawn(0, 5))]);
  }
  if (key.unit && drawn(0, 2) > 0) {
    const double si = key.says.least + (key.says.most - key.says.least) * drawn(0, 1000) / 1000.0;
    return write_quantity(si, key.unit->dimension, system);
  }
  return example_of(key, slot, system);
}

/// A design from a tenth of all keys, each kept where the whole still reads.
DesignFile drawn_design() {
  Design scratch;
  for (const Key& key : record_of(scratch).keys) {
    const Slot slot = key.slot(&scratch);
    const auto* rows = std::get_if<Rows>(&slot);
    for (int i = drawn(0, 2); rows && i > 0; --i) rows->add(rows->at);
  }
  const std::string text = drawn(0, 1) ? "" : "units = \"SI\"";
  std::vector<Override> options{{"project.name", "shop", "--set"}};
  DesignFile file = must_read(text, options);
  walk(record_of(scratch), [&](const std::string& path, const Key& key, const Slot& slot) {
    if (drawn(0, 9) > 0) return;
    options.push_back({path, drawn_text(key, slot), "--set"});
    ReadDesign read = read_design(text, options);
    if (read.checked)
      file = *read.checked.value;
    else
      options.pop_back();
  });
  return file;
}

}  // namespace

TEST_CASE("every layout written reads back to itself") {
  for (const Layout& each : layouts()) {
    INFO(each.name << "\n" << write_design(each.file));
    CHECK(must_read(write_design(each.file)) == each.file);
  }
}

TEST_CASE("any design that reads is written and reads back to itself") {
  CHECK(rc::check("round trip", [] {
    const DesignFile file = drawn_design();
    const std::string text = write_design(file);
    const ReadDesign again = read_design(text);
    RC_LOG() << text << (again.checked ? "" : problems_text(again, "again"));
    RC_ASSERT(bool(again.checked));
    const bool stated = gives(*again.checked.value, "units") && !gives(file, "units");
    const DesignFile same = stated ? *with_key(file, "units", file.design.units == System::us ? "US" : "SI") : file;
    RC_ASSERT(*again.checked.value == same);
    RC_ASSERT(write_design(*again.checked.value) == text);
  }));
}

TEST_CASE("only the user's part is written, in the user's units, shortest") {
  const DesignFile file = must_read(
      "[slab]\nsize = \"36.0 ft x 360 in\"\nthickness = '5\"'\n[[manifold]]\n[[room]]\nname = \"the \\\"old\\\" "
      "shop\"\n"
      "[climate]\noutdoor = \"-12.0 °F\" # cold\n[boiler]\ncheck_valve = true\n");
  CHECK(write_design(file) ==
        "[climate]\noutdoor = \"-12 F\"\n\n[[room]]\nname = \"the \\\"old\\\" shop\"\n\n"
        "[slab]\nsize = \"36 ft x 30 ft\"\nthickness = \"5 in\"\n\n[[manifold]]\n\n[boiler]\ncheck_valve = true\n");
  CHECK(write_design(must_read("[project]\nname = \"\"")) == "[project]\nname = \"\"\n");
}

TEST_CASE("units guessed from a mixture are written down where the written text would be guessed otherwise") {
  // Two texts against two, and the climate decides; 120 mm becomes no shorter in inches, 3.6576 m does in feet.
  const DesignFile file = must_read(
      "[slab]\nsize = \"10 ft x 9 ft\"\nthickness = \"120 mm\"\n[tube]\nleader = \"3 m\"\n"
      "spacing = \"300 mm\"\n");
  CHECK(file.design.units == System::si);
  const std::string text = write_design(file);
  CHECK(must_read(text).design.units == System::si);
  CHECK(must_read(text).design == file.design);
}

TEST_CASE("a long list is written an item a line") {
  const DesignFile file = must_read(
      "[slab]\noutline = [\"0, 0\", \"10.25 m, 0\", \"10.25, 2.25 m\", \"12, 2.25 m\", \"12, 4.5 m\", \"8.75, 4.5 m\", "
      "\"8.75, 9.125 m\", \"0, 9.125 "
      "m\"]");
  const std::string text = write_design(file);
  CHECK(text.find("outline = [\n  \"0 m, 0 m\",\n  \"10.25 m, 0 m\",\n") != std::string::npos);
  CHECK(must_read(text) == file);
}

TEST_CASE("the first file reads, with and without options, and its remarks are true once taken away") {
  const auto uncommented = [](std::string text) {
    // The two lines at the top and the one before the last part are prose.
    for (std::size_t at = 0; (at = text.find("\n# ", at)) != std::string::npos;) {
      const std::string line = text.substr(at + 3, text.find('\n', at + 1) - at - 3);
      const bool prose = line.find("remark.") == 0 || line.find("What ") == 0;
      if (prose)
        at += 3;
      else
        text.erase(at + 1, 2);
    }
    return text;
  };
  const std::vector<std::vector<Override>> all{
      {},
      {{"slab.size", "36 x 30 ft", "--size"}, {"tube.spacing", "12 in", "--spacing"}},
      {{"slab.area", "162 m2", "--area"}, {"climate.outdoor", "-24 C", "--outdoor"}},
      {{"manifold[1].loops", "5", "--poured"}, {"units", "SI", "--units"}, {"edge.insulation", "none", "--edge"}},
      {{"loop[1].length", "188 ft", "--lengths"},
       {"loop[2].length", "241 ft", "--lengths"},
       {"codes", "none", "--set"}},
      {{"boiler.check_valve", "true", "--set"}}};
  for (const auto& options : all) {
    const std::string text = new_design_text(options);
    INFO(text);
    const DesignFile file = must_read(text);
    for (const Override& option : options) CHECK(gives(file, option.path));
    CHECK(file.given.size() ==
          options.size() + (options.empty() || options.back().path != "x" ? 1 : 0) -
              std::count_if(options.begin(), options.end(), [](const Override& o) { return o.path == "units"; }));
    CHECK(problems(uncommented(text)).empty());
    CHECK(must_read(uncommented(text)).given.size() > file.given.size());
  }
}
