// winter: what each way of running costs, and what it keeps.
#include "report/text_winter.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace slabwright::report {
namespace {

constexpr std::size_t most_other_lines = 6;

/// "31 % less than as it was run before", or nothing where nobody said how.
std::string against_before(const Winter& winter, const WayResult& way) {
  const WayResult* before = run_before(winter);
  if (!before || cost_of(*before) <= 0.0) return "";
  if (before == &way) return ", as it was run before";
  const double share = 1.0 - cost_of(way) / cost_of(*before);
  if (std::abs(share) < 0.005) return ", as much as before";
  return fmt::format(", {} {} than as it was run before", percent(std::abs(share)), share > 0.0 ? "less" : "more");
}

/// "too cold at work in 2, something too near freezing in all".
std::string failing_by(const Winter& winter) {
  const auto how_many = [&](bool WayFails::*by) {
    return std::count_if(winter.way.begin(), winter.way.end(), [&](const WayResult& way) { return way.fails.*by; });
  };
  const auto all = static_cast<std::ptrdiff_t>(winter.way.size());
  std::vector<std::string> parts;
  const auto add = [&](bool WayFails::*by, std::string_view words) {
    if (const auto number = how_many(by); number > 0)
      parts.push_back(number == all && all > 1 ? fmt::format("{} in all of them", words)
                      : all > 1                ? fmt::format("{} in {} of {}", words, number, all)
                                               : std::string(words));
  };
  add(&WayFails::comfort, "too cold at work");
  add(&WayFails::frost_hold, "something too near freezing");
  add(&WayFails::boiler, "the boiler too small");
  return fmt::format("{}", fmt::join(parts, ", "));
}

std::string winter_verdict(const Reader& reader) {
  const Winter& winter = *reader.answer.winter;
  const WayResult& best = shown_way(winter);
  if (best.fails.any()) {
    const std::string nearest = winter.way.size() > 1
                                    ? fmt::format(" Nearest to it comes {}, {} a year.", quoted_name(best),
                                                  marked(cost_words(reader, best), reader.answer, Figure::winter))
                                    : "";
    return fmt::format("NO WAY OF RUNNING PASSES: {}.{}", failing_by(winter), nearest);
  }
  const bool alone = winter.way.size() == 1;
  const std::string_view lead = alone            ? "IT PASSES"
                                : priced(reader) ? "CHEAPEST OF THOSE THAT PASS"
                                                 : "USES LEAST OF THOSE THAT PASS";
  return fmt::format("{}: {}, {} a year{}.", lead, quoted_name(best),
                     marked(cost_words(reader, best), reader.answer, Figure::winter), against_before(winter, best));
}

/// "$570 to $871".
std::string band(const Reader& reader, const WayResult& way) {
  if (!way.low_money || !way.high_money) return from_to(Kind::energy, way.use_low_J, way.use_high_J, reader.system());
  return fmt::format("{} to {}", money(reader, *way.low_money), money(reader, *way.high_money));
}

/// How sure that is, and how there would be money.
Page how_sure(const Reader& reader) {
  Page page;
  const WayResult& best = shown_way(*reader.answer.winter);
  const bool money_band = best.low_money && best.high_money;
  if (best.use_high_J > 0.0 && (money_band || !priced(reader)))
    add_text(page, fmt::format("9 of 10 such winters, shops and machines: {}.", band(reader, best)));
  else if (!reader.answer.wishes.bands)
    add_text(page, "Quick: for what nobody can know, settings searched and changes of the shop leave out --quick.");
  if (!priced(reader)) {
    add_text(page, "No price is known, so this is kWh. For money say what you pay, in the file or here:");
    add_text(page, "--set electricity.price=\"... /kWh\"", "    ");
  }
  return page;
}

Page other_reasons_of_winter(const Reader& reader) {
  Page page;
  std::vector<Diagnostic> others;
  for (const Diagnostic& reason : reader.answer.verdict.reasons)
    if (reason.code != "winter.none-passes") others.push_back(reason);  // which the heading says
  if (others.empty()) return page;
  add_text(page, any(others, Severity::failure) ? "BUT THE SHOP DOES NOT WORK AS IT STANDS:" : "To mend:");
  add_reasons(page, reader, others, most_other_lines);
  return page;
}

/// What it was run with.
Page run_with(const Reader& reader) {
  Page page;
  const Winter& winter = *reader.answer.winter;
  const auto& freeze = reader.answer.freeze;
  std::string with = fmt::format("Run with: weather {}{}", winter.weather, winter.sun ? "" : ", no sun counted");
  if (freeze && freeze->air)
    with += fmt::format("; frost hold by the wall thermostat at {}, the best figure without its band",
                        reader(Kind::dial, freeze->air->dial_degC, Figure::frost_hold));
  add_text(page, with + ".");
  return page;
}

std::vector<Block> winter_blocks(const Reader& reader) {
  return {{how_sure(reader), {}, 0, false},
          {other_reasons_of_winter(reader), {}, 3, false},
          {run_with(reader), {}, 13, false},
          {ways(reader)},
          failing(reader),
          {starts(reader), {}, 2, false},
          months(reader),
          {source_days(reader), {}, 1},
          {hold_costs(reader), {}, 6, false},
          {searched(reader), {}, 7, false},
          {soil_history(reader), {}, 8, false},
          {ten_winters(reader), {}, 9, false},
          {sweating(reader), {}, 10, false},
          {doors(reader), {}, 11, false},
          pay_backs(reader),
          bill_fit(reader)};
}

}  // namespace

void add_winter(Page& page, const Reader& reader) {
  constexpr std::size_t most_reason_lines = 6;
  const Answer& answer = reader.answer;
  add_first_line(page, reader, "what the winter costs, way by way");
  if (!answer.winter || answer.winter->way.empty()) {
    add_text(page, "WHAT THE WINTER COSTS CANNOT BE SAID YET.");
    add_lacking(page, reader);
    add_reasons(page, reader, answer.verdict.reasons, most_reason_lines);
    return add_end(page, reader, "winter", answer.envelope ? "" : "--outdoor \"-12 F\"");
  }
  add_text(page, winter_verdict(reader));
  Page end;
  add_blank(end);
  add_lacking(end, reader);
  add_gap(end);
  add_end(end, reader, "freeze");
  add_blocks(page, winter_blocks(reader), end.lines.size(), reader.options.full);
  if (reader.options.full) {
    add_winter_full(page, reader);
    add_full(page, reader);
  }
  if (!page.lines.empty() && page.lines.back().empty()) page.lines.pop_back();
  page.lines.insert(page.lines.end(), end.lines.begin(), end.lines.end());
}

}  // namespace slabwright::report
