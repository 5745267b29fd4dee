// The plan that a crew tapes to the wall on the day of the pour.
#include "sheets/page.hpp"
#include "slabwright/sheets.hpp"

namespace slabwright::sheets {
namespace {

using report::Kind;

Markup watch(const Source& source) {
  const Quotes& q = source.q;
  std::vector<Fact> rows;
  rows.push_back({prose("Slab"), say(q.figure("design.slab.thickness_m", Kind::short_length), " thick")});
  if (q.has("design.slab.concrete_above_tube_m"))
    rows.push_back(
        {prose("Concrete above tube"), quoted(q.figure("design.slab.concrete_above_tube_m", Kind::short_length))});
  rows.push_back(
      {prose("Tube"), say(q.words("design.tube.size"), " every ", q.figure("design.tube.spacing_m", Kind::short_length),
                          ", ", q.figure("design.tube.from_walls_m", Kind::short_length), " from walls")});
  if (q.has("pressure_test"))
    rows.push_back(
        {prose("Gauge must read"), say("about ", q.figure("pressure_test.pour_Pa", Kind::gauge), ", from ",
                                       q.figure("pressure_test.pour_least_Pa", Kind::gauge), " to ",
                                       q.figure("pressure_test.pour_most_Pa", Kind::gauge), " by the weather")});
  rows.push_back({prose("Ring if something is cut"), blank("                    ")});
  return facts(rows);
}

}  // namespace

std::optional<SheetBody> pour_day_sheet(const Source& source) {
  const auto floor = drawn_floor(source.answer);
  if (!floor || floor->loop.empty()) return std::nullopt;
  const Markup rules =
      bullets({prose("Tube is under pressure while concrete is placed. Watch the gauge; if it falls, stop and say so."),
               prose("Walk on planks. No barrow wheel, rake or vibrator on tube."),
               prose("Lift the mesh as the engineer's drawing has it: tube must not rise."),
               prose("Saw only where joints are drawn, no deeper than the engineer allows."),
               prose("A cut tube is repaired before it is covered, and the place is marked on this plan.")});
  return SheetBody{
      watch(source) + rules + caution(prose("Concrete, steel, joints and load are the engineer's matter.")),
      {draw_plan(*floor).picture}};
}

}  // namespace slabwright::sheets
