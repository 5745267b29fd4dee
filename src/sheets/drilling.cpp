// The drilling guide: where a hole is likely clear, in doubt, or not to be drilled, and the anchors that were asked
// about.
#include "sheets/page.hpp"
#include "slabwright/sheets.hpp"

namespace slabwright::sheets {
namespace {

using report::Kind;

/// A floor that somebody else laid, or poured before it was drawn, is not on a drawing of ours.
Markup only_as_drawn() {
  return caution(
      prose("This page holds only where tube was laid by this drawing. In a floor that was laid otherwise, "
            "or poured before it was drawn, tube runs elsewhere and nothing here is clear: find the tube "
            "and mark it first."));
}

Markup anywhere(const Source& source) {
  const Quotes& q = source.q;
  return section(
      "A hole nobody has asked about yet",
      facts({{prose("The hole"),
              say("up to ", q.figure("drill_bands.diameter_m", Kind::short_length), " wide, as deep as tube")},
             {prose("Do not drill"),
              say("nearer than ", q.tape("drill_bands.do_not_m"), " from its middle to a tube's centre line")},
             {prose("In doubt"), say("nearer than ", q.tape("drill_bands.doubt_m"))},
             {prose("Likely clear"), prose("farther than that, if tube lies where it is drawn")},
             {prose("Tube lies"),
              say("nineteen times of twenty within ", q.figure("drill_bands.tolerance_m", Kind::short_length),
                  " of the drawing, below ", q.figure("drill_bands.concrete_above_m", Kind::short_length),
                  " of concrete, more or less ", q.figure("drill_bands.depth_tolerance_m", Kind::short_length),
                  " (practice)")},
             {prose("A wider hole"), prose("is to be asked about by itself")}}));
}

Markup holes_of(const Source& source, std::size_t anchor) {
  const Quotes& q = source.q;
  const std::string list = key_of_row("drill.anchor", anchor, "hole");
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < q.rows(list); ++i) {
    const std::string hole = key_of_row(list, i);
    rows.push_back({quoted(q.tape(hole + ".place.from_first_m")), quoted(q.tape(hole + ".place.from_second_m")),
                    quoted(q.words(hole + ".loop")), quoted(q.tape(hole + ".clear_m")), quoted(q.words(hole + ".word")),
                    tick()});
  }
  const std::string key = key_of_row("drill.anchor", anchor);
  return wrap("h3", say(q.words(key + ".name"), ": ", q.words(key + ".word"))) +
         paragraph("Holes of ", q.figure(key + ".diameter_m", Kind::short_length), ", ",
                   q.figure(key + ".depth_m", Kind::short_length), " deep.") +
         table({{"off the first wall", {}, false},
                {"off the second wall", {}, false},
                {"nearest tube", {}, false},
                {"concrete between", {}, false},
                {"so", {}, false},
                {"scanned", {}, false}},
               rows);
}

Markup anchors(const Source& source) {
  if (!source.answer.drill || source.answer.drill->anchor.empty()) return {};
  const Quotes& q = source.q;
  Markup all = paragraph("The first wall is the ", q.words("drill.first_wall"), ", the second the ",
                         q.words("drill.second_wall"), "; places are square off both.");
  for (std::size_t i = 0; i < source.answer.drill->anchor.size(); ++i) all += holes_of(source, i);
  return section("Anchors of the design", all);
}

}  // namespace

std::optional<SheetBody> drilling_sheet(const Source& source) {
  auto floor = drawn_floor(source.answer);
  if (!floor || !source.answer.drill_bands) return std::nullopt;
  const bool ours = drawn_by_us(*source.answer.loops);
  std::vector<KeyedWords> notes{{{"DRILLING GUIDE for this floor.", ""}}};
  if (ours) notes.push_back({{"Only for tube that was laid by this drawing.", ""}});
  floor->notes.insert(floor->notes.begin(), notes.begin(), notes.end());
  floor->tip.clear();
  floor->bands = {source.answer.drill_bands->do_not_m, source.answer.drill_bands->doubt_m};
  return SheetBody{(ours ? only_as_drawn() : Markup{}) + anywhere(source) + anchors(source) +
                       caution(prose("The drawn position is not the cast position: scan the floor and mark what is "
                                     "found before you drill. Let the pressure off and keep a gauge in sight; set a "
                                     "depth stop; bind the dust. What an anchor carries is an engineer's matter.")),
                   {draw_plan(*floor).picture}};
}

}  // namespace slabwright::sheets
