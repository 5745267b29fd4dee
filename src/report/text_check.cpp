// check: is the file read as it was meant, and which guesses are worth replacing.
#include <fmt/format.h>

#include <algorithm>

#include "report/text.hpp"

namespace slabwright::report {
namespace {

std::string check_verdict(const Reader& reader) {
  const std::size_t given = given_read(reader.answer), guesses = guesses_read(reader.answer).size();
  const bool any_moves = !reader.answer.sensitivity.empty();
  const std::string yours = fmt::format("No problems. {} {} yours, {} {} our guesses", several(given, "value"),
                                        given == 1 ? "is" : "are", guesses, guesses == 1 ? "is" : "are");
  return yours + (any_moves ? "; these three matter most:" : ".");
}

/// Every temperature that was typed, on both scales: where a minus or a scale went wrong, it shows.
void add_temperatures(Page& page, const Reader& reader) {
  const System own = reader.system(), other = own == System::us ? System::si : System::us;
  const auto& given = reader.answer.file.given;
  Table table{{left_column(""), {}, {}}, {}, 0};
  walk(reading(reader.design()), [&](const std::string& path, const Key& key, const Slot& slot) {
    if (!key.unit || key.unit->dimension != Dimension::degree) return;
    if (std::find(given.begin(), given.end(), path) == given.end()) return;
    const auto* number = std::get_if<Number>(&slot);
    const auto* maybe = std::get_if<MaybeNumber>(&slot);
    if (!number && !(maybe && *maybe->at)) return;
    const double degC = number ? *number->at : **maybe->at;
    table.rows.push_back(
        {path, figure(Kind::typed_degree, degC, own), fmt::format("({})", figure(Kind::typed_degree, degC, other))});
  });
  if (table.rows.empty()) return;
  const std::size_t most_rows = reader.options.full ? table.rows.size() : 8;
  if (table.rows.size() > most_rows) table.rows.resize(most_rows);
  add_text(page, "Temperatures as they were read:");
  add_table(page, table);
}

void add_verdict_beyond_file(Page& page, const Reader& reader) {
  constexpr std::size_t most_reason_lines = 9;
  const Verdict& verdict = reader.answer.verdict;
  if (verdict.kind == VerdictKind::works) return;
  add_text(page, verdict.kind == VerdictKind::fails ? "The file reads well, but the shop does not work as it stands:"
                                                    : "It works, with this to mend:");
  add_reasons(page, reader, verdict.reasons, most_reason_lines);
  add_blank(page);
}

}  // namespace

void add_check(Page& page, const Reader& reader) {
  add_first_line(page, reader, "");
  add_text(page, check_verdict(reader));
  add_sharpen(page, reader, "");
  add_blank(page);
  add_verdict_beyond_file(page, reader);
  add_temperatures(page, reader);
  add_notes(page, reader, "weather.");
  add_lacking(page, reader);
  add_blank(page);
  if (reader.options.full) add_full(page, reader);
  add_end(page, reader, "design");
}

}  // namespace slabwright::report
