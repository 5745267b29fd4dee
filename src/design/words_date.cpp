// Days of the calendar.
#include <fmt/format.h>

#include "design/split.hpp"
#include "slabwright/design_words.hpp"
#include "slabwright/fields.hpp"

namespace slabwright {
namespace {

// Slabs older or younger than that are a slip of the pen.
constexpr int first_year = 1950, last_year = 2100;

/// All of it digits, and as many as asked for; -1 for anything else.
int digits(std::string_view text, std::size_t wanted) {
  if (text.size() != wanted) return -1;
  int number = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return -1;
    number = 10 * number + (c - '0');
  }
  return number;
}

/// Why there is no such day in a month that there is.
std::string no_such_day(const CivilDate& date) {
  constexpr std::string_view names[] = {"January", "February", "March",     "April",   "May",      "June",
                                        "July",    "August",   "September", "October", "November", "December"};
  return fmt::format("{} {} has {} days.", names[date.month - 1], date.year, days_in_month(date.year, date.month));
}

}  // namespace

std::string read_words(std::string_view text, Date& date) {
  const std::string plain = plain_characters(text);
  const std::string_view day = trimmed(plain);
  const bool dashes = day.size() == 10 && day[4] == '-' && day[7] == '-';
  CivilDate on;
  on.year = dashes ? digits(day.substr(0, 4), 4) : -1;
  on.month = dashes ? digits(day.substr(5, 2), 2) : -1;
  on.day = dashes ? digits(day.substr(8, 2), 2) : -1;
  if (on.year < 0 || on.month < 0 || on.day < 0)
    return fmt::format("\"{}\" is no date as it is read here. Write year, month and day: \"{}\".", excerpt(text),
                       Date::example);
  if (on.month < 1 || on.month > 12)
    return fmt::format("\"{}\" has no month {}. Write year, month and day: \"{}\".", excerpt(text), on.month,
                       Date::example);
  if (on.year < first_year || on.year > last_year)
    return fmt::format("\"{}\": a year from {} to {}.", excerpt(text), first_year, last_year);
  if (!is_date(on)) return fmt::format("\"{}\" is no day: {}", excerpt(text), no_such_day(on));
  date.on = on;
  return {};
}

std::string write_words(const Date& date, System) { return iso_text(date.on); }

}  // namespace slabwright
