// Money, months and hours as the report of the winter says them.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "slabwright/units_exact.hpp"

#include "report/text_winter.hpp"

namespace slabwright::report {
namespace {

constexpr double a_day_h = 24.0;

/// The file's label in plain letters; the two signs that have a usual word get it.
std::string label_of(const Reader& reader) {
  const std::string& currency = reader.design().electricity.currency;
  if (currency == "\xE2\x82\xAC") return "EUR";
  if (currency == "\xC2\xA3") return "GBP";
  return ascii(currency);
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '.'; }

}  // namespace

bool priced(const Reader& reader) {
  const auto& winter = reader.answer.winter;
  return winter && !winter->way.empty() && winter->way.front().money.has_value();
}

std::string amount(const Reader& reader, double money) {
  constexpr double least_whole = 99.995;
  return bare(std::abs(money) < least_whole ? Kind::money : Kind::count, money, reader.system());
}

std::string money(const Reader& reader, double money) {
  const std::string label = label_of(reader), digits = amount(reader, std::abs(money));
  const std::string_view sign = money < 0.0 && digits.find_first_not_of("0.") != std::string::npos ? "-" : "";
  const std::string_view gap = !label.empty() && is_letter(label.back()) ? " " : "";
  return fmt::format("{}{}{}{}", sign, label, gap, digits);
}

std::string cost_unit(const Reader& reader) {
  if (!priced(reader)) return "kWh";
  const std::string label = label_of(reader);
  return label.empty() ? "money" : label;
}

double cost_of(const WayResult& way) { return way.money.value_or(way.use_J); }

std::string cost_words(const Reader& reader, double use_J, std::optional<double> cost) {
  return cost ? money(reader, *cost) : reader(Kind::energy, use_J);
}

std::string cost_words(const Reader& reader, const WayResult& way) { return cost_words(reader, way.use_J, way.money); }

std::string percent(double share) { return fmt::format("{:.0f} %", 100.0 * share); }

std::string whole_h(const Reader& reader, double s) { return reader(Kind::hours, s); }

std::string way_name(const WayResult& way) {
  constexpr std::size_t most_name = 60;
  const std::string name = way.way.name.empty() ? "the way without a name" : ascii(way.way.name);
  return name.size() <= most_name ? name : name.substr(0, most_name - 3) + "...";
}

std::string quoted_name(const WayResult& way) { return fmt::format("\"{}\"", way_name(way)); }

std::string month_name_of(int month) {
  constexpr std::array<std::string_view, 12> names{"January",   "February", "March",    "April",
                                                   "May",       "June",     "July",     "August",
                                                   "September", "October",  "November", "December"};
  return std::string(names.at(static_cast<std::size_t>(month - 1)));
}

std::string starts_at(const Reader& reader, int lead_h) {
  const double at_h = reader.design().work.hours.from_s / hour_s - lead_h;
  const double days = -std::floor(at_h / a_day_h);
  const auto minutes = static_cast<int>(std::lround(60.0 * (at_h + days * a_day_h)));
  const std::string clock = fmt::format("{}:{:02}", minutes / 60, minutes % 60);
  if (days < 0.5) return clock;
  return clock + (days < 1.5 ? " the day before"
                             : fmt::format(" {} days before", counted(static_cast<std::size_t>(std::lround(days)))));
}

const WayResult& shown_way(const Winter& winter) { return winter.way.front(); }

const WayResult* run_before(const Winter& winter) {
  const auto found =
      std::find_if(winter.way.begin(), winter.way.end(), [](const WayResult& way) { return way.way.last_winter; });
  return found == winter.way.end() ? nullptr : &*found;
}

const WayResult* by_source(const Winter& winter) {
  const auto found = std::find_if(winter.way.begin(), winter.way.end(), [](const WayResult& way) {
    return way.way.second_source != WaySource::off &&
           way.source.ran_s + way.source.locked_s + way.source.cold_start_s > 0.0;
  });
  return found == winter.way.end() ? nullptr : &*found;
}

const PlaceInWinter* nearest_place(const WayResult& way) {
  return way.place.empty() || !way.place.front().decides ? nullptr : &way.place.front();
}

}  // namespace slabwright::report
