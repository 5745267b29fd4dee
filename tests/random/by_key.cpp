#include "random/by_key.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <map>

#include "slabwright/tube.hpp"

namespace slabwright::test {
namespace {

bool is_bounded(const Key& key) { return key.says.least > -1e299 && key.says.most < 1e299; }

/// What the description takes for usual, in SI.
std::optional<double> usual_of(const Key& key, System system) {
  const std::string_view text = system == System::si && !key.says.si.empty() ? key.says.si : key.says.us;
  if (text.empty() || !key.unit) return std::nullopt;
  const Reading read = read_quantity(text, key.unit->dimension);
  if (read.fault != Fault::none) return std::nullopt;
  return read.si;
}

bool is_difference(Dimension dimension) { return dimension == Dimension::degree || dimension == Dimension::rise; }

double near(double usual, Dimension dimension, Draws& draws) {
  constexpr double kelvin_each_way = 6.0, ratio_each_way = 1.8;
  if (is_difference(dimension)) return usual + draws.between(-kelvin_each_way, kelvin_each_way);
  return usual == 0.0 ? 0.0 : usual * draws.by_ratio(1.0 / ratio_each_way, ratio_each_way);
}

/// Anywhere in its span, which may reach over several powers of ten.
double anywhere(double least, double most, Draws& draws) {
  constexpr double wide = 50.0;
  if (least >= 0.0 && most > wide * std::max(least, most * 1e-4))
    return draws.by_ratio(std::max(least, most * 1e-4), most);
  return draws.between(least, most);
}

std::string drawn_number(const Key& key, System system, Draws& draws) {
  constexpr double usually = 0.75;
  const Dimension dimension = key.unit->dimension;
  const auto usual = usual_of(key, system);
  double si = 0.0;
  if (usual && (!is_bounded(key) || draws.chance(usually)))
    si = near(*usual, dimension, draws);
  else if (is_bounded(key))
    si = anywhere(key.says.least, key.says.most, draws);
  else
    return {};
  return typed(std::clamp(si, key.says.least, key.says.most), dimension, system);
}

std::string length_text(double least_m, double most_m, System system, Draws& draws) {
  return typed(draws.between(least_m, most_m), Dimension::length, system);
}

std::string insulation(System system, Draws& draws) {
  switch (draws.whole(0, 3)) {
    case 0: return "none";
    case 1: return fmt::format("{} mm {}", draws.whole(2, 15) * 10, draws.chance(0.5) ? "EPS" : "XPS");
    default: break;
  }
  return system == System::us ? fmt::format("R-{}", draws.whole(2, 30))
                              : fmt::format("{:.1f} m2K/W", draws.between(0.4, 5.0));
}

std::string clock(Draws& draws) { return fmt::format("{}:{:02}", draws.whole(0, 23), 15 * draws.whole(0, 3)); }

std::string span(Draws& draws) {
  const int from = draws.whole(0, 23);
  return fmt::format("{}:00 to {}:00", from, (from + draws.whole(1, 14)) % 24);
}

std::string tube_name(System system, Draws& draws) {
  std::vector<std::string> fitting;
  for (const std::string_view name : tube_names()) {
    if (find_tube(name)->metric == (system == System::si)) fitting.emplace_back(name);
  }
  return draws.of(fitting);
}

std::string price(Draws& draws) { return fmt::format("{:.3f} /kWh", draws.between(0.04, 0.6)); }

constexpr std::array<const char*, 12> months{"january", "february", "march",     "april",   "may",      "june",
                                             "july",    "august",   "september", "october", "november", "december"};

using Word = std::function<std::string(System, Draws&)>;
/// By what a worded value says it takes. What is not here is given by its example.
const std::map<std::string_view, Word>& words() {
  static const std::map<std::string_view, Word> all{
      {Insulation::takes, insulation},
      {TubeName::takes, tube_name},
      {GlycolShare::takes, [](System, Draws& d) { return fmt::format("{} %", d.whole(20, 55)); }},
      {Leaders::takes,
       [](System s, Draws& d) {
         return d.chance(0.5) ? std::string("included") : length_text(1.0, 6.0, s, d) + " each way";
       }},
      {Size::takes,
       [](System s, Draws& d) { return length_text(0.6, 4.0, s, d) + " x " + length_text(0.8, 3.5, s, d); }},
      {ClockTime::takes, [](System, Draws& d) { return clock(d); }},
      {ClockSpan::takes, [](System, Draws& d) { return span(d); }},
      {Date::takes,
       [](System, Draws& d) {
         return fmt::format("20{}-{:02}-{:02}", d.whole(20, 29), d.whole(1, 12), d.whole(1, 28));
       }},
      {EnergyPrice::takes, [](System, Draws& d) { return price(d); }},
      {MonthPrice::takes, [](System, Draws& d) { return fmt::format("{:.2f} a month", d.between(0.0, 60.0)); }},
      {TimedPriceText::takes, [](System, Draws& d) { return price(d) + ", " + span(d); }},
      {DemandText::takes,
       [](System, Draws& d) {
         return fmt::format("{:.2f} /kW, {}, ratchet {} %", d.between(1.0, 20.0), span(d), d.whole(1, 90));
       }},
      {DayLow::takes, [](System s, Draws& d) { return typed(d.between(-35.0, -12.0), Dimension::degree, s); }},
      {CoilLength::takes, [](System s, Draws& d) { return length_text(60.0, 300.0, s, d); }}};
  return all;
}

std::string word_of(std::string_view takes, std::string_view example, System system, Draws& draws) {
  const auto found = words().find(takes);
  return found == words().end() ? std::string(example) : found->second(system, draws);
}

/// Each step of a list that has an order: the highest head first, the coldest row first.
std::string step_of(std::string_view takes, double share, System system, double scale) {
  const bool us = system == System::us;
  if (takes == PumpCurvePoint::takes)
    return typed(scale * 8.0 * (1.0 - share * share), Dimension::head, system) + " at " +
           typed(scale * 1.2e-3 * share, Dimension::flow, system);
  if (takes == ValvePoint::takes)
    return fmt::format("Kv {:.2f} at {:.1f} turns", 0.05 + scale * share, 0.5 + 4.0 * share);
  if (takes == SourcePoint::takes) {
    const std::string outdoor = typed(-25.0 + 35.0 * share, Dimension::degree, system);
    const double gives_W = 12000.0 * scale * (0.4 + 0.6 * share);
    return fmt::format("{}: {}, COP {:.1f}", outdoor,
                       us ? fmt::format("{:.0f} Btu/h", gives_W * 3.412) : fmt::format("{:.1f} kW", gives_W / 1000.0),
                       1.4 + 2.5 * share);
  }
  if (takes == TierText::takes)
    return fmt::format("{:.3f} /kWh above {:.0f} kWh", 0.03 * scale, 300.0 + 3000.0 * share);
  if (takes == BillMonth::takes) {
    const auto month = static_cast<std::size_t>(9.0 + 6.0 * share) % 12;
    return fmt::format("{} {:.0f} kWh", months[month], scale * (900.0 + 2400.0 * share * (1.3 - share)));
  }
  return {};
}

}  // namespace

std::string typed(double si, Dimension dimension, System system) {
  constexpr double three_figures = 100.0;
  const Shown unit = shown(dimension, system);
  double size = std::abs(in_unit(si, unit.unit, dimension));
  int decimals = 0;
  for (; decimals < 6 && size > 0.0 && size < three_figures; ++decimals) size *= 10.0;
  return show_as(si, dimension, unit.unit, decimals);
}

std::string drawn_value(const Key& key, const Slot& slot, System system, Draws& draws) {
  if (std::holds_alternative<Number>(slot) || std::holds_alternative<MaybeNumber>(slot))
    return drawn_number(key, system, draws);
  if (std::holds_alternative<Whole>(slot)) {
    const int most = static_cast<int>(std::min(key.says.most, 60.0)),
              least = static_cast<int>(std::max(key.says.least, 0.0));
    return fmt::format("{}", draws.whole(least, most));
  }
  if (std::holds_alternative<Flag>(slot)) return draws.chance(0.5) ? "true" : "false";
  if (const auto* choice = std::get_if<Choice>(&slot))
    return std::string(
        choice->names[static_cast<std::size_t>(draws.whole(0, static_cast<int>(choice->names.size()) - 1))]);
  if (const auto* worded = std::get_if<Worded>(&slot)) return word_of(worded->takes, worded->example, system, draws);
  return {};
}

std::vector<std::string> drawn_list(const WordedList& list, System system, Draws& draws) {
  const int count = draws.whole(2, 4);
  const double scale = draws.by_ratio(0.3, 3.0);
  std::vector<std::string> items;
  for (int i = 0; i < count; ++i) {
    const std::string step = step_of(list.takes, i / (count - 1.0), system, scale);
    items.push_back(step.empty() ? word_of(list.takes, list.example, system, draws) : step);
  }
  return items;
}

std::string value_at_limit(const Key& key, System system, Draws& draws) {
  if (!key.unit || !is_bounded(key)) return {};
  const bool low = draws.chance(0.5), beyond = draws.chance(0.5);
  const double limit = low ? key.says.least : key.says.most;
  const double step = 0.02 * (key.says.most - key.says.least);
  return write_quantity(limit + (beyond ? (low ? -step : step) : 0.0), key.unit->dimension, system);
}

}  // namespace slabwright::test
