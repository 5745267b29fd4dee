// As built: the drawing that stays with the shop, and points of tube measured before they are covered.
#include "sheets/page.hpp"
#include "slabwright/sheets.hpp"

namespace slabwright::sheets {
namespace {

using report::Kind;

Markup points(const Source& source) {
  const Quotes& q = source.q;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < q.rows("control.point"); ++i) {
    const auto key = [&](std::string_view member) { return key_of_row("control.point", i, member); };
    rows.push_back({quoted(q.words(key("name"))), quoted(q.words(key("loop"))), quoted(q.tape(key("from_a_m"))),
                    blank(), quoted(q.tape(key("from_b_m"))), blank()});
  }
  return section("Points of tube",
                 paragraph("Corners A and B lie at the ends of the ", q.words("control.wall"),
                           ". Measure each point straight from both, before it is covered, and write down what the "
                           "tape says.") +
                     table({{"point", {}, false},
                            {"loop", {}, false},
                            {"from A, drawn", {}, false},
                            {"from A, measured", {}, false},
                            {"from B, drawn", {}, false},
                            {"from B, measured", {}, false}},
                           rows));
}

Markup record(const Source& source) {
  const Quotes& q = source.q;
  return section(
      "Record",
      facts({{prose("Tube as laid with care"),
              say("nineteen of twenty places within ", q.figure("control.tolerance_m", Kind::short_length),
                  " of the drawing (practice)")},
             {prose("Tube's axis below the top, as drawn"), quoted(q.figure("plan.tube_depth_m", Kind::short_length))},
             {prose("The same, measured"), blank()},
             {prose("Measured by, date"), blank()},
             {prose("Photographs, with a tape in view"), blank()},
             {prose("Repairs, and where they are"), blank()}}));
}

}  // namespace

std::optional<SheetBody> as_built_sheet(const Source& source) {
  auto floor = drawn_floor(source.answer);
  if (!floor || !source.answer.control) return std::nullopt;
  const ControlPoints& control = *source.answer.control;
  floor->notes.insert(floor->notes.begin(),
                      KeyedWords{KeyedText{"AS BUILT: points of tube, from corners A and B.", ""}});
  floor->tip.clear();
  floor->mark.push_back({{control.a.x_m, control.a.y_m}, {control.a.letter, "control.a.letter"}, true});
  floor->mark.push_back({{control.b.x_m, control.b.y_m}, {control.b.letter, "control.b.letter"}, true});
  for (std::size_t i = 0; i < control.point.size(); ++i) {
    const ControlPoint& point = control.point[i];
    floor->mark.push_back({{point.x_m, point.y_m}, {point.name, key_of_row("control.point", i, "name")}});
  }
  return SheetBody{
      points(source) + record(source) +
          caution(prose("A drawing is not the concrete. Where something was measured, the measure counts. Tube that "
                        "was laid otherwise, or poured before it was drawn, is not on this page at all.")),
      {draw_plan(*floor).picture}};
}

}  // namespace slabwright::sheets
