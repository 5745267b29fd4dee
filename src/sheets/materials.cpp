// Materials and cut list: what to order, and which coil every loop comes off.
#include "sheets/page.hpp"
#include "sheets/plots.hpp"

namespace slabwright::sheets {
namespace {

using report::Kind;
using Lean = report::Figure;

Markup order(const Source& source) {
  const Quotes& q = source.q;
  const Materials& all = *source.answer.materials;
  std::vector<Fact> rows;
  rows.push_back({say("Tube, ", q.words("design.tube.size")),
                  say(q.figure("materials.tube_m", Kind::length, Lean::loops), ", tails at the manifold included")});
  rows.push_back({prose("Manifolds"),
                  say(q.figure("materials.manifolds_number", Kind::count), ", with ",
                      q.figure("materials.ports_number", Kind::count), " ports in all, each a supply and a return")});
  rows.push_back({prose("Ties"), say(q.figure("materials.ties_number", Kind::count), ", one every ",
                                     q.figure("materials.tie_m", Kind::length), " and where a bend begins",
                                     all.drawn ? "" : ", reckoned from lengths: the loops are not drawn")});
  rows.push_back({prose("Bend supports"),
                  say(q.figure("materials.bend_supports_number", Kind::count), ", where tube turns up to its port")});
  if (all.drawn && all.sleeves_number > 0)
    rows.push_back({prose("Sleeves"),
                    say(q.figure("materials.sleeves_number", Kind::count), " of ",
                        q.figure("materials.sleeve_m", Kind::short_length), ", one where a loop crosses a joint")});
  if (all.foam_m2 > 0.0)
    rows.push_back({prose("Foam under the slab"),
                    say(q.figure("materials.foam_m2", Kind::area), " of ", q.words("design.insulation.under"))});
  if (all.edge_foam_m2 > 0.0)
    rows.push_back({prose("Boards outside the edge"),
                    say(q.figure("materials.edge_foam_m2", Kind::area), " of ", q.words("design.edge.insulation"))});
  if (all.foam_m2 > 0.0 || all.edge_foam_m2 > 0.0)
    rows.push_back({prose("Waste counted with foam"), quoted(q.figure("materials.waste_share", Kind::share))});
  return section("To order", facts(rows));
}

Markup plant(const Source& source) {
  const Quotes& q = source.q;
  if (!source.answer.sizes) return {};
  std::vector<Fact> rows;
  rows.push_back({prose("Boiler"), say(q.words("sizes.boiler.kind"), ", ",
                                       q.figure("sizes.boiler.power_W", Kind::boiler, Lean::boiler))});
  rows.push_back({prose("Pump"), say("one that gives ", q.figure("sizes.pump.flow_m3_per_s", Kind::flow, Lean::pump),
                                     " against ", q.figure("sizes.pump.head_m", Kind::head, Lean::pump), " of head")});
  rows.push_back({prose("Expansion tank"), say(q.figure("sizes.tank.tank_m3", Kind::least_volume, Lean::tank),
                                               " or more; its air at ", q.figure("sizes.tank.fill_Pa", Kind::gauge))});
  if (source.answer.sizes->tank.glycol_m3 > 0.0)
    rows.push_back({prose("Glycol"), say(q.figure("sizes.tank.glycol_m3", Kind::volume, Lean::tank), " in ",
                                         q.figure("sizes.tank.fluid_m3", Kind::volume, Lean::tank), " of mixture")});
  return section("Between boiler and floor", facts(rows) + plot_figures(q, {"pump"}));
}

Markup cut_list(const Source& source) {
  const Quotes& q = source.q;
  const CutList& cuts = *source.answer.cuts;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t c = 0; c < cuts.coil.size(); ++c) {
    const std::string coil = key_of_row("cuts.coil", c);
    for (std::size_t p = 0; p < cuts.coil[c].piece.size(); ++p) {
      const auto key = [&](std::string_view member) { return key_of_row(coil + ".piece", p, member); };
      rows.push_back({p == 0 ? quoted(q.figure(coil + ".number", Kind::count)) : Markup{},
                      p == 0 ? quoted(q.bare(coil + ".length_m", Kind::length)) : Markup{},
                      quoted(q.words(key("loop"))), quoted(q.bare(key("from_m"), Kind::length)),
                      quoted(q.bare(key("to_m"), Kind::length)), quoted(q.bare(key("length_m"), Kind::length)),
                      tick()});
    }
  }
  const std::string unit(report::unit(Kind::length, q.system()));
  const Markup list = table({{"coil"},
                             {"sold as", unit},
                             {"loop", {}, false},
                             {"from mark", unit},
                             {"to mark", unit},
                             {"cut", unit},
                             {"cut off", {}, false}},
                            rows);
  const Markup end =
      paragraph("In all ", q.figure("cuts.bought_m", Kind::length), " in ", q.count("cuts.coil"), " coils, ",
                q.figure("cuts.left_m", Kind::length), " left over.",
                cuts.least ? " No other choice of coils leaves less." : " Another choice may leave a little less.");
  return section("Cut list: no splice in the slab",
                 list + end +
                     paragraph("Write coil and loop on both ends of every piece before it leaves the coil. A "
                               "coil's marks seldom begin at nought: add what its outer end shows."));
}

}  // namespace

std::optional<SheetBody> materials_sheet(const Source& source) {
  if (!source.answer.materials) return std::nullopt;
  Markup body = order(source) + plant(source);
  if (source.answer.cuts) body += cut_list(source);
  body +=
      caution(prose("Quantities for tube and foam; concrete, steel, vapour barrier and what carries load are the "
                    "engineer's and the concrete supplier's."));
  return SheetBody{body};
}

}  // namespace slabwright::sheets
