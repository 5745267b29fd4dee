// What the frost hold keeps, how long a power cut may last, and which changes lower setting and cost.
#include "sheets/owner.hpp"

namespace slabwright::sheets {
namespace {

/// The sentence that is acted upon.
Markup frost_verdict(const Source& source) {
  const Freeze& freeze = *source.answer.freeze;
  if (freeze.verdict == FreezeVerdict::no_setting)
    return paragraph(strong(prose("NO SETTING IS SAFE. ")), source.q.words("freeze.reason"));
  if (freeze.verdict == FreezeVerdict::cannot_be_called)
    return paragraph(strong(prose("It cannot be called safe. ")), source.q.words("freeze.reason"));
  return wrap("p", say("Lowest setting that keeps everything above its limit: ", lowest_settings(source), "."),
              "verdict");
}

std::vector<Fact> frost_facts(const Source& source) {
  const Quotes& q = source.q;
  const Freeze& freeze = *source.answer.freeze;
  std::vector<Fact> rows;
  if (!freeze.air) return rows;
  rows.push_back({prose("What decides"), quoted(q.words("freeze.air.decides"))});
  rows.push_back({prose("Wall thermostat"), quoted(q.words("freeze.air_sensor"))});
  rows.push_back({prose("Slab sensor"), quoted(q.words("freeze.slab_sensor"))});
  rows.push_back({prose("Tried"), quoted(leaning(source, q.words("freeze.tried"), Lean::coldest))});
  return rows;
}

Markup cut_table(const Source& source) {
  const Quotes& q = source.q;
  std::vector<std::vector<Markup>> rows;
  for (const std::size_t i : cuts_from_lowest(source)) {
    rows.push_back(cut_cells(source, i));
    rows.back().push_back(whole_hours(source, key_of_row("outage.row", i, "pump_whole_s")));
  }
  if (rows.empty()) return {};
  const std::string lowest = key_of_row("outage.row", cuts_from_lowest(source).front(), "air_dial_degC");
  return paragraph("Power goes off, the wall thermostat at ", q.figure(lowest, Kind::dial),
                   " until then. Each weather as if it had lasted:") +
         stacking_table(
             {{"outside"}, {"until the first place freezes"}, {"which", "", false}, {"with the pump on a generator"}},
             rows);
}

/// Few dials go lower than 40 F or 5 C: practice.
Markup dial_cell(const Source& source, const std::string& key) {
  const double least_degC = source.q.system() == System::us ? (40.0 - 32.0) / 1.8 : 5.0;
  if (!source.q.has(key)) return prose("none is enough");
  if (source.q.number(key) < least_degC - 1e-6) return prose("lower than dials go");
  return quoted(source.q.figure(key, Kind::dial));
}

Markup what_cell(const Quote& what, bool before_pour) {
  return say(what, before_pour ? " (before the pour only)" : "");
}

Markup changes_table(const Source& source) {
  if (!source.answer.freeze) return {};
  std::vector<std::vector<Markup>> rows;
  const auto& changes = source.answer.change;
  for (std::size_t i = 0; i < changes.size(); ++i) {
    const auto at = [&](const char* member) { return key_of_row("change", i, member); };
    if (lowers(changes[i], *source.answer.freeze))
      rows.push_back({what_cell(source.q.words(at("what")), changes[i].before_pour),
                      dial_cell(source, at("air_dial_degC")), dial_cell(source, at("slab_dial_degC"))});
  }
  if (rows.empty()) return paragraph("Nothing that was tried lowers the frost hold.");
  const bool found = source.answer.freeze->verdict == FreezeVerdict::found;
  return stacking_table(
      {{found ? "what lowers the frost hold" : "what would help", "", false}, {"wall thermostat"}, {"slab sensor"}},
      rows);
}

Markup pay_back_table(const Source& source) {
  if (!source.answer.winter) return {};
  std::vector<std::vector<Markup>> rows;
  const auto& changes = source.answer.winter->pay_back;
  for (std::size_t i = 0; i < changes.size(); ++i) {
    const std::string at = key_of_row("winter.pay_back", i);
    if (changes[i].saved_money.value_or(changes[i].saved_J) > 0.0)
      rows.push_back({what_cell(source.q.words(at + ".what"), changes[i].before_pour),
                      cost(source, at, "saved_J", "saved_money")});
  }
  if (rows.empty()) return paragraph("Of the changes to the shop that were tried none saves anything in a year.");
  return table({{"a change of the shop", "", false}, {"saves a year"}}, rows);
}

}  // namespace

Markup keeps_section(const Source& source) {
  if (!source.answer.freeze) return section("How low it may be left", not_known(source, "the frost hold"));
  Markup text = frost_verdict(source) + facts(frost_facts(source)) + cut_table(source);
  if (source.q.rows("edge_section") > 0)
    text += paragraph("How the cold comes in at edge and door is drawn on the sheet of both in section.");
  return section("How low it may be left", text);
}

Markup lowers_section(const Source& source) {
  if (!source.answer.freeze && !source.answer.winter) return {};
  return section("What lowers it most", changes_table(source) + pay_back_table(source));
}

}  // namespace slabwright::sheets
