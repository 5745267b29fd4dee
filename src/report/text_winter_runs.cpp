// How the best way is started, what the second source does in hard weather, what a frost hold costs, what was searched.
#include <fmt/format.h>

#include <algorithm>

#include "report/text_winter.hpp"

namespace slabwright::report {
namespace {

std::string clock_of(double s) {
  const auto minutes = static_cast<int>(s / 60.0 + 0.5);
  return fmt::format("{}:{:02}", minutes / 60, minutes % 60);
}

/// "3:00, 4 h before work".
std::string early(const Reader& reader, int lead_h) {
  return lead_h == 0 ? starts_at(reader, 0) + ", when work begins"
                     : fmt::format("{}, {} h before work", starts_at(reader, lead_h), lead_h);
}

bool starts_source(const WayEntry& way) { return way.early_start && way.second_source == WaySource::in_working_hours; }

/// " in "the way"", where it is not the one that the answer is about.
std::string in_way(const Reader& reader, const std::string& name) {
  return name.empty() || name == shown_way(*reader.answer.winter).way.name ? "" : fmt::format(" in \"{}\"", name);
}

/// Whether the second source of this way is started before work; one that runs always is not.
bool starts_by_clock(const Winter& winter, const std::string& name) {
  return std::any_of(winter.way.begin(), winter.way.end(), [&](const WayResult& way) {
    return way.way.name == name && way.way.second_source == WaySource::in_working_hours;
  });
}

std::string a_degree(System system) { return system == System::us ? "1 F" : "1 K"; }
double degree_K(System system) { return system == System::us ? 5.0 / 9.0 : 1.0; }

/// "3:00 to 5:00"; an earlier start is a longer lead.
std::string start_range(const Reader& reader, const Search& search) {
  const std::string first = starts_at(reader, search.lead_high_h), last = starts_at(reader, search.lead_low_h);
  return first == last ? first : fmt::format("{} to {}", first, last);
}

}  // namespace

Page doors(const Reader& reader) {
  Page page;
  const Winter& winter = *reader.answer.winter;
  const auto worst = std::max_element(winter.door.begin(), winter.door.end(),
                                      [](const auto& a, const auto& b) { return a.lost_J < b.lost_J; });
  if (worst == winter.door.end()) return page;
  const std::string back = worst->recovers_s ? fmt::format("is back {:.0f} min later", *worst->recovers_s / 60.0)
                                             : std::string("does not come back by itself");
  add_text(page, fmt::format("Each opening of {} ({:.0f} min) takes {:.1f} kWh in the coldest month; the air falls to "
                             "{} and {}.",
                             worst->name, worst->open_s / 60.0, worst->lost_J / 3.6e6,
                             reader(Kind::degree, worst->coldest_degC), back));
  return page;
}

Page starts(const Reader& reader) {
  Page page;
  const WayResult& best = shown_way(*reader.answer.winter);
  std::vector<std::string> parts;
  if (best.source_lead_h > 0 || starts_source(best.way))
    parts.push_back("start the second source at " + early(reader, best.source_lead_h));
  if (best.floor_lead_h > 0) parts.push_back("start the floor at " + early(reader, best.floor_lead_h));
  if (best.way.charge && best.way.charge_to_degC)
    parts.push_back(fmt::format("charge the slab to {} from {} to {}", reader(Kind::dial, *best.way.charge_to_degC),
                                clock_of(best.way.charge->from_s), clock_of(best.way.charge->to_s)));
  const auto& freeze = reader.answer.freeze;
  constexpr double raised_K = 0.1;
  if (freeze && freeze->air && best.hold_degC > freeze->air->dial_degC + raised_K)
    parts.push_back(fmt::format("hold frost at {} by the wall thermostat, as {} is too low in this way",
                                reader(Kind::dial, best.hold_degC), reader(Kind::dial, freeze->air->dial_degC)));
  if (!parts.empty()) add_text(page, sentence(fmt::format("{}", fmt::join(parts, "; "))));
  return page;
}

Page source_days(const Reader& reader) {
  Page page;
  const WayResult* way = by_source(*reader.answer.winter);
  if (!way) return page;
  const SourceWinter& source = way->source;
  std::string text =
      fmt::format("The second source{} runs {}", in_way(reader, way->way.name), whole_h(reader, source.ran_s));
  if (source.locked_s <= 0.0) {
    text += " and is never too cold outdoors to run in this weather";
  } else {
    text += fmt::format("; too cold outdoors for it {}, {} at one stretch; at work in them ",
                        whole_h(reader, source.locked_s), whole_h(reader, source.longest_locked_s));
    text += source.short_s > 0.0
                ? fmt::format("the boiler alone leaves the room too cold for {}", whole_h(reader, source.short_s))
                : std::string("the room is never too cold");
  }
  if (source.cold_start_s > 0.0)
    text += fmt::format("; the room is too cold for it to start {}", whole_h(reader, source.cold_start_s));
  add_text(page, text + ".");
  return page;
}

Page hold_costs(const Reader& reader) {
  Page page;
  const Winter& winter = *reader.answer.winter;
  if (winter.use_J_per_K == 0.0) return page;
  const double K = degree_K(reader.system());
  const std::string use = reader(Kind::energy, winter.use_J_per_K * K);
  const std::string cost = winter.money_per_K ? fmt::format(" ({})", money(reader, *winter.money_per_K * K)) : "";
  const std::string of = in_way(reader, winter.hold_way);
  add_text(page, fmt::format("{} more of frost hold costs {}{} a year{}.", a_degree(reader.system()), use, cost, of));
  return page;
}

Page searched(const Reader& reader) {
  Page page;
  const auto& search = reader.answer.winter->search;
  if (!search || search->best >= search->tried.size()) return page;
  const TriedWay& best = search->tried[search->best];
  const std::string_view verdict = best.fails.any() ? ", though it fails too" : "";
  const bool starts = starts_by_clock(*reader.answer.winter, search->way);
  const std::string from = starts ? " from " + starts_at(reader, best.lead_h) : "";
  const std::string flat_from = starts ? ", from " + start_range(reader, *search) : "";
  add_text(page,
           fmt::format("Best of {} settings{}: frost hold {}, second source at {}{}: {}{}. Within {}: {}{}.",
                       search->tried.size(), in_way(reader, search->way), reader(Kind::dial, best.hold_degC),
                       reader(Kind::dial, best.source_degC), from, cost_words(reader, best.use_J, best.money), verdict,
                       percent(flat_share),
                       from_to(Kind::dial, search->hold_low_degC, search->hold_high_degC, reader.system()), flat_from));
  return page;
}

}  // namespace slabwright::report
