// drill: may a hole be drilled here, and where instead.
#include <fmt/format.h>

#include <algorithm>

#include "report/tape.hpp"
#include "report/text.hpp"

namespace slabwright::report {
namespace {

std::string_view words(Drilling word) {
  constexpr std::string_view all[] = {"likely clear", "in doubt", "do not drill"};
  return all[static_cast<std::size_t>(word)];
}

/// "mill feet and lift posts".
std::string names_of(const DrillGuide& guide, Drilling word) {
  std::vector<std::string> names;
  for (const GuideAnchor& anchor : guide.anchor)
    if (anchor.word == word) names.push_back(anchor.name);
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return text;
}

std::string one_verdict(const GuideAnchor& anchor) {
  const std::string odds = fmt::format("a chance of {} to strike tube as placed", chance(anchor.strike_share));
  switch (anchor.word) {
    case Drilling::do_not_drill: return fmt::format("DO NOT DRILL {}: {}.", anchor.name, odds);
    case Drilling::in_doubt: return fmt::format("IN DOUBT, {}: {}.", anchor.name, odds);
    case Drilling::likely_clear: break;
  }
  return fmt::format("LIKELY CLEAR, {}: {}. Scan before you drill.", anchor.name, odds);
}

std::string verdict(const DrillGuide& guide) {
  if (guide.anchor.size() == 1) return one_verdict(guide.anchor[0]);
  std::string text;
  for (const Drilling word : {Drilling::do_not_drill, Drilling::in_doubt, Drilling::likely_clear}) {
    const std::string names = names_of(guide, word);
    if (names.empty()) continue;
    text += (text.empty() ? upper(std::string(words(word))) : "; " + std::string(words(word))) + ": " + names;
  }
  return text + ". Scan before you drill.";
}

void add_taken(Page& page, const Reader& reader, const DrillGuide& guide) {
  const std::string ours = guide.tolerance_is_ours ? " ~ (practice; yours with --tolerance)" : "";
  add_row(
      page, "Tube", "drawn",
      fmt::format("{} across, its top {} below the floor's, in {}", rule(guide.outside_diameter_m, reader.system()),
                  rule(guide.concrete_above_m, reader.system()), several(reader.answer.loops->loop.size(), "loop")));
  if (drawn_by_us(*reader.answer.loops))
    add_row(page, "", "laid", "by this drawing; for tube that was laid otherwise none of this holds");
  add_row(page, "", "cast",
          fmt::format("taken to lie within {} of there and {} of that depth in 19 of 20 places{}",
                      reader(Kind::short_length, guide.tolerance_m),
                      reader(Kind::short_length, guide.depth_tolerance_m), ours));
}

void add_found(Page& page, const Reader& reader, const DrillGuide& guide) {
  if (guide.found.empty()) return;
  double before_m = 0.0, after_m = 0.0;
  std::size_t out = 0;
  for (const GuideFound& one : guide.found) {
    if (one.left_out) ++out;
    if (one.left_out) continue;
    before_m = std::max(before_m, one.off_m);
    after_m = std::max(after_m, one.left_m);
  }
  add_row(page, "Found", several(guide.found.size(), "place"),
          fmt::format("up to {} off the drawing, {} off it re-fitted{}", reader(Kind::short_length, before_m),
                      reader(Kind::short_length, after_m),
                      out > 0 ? fmt::format("; {} left out", counted(out)) : std::string{}));
  add_row(page, "", "",
          fmt::format("the whole is moved {} right and {} up, near places more; doubt is less there",
                      reader(Kind::short_length, guide.shift_right_m), reader(Kind::short_length, guide.shift_up_m)));
}

/// Rows of the worst holes first where there is no room for all.
std::vector<std::size_t> listed(const GuideAnchor& anchor, std::size_t most) {
  std::vector<std::size_t> rows(anchor.hole.size());
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i] = i;
  if (rows.size() <= most) return rows;
  std::stable_sort(rows.begin(), rows.end(), [&](std::size_t a, std::size_t b) {
    return anchor.hole[a].strike_share > anchor.hole[b].strike_share;
  });
  rows.resize(most);
  return rows;
}

void add_holes(Page& page, const Reader& reader, const GuideAnchor& anchor, std::size_t most) {
  const System system = reader.system();
  const DrillGuide& guide = *reader.answer.drill;
  Table table;
  table.columns = {{""},
                   {"from", guide.first_wall},
                   {"from", guide.second_wall},
                   left_column("nearest tube"),
                   {"apart", std::string(unit(Kind::short_length, system))},
                   {"strikes"},
                   left_column("so")};
  table.wraps = 3;
  for (const std::size_t i : listed(anchor, most)) {
    const GuideHole& hole = anchor.hole[i];
    table.rows.push_back(
        {fmt::format("{}", i + 1), tape(hole.place.from_first_m, system), tape(hole.place.from_second_m, system),
         fmt::format("{}, {}", hole.loop, reader(Kind::length, hole.along_m)),
         bare(Kind::short_length, hole.clear_m, system),
         hole.strike_share < 0.001 ? "< 0.1 %" : chance(hole.strike_share), std::string(words(hole.word))});
  }
  add_table(page, table);
  if (anchor.hole.size() > most) add_text(page, and_more(anchor.hole.size() - most, "hole"), "  ");
}

/// "3 in right and 1 1/4 in up".
std::string move_words(const GuideMove& move, System system) {
  std::vector<std::string> parts;
  if (move.right_m != 0.0)
    parts.push_back(tape(std::abs(move.right_m), system) + (move.right_m > 0.0 ? " right" : " left"));
  if (move.up_m != 0.0) parts.push_back(tape(std::abs(move.up_m), system) + (move.up_m > 0.0 ? " up" : " down"));
  if (move.turn_deg != 0.0)
    parts.push_back(fmt::format("turned {:.0f} degrees {}", std::abs(move.turn_deg),
                                move.turn_deg > 0.0 ? "to the left" : "to the right"));
  return fmt::format("{}", fmt::join(parts, " and "));
}

void add_move(Page& page, const Reader& reader, const GuideAnchor& anchor) {
  const DrillGuide& guide = *reader.answer.drill;
  if (anchor.word == Drilling::likely_clear) return;
  if (anchor.move.empty()) {
    return add_row(page, "Instead", "",
                   fmt::format("no place within {} is better: a shorter hole, an anchor that is glued down, or a "
                               "scanner",
                               reader(Kind::short_length, guide.may_move_m)));
  }
  const GuideMove& move = anchor.move[0];
  const std::string then =
      move.clear ? "likely clear" : "the best within " + reader(Kind::short_length, guide.may_move_m);
  add_row(page, "Instead", "moved",
          fmt::format("{} on the plan: {}, a chance of {}", move_words(move, reader.system()), then,
                      chance(move.strike_share)));
  const std::size_t most = reader.options.full ? move.hole.size() : 4;
  for (std::size_t i = 0; i < std::min(most, move.hole.size()); ++i) {
    add_row(page, "", move.hole.size() > 1 ? fmt::format("hole {}", i + 1) : "that is",
            fmt::format("{} from {}, {} from {}", tape(move.hole[i].from_first_m, reader.system()), guide.first_wall,
                        tape(move.hole[i].from_second_m, reader.system()), guide.second_wall));
  }
}

void add_anchor(Page& page, const Reader& reader, const GuideAnchor& anchor, std::size_t most) {
  const std::string ours = reader.answer.drill->hole_is_ours ? " ~" : "";
  add_gap(page);
  const std::string size = fmt::format("{} across, {} deep{}", rule(anchor.diameter_m, reader.system()),
                                       rule(anchor.depth_m, reader.system()), ours);
  if (anchor.hole.size() == 1)
    add_text(page, fmt::format("{}: {}", anchor.name, size));
  else
    add_text(page, fmt::format("{}: {} {}; all together {}: {}", anchor.name, several(anchor.hole.size(), "hole"), size,
                               chance(anchor.strike_share), words(anchor.word)));
  add_holes(page, reader, anchor, most);
  add_move(page, reader, anchor);
}

/// How the chances come about, hole by hole.
void add_arithmetic(Page& page, const Reader& reader, const GuideAnchor& anchor) {
  const System system = reader.system();
  add_gap(page);
  add_text(page, fmt::format("{}: how likely each hole lies over tube, and goes as deep", anchor.name));
  Table table;
  const std::string length(unit(Kind::short_length, system));
  table.columns = {{""},          {"to centre line", length}, {"one deviation", length},
                   {"over tube"}, {"margin above", length},   {"as deep"}};
  for (std::size_t i = 0; i < anchor.hole.size(); ++i) {
    const GuideHole& hole = anchor.hole[i];
    table.rows.push_back({fmt::format("{}", i + 1), bare(Kind::short_length, hole.distance_m, system),
                          bare(Kind::short_length, hole.sideways_m, system), chance(hole.over_share),
                          bare(Kind::short_length, hole.depth_margin_m, system), chance(hole.deep_share)});
  }
  add_table(page, table);
}

}  // namespace

