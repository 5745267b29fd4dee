// Wet floors, hard winters, what the soil remembers, changes of the shop, last winter's bill.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "report/text_winter.hpp"

namespace slabwright::report {
namespace {

constexpr double half_an_hour_s = 1800.0;

/// "October 12 h, April 30 h", from July on.
std::string each_month(const Reader& reader, const std::array<double, 12>& by_month_s) {
  std::vector<std::string> parts;
  for (int i = 0; i < 12; ++i) {
    const int month = (i + 6) % 12 + 1;
    const double s = by_month_s[static_cast<std::size_t>(month - 1)];
    if (s >= half_an_hour_s) parts.push_back(fmt::format("{} {}", month_name_of(month), whole_h(reader, s)));
  }
  return fmt::format("{}", fmt::join(parts, ", "));
}

/// "320 h a year, most in May (103 h)", under --full month by month; empty where no month has any.
std::string hours_by_month(const Reader& reader, const std::array<double, 12>& by_month_s) {
  const auto most = std::max_element(by_month_s.begin(), by_month_s.end());
  if (*most < half_an_hour_s) return "";
  if (reader.options.full) return "in " + each_month(reader, by_month_s);
  const double year_s = std::accumulate(by_month_s.begin(), by_month_s.end(), 0.0);
  return fmt::format("{} a year, most in {} ({})", whole_h(reader, year_s),
                     month_name_of(static_cast<int>(most - by_month_s.begin()) + 1), whole_h(reader, *most));
}

/// What the dry frost hold costs more than the one that was run, where both were.
std::string dry_words(const Reader& reader, double dry_degC) {
  const Winter& winter = *reader.answer.winter;
  const auto row_at = [&](double degC) {
    return std::find_if(winter.hold.begin(), winter.hold.end(),
                        [&](const HoldCost& row) { return std::abs(row.air_degC - degC) < 1e-6; });
  };
  std::string words = fmt::format(" From a frost hold of {} on it is dry in spring", reader(Kind::dial, dry_degC));
  const auto dry = row_at(dry_degC);
  const auto& freeze = reader.answer.freeze;
  const auto now = freeze && freeze->air ? row_at(freeze->air->dial_degC) : winter.hold.end();
  if (dry == winter.hold.end() || now == winter.hold.end() || dry == now) return words + ".";
  const auto more_money = dry->money && now->money ? std::optional<double>(*dry->money - *now->money) : std::nullopt;
  return words + fmt::format(", for {} a year more.", cost_words(reader, dry->use_J - now->use_J, more_money));
}

std::string saved(const Reader& reader, const PayBack& change) {
  return cost_words(reader, change.saved_J, change.saved_money);
}

std::string change_words(const PayBack& change) { return change.what + (change.before_pour ? " (before pour)" : ""); }

Page pay_back_table(const Reader& reader) {
  Page page;
  Table table{{left_column("A change of the shop"), {"saves a year"}}, {}, 0};
  for (const PayBack& change : reader.answer.winter->pay_back)
    table.rows.push_back({change_words(change), saved(reader, change)});
  if (!table.rows.empty()) add_table(page, table);
  return page;
}

/// "1.12 (0.97 to 1.30)".
std::string share_words(double best, double low, double high) {
  return fmt::format("{:.2f} ({:.2f} to {:.2f})", best, low, high);
}

}  // namespace

Page sweating(const Reader& reader) {
  Page page;
  const Winter& winter = *reader.answer.winter;
  const WayResult& best = shown_way(winter);
  const std::string wet = hours_by_month(reader, best.sweating.wet_s);
  const std::string damp = hours_by_month(reader, best.sweating.damp_s);
  if (!best.sweating.inside_known) {
    if (wet.empty() && damp.empty()) return page;  // nobody looked, or there is nothing to say
    std::string text = "Vapour inside is not known (people, washing, vehicles): by outdoor dew points alone ";
    text += wet.empty() ? "the floor stays dry" : "the floor sweats " + wet;
    add_text(page, text + ".");
    return page;
  }
  std::string text = wet.empty() ? std::string("The floor stays dry") : "The floor sweats " + wet;
  if (!damp.empty()) text += fmt::format("; air on it damper than 80 %, at which iron rusts, {}", damp);
  text += ".";
  if (winter.dry_hold_degC) text += dry_words(reader, *winter.dry_hold_degC);
  add_text(page, text);
  return page;
}

Page ten_winters(const Reader& reader) {
  Page page;
  const TenWinters& ten = shown_way(*reader.answer.winter).ten;
  if (ten.winters == 0) return page;
  const auto winters = static_cast<std::size_t>(ten.winters);
  const std::string kept =
      ten.below_limit == 0 ? std::string("everything above its limit")
      : ten.below_limit == ten.winters
          ? std::string("something below its limit in every one")
          : fmt::format("something below its limit in {}", counted(static_cast<std::size_t>(ten.below_limit)));
  std::string number = counted(winters);
  number[0] = upper(number.substr(0, 1))[0];
  std::string text =
      fmt::format("{} winters with cold snaps to {}: {}", number, reader(Kind::degree, ten.coldest_outdoor_degC), kept);
  if (!ten.place.empty())
    text += fmt::format(", nearest {} at {}", ten.place, reader(Kind::fine_degree, ten.place_degC));
  text += fmt::format("; at worst {}", ten.most_failed_mornings == 0
                                           ? "no cold start"
                                           : several(static_cast<std::size_t>(ten.most_failed_mornings), "cold start"));
  if (ten.most_locked_s > 0.0)
    text += fmt::format(", second source out {}, {} at one stretch", whole_h(reader, ten.most_locked_s),
                        whole_h(reader, ten.longest_locked_s));
  add_text(page, text + ".");
  return page;
}

Page soil_history(const Reader& reader) {
  Page page;
  const WayResult& best = shown_way(*reader.answer.winter);
  const PlaceInWinter* place = nearest_place(best);
  if (!place) return page;
  const auto degrees = [&](double degC) { return bare(Kind::fine_degree, degC, reader.system()); };
  add_text(page, fmt::format("Nearest to its limit of {}: {}, {} {}: {} this way for years, {} with the soil as run "
                             "before, {} in a new building.",
                             reader(Kind::fine_degree, place->limit_degC), place->name, place->day,
                             month_name_of(place->month),
                             marked(degrees(place->coldest_degC), reader.answer, Figure::frost_hold),
                             degrees(place->as_before_degC), degrees(place->new_building_degC)));
  return page;
}

Block pay_backs(const Reader& reader) {
  constexpr std::size_t most_named = 3;
  std::vector<std::string> parts;
  for (const PayBack& change : reader.answer.winter->pay_back)
    if (parts.size() < most_named) parts.push_back(change_words(change) + " " + saved(reader, change));
  Page shorter;
  if (!parts.empty()) add_text(shorter, fmt::format("Would save a year: {}.", fmt::join(parts, "; ")));
  if (!reader.options.full) return {shorter, {}, 11, false};
  return {pay_back_table(reader)};
}

Block bill_fit(const Reader& reader) {
  const auto& fit = reader.answer.winter->fit;
  if (!fit) return {};
  Page shorter;
  std::string text = fmt::format(
      "Last winter's bill fits within {} a month at {} times the design's loss to air and {} times that to the ground.",
      percent(fit->misfit_share), share_words(fit->loss_share, fit->loss_low_share, fit->loss_high_share),
      share_words(fit->ground_share, fit->ground_low_share, fit->ground_high_share));
  if (std::abs(fit->indoor_K) > 0.05)
    text += fmt::format(" It was kept {} {} than was said.", reader(Kind::rise, std::abs(fit->indoor_K)),
                        fit->indoor_K > 0.0 ? "warmer" : "colder");
  constexpr double matters_share = 0.1;
  if (std::abs(fit->loss_share - 1.0) > matters_share)
    text += " The ways above are of the shop as the file has it, not as the bill has it.";
  add_text(shorter, text);
  Page page = shorter;
  std::vector<std::string> told = fit->ridge;
  told.insert(told.end(), fit->implies.begin(), fit->implies.end());
  if (!told.empty()) add_text(page, fmt::format("{}", fmt::join(told, " ")));
  if (!fit->paste.empty()) add_text(page, "These lines put it into the file:");
  for (const std::string& line : fit->paste) page.lines.push_back("  " + line);
  return {page, shorter, 12, false};
}

}  // namespace slabwright::report
