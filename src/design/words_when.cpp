// Months, days and the full hours of prices.
#include "design/words_when.hpp"

#include <fmt/format.h>

#include <array>
#include <cctype>
#include <cmath>

#include "design/split.hpp"
#include "slabwright/design_words.hpp"
#include "slabwright/fields.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr std::array<std::string_view, 12> month_names{"january",   "february", "march",    "april",
                                                       "may",       "june",     "july",     "august",
                                                       "september", "october",  "november", "december"};
constexpr double price_step_s = hour_s;

struct DaysWord {
  std::string_view word;
  PriceDays days;
};
constexpr DaysWord days_words[] = {
    {"every day", PriceDays::every},
    {"daily", PriceDays::every},
    {"all days", PriceDays::every},
    {"monday to friday", PriceDays::monday_to_friday},
    {"mon to fri", PriceDays::monday_to_friday},
    {"monday-friday", PriceDays::monday_to_friday},
    {"mon-fri", PriceDays::monday_to_friday},
    {"weekdays", PriceDays::monday_to_friday},
    {"saturday and sunday", PriceDays::saturday_and_sunday},
    {"saturday to sunday", PriceDays::saturday_and_sunday},
    {"sat and sun", PriceDays::saturday_and_sunday},
    {"sat-sun", PriceDays::saturday_and_sunday},
    {"weekend", PriceDays::saturday_and_sunday},
    {"weekends", PriceDays::saturday_and_sunday},
};

std::string_view days_name(PriceDays days) {
  if (days == PriceDays::every) return {};
  return days == PriceDays::monday_to_friday ? "monday to friday" : "saturday and sunday";
}

bool read_days(std::string_view part, PriceTimes& when) {
  for (const DaysWord& known : days_words) {
    if (known.word != part) continue;
    when.days = known.days;
    return true;
  }
  return false;
}

bool read_months(std::string_view part, PriceTimes& when) {
  if (part == "all year") {
    when.first_month = 1;
    when.last_month = 12;
    return true;
  }
  auto ends = split_at(part, " to ");
  if (!ends) ends = split_at(part, " through ");
  if (!ends) ends = split_at(part, "-");
  const int first = month_of(ends ? ends->first : part), last = ends ? month_of(ends->second) : first;
  if (first == 0 || last == 0) return false;
  when.first_month = first;
  when.last_month = last;
  return true;
}

bool full_hours(const ClockSpan& span) {
  return std::fmod(span.from_s, price_step_s) == 0.0 && std::fmod(span.to_s, price_step_s) == 0.0;
}

std::string read_full_hours(std::string_view part, PriceTimes& when) {
  ClockSpan span;
  if (std::string problem = read_words(part, span); !problem.empty()) return problem;
  if (!full_hours(span)) return fmt::format("\"{}\": prices change on the full hour.", excerpt(part));
  when.from_hour = static_cast<int>(span.from_s / price_step_s);
  when.to_hour = static_cast<int>(span.to_s / price_step_s);
  return {};
}

std::string once(bool& said, std::string_view what) {
  if (said) return fmt::format("a price says its {} once; write a price for each.", what);
  said = true;
  return {};
}

}  // namespace

std::vector<std::string> comma_parts(std::string_view text) {
  const auto digit = [&](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
  std::vector<std::string> parts;
  std::size_t start = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const bool ends = i == text.size() || (text[i] == ',' && !(i > 0 && digit(i - 1) && digit(i + 1)));
    if (!ends) continue;
    parts.emplace_back(trimmed(text.substr(start, i - start)));
    start = i + 1;
  }
  return parts;
}

std::string in_small_letters(std::string_view text) {
  std::string out;
  for (const char c : text) out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

int month_of(std::string_view word) {
  std::string small = in_small_letters(trimmed(word));
  if (!small.empty() && small.back() == '.') small.pop_back();
  if (small.size() < 3) return 0;
  for (std::size_t i = 0; i < month_names.size(); ++i) {
    if (month_names[i].substr(0, small.size()) == small) return static_cast<int>(i) + 1;
  }
  return 0;
}

std::string_view month_name(int month) { return month_names.at(static_cast<std::size_t>(month - 1)); }

std::string read_when(std::string_view part, PriceTimes& when, WhenSaid& said) {
  const std::string small = in_small_letters(trimmed(part));
  if (small.find(':') != std::string::npos || small == "all day") {
    if (std::string twice = once(said.hours, "hours"); !twice.empty()) return twice;
    return read_full_hours(small, when);
  }
  if (read_days(small, when)) return once(said.days, "days");
  if (read_months(small, when)) return once(said.months, "months");
  return fmt::format(
      "\"{}\" is no time for a price. Write hours \"22:00 to 6:00\", days \"monday to friday\" or \"saturday and "
      "sunday\", months \"october to may\".",
      excerpt(part));
}

std::string write_when(const PriceTimes& when) {
  std::string text;
  if (when.from_hour != 0 || when.to_hour != 24) text += fmt::format(", {}:00 to {}:00", when.from_hour, when.to_hour);
  if (when.days != PriceDays::every) text += fmt::format(", {}", days_name(when.days));
  const bool one = when.first_month == when.last_month, all = when.first_month == 1 && when.last_month == 12;
  if (one) text += fmt::format(", {}", month_name(when.first_month));
  if (!one && !all) text += fmt::format(", {} to {}", month_name(when.first_month), month_name(when.last_month));
  return text;
}

}  // namespace slabwright
