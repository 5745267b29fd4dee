#include "design/judge.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "design/synonyms.hpp"

namespace slabwright {

bool Judge::sound(std::initializer_list<std::string> paths) const {
  return std::none_of(paths.begin(), paths.end(), [this](const std::string& p) { return draft_.broken.count(p) > 0; });
}

void Judge::problem(std::string about, std::string code, std::string sentence, Parts parts) {
  draft_.said.push_back({Severity::problem, std::move(code), std::move(about), std::move(sentence), std::move(parts)});
}

void Judge::warning(std::string about, std::string code, std::string sentence, Parts parts) {
  draft_.said.push_back({Severity::warning, std::move(code), std::move(about), std::move(sentence), std::move(parts)});
}

std::string Judge::line_of(const std::string& path) const {
  const auto found = draft_.spots.find(path);
  if (found == draft_.spots.end() || found->second.line == 0) return {};
  return fmt::format(" (the first in line {})", found->second.line);
}

namespace {

/// A number that has no default must be given once its row is there.
void judge_missing(Judge& judge) {
  walk(reading(judge.design), [&](const std::string& path, const Key& key, const Slot& slot) {
    const std::string row = path.substr(0, path.find('.'));
    const bool wanted = std::holds_alternative<Number>(slot) && key.says.us.empty();
    if (!wanted || judge.given(path) || !judge.sound({path}) || judge.given(row + ".path")) return;
    judge.problem(row, "file.missing",
                  fmt::format("{} is missing. Write {} = \"{}\".", key.word, key.word,
                              example_of(key, slot, judge.design.units)));
  });
}

/// Two rows of one name cannot be told apart by the rows that point at them.
template <class Row>
void judge_same_names(Judge& judge, const std::vector<Row>& rows, std::string_view section) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      if (rows[i].name.empty() || rows[i].name != rows[k].name) continue;
      judge.problem(fmt::format("{}[{}].name", section, i + 1), "file.same-name",
                    fmt::format("two [[{}]] are called \"{}\"{}. Give each a name of its own.", section,
                                excerpt(rows[i].name), judge.line_of(fmt::format("{}[{}].name", section, k + 1))));
      break;
    }
  }
}

template <class Row>
std::string names_of(const std::vector<Row>& rows, std::string_view wanted) {
  std::string all;
  std::string nearest;
  std::size_t least = std::max<std::size_t>(1, wanted.size() / 3) + 1;
  for (const Row& row : rows) {
    if (row.name.empty()) continue;
    all += fmt::format("{}\"{}\"", all.empty() ? "" : ", ", row.name);
    if (const std::size_t apart = letters_apart(row.name, wanted); apart < least) least = apart, nearest = row.name;
  }
  if (!nearest.empty()) return fmt::format("did you mean \"{}\"?", nearest);
  return all.empty() ? "none has a name." : fmt::format("there is {}.", excerpt(all));
}

template <class Row>
void judge_pointer(Judge& judge, const std::vector<Row>& rows, std::string_view section, const std::string& path,
                   const std::string& wanted) {
  const auto named = [&](const Row& row) { return row.name == wanted; };
  if (wanted.empty() || std::any_of(rows.begin(), rows.end(), named)) return;
  judge.problem(path, "file.no-such-name",
                fmt::format("no {} is called \"{}\"; {}", section, excerpt(wanted), names_of(rows, wanted)));
}

template <class Row>
void judge_rooms_of(Judge& judge, const std::vector<Row>& rows, std::string_view section) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    judge_pointer(judge, judge.design.room, "room", fmt::format("{}[{}].room", section, i + 1), rows[i].room);
  }
}

}  // namespace

void judge_names(Judge& judge) {
  const Design& design = judge.design;
  judge_same_names(judge, design.room, "room");
  judge_same_names(judge, design.manifold, "manifold");
  judge_same_names(judge, design.opening, "opening");
  judge_same_names(judge, design.loop, "loop");
  judge_same_names(judge, design.watch, "watch");
  judge_same_names(judge, design.wall, "wall");
  judge_same_names(judge, design.no_tube, "no_tube");
  judge_same_names(judge, design.anchor, "anchor");
  judge_same_names(judge, design.border, "border");
  judge_same_names(judge, design.vehicle, "vehicle");
  judge_same_names(judge, design.way, "way");
  judge_rooms_of(judge, design.opening, "opening");
  judge_rooms_of(judge, design.exhaust, "exhaust");
  judge_rooms_of(judge, design.gains, "gains");
  judge_rooms_of(judge, design.loop, "loop");
  judge_rooms_of(judge, design.watch, "watch");
  judge_rooms_of(judge, design.vehicle, "vehicle");
  judge_pointer(judge, design.room, "room", "second_source.room", design.second_source.room);
  for (std::size_t i = 0; i < design.loop.size(); ++i) {
    judge_pointer(judge, design.manifold, "manifold", fmt::format("loop[{}].manifold", i + 1), design.loop[i].manifold);
  }
}

void judge(Draft& draft) {
  Judge judge(draft);
  judge_missing(judge);
  judge_names(judge);
  judge_floor(judge);
  judge_plan(judge);
  judge_edge(judge);
  judge_edge_parts(judge);
  judge_loops(judge);
  judge_plant(judge);
  judge_site(judge);
  judge_climate(judge);
  judge_second_source(judge);
  judge_winter(judge);
  if (!any(draft.said, Severity::problem)) judge_extent(judge);
}

}  // namespace slabwright
