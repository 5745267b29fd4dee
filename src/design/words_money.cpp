// Worded values: prices, and the months of a bill. Money has no unit here: a sign before or after it is a label.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

#include "design/split.hpp"
#include "design/words_when.hpp"
#include "slabwright/design_winter.hpp"

namespace slabwright {
namespace {

constexpr double joule_per_kWh = 3.6e6, watt_per_kW = 1e3;
constexpr double most_money_per_kWh = 1e5, most_money = 1e7;  // for currencies of small units
constexpr double most_bill_J = 1e7 * joule_per_kWh;

constexpr std::string_view energy_example = "0.129 /kWh", power_example = "10 /kW";

/// An amount, and what it is for in small letters: "kwh" of "$0.129/kWh".
struct Amount {
  double money = 0.0;
  std::string per;
};

bool is_cents(std::string_view word) {
  constexpr std::array<std::string_view, 9> words{"c", "ct", "cts", "cent", "cents", "p", "pence", "\u00A2", "ore"};
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// A sign, or a word of at most three letters with one: "$", "EUR", "kr", "CA$".
bool is_currency(std::string_view word) {
  std::size_t letters = 0;
  for (const char c : word) {
    const auto byte = static_cast<unsigned char>(c);
    const bool letter = (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
    if (!letter && byte < 0x80 && c != '$') return false;
    letters += letter ? 1 : 0;
  }
  return letters <= 3;
}

/// Where the number at the front ends.
std::size_t number_end(std::string_view text) {
  constexpr std::string_view digits = "0123456789";
  std::size_t end = std::min(text.find_first_not_of("0123456789.,"), text.size());
  if (end + 1 < text.size() && text[end] == 'e') {
    const std::size_t sign = text[end + 1] == '-' || text[end + 1] == '+' ? 1 : 0;
    const std::size_t after = text.find_first_not_of(digits, end + 1 + sign);
    if (after != end + 1 + sign) end = std::min(after, text.size());
  }
  return end;
}

/// What an amount is for: "/kWh", "per kWh", "a month", "monthly"; nothing where it does not say.
std::string per_of(std::string_view rest) {
  const std::string small = in_small_letters(trimmed(rest));
  if (small == "monthly") return "month";
  for (const std::string_view front : {"/", "per ", "a ", "each "}) {
    if (small.compare(0, front.size(), front) == 0)
      return std::string(trimmed(std::string_view(small).substr(front.size())));
  }
  return {};
}

std::string no_price(std::string_view text, std::string_view example) {
  return fmt::format("\"{}\" is no price. Write \"{}\".", excerpt(text), example);
}

std::string cents_sentence(double cents, std::string_view example) {
  const std::string_view unit = example.substr(example.find(' '));
  return fmt::format("cents: write \"{:.6g}{}\".", cents / 100.0, unit);
}

/// The text in pieces: minus, word before the number, number, word after it, what it is for.
struct Pieces {
  bool minus = false;
  std::string_view before, number, after, rest;
};

Pieces pieces_of(std::string_view text) {
  Pieces pieces;
  text = trimmed(text);
  pieces.minus = !text.empty() && text.front() == '-';
  if (pieces.minus) text = trimmed(text.substr(1));
  const std::size_t first = std::min(text.find_first_of("0123456789."), text.size());
  pieces.before = trimmed(text.substr(0, first));
  text = text.substr(first);
  const std::size_t end = number_end(text);
  pieces.number = text.substr(0, end);
  text = trimmed(text.substr(end));
  if (per_of(text).empty()) {
    const std::size_t word = std::min(text.find_first_of(" /"), text.size());
    pieces.after = text.substr(0, word);
    text = trimmed(text.substr(word));
  }
  pieces.rest = text;
  return pieces;
}

/// A sentence that says what to write, or nothing where it read.
std::string read_amount(std::string_view text, std::string_view example, Amount& amount) {
  const Pieces pieces = pieces_of(text);
  if (pieces.number.find(',') != std::string_view::npos && !read_number(pieces.number)) {
    std::string mended(trimmed(text));
    std::replace(mended.begin(), mended.end(), ',', '.');
    return fmt::format("decimal comma: write \"{}\".", excerpt(mended));
  }
  const auto number = read_number(pieces.number);
  if (!number) return no_price(text, example);
  amount.money = pieces.minus ? -*number : *number;
  amount.per = per_of(pieces.rest);
  if (is_cents(in_small_letters(pieces.before)) || is_cents(in_small_letters(pieces.after)))
    return cents_sentence(amount.money, example);
  const std::string unit = in_small_letters(pieces.after);
  if (unit == "kwh" || unit == "kw") {
    return fmt::format("\"{0}\" is no price but a quantity. Write \"{1} /{2}\".", excerpt(text), pieces.number,
                       pieces.after);
  }
  if (!is_currency(pieces.before) || !is_currency(pieces.after)) return no_price(text, example);
  if (amount.per.empty() && pieces.rest.empty()) {
    return fmt::format("{0} for what? Write \"{1}{2}\".", excerpt(text), pieces.number,
                       example.substr(example.find(' ')));
  }
  return {};
}

std::string too_large(std::string_view text) {
  return fmt::format("\"{}\" is too large a price: give the currency's own unit.", excerpt(text));
}

/// Money for a kWh in any of the ways it is written. Only what comes on top of another price may be below zero.
std::string read_per_energy(std::string_view text, bool may_be_negative, double& money_per_J) {
  Amount amount;
  if (std::string problem = read_amount(text, energy_example, amount); !problem.empty()) return problem;
  const bool joule = amount.per == "j", mega = amount.per == "mwh";
  if (!joule && !mega && amount.per != "kwh") return no_price(text, energy_example);
  const double value = joule ? amount.money : amount.money / (mega ? 1e3 * joule_per_kWh : joule_per_kWh);
  if (std::abs(value) > most_money_per_kWh / joule_per_kWh) return too_large(text);
  if (value < 0.0 && !may_be_negative) return fmt::format("\"{}\": a price is not below zero.", excerpt(text));
  money_per_J = value + 0.0;
  return {};
}

/// Without an exponent where that is not too small to read.
std::string plain_digits(double value, int digits) {
  const std::string text = fmt::format("{:.{}g}", value, digits);
  const auto exponent = text.find("e+");
  return exponent == std::string::npos ? text : fmt::format("{:.0f}", std::strtod(text.c_str(), nullptr));
}

/// The fewest digits that read back to the same value, else the value itself for one joule or watt.
std::string shortest_price(double si, double scale, std::string_view unit, std::string_view si_unit) {
  constexpr int most_digits = 17;
  for (int digits = 1; digits <= most_digits; ++digits) {
    const std::string text = plain_digits(si * scale, digits);
    const auto back = read_number(text);
    if (back && *back / scale == si) return fmt::format("{} /{}", text, unit);
  }
  return fmt::format("{} /{}", si, si_unit);
}

std::string write_per_energy(double money_per_J) { return shortest_price(money_per_J, joule_per_kWh, "kWh", "J"); }

std::string read_per_power(std::string_view text, double& money_per_W) {
  Amount amount;
  if (std::string problem = read_amount(text, power_example, amount); !problem.empty()) return problem;
  if (amount.per != "kw" && amount.per != "w") return no_price(text, power_example);
  const double value = amount.per == "w" ? amount.money : amount.money / watt_per_kW;
  if (value < 0.0) return fmt::format("\"{}\": a price is not below zero.", excerpt(text));
  if (value > most_money_per_kWh / watt_per_kW) return too_large(text);
  money_per_W = value + 0.0;
  return {};
}

/// "ratchet 70 %" or "at least 5 kW"; nothing where the part is neither.
std::optional<std::string> read_demand_part(std::string_view part, DemandPrice& price) {
  const std::string small = in_small_letters(part);
  constexpr std::string_view ratchet = "ratchet ", least = "at least ";
  if (small.compare(0, ratchet.size(), ratchet) == 0) {
    const Reading share = read_quantity(part.substr(ratchet.size()), Dimension::share);
    if (share.fault != Fault::none || share.si < 0.0 || share.si > 1.0)
      return fmt::format("\"{}\" is no share. Write \"ratchet 70 %\".", excerpt(part));
    price.ratchet_share = share.si;
    return std::string{};
  }
  if (small.compare(0, least.size(), least) == 0) {
    const Reading power = read_quantity(part.substr(least.size()), Dimension::power);
    if (power.fault != Fault::none || power.si < 0.0 || power.si > 1e9)
      return fmt::format("\"{}\" is no power. Write \"at least 5 kW\".", excerpt(part));
    price.least_W = power.si;
    return std::string{};
  }
  return std::nullopt;
}

}  // namespace

std::string read_words(std::string_view text, EnergyPrice& price) {
  return read_per_energy(plain_characters(text), false, price.money_per_J);
}

std::string write_words(const EnergyPrice& price, System) { return write_per_energy(price.money_per_J); }

std::string read_words(std::string_view text, MonthPrice& price) {
  Amount amount;
  if (std::string problem = read_amount(plain_characters(text), MonthPrice::example, amount); !problem.empty())
    return problem;
  if (amount.per != "month") return no_price(text, MonthPrice::example);
  if (amount.money < 0.0) return fmt::format("\"{}\": a price is not below zero.", excerpt(text));
  if (amount.money > most_money) return too_large(text);
  price.money = amount.money + 0.0;
  return {};
}

std::string write_words(const MonthPrice& price, System) { return fmt::format("{} a month", price.money); }

std::string read_words(std::string_view text, TimedPriceText& timed) {
  TimedPrice price;
  const std::vector<std::string> parts = comma_parts(plain_characters(text));
  if (std::string problem = read_per_energy(parts.front(), false, price.money_per_J); !problem.empty()) return problem;
  WhenSaid said;
  for (std::size_t i = 1; i < parts.size(); ++i) {
    if (std::string problem = read_when(parts[i], price.when, said); !problem.empty()) return problem;
  }
  timed.price = price;
  return {};
}

std::string write_words(const TimedPriceText& timed, System) {
  return write_per_energy(timed.price.money_per_J) + write_when(timed.price.when);
}

std::string read_words(std::string_view text, TierText& tier) {
  const std::string plain = plain_characters(text);
  auto parts = split_at(plain, " above ");
  if (!parts) parts = split_at(plain, " over ");
  if (!parts) parts = split_at(plain, " beyond ");
  if (!parts) return fmt::format("\"{}\" says no limit. Write \"{}\".", excerpt(text), TierText::example);
  TierPrice price;
  if (std::string problem = read_per_energy(parts->first, true, price.money_per_J); !problem.empty()) return problem;
  const Reading from = read_quantity(parts->second, Dimension::energy);
  if (from.fault != Fault::none || from.si <= 0.0 || from.si > most_bill_J)
    return fmt::format("\"{}\" is no energy of a month. Write \"{}\".", excerpt(parts->second), TierText::example);
  price.from_J = from.si;
  tier.price = price;
  return {};
}

std::string write_words(const TierText& tier, System system) {
  return write_per_energy(tier.price.money_per_J) + " above " +
         write_quantity(tier.price.from_J, Dimension::energy, system);
}

std::string read_words(std::string_view text, DemandText& demand) {
  DemandPrice price;
  const std::vector<std::string> parts = comma_parts(plain_characters(text));
  if (std::string problem = read_per_power(parts.front(), price.money_per_W); !problem.empty()) return problem;
  WhenSaid said;
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const auto own = read_demand_part(parts[i], price);
    if (std::string problem = own ? *own : read_when(parts[i], price.when, said); !problem.empty()) return problem;
  }
  demand.price = price;
  return {};
}

std::string write_words(const DemandText& demand, System) {
  const DemandPrice& price = demand.price;
  std::string text = shortest_price(price.money_per_W, watt_per_kW, "kW", "W") + write_when(price.when);
  if (price.ratchet_share > 0.0)
    text += fmt::format(", ratchet {}", write_quantity(price.ratchet_share, Dimension::share, System::si));
  if (price.least_W > 0.0) text += ", at least " + write_quantity(price.least_W, Dimension::power, System::si);
  return text;
}

std::string read_words(std::string_view text, BillMonth& bill) {
  const std::string plain(trimmed(plain_characters(text)));
  const std::size_t end = std::min(plain.find_first_of(" :"), plain.size());
  const int month = month_of(std::string_view(plain).substr(0, end));
  if (month == 0) return fmt::format("\"{}\" names no month. Write \"{}\".", excerpt(text), BillMonth::example);
  const std::size_t start = std::min(plain.find_first_not_of(" :=", end), plain.size());
  const Reading use = read_quantity(std::string_view(plain).substr(start), Dimension::energy);
  if (use.fault != Fault::none || use.si < 0.0 || use.si > most_bill_J) {
    return fmt::format("\"{}\" is not what a month used. Write \"{} 2140 kWh\".", excerpt(text), month_name(month));
  }
  bill = {month, use.si};
  return {};
}

std::string write_words(const BillMonth& bill, System system) {
  return fmt::format("{} {}", month_name(bill.month), write_quantity(bill.use_J, Dimension::energy, system));
}

}  // namespace slabwright
