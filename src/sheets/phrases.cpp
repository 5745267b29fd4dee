#include "sheets/phrases.hpp"

#include <algorithm>

namespace slabwright::sheets {

Markup not_known(const Source& source, std::string_view what) {
  Markup text = say("Not known yet: ", what, ".");
  for (std::size_t i = 0; i < source.q.rows("lacking"); ++i)
    text += say(i == 0 ? " What would tell it, on the command line or in the file: " : "; ",
                source.q.words(key_of_row("lacking", i)));
  return paragraph(text);
}

Quote leaning(const Source& source, Quote quote, Lean figure) {
  quote.text = report::marked(quote.text, source.answer, figure);
  return quote;
}

Markup whole_hours(const Source& source, const std::string& key) {
  const Quotes& q = source.q;
  if (!q.has(key)) return say("more than ", q.figure("outage.longest_s", Kind::hours));
  if (q.number(key) <= 0.0) return prose("less than one hour");
  return quoted(q.figure(key, Kind::hours));
}

Markup cost(const Source& source, const std::string& at, std::string_view use_J, std::string_view money) {
  const Quotes& q = source.q;
  const std::string in_money = at + "." + std::string(money), in_energy = at + "." + std::string(use_J);
  const Quote amount = q.has(in_money) ? q.money(in_money) : q.figure(in_energy, Kind::energy);
  return quoted(leaning(source, amount, Lean::winter));
}

Markup lowest_settings(const Source& source) {
  const auto& freeze = source.answer.freeze;
  if (!freeze || !freeze->air) return {};
  const Markup air = say("wall thermostat ", source.q.figure("freeze.air.dial_degC", Kind::dial, Lean::frost_hold));
  if (!freeze->slab) return say(air, "; no setting of a slab sensor is enough");
  return say(air, ", or slab sensor ", source.q.figure("freeze.slab.dial_degC", Kind::dial, Lean::frost_hold));
}

std::vector<std::size_t> cuts_from_lowest(const Source& source) {
  std::vector<std::size_t> rows;
  if (!source.answer.outage) return rows;
  const auto& all = source.answer.outage->row;
  for (std::size_t i = 0; i < all.size(); ++i)
    if (i == 0 || all[i].outdoor_degC != all[i - 1].outdoor_degC) rows.push_back(i);
  return rows;
}

std::optional<std::size_t> worst_cut(const Source& source) {
  const std::vector<std::size_t> rows = cuts_from_lowest(source);
  return rows.empty() ? std::nullopt : std::optional<std::size_t>(rows.back());
}

std::vector<Markup> cut_cells(const Source& source, std::size_t row) {
  const auto at = [&](const char* member) { return key_of_row("outage.row", row, member); };
  const Quote first = source.q.words(at("first"));
  return {quoted(source.q.figure(at("outdoor_degC"), Kind::degree)), whole_hours(source, at("whole_s")),
          first.text.empty() ? prose("nothing") : quoted(first)};
}

Markup listed(const std::vector<Markup>& items) {
  Markup all;
  for (std::size_t i = 0; i < items.size(); ++i)
    all += say(i == 0 ? "" : i + 1 == items.size() ? " and " : ", ", items[i]);
  return all;
}

Markup remarks(const Source& source, const std::vector<std::string_view>& codes) {
  Markup all;
  const auto& said = source.answer.said;
  for (std::size_t i = 0; i < said.size(); ++i) {
    const bool asked = std::any_of(codes.begin(), codes.end(), [&](std::string_view code) {
      return std::string_view(said[i].code).substr(0, code.size()) == code;
    });
    if (!asked) continue;
    const Markup sentence = quoted(source.q.words(key_of_row("said", i, "sentence")));
    all += said[i].severity == Severity::note ? paragraph(sentence) : caution(sentence);
  }
  return all;
}

Markup caution_about(Caution about) { return caution(prose(report::caution_words(about))); }

}  // namespace slabwright::sheets
