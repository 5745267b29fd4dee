// What a winter costs: each way of running, settings and foam and second source, month by month.
#include "sheets/owner.hpp"

namespace slabwright::sheets {
namespace {

std::string way_key(std::size_t way, const char* member) { return key_of_row("winter.way", way, member); }

const char* passes_word(const WayFails& fails) {
  if (!fails.any()) return "passes";
  if (fails.frost_hold) return "too near freezing";
  return fails.comfort ? "too cold at work" : "boiler too small";
}

/// "$563 to $879"; a dash where it was not worked out.
Markup band_cell(const Source& source, std::size_t way) {
  const Quotes& q = source.q;
  if (q.has(way_key(way, "low_money")) && q.has(way_key(way, "high_money")))
    return say(q.money(way_key(way, "low_money")), " to ", q.money(way_key(way, "high_money")));
  const bool worked_out = source.answer.winter->way[way].use_high_J > 0.0 && !source.answer.winter->way[way].money;
  if (!worked_out) return prose("-");
  return say(q.figure(way_key(way, "use_low_J"), Kind::energy), " to ",
             q.figure(way_key(way, "use_high_J"), Kind::energy));
}

Markup cold_cell(const Source& source, std::size_t way) {
  const Quotes& q = source.q;
  if (source.answer.winter->way[way].comfort.worked_s <= 0.0) return prose("-");
  return say(q.figure(way_key(way, "comfort.cold_s"), Kind::hours), " of ",
             q.figure(way_key(way, "comfort.worked_s"), Kind::hours));
}

Markup mornings_cell(const Source& source, std::size_t way) {
  const Quotes& q = source.q;
  if (source.answer.winter->way[way].comfort.mornings <= 0) return prose("-");
  return say(q.figure(way_key(way, "comfort.failed_mornings"), Kind::count), " of ",
             q.figure(way_key(way, "comfort.mornings"), Kind::count));
}

/// What comes nearest to freezing: how cold it gets and what it is kept above.
Markup nearest_cell(const Source& source, std::size_t way) {
  const auto& place = source.answer.winter->way[way].place;
  if (place.empty() || !place.front().decides) return prose("-");
  const auto at = [&](const char* member) { return way_key(way, "place[0].") + member; };
  return say(source.q.figure(at("coldest_degC"), Kind::fine_degree, Lean::frost_hold), ", kept above ",
             source.q.figure(at("limit_degC"), Kind::fine_degree));
}

Markup way_name_cell(const Source& source, std::size_t way) {
  const Quote name = source.q.words(way_key(way, "way.name"));
  return say(name.text.empty() ? prose("the way without a name") : quoted(name),
             source.answer.winter->way[way].way.last_winter ? " (as it was run before)" : "");
}

Markup ways_table(const Source& source) {
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < source.answer.winter->way.size(); ++i)
    rows.push_back({way_name_cell(source, i), cost(source, key_of_row("winter.way", i)), band_cell(source, i),
                    cold_cell(source, i), mornings_cell(source, i), nearest_cell(source, i),
                    prose(passes_word(source.answer.winter->way[i].fails))});
  return stacking_table({{"way of running", "", false},
                         {"a year"},
                         {"nine of ten winters", "", false},
                         {"too cold at work", "", false},
                         {"cold starts", "", false},
                         {"coldest place", "", false},
                         {"", "", false}},
                        rows);
}

Markup ways_section(const Source& source) {
  const Quotes& q = source.q;
  const Winter& winter = *source.answer.winter;
  Markup text = winter.way.front().fails.any()
                    ? caution(prose("No way of running passes; what comes nearest stands first."))
                    : Markup{};
  text += ways_table(source);
  Markup note = say("Weather: ", q.words("winter.weather"), winter.sun ? "" : ", no sun counted", ". ");
  if (winter.way.front().comfort.worked_s > 0.0)
    note += say("Too cold: it feels colder than ",
                q.figure(way_key(0, "comfort.cold_below_degC"), Kind::degree, Lean::indoor), ". ");
  if (!winter.way.front().place.empty() && winter.way.front().place.front().decides)
    note += say("The coldest place of the first way: ", q.words(way_key(0, "place[0].name")), ". ");
  if (!winter.way.front().money)
    note += prose("No price is known, so this is energy: give the price in the electricity section of the file.");
  return section("What each way of running costs", text + paragraph(note));
}

/// The same choice with the second source in it, or nothing.
std::string with_source(const Source& source, const OwnerCost& alone) {
  const auto& all = source.answer.winter->series->owner;
  for (std::size_t i = 0; i < all.size(); ++i)
    if (all[i].second_source && all[i].insulation == alone.insulation && all[i].air_degC == alone.air_degC)
      return key_of_row("winter.series.owner", i);
  return {};
}

/// One choice of foam: its settings, without a second source and with one where the design has one.
Markup choice_table(const Source& source, std::size_t first, std::size_t end) {
  const Quotes& q = source.q;
  const auto& all = source.answer.winter->series->owner;
  const bool has_source = source.answer.file.design.second_source.kind != SecondSourceKind::none;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = first; i < end; ++i) {
    if (all[i].second_source) continue;
    const std::string at = key_of_row("winter.series.owner", i), other = with_source(source, all[i]);
    rows.push_back({quoted(q.figure(at + ".air_degC", Kind::dial)), cost(source, at)});
    if (has_source) rows.back().push_back(other.empty() ? prose("-") : cost(source, other));
  }
  std::vector<Head> heads{{"wall thermostat"}, {"floor alone"}};
  if (has_source) heads.push_back({"with the second source"});
  const Markup foam = strong(quoted(q.words(key_of_row("winter.series.owner", first, "insulation"))));
  return wrap("div", paragraph(foam, all[first].before_pour ? " (before the pour only)" : "", ":") + table(heads, rows),
              "whole");
}

Markup choices_section(const Source& source) {
  if (!source.answer.winter->series || source.answer.winter->series->owner.empty()) return {};
  const auto& all = source.answer.winter->series->owner;
  Markup tables;
  for (std::size_t first = 0; first < all.size();) {
    std::size_t end = first;
    while (end < all.size() && all[end].insulation == all[first].insulation) ++end;
    tables += choice_table(source, first, end);
    first = end;
  }
  return wrap("div",
              section("Setting, foam and second source",
                      paragraph("What a year costs, the floor held by the wall thermostat all winter; the foam:") +
                          wrap("div", tables, "three")),
              "whole");
}

Markup months_section(const Source& source) {
  const Winter& winter = *source.answer.winter;
  const auto month = static_cast<std::size_t>(winter.way.front().worst_month);
  const Markup hurts = paragraph(report::month_name_of(winter.way.front().worst_month),
                                 " hurts most: ", cost(source, key_of_row(way_key(0, "month"), month - 1)), " of ",
                                 cost(source, key_of_row("winter.way", 0)), " a year, in the first way.");
  return section("Which month hurts", hurts);
}

Markup dry_floor(const Source& source) {
  const Winter& winter = *source.answer.winter;
  if (!winter.dry_hold_degC) return {};
  return paragraph("From a frost hold of ", source.q.figure("winter.dry_hold_degC", Kind::dial),
                   " on the floor stays dry in spring.");
}

}  // namespace

Markup costs_sections(const Source& source) {
  if (!source.answer.winter || source.answer.winter->way.empty())
    return section("What a winter costs", not_known(source, "what a winter costs")) + lowers_section(source);
  return ways_section(source) + months_section(source) + dry_floor(source) + choices_section(source) +
         lowers_section(source);
}

}  // namespace slabwright::sheets
