// sheets: which pages there are, and what the whole answer says in a sentence.
#include <fmt/format.h>

#include "report/text.hpp"

namespace slabwright::report {
namespace {

std::string sheets_verdict(const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.loops) return "NOT ENOUGH IS KNOWN for sheets:";
  switch (answer.verdict.kind) {
    case VerdictKind::works: return "THE DESIGN WORKS, and every sheet tells the same answer.";
    case VerdictKind::mend: return "THE DESIGN WORKS, but mend this first; the sheets say it too:";
    case VerdictKind::fails: return "THE DESIGN DOES NOT WORK as it stands; the sheets say so too:";
  }
  return {};
}

}  // namespace

void add_sheets(Page& page, const Reader& reader) {
  constexpr std::size_t reason_lines = 14;
  add_first_line(page, reader, "pages to print");
  add_text(page, sheets_verdict(reader));
  add_reasons(page, reader, reader.answer.verdict.reasons, reason_lines);
  add_blank(page);
  Table table{{left_column("sheet"), left_column("for")}, {}, 1};
  for (const SheetLine& sheet : reader.options.sheets) table.rows.push_back({sheet.file, sheet.reader});
  add_section(page, "", table);
  add_lacking(page, reader);
  add_end(page, reader, "check");
}

}  // namespace slabwright::report
