// Bad files and what is said about each, compared whole. A file of tests/hostile begins with its problems as remarks,
// "# line:column: sentence"; what cannot hold a remark stands in the table below. What a reader in metric units is told
// instead stands in tests/golden/hostile-si.txt; SLABWRIGHT_WRITE=1 writes that anew, to be read again by somebody.
#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <vector>

#include "design/support.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr std::string_view last_line = "Nothing was computed, nothing was written.\n";

/// The remarks at the front, as problems_text() prints them for a file of this name.
std::string expected_of(const std::string& text, const std::string& name) {
  std::istringstream lines(text);
  std::string expected, line;
  int shown = 0, all = 0;
  while (std::getline(lines, line) && line.compare(0, 2, "# ") == 0) {
    if (++all > 10) continue;
    expected += name + ":" + line.substr(2) + "\n";
    ++shown;
  }
  if (all > shown) expected += "... and " + std::to_string(all - shown) + " more\n";
  return expected + std::string(last_line);
}

std::vector<std::string> hostile_names() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(SLABWRIGHT_ROOT "/tests/hostile")) {
    if (entry.path().extension() == ".toml") names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::string repeated(std::string_view piece, int times) {
  std::string text;
  for (int i = 0; i < times; ++i) text += piece;
  return text;
}

std::string one_line(const std::string& sentence) { return "bad.toml:" + sentence + "\n" + std::string(last_line); }

}  // namespace

TEST_CASE("every hostile file gets the sentences it deserves and no more") {
  const std::vector<std::string> names = hostile_names();
  CHECK(names.size() >= 200);
  for (const std::string& name : names) {
    const std::string text = read_text("tests/hostile/" + name);
    INFO(name);
    const ReadDesign read = read_design(text);
    CHECK_FALSE(read.checked);
    CHECK(problems_text(read, name) == expected_of(text, name));
  }
}

TEST_CASE("every hostile file gets its sentences in metric units too") {
  std::string page;
  for (const std::string& name : hostile_names()) {
    const std::string text = read_text("tests/hostile/" + name);
    const std::string us = problems_text(read_design(text), name);
    const std::string si = problems_text(read_design("units = \"SI\" " + text), name);
    if (si != us) page += si;
  }
  const char* golden = "tests/golden/hostile-si.txt";
  if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(SLABWRIGHT_ROOT "/" + std::string(golden)) << page;
  CHECK(read_text(golden) == page);
}

TEST_CASE("files that hold no remark") {
  struct Bad {
    std::string what, text, sentence;
  };
  const std::string empty =
      "1:1: the file is empty. A first line or two: [slab], and below it size = \"36 ft x 30 ft\".";
  const std::string no_text = " this is no text file. A design file is plain text, saved as UTF-8.";
  const std::string two_byte = " this is two-byte text that makes no sense. Save the file as UTF-8.";
  const std::string nested = "1:1: brackets or dots nested too deep. A value is one text, or one list of texts.";
  const std::vector<Bad> files{
      {"empty", "", empty},
      {"blank", " \n\t\n\r\n", empty},
      {"remarks alone", "# a shop\n  # to be\n", empty},
      {"a mark alone", "\xEF\xBB\xBF", empty},
      {"binary",
       std::string("\x7F"
                   "ELF\x02\x01\x01\0\0\0\0",
                   11),
       no_text},
      {"control characters", "[slab]\n\x01\x02\x03\x04", no_text},
      {"a zero byte", std::string("[slab]\nsize = \"36 ft\0 x 30 ft\"\n", 31), no_text},
      {"two-byte text cut in half", std::string("\xFF\xFE[\0s", 5), two_byte},
      {"two-byte text with half a pair", std::string("\xFF\xFE\x00\xD8[\0", 6), two_byte},
      {"too large", repeated("# a remark that goes on and on\n", 40000),
       " the file has more than 1000 kB; a design file has less."},
      {"another encoding",
       "[climate]\noutdoor = \"-17 \xB0"
       "F\"\n",
       "2:16: a character in another encoding. Save the file as UTF-8."},
      {"half a character", "[project]\nname = \"caf\xC3\"\n",
       "2:12: a character in another encoding. Save the file as UTF-8."},
      {"deep brackets", "x = " + repeated("[", 5000), nested},
      {"deep closed brackets", "x = " + repeated("[", 5000) + repeated("]", 5000), nested},
      {"deep dots", repeated("a.", 50000) + "a = 1", nested},
      {"deep dots in a table", "x = {" + repeated("a.", 50000) + "a = 1}", nested},
      {"deep tables", "x = " + repeated("{ a = ", 5000) + "1" + repeated("}", 5000), nested},
      {"no newline, half a header", "[", "1:1: a section without a name. Write [slab], for example."},
  };
  for (const Bad& file : files) {
    INFO(file.what);
    const ReadDesign read = read_design(file.text);
    CHECK_FALSE(read.checked);
    CHECK(problems_text(read, "bad.toml") == one_line(file.sentence));
  }
}

TEST_CASE("too many of a kind") {
  const std::string last = problems_text(read_design(repeated("x = 1\n", 100000)), "bad.toml");
  CHECK(last.find("... and 990 or more\n") != std::string::npos);
  const std::string rooms = problems(repeated("[[room]]\n", 250));
  CHECK(rooms ==
        "shop.toml:41:1: more than 40 of [[room]]: leave some out, or cut the floor into designs of their own.\n");
  const std::string loops = problems(repeated("[[loop]]\nlength = \"200 ft\"\n", 250));
  CHECK(loops ==
        "shop.toml:401:1: more than 200 of [[loop]]: leave some out, or cut the floor into designs of their own.\n");
  const std::string header = problems("[" + repeated("a.", 100000) + "a]\n");
  CHECK(header.size() < 500);
  CHECK(header.find("shop.toml:1:1: no section [a.a.a.") == 0);
}
