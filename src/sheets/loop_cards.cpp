// Loop cards: what one person lays, from its coil to its port, line by line.
#include "sheets/page.hpp"

namespace slabwright::sheets {
namespace {

using report::Kind;

/// Which coil a loop comes off.
std::vector<Fact> coil_of(const Source& source, const std::string& loop) {
  const Quotes& q = source.q;
  if (!source.answer.cuts) return {};
  const auto& coils = source.answer.cuts->coil;
  for (std::size_t c = 0; c < coils.size(); ++c) {
    for (std::size_t p = 0; p < coils[c].piece.size(); ++p) {
      if (coils[c].piece[p].loop != loop) continue;
      const std::string coil = key_of_row("cuts.coil", c), piece = key_of_row(coil + ".piece", p);
      return {
          {prose("Cut"), say("coil ", q.figure(coil + ".number", Kind::count), ", from mark ",
                             q.figure(piece + ".from_m", Kind::length), " to ", q.figure(piece + ".to_m", Kind::length),
                             ": ", q.figure(piece + ".length_m", Kind::length))}};
    }
  }
  return {};
}

std::vector<Fact> ties_of(const Source& source, std::size_t loop) {
  const Quotes& q = source.q;
  if (!source.answer.materials || loop >= source.answer.materials->loop.size()) return {};
  return {{prose("Ties"), say(q.figure(key_of_row("materials.loop", loop, "ties_number"), Kind::count), ", one every ",
                              q.figure("materials.tie_m", Kind::length))}};
}

Markup joined(const Quotes& q, const std::string& list, const char* between) {
  Markup all;
  for (std::size_t i = 0; i < q.rows(list); ++i) {
    if (i > 0) all += prose(between);
    all += quoted(q.words(key_of_row(list, i)));
  }
  return all;
}

/// A line's name where one is there, else the place from both walls.
Markup place(const Quotes& q, const std::string& step, const char* end) {
  const std::string line = step + "." + end + "_line";
  if (q.has(line) && !q.words(line).text.empty()) return quoted(q.words(line));
  const std::string at = step + "." + end;
  return say(q.tape(at + ".first_m"), " and ", q.tape(at + ".second_m"));
}

const char* then_words(StakeTurn turn) {
  constexpr const char* words[] = {"turn left",          "turn right", "back, to the left",
                                   "back, to the right", "bears",      "end"};
  return words[static_cast<std::size_t>(turn)];
}

Markup walk_of(const Source& source, std::size_t loop) {
  const Quotes& q = source.q;
  if (!source.answer.stakes || loop >= source.answer.stakes->walk.size()) return {};
  const std::string list = key_of_row("stakes.walk", loop, "step");
  std::vector<std::vector<Markup>> rows;
  for (std::size_t s = 0; s < q.rows(list); ++s) {
    const StakeStep& step = source.answer.stakes->walk[loop].step[s];
    const std::string key = key_of_row(list, s);
    Markup along = step.line.empty() ? prose(step.radius_m > 0.0 ? "curve" : "slant") : joined(q, key + ".line", " ");
    if (step.line.size() > 1) along += prose(", to and fro");
    rows.push_back({along, place(q, key, "from"), place(q, key, "to"), prose(then_words(step.then)),
                    quoted(q.bare(key + ".at_end_m", Kind::length)), tick()});
  }
  const std::string unit(report::unit(Kind::length, q.system()));
  return table({{"along", {}, false},
                {"from", {}, false},
                {"to", {}, false},
                {"then", {}, false},
                {"tube laid", unit},
                {"done", {}, false}},
               rows);
}

Markup card(const Source& source, std::size_t loop) {
  const Quotes& q = source.q;
  const auto key = [&](std::string_view member) { return key_of_row("loops.loop", loop, member); };
  const Loop& laid = source.answer.loops->loop[loop];
  Markup head = wrap("h2", say("Loop ", q.words(key("name")), ", port ", q.figure(key("port"), Kind::count)));
  std::vector<Fact> rows;
  rows.push_back({prose("Length"), say(q.figure(key("length_m"), Kind::length), ", runs to the manifold included")});
  const std::string manifold = key_of_row("design.manifold", laid.manifold, "name");
  if (q.has(manifold) && !q.words(manifold).text.empty())
    rows.push_back({prose("Manifold"), quoted(q.words(manifold))});
  for (Fact& row : coil_of(source, laid.name)) rows.push_back(std::move(row));
  for (Fact& row : ties_of(source, loop)) rows.push_back(std::move(row));
  rows.push_back({prose("Marks on the coil, start and end"), say(blank(), " ", blank())});
  rows.push_back({prose("Laid by"), blank()});
  return wrap("div", head + facts(rows) + walk_of(source, loop), "loop");
}

Markup lines_of(const Source& source, const std::string& side) {
  const Quotes& q = source.q;
  const std::string list = "stakes." + side + ".line";
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < q.rows(list); ++i) {
    const std::string key = key_of_row(list, i);
    rows.push_back({quoted(q.words(key + ".name")), quoted(q.tape(key + ".at_m")), quoted(q.tape(key + ".from_m")),
                    quoted(q.tape(key + ".to_m"))});
  }
  return wrap("h3", say("Lines at a distance from the ", q.words("stakes." + side + ".wall"))) +
         table({{"line", {}, false}, {"from the wall", {}, false}, {"begins", {}, false}, {"ends", {}, false}}, rows);
}

Markup how_to(const Source& source) {
  Markup words = bullets({prose("The supply end comes first: warm water starts where the walk starts."),
                          prose("Tie as often as the card says, looser in bends; no kinks, no joints in the concrete."),
                          prose("Label both ends of each loop before the coil is cut."),
                          prose("Where the walk says back, the tip of the turn touches the line named.")});
  if (source.answer.stakes) words += section("Lines to snap", lines_of(source, "first") + lines_of(source, "second"));
  return wrap("div", wrap("h2", prose("Before laying")) + words, "loop");
}

}  // namespace

std::optional<SheetBody> loop_cards(const Source& source) {
  // Loops that are poured, or of which only lengths are known, are laid by nobody.
  if (!source.answer.materials) return std::nullopt;
  Markup all = how_to(source);
  for (std::size_t i = 0; i < source.answer.loops->loop.size(); ++i) all += card(source, i);
  return SheetBody{all};
}

}  // namespace slabwright::sheets
