// cure: when heat may come on, and how it is brought up.
#include <fmt/format.h>

#include "report/text.hpp"

namespace slabwright::report {
namespace {

std::string degree_of_top(const Reader& reader, double degC) {
  const CureCalendar& cure = *reader.answer.cure;
  if (degC != cure.top_degC) return reader(Kind::degree, degC);
  return cure.top_is_ours ? reader(Kind::degree, degC) + " ~" : reader(Kind::degree, degC, Figure::water);
}

std::string verdict_of_cure(const CureCalendar& cure) {
  const std::string wait = fmt::format("{} days after the pour ({})", cure.wait_days, cure.wait_source);
  const std::string asks = "The concrete's supplier decides: ask, and go by the later day.";
  if (cure.heat_date.empty()) return fmt::format("HEAT MAY COME ON {}. {}", wait, asks);
  return fmt::format("HEAT MAY COME ON FROM {} {}, {}. {}", upper(cure.heat_weekday), cure.heat_date, wait, asks);
}

std::string date_cell(const CureDay& day) {
  return day.date.empty() ? std::string{} : fmt::format("{} {}", day.weekday.substr(0, 3), day.date);
}

std::vector<std::string> cells_of(const Reader& reader, const CureDay& day) {
  std::string what = day.what;
  if (day.least_degC) what += fmt::format(", never colder than {}", reader(Kind::degree, *day.least_degC));
  return {fmt::format("{}", day.day), date_cell(day),
          day.supply_degC ? degree_of_top(reader, *day.supply_degC) : std::string{},
          fmt::format("{} ({})", what, day.source)};
}

/// The days of the rise between its first and its last, which a short answer tells in one row where they are many.
bool in_the_middle(const CureCalendar& cure, std::size_t row) {
  const auto rises = [&](std::size_t i) { return i < cure.row.size() && cure.row[i].supply_degC.has_value(); };
  return rises(row) && row > 1 && rises(row - 1) && rises(row - 2) && rises(row + 1);
}

void add_calendar(Page& page, const Reader& reader) {
  constexpr int most_rises = 5;
  const CureCalendar& cure = *reader.answer.cure;
  Table table{
      {{"day"}, left_column(cure.poured.empty() ? "" : "date"), left_column("water out"), left_column("what")}, {}, 3};
  const bool shortened = !reader.options.full && cure.rise_days > most_rises;
  bool said = false;
  for (std::size_t i = 0; i < cure.row.size(); ++i) {
    if (!shortened || !in_the_middle(cure, i)) {
      table.rows.push_back(cells_of(reader, cure.row[i]));
      continue;
    }
    if (!said)
      table.rows.push_back(
          {"...", "", "", fmt::format("{} warmer each day: every day with --full", reader(Kind::rise, cure.rise_K))});
    said = true;
  }
  add_table(page, table);
}

std::string in_one_line(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all.append(all.empty() ? "" : "; ").append(word);
  return all;
}

void add_care(Page& page, const CureCalendar& cure) {
  add_row(page, "Write down", "daily", in_one_line(cure.log));
  add_gap(page);
  for (const std::string& one : cure.never) add_text(page, one, "- ");
  for (const std::string& one : cure.caution) add_text(page, one, "- ");
}

std::string medium_word(TestMedium medium) { return medium == TestMedium::air ? "air" : "water"; }

void add_rules(Page& page, const Reader& reader, const PressureTest& test) {
  bool first = true;
  for (const TestRule& rule : test.rule) {
    const std::string pressure = rule.most_Pa ? from_to(Kind::gauge, rule.least_Pa, *rule.most_Pa, reader.system())
                                              : reader(Kind::gauge, rule.least_Pa) + " or more";
    add_row(page, first ? "Test" : "", medium_word(rule.medium),
            fmt::format("{}, {}; {} ({})", pressure, rule.how_long, rule.provided, rule.source));
    first = false;
  }
}

/// The test before the pour, whole.
void add_test(Page& page, const Reader& reader) {
  const PressureTest& test = *reader.answer.pressure_test;
  const System system = reader.system();
  add_gap(page);
  add_text(page, "The pressure test before the pour");
  add_rules(page, reader, test);
  add_row(page, "Advised", medium_word(test.medium), test.because);
  add_row(page, "Pour", "held",
          from_to(Kind::gauge, test.pour_least_Pa, test.pour_most_Pa, system) +
              " while concrete is placed and for days after (common practice)");
  Table table{{{"air", std::string(unit(Kind::degree, system))},
               {"test reads", std::string(unit(Kind::gauge, system))},
               {"pour reads", std::string(unit(Kind::gauge, system))}},
              {},
              0};
  for (const TestAt& at : test.at)
    table.rows.push_back({bare(Kind::degree, at.air_degC, system), bare(Kind::gauge, at.test_Pa, system),
                          bare(Kind::gauge, at.pour_Pa, system)});
  add_gap(page);
  add_text(page,
           fmt::format("What a tight test reads on air, pumped up at {}:", reader(Kind::degree, test.pumped_degC)));
  add_table(page, table);
  for (const std::string& one : test.care) add_text(page, one, "- ");
}

}  // namespace

void add_cure(Page& page, const Reader& reader) {
  const CureCalendar& cure = *reader.answer.cure;
  add_first_line(page, reader, "when may heat come on?");
  add_text(page, verdict_of_cure(cure));
  add_gap(page);
  add_calendar(page, reader);
  if (cure.top_is_ours) add_text(page, "~ our guess: the file does not tell enough for this floor's own temperature.");
  add_gap(page);
  add_care(page, cure);
  if (reader.options.full) add_test(page, reader);
  add_lacking(page, reader);
  if (cure.poured.empty()) add_text(page, "for dates: give --poured \"2026-09-14\"");
  const std::string& asked = reader.options.asked;
  if (!reader.answer.loops) {
    const bool us = reader.system() == System::us;
    return add_end(
        page, reader, "cure",
        fmt::format("{}{}{}", asked, asked.empty() ? "" : " ",
                    us ? "--size \"36 x 30 ft\" --outdoor \"-12 F\"" : "--size \"11 x 9 m\" --outdoor \"-25 C\""));
  }
  add_end(page, reader, "sheets", asked.empty() ? std::string("--out cards") : fmt::format("{} --out cards", asked));
}

}  // namespace slabwright::report
