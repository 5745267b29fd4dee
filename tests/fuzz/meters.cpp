// Readings of a manifold: a table, or flows in a row where the first byte is a minus; against a floor of four loops.
#include <cmath>

#include "fuzz/targets.hpp"
#include "slabwright/balance_meters.hpp"

namespace slabwright::fuzz {
namespace {

struct SmallFloor {
  DesignFile file;
  LoopPlan plan;
};

const SmallFloor& small_floor() {
  static const SmallFloor floor = [] {
    const ReadDesign read = read_design(
        "units = \"US\"\n[slab]\nsize = \"36 ft x 30 ft\"\n[tube]\nsize = \"1/2 in\"\n"
        "[[loop]]\nname = \"north\"\nlength = \"230 ft\"\n[[loop]]\nlength = \"250 ft\"\n"
        "[[loop]]\nlength = \"260 ft\"\n[[loop]]\nname = \"the door\"\nlength = \"280 ft\"\n");
    must(bool(read.checked), "the small floor does not read:\n" + problems_text(read, "floor"));
    Checked<LoopPlan> plan = plan_loops(read.checked.value->design);
    must(bool(plan), "the small floor has no loops");
    return SmallFloor{*read.checked.value, *plan.value};
  }();
  return floor;
}

void check_sentences(const std::vector<Diagnostic>& all) {
  for (const Diagnostic& said : all) {
    const std::string sentence = say(said, System::us);
    must(sentence.size() < 500 && sentence.find('\n') == std::string::npos, "a long sentence: " + sentence);
  }
}

void check(const std::optional<double>& value, double least, double most) {
  must(!value || (*value >= least && *value <= most), "a reading beyond what a manifold shows");
}

MeterSheet sheet_of(std::string_view bytes) {
  if (bytes.empty() || bytes.front() != '-') return read_meters(bytes);
  bytes.remove_prefix(1);
  const std::size_t bar = std::min(bytes.find('|'), bytes.size());
  const MeterSheet sheet = read_flows(bytes.substr(0, bar), System::us, "--read");
  if (bar == bytes.size()) return sheet;
  const MeterSheet with_water = with_option(sheet, "--water", bytes.substr(bar + 1));
  return with_option(with_option(with_water, "--room", bytes.substr(bar + 1)), "--meter-error", bytes.substr(bar + 1));
}

}  // namespace

bool meters(std::string_view bytes) {
  const MeterSheet sheet = sheet_of(bytes);
  check_sentences(sheet.problems);
  for (const Diagnostic& problem : sheet.problems)
    must(sheet.spots.count(problem.about) > 0, "a problem without a place: " + problem.about);
  for (const MeterRow& row : sheet.row) {
    check(row.flow_m3_per_s, 0.0, 1.0);
    check(row.supply_degC, -100.0, 200.0);
    check(row.return_degC, -100.0, 200.0);
    check(row.front_s, 0.0, 1e6);
    check(row.open_turns, 0.0, 1e3);
  }
  const Checked<MetersRead> read = match_meters(sheet, small_floor().plan, small_floor().file.design);
  check_sentences(read.said);
  must(read || !read.said.empty(), "refused without a word");
  if (!read) return false;
  must(read.value->readings.port.size() == small_floor().plan.loop.size(), "readings that are not as many as loops");
  (void)unit_mistaken(sheet, read.value->readings, {1e-5, 1e-5, 1e-5, 1e-5}, System::us);
  return true;
}

}  // namespace slabwright::fuzz
