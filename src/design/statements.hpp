// A design file cut into statements: headers of sections and keys with their values. A TOML parser stops at its first
// error; given one statement at a time it cannot hide what is wrong further down.
#pragma once
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "slabwright/design.hpp"

namespace slabwright {

/// Something that is wrong with the form of the file, in a sentence of ours.
struct FormProblem {
  Spot spot;
  std::string sentence;
};

/// A file with as many problems is no design file: the rest of it is not looked at.
inline constexpr std::size_t most_problems = 1000;

enum class ValueKind { text, number, flag, date, list, table };

struct FileEntry;

/// A value without the parser's types.
struct FileValue {
  ValueKind kind = ValueKind::text;
  std::string text;  ///< text, number or flag as a person would write it
  Spot spot;
  std::vector<FileValue> items;    ///< of a list
  std::vector<FileEntry> entries;  ///< of a table, in file order
};

struct FileEntry {
  std::string word;
  Spot spot;
  FileValue value;
};

/// [room] or [[room]].
struct FileHeader {
  std::string name;
  bool doubled = false;
  Spot spot;
};

using Statement = std::variant<FileHeader, FileEntry>;

struct FileStatements {
  std::vector<Statement> statement;
  std::vector<FormProblem> problem;
};

/// The bytes of a file as UTF-8 with plain line ends.
struct Decoded {
  std::string text;
  std::vector<FormProblem> problem;
  bool readable = true;  ///< false: nothing further can be said about this file
};
Decoded decode(std::string_view bytes);

/// Every statement of a text; what people break is mended and said.
FileStatements cut(std::string_view text);

/// One `key = value` by the TOML parser, or where it stopped. `first_line` is the line on which `text` begins.
std::variant<FileEntry, Spot> parse_entry(const std::string& text, int first_line);

/// A broken `key = value` made into one that parses, and what was wrong with it.
struct Mended {
  std::string text;  ///< columns up to the first mended place are those of the original
  std::vector<FormProblem> problem;
};
/// The text is empty where nothing helps.
Mended mend(const std::string& text, int first_line);

}  // namespace slabwright
