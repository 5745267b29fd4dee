#include "slabwright/sheets.hpp"
#include "sheets/page.hpp"

namespace slabwright {

std::vector<ReaderSheet> reader_sheets(const Answer& answer) {
  const Quotes quotes(answer);
  const sheets::Source source{answer, quotes};
  const sheets::Sheaf sheaf = sheets::sheaf_of(source);
  std::vector<ReaderSheet> all;
  for (const sheets::SheetPage& page : sheaf.page)
    all.push_back({{page.file, sheets::html_of(page, source)}, page.reader});
  const sheets::SheetPage index = sheets::index_of(sheaf, source);
  all.push_back({{index.file, sheets::html_of(index, source)}, index.reader});
  return all;
}

}  // namespace slabwright
