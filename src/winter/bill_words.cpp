#include "winter/bill_words.hpp"

#include <fmt/format.h>

#include <cmath>

namespace slabwright::winter {
namespace {

/// "january"
std::string month_word(int month) {
  const std::string text = write_words(BillMonth{month, 0.0}, System::si);
  return text.substr(0, text.find(' '));
}

Measured energy(double J) { return {J, Dimension::energy}; }

std::string percent(double share) { return fmt::format("{:.0f} %", 100.0 * std::abs(share)); }

/// "1.5 F"
std::string kelvin_text(double K, System system) {
  return show_as(std::abs(K), Dimension::rise, shown(Dimension::rise, system).unit, 1);
}

/// "walls and leaks 20 % worse", for an unknown that moves by so many of its standard errors.
std::string moved(BillUnknown unknown, double errors, const BillPriors& priors, System system) {
  const bool more = errors > 0.0;
  switch (unknown) {
    case air_loss:
      return fmt::format("walls and leaks {} {}", percent(std::expm1(priors.loss_share * errors)),
                         more ? "worse" : "better");
    case ground_loss:
      return fmt::format("ground and edge {} {}", percent(std::expm1(priors.ground_share * errors)),
                         more ? "worse" : "better");
    case indoor_warmth:
      return fmt::format("the shop {} {}", kelvin_text(priors.indoor_K * errors, system), more ? "warmer" : "cooler");
    case other_use: break;
  }
  return fmt::format("what is not heat {} {}", percent(std::expm1(priors.other_share * errors)),
                     more ? "more" : "less");
}

std::string capital(std::string text) {
  text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string least_known_words(const std::vector<double>& mix, const BillPriors& priors, System system) {
  constexpr double worth_saying_errors = 0.2;
  std::string text;
  for (std::size_t i = 0; i < mix.size(); ++i) {
    if (std::abs(mix[i]) < worth_saying_errors) continue;
    text += (text.empty() ? "" : ", ") + moved(static_cast<BillUnknown>(i), mix[i], priors, system);
  }
  return text.empty() ? text : "Least is known of this mix, and of its opposite: " + text + ".";
}

/// A share whose band says that it is not the design's.
constexpr double telling_share = 1.3;
bool tells_more(double middle, double low) { return middle > telling_share && low > 1.0; }
bool tells_less(double middle, double high) { return middle < 1.0 / telling_share && high < 1.0; }

/// In the reader's unit with two digits, as nobody knows a third.
std::string two_digits(double si, Dimension dimension, System system) {
  const std::string unit(shown(dimension, system).unit);
  const double value = in_unit(si, unit, dimension);
  const double step = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
  const double rounded = from_unit(std::round(value / step) * step, unit, dimension);
  return show_as(rounded, dimension, unit, step >= 1.0 ? 0 : static_cast<int>(std::lround(-std::log10(step))));
}

std::string key_line(const std::string& key, const std::string& value, const std::string& why) {
  return fmt::format("{} = \"{}\"{}", key, value, why.empty() ? why : "  # " + why);
}

double loss_to_air_W(const WinterShop& shop) {
  double loss_W = 0.0;
  for (const RoomLoss& room : shop.envelope.room)
    loss_W += (room.total_W_per_K - room.exhaust_counted_W_per_K - room.unheated_floor_W_per_K) *
              (room.indoor_degC - shop.envelope.outdoor_degC);
  return loss_W;
}

void add_ground_lines(std::vector<std::string>& lines, const BillFit& fit, const WinterShop& shop,
                      const GroundRange& range) {
  const Design& design = shop.design;
  const bool moved_off = fit.ground_low_share > 1.0 || fit.ground_high_share < 1.0;
  // Boards of other kinds would each need their line: then no text says what was fitted.
  if (!moved_off || !design.insulation.more_layers.empty() || !design.edge_part.empty()) return;
  const double conducts = conducts_share(range, fit.ground_share);
  const auto board = [&](const char* key, const Insulation& has) {
    if (has.resistance_m2K_per_W > 0.0)
      lines.push_back(key_line(key, two_digits(has.resistance_m2K_per_W / conducts, Dimension::insulance, design.units),
                               "conducts as the soil does: the bill cannot tell which"));
  };
  lines.push_back("[ground]");
  lines.push_back(
      key_line("conductivity",
               two_digits(design.ground.conductivity_W_per_mK * conducts, Dimension::conductivity, design.units), ""));
  if (design.insulation.under.resistance_m2K_per_W > 0.0) lines.push_back("[insulation]");
  board("under", design.insulation.under);
  const double edge = design.edge.insulation.resistance_m2K_per_W + design.edge.door_strip.resistance_m2K_per_W;
  if (edge > 0.0) lines.push_back("[edge]");
  board("insulation", design.edge.insulation);
  board("door_strip", design.edge.door_strip);
}

}  // namespace

Diagnostic few_months_said(int months) {
  return {Severity::warning,
          "bill.few-months",
          "bill.months",
          "the bill has {} of the months from October to April; {} are the least that say anything of the shop.",
          {std::to_string(months), std::to_string(least_bill_months)}};
}

Diagnostic summer_said(int summer_month, int winter_month) {
  return {Severity::warning,
          "bill.summer",
          "bill.months",
          "{} used more than {}: something else than heat is on that meter in summer, and summer was left out.",
          {month_word(summer_month), month_word(winter_month)}};
}

Diagnostic disagree_said(int month) {
  return {Severity::warning,
          "bill.months-disagree",
          "bill.months",
          "{} does not go with the other months, whatever the shop loses: read that bill again, or it was run another "
          "way then.",
          {month_word(month)}};
}

Diagnostic too_low_said(double billed_J, double least_J) {
  return {
      Severity::warning,
      "bill.too-low",
      "bill.months",
      "the bill leaves {} for heat in its months; the best shop that can be believed would have used {}. Was it run "
      "otherwise, or is it another meter?",
      {energy(billed_J), energy(least_J)}};
}

Diagnostic too_high_said(double billed_J, double most_J) {
  return {
      Severity::warning,
      "bill.too-high",
      "bill.months",
      "the bill leaves {} for heat in its months; the worst shop that can be believed would have used {}. Is more on "
      "this meter than the shop and what other says?",
      {energy(billed_J), energy(most_J)}};
}

std::vector<std::string> ridge_words(const BillAnswer& answer, const BillPriors& priors, System system) {
  std::vector<std::string> words;
  for (const BillPair& pair : answer.ridge)
    words.push_back(fmt::format("{} with {} fits as well.", capital(moved(pair.one, pair.one_errors, priors, system)),
                                moved(pair.other, pair.other_errors, priors, system)));
  if (words.empty()) words.push_back("The bill tells all of them apart.");
  const std::string mix = least_known_words(answer.least_known, priors, system);
  if (!mix.empty()) words.push_back(mix);
  return words;
}

std::vector<std::string> implied_words(const BillFit& fit, const Design& design) {
  std::vector<std::string> words;
  const bool foam = design.insulation.under.resistance_m2K_per_W > 0.0;
  if (tells_more(fit.ground_share, fit.ground_low_share))
    words.push_back(foam ? "A hint: more goes into the ground than said. Wet or missing foam, or wet soil, does that."
                         : "A hint: more goes into the ground than said. Wet soil or a bare edge does that.");
  if (tells_less(fit.ground_share, fit.ground_high_share))
    words.push_back("A hint: less goes into the ground than said. There may be foam that nobody remembers.");
  if (tells_more(fit.loss_share, fit.loss_low_share))
    words.push_back("A hint: more goes out by the air than said. A door that does not close, a fan that runs, wind.");
  if (tells_less(fit.loss_share, fit.loss_high_share))
    words.push_back("A hint: walls, roof and doors are better than said.");
  if (words.empty()) words.push_back("Nothing that the design and a winter's chance do not explain.");
  if (design.bill.other_J > 0.0 && design.gains.empty())
    words.push_back(
        "What is not heat on the meter is taken to warm nothing; what of it stays inside belongs in [[gains]].");
  return words;
}

std::vector<std::string> lines_to_paste(const BillFit& fit, const WinterShop& shop, const GroundRange& range) {
  std::vector<std::string> lines;
  const System units = shop.design.units;
  const double loss_W = loss_to_air_W(shop);
  if (loss_W > 0.0) {
    const auto text = [&](double share) { return two_digits(share * loss_W, Dimension::power, units); };
    lines.push_back("[building]");
    lines.push_back(
        key_line("heat_loss", text(fit.loss_share),
                 fmt::format("as the bill has it; {} to {}", text(fit.loss_low_share), text(fit.loss_high_share))));
  }
  add_ground_lines(lines, fit, shop, range);
  return lines;
}

}  // namespace slabwright::winter
