// From words to what answer() takes.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "asking/parts.hpp"

namespace slabwright {
namespace {

/// What a command asks; the main job where it is another.
Question question_of(std::string_view command) {
  constexpr std::array<std::pair<std::string_view, Question>, 9> all{{{"check", Question::check},
                                                                      {"design", Question::design},
                                                                      {"route", Question::route},
                                                                      {"balance", Question::balance},
                                                                      {"freeze", Question::freeze},
                                                                      {"winter", Question::winter},
                                                                      {"drill", Question::drill},
                                                                      {"cure", Question::cure},
                                                                      {"sheets", Question::sheets}}};
  const auto found = std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.first == command; });
  return found == all.end() ? Question::design : found->second;
}

Wishes wishes_of(const Asked& asked) {
  Wishes wishes;
  wishes.question = question_of(asked.command);
  wishes.bands = wishes.remedies = asked.flag.count("--quick") == 0;
  wishes.wide = asked.flag.count("--wide") > 0;
  wishes.better_place = asked.flag.count("--better-place") > 0;
  return wishes;
}

/// Both kinds of files, so that whoever mends one hears of the other.
std::optional<Refusal> bring_all(const ReadDesign& read, const Asked& asked, const GetFile& get, Brought& into) {
  std::optional<Refusal> weather = bring_weather(read, asked, get, into);
  std::optional<Refusal> meters = asking::bring_meters(asked, read.units, get, into);
  if (!weather || !meters) return weather ? weather : meters;
  weather->text += meters->text;
  weather->problem.insert(weather->problem.end(), meters->problem.begin(), meters->problem.end());
  return weather;
}

}  // namespace

Refusal asking::refusal_of(const std::string& sentence, int exit) {
  PlacedProblem problem;
  problem.sentence = sentence;
  return {exit, sentence + '\n', {problem}};
}

Refusal asking::refusal_of(const ReadDesign& read, std::string_view name) {
  return {bad_design, problems_text(read, name), placed_problems(read, name)};
}

std::optional<Refusal> nothing_asked(const Asked& asked) {
  if (!asked.file.empty() || !asked.overrides.empty()) return std::nullopt;
  return asking::refusal_of(fmt::format("{0} needs a design file or options:\n  slabwright {0} my-shop.toml\n"
                                        "  slabwright {0} --size \"36 x 30 ft\" --outdoor \"-12 F\"",
                                        asked.command),
                            bad_words);
}

Prepared prepare(const Asked& asked, std::string_view text, const GetFile& get) {
  Prepared prepared;
  prepared.refusal = nothing_asked(asked);
  if (prepared.refusal) return prepared;
  prepared.read = read_design(text, asked.overrides);
  if (!prepared.read.checked) {
    prepared.refusal = asking::refusal_of(prepared.read, asked.file.empty() ? "command line" : asked.file);
    return prepared;
  }
  prepared.refusal = bring_all(prepared.read, asked, get, prepared.brought);
  if (prepared.refusal) return prepared;
  prepared.wishes = wishes_of(asked);
  if (prepared.wishes.question != Question::drill) return prepared;
  asking::AskedHole hole = asking::asked_hole(asked, get);
  if (!hole.problem.empty()) prepared.refusal = asking::refusal_of(hole.problem, bad_words);
  prepared.wishes.drill = std::move(hole.asked);
  return prepared;
}

}  // namespace slabwright
