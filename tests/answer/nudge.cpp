#include "answer/nudge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "slabwright/design.hpp"

namespace slabwright::test {
namespace {

template <class Value, class Step>
std::string stepped(const std::string& now, System system, Step step) {
  Value value;
  if (!read_words(now, value).empty()) return {};
  step(value);
  return write_words(value, system);
}

/// The same step for each item of a list.
template <class Value, class Step>
std::string each(std::string now, System system, Step step) {
  std::string all;
  while (!now.empty()) {
    const std::size_t end = std::min(now.find(';'), now.size());
    all += (all.empty() ? "" : "; ") + stepped<Value>(now.substr(0, end), system, step);
    now.erase(0, std::min(end + 1, now.size()));
  }
  return all;
}

std::string nudged_list(const std::string& word, const std::string& now, System system) {
  if (word == "points" && now.find("COP") != std::string::npos)
    return each<SourcePoint>(now, system, [](SourcePoint& point) { point.cop_number += 0.25; });
  if (word == "timed") return each<TimedPriceText>(now, system, [](auto& timed) { timed.price.money_per_J *= 2.0; });
  if (word == "tiers") return each<TierText>(now, system, [](auto& tier) { tier.price.money_per_J *= 2.0; });
  if (word == "demand") return each<DemandText>(now, system, [](auto& demand) { demand.price.money_per_W *= 2.0; });
  if (word == "months") return each<BillMonth>(now, system, [](auto& month) { month.use_J += 100.0 * 3.6e6; });
  return {};
}

std::string nudged_clock(const std::string& word, const std::string& now, System system) {
  // The year goes by whole hours.
  constexpr double sooner_s = 3600.0;
  if (word == "arrives")
    return stepped<ClockTime>(now, system, [](ClockTime& time) { time.after_midnight_s -= sooner_s; });
  return stepped<ClockSpan>(now, system, [](ClockSpan& span) { span.to_s -= sooner_s; });
}

std::string nudged_place(const std::string& now, System system) {
  return stepped<PlanPlace>(now, system, [](PlanPlace& place) {
    place.at.x_m += 0.3;
    place.at.y_m += 0.3;
    place.first_m += 0.3;
  });
}

std::string nudged_words(const std::string& word, const std::string& now, System system) {
  const auto larger = [](Size& size) {
    size.width_m *= 1.05;
    size.depth_m *= 1.05;
  };
  if (word == "place" || word == "from" || word == "to") return nudged_place(now, system);
  if (word == "size") {
    const std::string size = stepped<Size>(now, system, larger);
    if (!size.empty()) return size;
    return now == "1/2 in" ? "5/8 in" : "20 x 2 mm";
  }
  if (word == "glycol") return "35 %";
  if (word == "price") return stepped<EnergyPrice>(now, system, [](EnergyPrice& price) { price.money_per_J *= 2.0; });
  if (word == "standing") return stepped<MonthPrice>(now, system, [](MonthPrice& price) { price.money *= 2.0; });
  if (word == "hours" || word == "charge" || word == "arrives") return nudged_clock(word, now, system);
  return stepped<Insulation>(
      now, system, [](Insulation& value) { value.resistance_m2K_per_W = value.resistance_m2K_per_W * 1.5 + 0.3; });
}

std::string nudged_number(const Key& key, double was, System system) {
  if (key.unit->dimension == Dimension::degree) return write_quantity(was + 2.0, Dimension::degree, system);
  // Whole people and whole openings.
  if (key.word == "people" || key.word == "opened") return fmt::format("{}", was + 2.0);
  return write_quantity(was * 1.1 + 1e-3, key.unit->dimension, system);
}

std::string nudged_maybe(const Key& key, double was, System system) {
  if (key.unit->dimension == Dimension::number) return fmt::format("{}", was + 1.0);
  if (key.unit->dimension == Dimension::degree) return write_quantity(was + 2.0, Dimension::degree, system);
  return write_quantity(was * 1.1, key.unit->dimension, system);
}

std::string nudged_choice(const Key& key, const Choice& choice) {
  // Codes: only North America's asks for more amperes.
  const bool to_first = key.word == "codes" && choice.get(choice.at) != 0;
  const auto next = to_first ? 0 : static_cast<std::size_t>(choice.get(choice.at) + 1) % choice.names.size();
  return std::string(choice.names[next]);
}

}  // namespace

std::string nudged(const Key& key, const Slot& slot, System system) {
  if (const auto* n = std::get_if<Number>(&slot)) return nudged_number(key, *n->at, system);
  if (const auto* m = std::get_if<MaybeNumber>(&slot)) return *m->at ? nudged_maybe(key, **m->at, system) : "";
  if (const auto* w = std::get_if<Whole>(&slot))
    return fmt::format("{}", key.word == "phases" ? 4 - *w->at : *w->at + 1);
  if (const auto* f = std::get_if<Flag>(&slot)) return *f->at ? "false" : "true";
  if (const auto* c = std::get_if<Choice>(&slot)) return nudged_choice(key, *c);
  const std::string now = write_out(key, slot, system);
  if (now.empty()) return {};
  if (std::holds_alternative<Worded>(slot)) return nudged_words(std::string(key.word), now, system);
  if (std::holds_alternative<WordedList>(slot)) return nudged_list(std::string(key.word), now, system);
  return {};
}

char sign(double before, double after, double same_share) {
  if (std::abs(after - before) <= same_share * std::max(std::abs(before), std::abs(after))) return '0';
  return after > before ? '+' : '-';
}

bool is_of_winter(const std::string& path, const Key& key) {
  return key.says.only_for == "winter" || path == "work.hours" || path == "second_source.capacity";
}

}  // namespace slabwright::test
