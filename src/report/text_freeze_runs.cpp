// One thing fails, back to work, everything off, and how far the boiler reaches.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

#include "report/text_freeze.hpp"

namespace slabwright::report {
namespace {

/// Of the clock of all cold runs, where no power cut says how long it ran.
constexpr double usual_clock_s = 96.0 * hour_s;

double clock_s(const Answer& answer) { return answer.outage ? answer.outage->longest_s : usual_clock_s; }

/// "8 h, then the tube freezes", "nothing freezes in 96 h".
std::string comes_to(const Reader& reader, const SingleFault& fault) {
  if (!fault.lasts_s) return "nothing freezes within " + figure(Kind::hours, clock_s(reader.answer), reader.system());
  return fmt::format("{} h, then the {}", whole_hours(fault.lasts_s, clock_s(reader.answer), reader.system()),
                     fault.first);
}

Page table_of_faults(const Reader& reader) {
  Page page;
  Table table{
      {left_column(fmt::format("If one thing fails at {}", reader(Kind::degree, reader.answer.freeze->outdoor_degC))),
       left_column("hours until the first place freezes")},
      {},
      1};
  for (const SingleFault& fault : reader.answer.fault) {
    const std::string means = fault.means.empty() ? "" : "; " + fault.means;
    table.rows.push_back({fault.what, comes_to(reader, fault) + means});
  }
  if (!table.rows.empty()) add_table(page, table);
  return page;
}

/// "pump dead": what stands before the first comma or bracket.
std::string in_short(const std::string& what) {
  const std::string front = what.substr(0, what.find_first_of(",("));
  return front.substr(0, front.find_last_not_of(' ') + 1);
}

/// All of them in a sentence.
Page list_of_faults(const Reader& reader) {
  Page page;
  if (reader.answer.fault.empty()) return page;
  std::vector<std::string> parts;
  for (const SingleFault& fault : reader.answer.fault)
    parts.push_back(fmt::format("{} {}", in_short(fault.what),
                                whole_hours(fault.lasts_s, clock_s(reader.answer), reader.system())));
  add_text(page, fmt::format("If one thing fails at {}, hours until something freezes: {}.",
                             reader(Kind::degree, reader.answer.freeze->outdoor_degC), fmt::join(parts, ", ")));
  return page;
}

/// "15:40", down to ten minutes: who starts then is early.
std::string clock_time(double time_s) {
  constexpr double mark_s = 600.0;
  const double in_day_s = time_s - day_s * std::floor(time_s / day_s);
  const double marked_s = mark_s * std::floor(in_day_s / mark_s + 1e-9);
  const int minutes = static_cast<int>(marked_s / minute_s + 0.5);
  return fmt::format("{}:{:02}", minutes / 60, minutes % 60);
}

std::string day_word(double time_s) {
  const auto days = static_cast<int>(-std::floor(time_s / day_s));
  if (days <= 0) return "";
  return days == 1 ? " the day before" : fmt::format(" {} days before", counted(static_cast<std::size_t>(days)));
}

std::string energy(double joule) { return fmt::format("{:.0f} kWh", joule / 3.6e6); }

/// "15 h, 136 kWh and 20 kWh of the second source's heat".
std::string takes(const Reader& reader, const Recovery& one) {
  const std::string source = one.source_runs ? fmt::format(" and {} from the second source", energy(one.source_J)) : "";
  return fmt::format("{}, {}{}", figure(Kind::hours, hour_s * std::ceil(*one.takes_s / hour_s - 1e-9), reader.system()),
                     energy(one.boiler_J), source);
}

std::string way_back(const Reader& reader, const Recovery& one) {
  const std::string outdoors = reader(Kind::degree, one.outdoor_degC);
  if (!one.takes_s)
    return fmt::format("at {} not within {}", outdoors, figure(Kind::hours, clock_s(reader.answer), reader.system()));
  const bool cold = one.floor_degC < cold_floor_degC;
  const std::string floor = fmt::format(
      "the floor is then at {}, it feels like {}{}", reader(Kind::degree, one.floor_degC),
      spoken(Kind::degree, one.operative_degC, reader.system()), cold ? ": standing work on a cold floor" : "");
  const std::string took = takes(reader, one);
  if (!one.starts_at_s) return fmt::format("{} at {}; {}", took, outdoors, floor);
  return fmt::format("start at {}{} at {} ({}); {}", clock_time(*one.starts_at_s), day_word(*one.starts_at_s), outdoors,
                     took, floor);
}

/// From the coldest back to the mildest.
Page ways_back(const Reader& reader, std::size_t most) {
  Page page;
  const auto& all = reader.answer.recovery;
  if (all.empty()) return page;
  const std::string when = " for " + clock_time(reader.design().work.hours.from_s);
  std::vector<std::string> ways;
  for (auto one = all.rbegin(); one != all.rend() && ways.size() < most; ++one) ways.push_back(way_back(reader, *one));
  add_text(page, fmt::format("Back to {}{}: {}.", reader(Kind::degree, all.front().to_air_degC, Figure::indoor), when,
                             fmt::join(ways, ". Or ")));
  return page;
}

/// It is the water in them that freezes, not the air.
std::string what_freezes(const std::string& place) {
  constexpr std::string_view air = "air round ";
  return place.compare(0, air.size(), air) == 0 ? place.substr(air.size()) : place;
}

/// "the sink line, the tube at the door and two more".
std::string named(const Reader& reader, const std::vector<std::string>& names) {
  constexpr std::size_t most_named = 2;
  const std::size_t shown = reader.options.full ? names.size() : std::min(names.size(), most_named);
  std::vector<std::string> first;
  for (std::size_t i = 0; i < shown; ++i) first.push_back(what_freezes(names[i]));
  const std::string more = shown < names.size() ? fmt::format(" and {} more", counted(names.size() - shown)) : "";
  return fmt::format("the {}{}", fmt::join(first, ", the "), more);
}

/// What glycol would do, where there is water now.
std::string with_glycol(const Reader& reader, const TurnOff& off) {
  const bool water = reader.design().fluid.kind == FluidKind::water;
  if (!off.glycol_share) return " No glycol up to 50 % would keep the loops then.";
  if (!water && *off.glycol_share <= reader.design().fluid.glycol.share) return "";
  return fmt::format(" {}{} glycol would keep the loops, not the pipes.", reader(Kind::share, *off.glycol_share),
                     water ? " propylene" : "");
}

}  // namespace

Page faults(const Reader& reader) { return reader.options.full ? table_of_faults(reader) : list_of_faults(reader); }

Block recovery(const Reader& reader) {
  const std::size_t most = reader.options.full ? reader.answer.recovery.size() : 2;
  return {ways_back(reader, most), ways_back(reader, 1), 8, false};
}

Page turn_off(const Reader& reader) {
  Page page;
  if (!reader.answer.turn_off) return page;
  const TurnOff& off = *reader.answer.turn_off;
  const bool water = reader.design().fluid.kind == FluidKind::water;
  const std::string question =
      water ? "Switch it off for the winter?" : "Switch it off for the winter, with the glycol that is in it?";
  if (off.yes) {
    add_text(page, fmt::format("{} Yes: nothing that is watched freezes; the coldest tube comes to {}.", question,
                               reader(Kind::degree, off.coldest_tube_degC, Figure::frost_hold)));
    return page;
  }
  const std::string why = off.freezes.empty()
                              ? "what could not be computed may freeze"
                              : named(reader, off.freezes) + (off.freezes.size() == 1 ? " freezes" : " freeze");
  add_text(page, fmt::format("{} No: {}.{}", question, why, with_glycol(reader, off)));
  return page;
}

Page boiler_keeps(const Reader& reader) {
  Page page;
  const Answer& answer = reader.answer;
  const Freeze& freeze = *answer.freeze;
  if (!freeze.air) return page;
  if (!reader.options.full && any_code(answer.verdict.reasons, "freeze.boiler-too-small")) return page;  // a reason
  const std::string heat = reader(Kind::heat, freeze.hold_W, Figure::frost_hold);
  if (!freeze.boiler_keeps_to_degC || !answer.sizes) {
    add_text(page, fmt::format("Holding it takes {} in the coldest hour.", heat));
    return page;
  }
  const BoilerSize& boiler = answer.sizes->boiler;
  add_text(page, fmt::format("Holding it takes {}; the {} {} can, {}.", heat,
                             reader(Kind::boiler, boiler.power_W, Figure::boiler), boiler_words(boiler.kind),
                             keeps_to(reader, *freeze.boiler_keeps_to_degC, Figure::frost_hold)));
  return page;
}

}  // namespace slabwright::report
