// A page of plain text: 80 characters wide, words wrapped, columns in line.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace slabwright::report {

inline constexpr std::size_t page_width = 80;
/// A short report fits a screen.
inline constexpr std::size_t most_lines = 45;

/// Plain ASCII: accented Latin letters lose their accent, anything else becomes "?".
std::string ascii(std::string_view text);

/// The text broken at spaces into lines of at most `width` characters. A unit or a mark stays with its number; a longer
/// word is broken where it must be.
std::vector<std::string> wrapped(std::string_view text, std::size_t width);

/// Lines of at most `page_width` ASCII characters.
struct Page {
  std::vector<std::string> lines;
};
void add_blank(Page& page);
/// An empty line, unless there is one already.
void add_gap(Page& page);
/// A paragraph whose first line begins with `first` and every other with as many spaces.
void add_text(Page& page, std::string_view text, std::string_view first = {});
/// A row of the ledger: the reader's question at left, what it is about, and the answer at right. Both may be empty
/// where they go on from the row above.
void add_row(Page& page, std::string_view question, std::string_view about, std::string_view answer);
std::string text_of(const Page& page);

struct Column {
  std::string head;
  std::string below = {};  ///< second line of the head: the unit
  bool right = true;       ///< aligned right, as numbers are
};
/// A column of words.
Column left_column(std::string head);

/// Rows of cells. One column takes what the others leave of the page and wraps.
struct Table {
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
  std::size_t wraps = 0;
};
void add_table(Page& page, const Table& table);

}  // namespace slabwright::report