void add_drill(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  add_first_line(page, reader, "may I drill here?");
  if (!answer.drill) {
    add_text(page, "IT CANNOT BE SAID whether a drill meets tube:");
    add_reasons(page, reader, answer.verdict.reasons, 8);
    add_lacking(page, reader);
    return add_end(page, reader, "route");
  }
  const DrillGuide& guide = *answer.drill;
  add_text(page, verdict(guide));
  for (const Diagnostic& said : answer.verdict.reasons)
    if (said.code != "drill.strike" && said.code != "drill.doubt") add_text(page, sentence(said, reader.system()));
  add_gap(page);
  add_taken(page, reader, guide);
  add_found(page, reader, guide);
  constexpr std::size_t for_the_end = 7, for_each = 18, most_holes = 6;
  for (std::size_t i = 0; i < guide.anchor.size(); ++i) {
    if (!reader.options.full && page.lines.size() + for_each + for_the_end > most_lines) {
      add_text(page, and_more(guide.anchor.size() - i));
      break;
    }
    add_anchor(page, reader, guide.anchor[i], reader.options.full ? guide.anchor[i].hole.size() : most_holes);
  }
  if (reader.options.full)
    for (const GuideAnchor& anchor : guide.anchor) add_arithmetic(page, reader, anchor);
  const bool doubt = answer.verdict.kind != VerdictKind::works;
  if (doubt && guide.found.empty())
    add_end(page, reader, "drill",
            reader.options.asked + (reader.options.asked.empty() ? "" : " ") + "--found places.txt");
  else
    add_end(page, reader, "route");
}

}  // namespace slabwright::report
