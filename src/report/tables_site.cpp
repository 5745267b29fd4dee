// Tables for the people on the site.
#include <fmt/format.h>

#include "report/csv.hpp"
#include "report/tape.hpp"

namespace slabwright::report {
namespace {

/// A row for each piece, the coils in the order in which they are begun.
std::string coils_csv(const Answer& answer) {
  Csv csv(answer.file.design.units);
  csv.head("coil");
  csv.head("sold as", Kind::length);
  csv.head("loop");
  csv.head("cut", Kind::length);
  csv.head("left on it", Kind::length);
  csv.end_row();
  for (std::size_t i = 0; i < answer.cuts->coil.size(); ++i) {
    const CutCoil& coil = answer.cuts->coil[i];
    double left_m = coil.length_m;
    for (const CutPiece& piece : coil.piece) {
      left_m -= piece.length_m;
      csv.cell(Kind::count, static_cast<double>(i + 1));
      csv.cell(Kind::length, coil.length_m);
      csv.cell(piece.loop);
      csv.cell(Kind::length, piece.length_m);
      csv.cell(Kind::length, left_m);
      csv.end_row();
    }
  }
  return csv.content();
}

std::string materials_csv(const Answer& answer) {
  const Materials& all = *answer.materials;
  const System system = answer.file.design.units;
  Csv csv(system);
  for (const std::string_view word : {"what", "how much", "unit"}) csv.head(word);
  csv.end_row();
  const auto row = [&](std::string_view what, Kind kind, double si) {
    csv.cell(std::string(what));
    csv.cell(kind, si);
    csv.cell(std::string(unit(kind, system)));
    csv.end_row();
  };
  row("tube, tails at the manifold included", Kind::length, all.tube_m);
  row("manifolds", Kind::count, all.manifolds_number);
  row("ports, a supply and a return each", Kind::count, all.ports_number);
  row(all.drawn ? "ties" : "ties, from lengths alone", Kind::count, all.ties_number);
  row("bend supports at the ports", Kind::count, all.bend_supports_number);
  if (all.drawn) row("sleeves at joints", Kind::count, all.sleeves_number);
  if (all.sleeves_number > 0) row("length of a sleeve", Kind::short_length, all.sleeve_m);
  if (all.foam_m2 > 0.0) row("foam under the slab, waste counted", Kind::area, all.foam_m2);
  if (all.edge_foam_m2 > 0.0) row("foam boards at the edge, waste counted", Kind::area, all.edge_foam_m2);
  return csv.content();
}

void add_lines(Csv& csv, const StakeTable& table, System system) {
  for (const StakeLine& line : table.line) {
    csv.cell(line.name);
    csv.cell(table.wall);
    csv.cell(tape(line.at_m, system));
    csv.cell(tape(line.from_m, system));
    csv.cell(tape(line.to_m, system));
    csv.cell(Kind::short_length, line.off_m);
    csv.cell(line.turns_end ? (line.carries ? "tube, and tips of turns" : "tips of turns") : "tube");
    csv.end_row();
  }
}

/// Lines to snap; the tape's own words, so that nobody has to reckon on the slab.
std::string stakes_csv(const Answer& answer) {
  Csv csv(answer.file.design.units);
  for (const std::string_view word : {"line", "from", "at", "begins", "ends"}) csv.head(word);
  csv.head("tube off it by at most", Kind::short_length);
  csv.head("what");
  csv.end_row();
  add_lines(csv, answer.stakes->first, answer.file.design.units);
  add_lines(csv, answer.stakes->second, answer.file.design.units);
  return csv.content();
}

std::string along_words(const StakeStep& step) {
  if (step.line.empty()) return step.radius_m > 0.0 ? "curve" : "slant";
  if (step.line.size() == 1) return step.line[0];
  return fmt::format("{}, to and fro", fmt::join(step.line, " "));
}

std::string place_words(const std::string& line, const StakePlace& place, System system) {
  return line.empty() ? fmt::format("{} and {}", tape(place.first_m, system), tape(place.second_m, system)) : line;
}

std::string_view then_words(StakeTurn turn) {
  constexpr std::string_view words[] = {"turn left",          "turn right", "back, to the left",
                                        "back, to the right", "bears",      "end"};
  return words[static_cast<std::size_t>(turn)];
}

std::string walks_csv(const Answer& answer) {
  const System system = answer.file.design.units;
  Csv csv(system);
  for (const std::string_view word : {"loop", "step", "along", "from", "to", "then"}) csv.head(word);
  csv.head("tube laid", Kind::length);
  csv.end_row();
  for (const StakeWalk& walk : answer.stakes->walk) {
    for (std::size_t i = 0; i < walk.step.size(); ++i) {
      const StakeStep& step = walk.step[i];
      csv.cell(walk.loop);
      csv.cell(Kind::count, static_cast<double>(i + 1));
      csv.cell(along_words(step));
      csv.cell(place_words(step.from_line, step.from, system));
      csv.cell(place_words(step.to_line, step.to, system));
      csv.cell(std::string(then_words(step.then)));
      csv.cell(Kind::length, step.at_end_m);
      csv.end_row();
    }
  }
  return csv.content();
}

std::string_view word_of(Drilling word) {
  constexpr std::string_view words[] = {"likely clear", "in doubt", "do not drill"};
  return words[static_cast<std::size_t>(word)];
}

std::string drill_csv(const Answer& answer) {
  const System system = answer.file.design.units;
  Csv csv(system);
  const DrillGuide& guide = *answer.drill;
  for (const std::string& word : {std::string("anchor"), std::string("hole"), "from " + guide.first_wall,
                                  "from " + guide.second_wall, std::string("loop")})
    csv.head(word);
  csv.head("along it", Kind::length);
  for (const std::string_view word : {"to its centre line", "edge to edge", "depth margin"})
    csv.head(word, Kind::short_length);
  for (const std::string_view word : {"chance of a strike", "so"}) csv.head(word);
  csv.end_row();
  for (const GuideAnchor& anchor : guide.anchor) {
    for (std::size_t i = 0; i < anchor.hole.size(); ++i) {
      const GuideHole& hole = anchor.hole[i];
      csv.cell(anchor.name);
      csv.cell(Kind::count, static_cast<double>(i + 1));
      csv.cell(tape(hole.place.from_first_m, system));
      csv.cell(tape(hole.place.from_second_m, system));
      csv.cell(hole.loop);
      csv.cell(Kind::length, hole.along_m);
      for (const double m : {hole.distance_m, hole.clear_m, hole.depth_margin_m}) csv.cell(Kind::short_length, m);
      csv.cell(chance(hole.strike_share));
      csv.cell(std::string(word_of(hole.word)));
      csv.end_row();
    }
  }
  return csv.content();
}

}  // namespace

std::vector<Sheet> site_tables_of(const Answer& answer) {
  std::vector<Sheet> sheets;
  if (answer.cuts) sheets.push_back({"coils.csv", coils_csv(answer)});
  if (answer.materials) sheets.push_back({"materials.csv", materials_csv(answer)});
  if (answer.stakes) sheets.push_back({"lines.csv", stakes_csv(answer)});
  if (answer.stakes) sheets.push_back({"walks.csv", walks_csv(answer)});
  if (answer.drill) sheets.push_back({"holes.csv", drill_csv(answer)});
  return sheets;
}

}  // namespace slabwright::report
