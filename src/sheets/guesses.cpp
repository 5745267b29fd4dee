// What the whole answer leans on: every guess with its source, what matters most, what is the user's own, and all
// cautions.
#include "sheets/phrases.hpp"

namespace slabwright::sheets {
namespace {

/// What it means, and the key to write into the file.
Markup key_cell(const Source& source, const std::string& at) {
  const Quote meaning = source.q.words(at + ".meaning"), path = source.q.words(at + ".path");
  return meaning.text.empty() ? wrap("code", quoted(path)) : say(meaning, " ", wrap("code", quoted(path)));
}

/// A change that is less than what is printed of it is none.
Markup moves_cell(const Source& source, const std::string& key, Kind kind, double least) {
  if (!source.q.has(key) || source.q.number(key) < least) return prose("-");
  return quoted(source.q.figure(key, kind));
}

Markup matters_section(const Source& source) {
  constexpr double least_W = 50.0, least_K = 0.05;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < source.answer.sensitivity.size(); ++i) {
    const Sensitivity& one = source.answer.sensitivity[i];
    if (one.boiler_W < least_W && one.hold_K.value_or(0.0) < least_K) continue;
    const std::string at = key_of_row("sensitivity", i);
    rows.push_back({key_cell(source, at), quoted(source.q.words(at + ".guess")),
                    moves_cell(source, at + ".boiler_W", Kind::boiler, least_W),
                    moves_cell(source, at + ".hold_K", Kind::rise, least_K)});
  }
  if (rows.empty())
    return section("These matter most", paragraph(source.answer.sensitivity.empty()
                                                      ? "Which guess matters most was not worked out."
                                                      : "No single guess moves boiler or frost hold by as much as is "
                                                        "printed."));
  return section(
      "These matter most",
      paragraph("Each guess alone, from its tight to its poor end. Give these first.") +
          stacking_table(
              {{"what", "", false}, {"our guess", "", false}, {"moves the boiler by"}, {"moves the frost hold by"}},
              rows));
}

Markup guesses_section(const Source& source) {
  const Quotes& q = source.q;
  if (q.rows("assumed") == 0) return section("Our guesses", paragraph("There are none: every value is yours."));
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < q.rows("assumed"); ++i) {
    const std::string at = key_of_row("assumed", i);
    rows.push_back({key_cell(source, at), quoted(q.words(at + ".text")), quoted(q.words(at + ".source"))});
  }
  return section(
      say("Our guesses: ", q.count("assumed")),
      stacking_table({{"what", "", false}, {"our guess", "", false}, {"where it comes from", "", false}}, rows));
}

Markup yours_section(const Source& source) {
  const Quotes& q = source.q;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < q.rows("yours"); ++i) {
    const std::string at = key_of_row("yours", i);
    rows.push_back({key_cell(source, at), quoted(q.words(at + ".text"))});
  }
  return rows.empty() ? Markup{}
                      : section(say("What is yours: ", q.count("yours")),
                                stacking_table({{"what", "", false}, {"as you gave it", "", false}}, rows));
}

Markup cautions_section(const Source& source) {
  std::vector<Markup> items;
  for (const std::string& words : report::cautions(source.answer)) items.push_back(prose(words));
  return section("Cautions", bullets(items));
}

/// What the stages remarked, gravest first.
Markup said_section(const Source& source) {
  std::vector<Markup> items;
  for (std::size_t i = 0; i < source.q.rows("said"); ++i)
    items.push_back(quoted(source.q.words(key_of_row("said", i, "sentence"))));
  return items.empty() ? Markup{} : section("Remarks on this design", bullets(items));
}

}  // namespace

std::optional<SheetBody> guesses_sheet(const Source& source) {
  return SheetBody{wrap("div",
                        cautions_section(source) + matters_section(source) + said_section(source) +
                            guesses_section(source) + yours_section(source),
                        "tight")};
}

}  // namespace slabwright::sheets
