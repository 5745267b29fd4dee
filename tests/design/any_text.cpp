// Whatever stands in the file, the reader answers, with sentences of ours.
#include "design/support.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

int drawn(int from, int to) { return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(from, to + 1)); }

/// Bytes with a liking for what files are made of.
std::string drawn_text() {
  const std::string_view pieces[] = {"[",          "]",          "[[",
                                     "]]",         "=",          " = ",
                                     "\n",         "\r\n",       "\"",
                                     "'",          "\"\"\"",     "'''",
                                     "#",          "{",          "}",
                                     ",",          ".",          "slab",
                                     "size",       "room",       "units",
                                     "36 ft",      "x",          "12\"",
                                     "-",          "\\",         "\\u12",
                                     "true",       "1979-05-27", "0x1F",
                                     "nan",        "inf",        "1e999",
                                     "“",          "\xFF",       std::string_view("\0", 1),
                                     "\t",         "outline",    "\"0 ft, 0 ft\"",
                                     "\u00A0",     "a.b",        "1_000",
                                     "_",          "R-10",       "[slab]\n",
                                     "[[room]]\n", "\x7F",       "\xEF\xBB\xBF",
                                     "тру",        ";",          ":"};
  std::string text;
  for (int i = drawn(0, 60); i > 0; --i) {
    text += pieces[static_cast<std::size_t>(drawn(0, static_cast<int>(std::size(pieces)) - 1))];
    if (drawn(0, 9) == 0) text += static_cast<char>(drawn(1, 255));
  }
  return text;
}

/// A sentence of ours: one line, not long, ending as a sentence does, without the parser's words.
bool ours(const Diagnostic& d, System units) {
  const std::string sentence = say(d, units);
  for (const std::string_view word : {"Error", "while parsing", "expected", "toml", "U+00"}) {
    if (sentence.find(word) != std::string::npos) return false;
  }
  const bool ends = sentence.back() == '.' || sentence.back() == '?' || d.severity != Severity::problem;
  return ends && sentence.size() < 400 && sentence.find('\n') == std::string::npos;
}

void check_sentences(const ReadDesign& read) {
  CHECK(bool(read.checked) == !any(read.checked.said, Severity::problem));
  for (const Diagnostic& d : read.checked.said) {
    if (ours(d, read.units)) continue;
    INFO(say(d, read.units));
    CHECK(false);
  }
}

}  // namespace

TEST_CASE("drawn texts are answered") {
  CHECK(rc::check("any text", [] {
    const std::string text = drawn_text();
    const ReadDesign read = read_design(text);
    check_sentences(read);
    if (!read.checked) {
      RC_ASSERT(!problems_text(read, "x").empty());
    } else {
      RC_ASSERT(!write_design(*read.checked.value).empty() || read.checked.value->given.empty());
    }
  }));
}

TEST_CASE("a layout cut off anywhere is answered") {
  const std::string text = layout("frame-shop").text;
  for (std::size_t end = 0; end < text.size(); end += 7) {
    INFO(end);
    check_sentences(read_design(text.substr(0, end)));
  }
}

TEST_CASE("a layout with one character changed is answered, and most of the file is still read") {
  const std::string text = layout("frame-shop").text;
  CHECK(rc::check("one character", [&] {
    std::string other = text;
    const auto at = static_cast<std::size_t>(drawn(0, static_cast<int>(text.size()) - 1));
    other[at] = static_cast<char>(drawn(1, 255));
    const ReadDesign read = read_design(other);
    check_sentences(read);
    RC_LOG() << at << "\n" << problems_text(read, "shop", 100);
    RC_ASSERT(read.checked.said.size() <= 12);
  }));
}

TEST_CASE("large nonsense is answered soon") {
  for (const std::string& piece :
       {std::string("[room]\n"), std::string("[[room]]\nname = \"a\"\n"), std::string("a.b.c = ["), std::string("\"\n"),
        std::string("{a="), std::string("[["), std::string("x = 1\n"), std::string("a."), std::string("'\"=\n")}) {
    std::string text;
    while (text.size() < 200000) text += piece;
    INFO(piece);
    check_sentences(read_design(text));
  }
  std::string blanks;
  while (blanks.size() < 200000) blanks += "1 ";
  CHECK(problems("[insulation]\nunder = \"" + blanks + "\"") ==
        "shop.toml:2:9: under is too long a text for a value.\n");
  CHECK(problems("[slab]\noutline = [\"" + blanks + "\"]") == "shop.toml:2:12: outline takes short texts in quotes.\n");
  std::string outline = "[slab]\noutline = [";
  for (int i = 0; i < 20000; ++i) outline += "\"" + std::to_string(i) + " ft, 0 ft\", ";
  CHECK(problems(outline + "]") == "shop.toml:2:11: outline has more than 100 items.\n");
}
