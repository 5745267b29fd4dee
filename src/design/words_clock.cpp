// Times and spans of the day.
#include <fmt/format.h>

#include <cmath>

#include "design/split.hpp"
#include "slabwright/design_words.hpp"
#include "slabwright/fields.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

std::string refused(std::string_view text) {
  return fmt::format("\"{}\" is no time of day. Write \"7:00\" or \"19:30\".", excerpt(text));
}

/// Up to two digits; -1 for anything else.
int two_digits(std::string_view text) {
  if (text.empty() || text.size() > 2) return -1;
  int number = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return -1;
    number = 10 * number + (c - '0');
  }
  return number;
}

std::string no_span(std::string_view text) {
  return fmt::format("\"{}\" is no span of the day. Write \"{}\".", excerpt(text), ClockSpan::example);
}

std::string clock_text(double after_midnight_s) {
  const int minutes = static_cast<int>(std::lround(after_midnight_s / minute_s));
  return fmt::format("{}:{:02}", minutes / 60, minutes % 60);
}

}  // namespace

std::string read_words(std::string_view text, ClockTime& time) {
  const std::string_view plain = trimmed(text);
  const std::size_t colon = plain.find(':');
  const int hour = two_digits(plain.substr(0, colon));
  const int minute = colon == std::string_view::npos ? -1 : two_digits(plain.substr(colon + 1));
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || plain.size() - colon != 3) return refused(text);
  time.after_midnight_s = hour * hour_s + minute * minute_s;
  return {};
}

std::string write_words(const ClockTime& time, System) { return clock_text(time.after_midnight_s); }

std::string read_words(std::string_view text, ClockSpan& span) {
  const std::string plain = plain_characters(text);
  if (trimmed(plain) == "all day") {
    span = {0.0, day_s};
    return {};
  }
  auto ends = split_at(plain, " to ");
  if (!ends) ends = split_at(plain, " until ");
  if (!ends) ends = split_at(plain, "-");
  ClockTime from, to;
  if (!ends || !read_words(ends->first, from).empty()) return no_span(text);
  const bool midnight = ends->second == "24:00";
  if (!midnight && !read_words(ends->second, to).empty()) return no_span(text);
  const double to_s = midnight || to.after_midnight_s == 0.0 ? day_s : to.after_midnight_s;
  if (to_s == from.after_midnight_s)
    return fmt::format("\"{}\" ends when it begins. A whole day is \"0:00 to 24:00\".", excerpt(text));
  span = {from.after_midnight_s, to_s};
  return {};
}

std::string write_words(const ClockSpan& span, System) {
  return fmt::format("{} to {}", clock_text(span.from_s), clock_text(span.to_s));
}

}  // namespace slabwright
