#include "slabwright/report_guesses.hpp"

#include <algorithm>
#include <iterator>
#include <string_view>

namespace slabwright::report {
namespace {

/// A key, or a whole section or list where the text ends in "." or "[", that moves a figure enough to be worth a mark.
struct Under {
  Figure figure;
  std::string_view keys;
};
constexpr Under under[] = {
    {Figure::indoor, "climate.indoor"},
    {Figure::coldest, "climate.coldest"},
    {Figure::loops, "tube.spacing"},
    {Figure::loops, "tube.leader"},
    {Figure::distances, "tube.from_"},
    {Figure::distances, "opening["},
    {Figure::loss, "building."},
    {Figure::loss, "opening["},
    {Figure::loss, "climate.altitude"},
    {Figure::ground, "climate.mean"},
    {Figure::ground, "climate.half_swing"},
    {Figure::ground, "ground."},
    {Figure::ground, "insulation."},
    {Figure::ground, "edge."},
    {Figure::ground, "slab."},
    {Figure::water, "tube.spacing"},
    {Figure::water, "tube.size"},
    {Figure::water, "slab."},
    {Figure::water, "pump.drop"},
    {Figure::flow, "pump.drop"},
    {Figure::balance, "tube.size"},
    {Figure::balance, "mains."},
    {Figure::balance, "valve."},
    {Figure::balance, "fluid.kind"},
    {Figure::tank, "tube.size"},
    {Figure::tank, "mains."},
    {Figure::tank, "boiler.hottest"},
    {Figure::tank, "pressure."},
    {Figure::tank, "fluid.kind"},
    {Figure::power, "service."},
    {Figure::frost_hold, "tube.from_"},
    {Figure::frost_hold, "frost_hold."},
    {Figure::frost_hold, "fluid.kind"},
    {Figure::winter, "work."},
    {Figure::winter, "second_source."},
    {Figure::winter, "climate.latitude"},
};

/// A figure that is worked out from another one.
struct From {
  Figure figure, other;
};
constexpr From from[] = {
    {Figure::loss, Figure::indoor},       {Figure::heat, Figure::loss},          {Figure::heat, Figure::ground},
    {Figure::floor, Figure::loss},        {Figure::water, Figure::heat},         {Figure::flow, Figure::heat},
    {Figure::balance, Figure::loops},     {Figure::pump, Figure::balance},       {Figure::pump, Figure::flow},
    {Figure::boiler, Figure::heat},       {Figure::tank, Figure::loops},         {Figure::power, Figure::boiler},
    {Figure::frost_hold, Figure::heat},   {Figure::frost_hold, Figure::coldest}, {Figure::winter, Figure::heat},
    {Figure::winter, Figure::frost_hold},
};

/// Guesses that stand in the list and move nothing in this design.
bool idle(const Design& design, std::string_view path) {
  if (path == "building.big_door") return true;  // a door that is there by guess is a row of its own
  const bool loss_given = design.building.heat_loss_W.has_value();
  if (path == "building.quality") return design.building.described || loss_given;
  if (path == "climate.altitude") return !design.building.described || loss_given;  // it thins the air of leaks
  return loss_given && path.substr(0, 9) == "building.";
}

bool fits(std::string_view path, std::string_view keys) { return path.substr(0, keys.size()) == keys; }

/// A value that was measured stands in the list and is none of our guesses; the coldest hour still is.
bool measured(const DesignFile& file, std::string_view path) {
  return path != "climate.coldest" &&
         std::any_of(file.known.begin(), file.known.end(), [&](const Assumption& known) { return known.path == path; });
}

bool guessed(const Answer& answer, Figure figure) {
  const DesignFile& file = answer.file;
  return std::any_of(std::begin(under), std::end(under), [&](const Under& row) {
    return row.figure == figure && std::any_of(file.assumed.begin(), file.assumed.end(), [&](const Assumption& guess) {
             return fits(guess.path, row.keys) && is_read(answer, guess.path) && !idle(file.design, guess.path) &&
                    !measured(file, guess.path);
           });
  });
}

/// Lengths of the file lean on nothing; lengths shared out over a count are a guess from end to end.
std::optional<bool> loops_lean(const LoopPlan& plan) {
  const auto all = [&](LengthFrom source) {
    return std::all_of(plan.loop.begin(), plan.loop.end(), [&](const Loop& loop) { return loop.from == source; });
  };
  const auto listed = [](const Loop& l) { return l.from == LengthFrom::file || l.from == LengthFrom::path; };
  if (std::all_of(plan.loop.begin(), plan.loop.end(), listed)) return false;
  if (all(LengthFrom::count)) return true;
  return std::nullopt;
}

/// What is bought already, or given, leans on nothing.
bool settled_by_file(const Answer& answer, Figure figure) {
  const Design& design = answer.file.design;
  if (figure == Figure::flow) return design.pump.flow_m3_per_s.has_value();
  if (figure == Figure::boiler) return design.boiler.power_W.has_value();
  return false;
}

}  // namespace

std::string_view question_word(Question question) {
  constexpr std::string_view words[] = {"check",  "design", "route",  "balance", "freeze",
                                        "winter", "drill",  "sheets", "cure"};
  return words[static_cast<std::size_t>(question)];
}

bool is_read(const Answer& answer, std::string_view path) {
  const Key* key = key_at(answer.file.design, path);
  const Question question = answer.wishes.question;
  if (!key || key->says.only_for.empty() || question == Question::sheets) return true;
  return key->says.only_for == question_word(question);
}

std::vector<Assumption> guesses_read(const Answer& answer) {
  std::vector<Assumption> read;
  for (const Assumption& guess : answer.file.assumed) {
    if (is_read(answer, guess.path)) read.push_back(guess);
  }
  return read;
}

std::size_t given_read(const Answer& answer) {
  const auto& given = answer.file.given;
  return static_cast<std::size_t>(
      std::count_if(given.begin(), given.end(), [&](const std::string& path) { return is_read(answer, path); }));
}

bool leans(const Answer& answer, Figure figure) {
  if (figure == Figure::loops && answer.loops) {
    if (const auto lean = loops_lean(*answer.loops)) return *lean;
  }
  if (settled_by_file(answer, figure)) return false;
  if (guessed(answer, figure)) return true;
  return std::any_of(std::begin(from), std::end(from),
                     [&](const From& row) { return row.figure == figure && leans(answer, row.other); });
}

std::string marked(const std::string& text, const Answer& answer, Figure figure) {
  return leans(answer, figure) ? text + " ~" : text;
}

}  // namespace slabwright::report
