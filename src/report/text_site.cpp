// Everything that is known of coils and materials: with --full.
#include <fmt/format.h>

#include "report/text.hpp"

namespace slabwright::report {
namespace {

std::string cuts_title(const CutList& cuts, System system) {
  if (cuts.least) return "COILS (no other choice leaves less)";
  return fmt::format("COILS (another choice may leave less, by {} at most)", figure(Kind::length, cuts.gap_m, system));
}

/// Which loops come off which coil.
void add_coils(Page& page, const Reader& reader) {
  const CutList& cuts = *reader.answer.cuts;
  const System system = reader.system();
  const std::string length(unit(Kind::length, system));
  Table table{{{"coil"}, {"sold as", length}, {"left", length}, left_column("loops")}, {}, 3};
  for (const CutCoil& coil : cuts.coil) {
    std::vector<std::string> loops;
    for (const CutPiece& piece : coil.piece)
      loops.push_back(fmt::format("{} ({})", piece.loop, bare(Kind::length, piece.length_m, system)));
    table.rows.push_back({fmt::format("{}", table.rows.size() + 1), bare(Kind::length, coil.length_m, system),
                          bare(Kind::length, coil.left_m, system), fmt::format("{}", fmt::join(loops, ", "))});
  }
  add_gap(page);
  add_text(page, cuts_title(cuts, system));
  add_table(page, table);
}

void add_materials(Page& page, const Reader& reader) {
  const Materials& all = *reader.answer.materials;
  const auto number = [](int count) { return static_cast<std::size_t>(count); };
  const auto row = [&](const std::string& about, const std::string& answer) { add_row(page, "", about, answer); };
  add_gap(page);
  add_text(page, "MATERIALS (practice where nothing else is said)");
  row("tube", fmt::format("{}, tails at the manifold included", reader(Kind::length, all.tube_m)));
  row("manifolds", fmt::format("{}, with {} (supply and return each) in all", all.manifolds_number,
                               several(number(all.ports_number), "port")));
  row("ties",
      fmt::format("{}{}", all.ties_number, all.drawn ? "" : ", reckoned from lengths: the loops are not drawn"));
  row("bends", fmt::format("{} where tube turns up to its port", several(number(all.bend_supports_number), "support")));
  if (all.drawn && all.sleeves_number > 0)
    row("sleeves", fmt::format("{} of {}, one where a loop crosses a joint", all.sleeves_number,
                               reader(Kind::short_length, all.sleeve_m)));
  const std::string waste = fmt::format("{} for waste counted", reader(Kind::share, all.waste_share));
  if (all.foam_m2 > 0.0) row("foam", fmt::format("{} under the slab, {}", reader(Kind::area, all.foam_m2), waste));
  if (all.edge_foam_m2 > 0.0)
    row("boards", fmt::format("{} outside the edge, {}", reader(Kind::area, all.edge_foam_m2), waste));
}

}  // namespace

void add_site(Page& page, const Reader& reader) {
  if (reader.answer.cuts) add_coils(page, reader);
  if (reader.answer.materials) add_materials(page, reader);
}

}  // namespace slabwright::report
