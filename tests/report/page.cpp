// What a page keeps to, whatever is put on it.
#include "report/ledger.hpp"
#include "sample.hpp"
#include "support/catch.hpp"

using namespace slabwright::report;
using namespace slabwright::test;

TEST_CASE("words wrap at the page's width and units stay with their numbers") {
  CHECK(wrapped("a bb ccc", 4) == std::vector<std::string>{"a bb", "ccc"});
  CHECK(wrapped("at 12 ft", 5) == std::vector<std::string>{"at", "12 ft"});
  CHECK(wrapped("to 49 F ~. Then", 9) == std::vector<std::string>{"to", "49 F ~.", "Then"});
  CHECK(wrapped("about 10 %.", 8) == std::vector<std::string>{"about", "10 %."});
  CHECK(wrapped("abcdefgh", 3) == std::vector<std::string>{"abc", "def", "gh"});
  CHECK(wrapped("", 10).empty());
}

TEST_CASE("only plain ASCII reaches a page") {
  CHECK(ascii("T\xC3\xB6pferhaus") == "Topferhaus");
  CHECK(ascii("36\xC2\xB0"
              "F \xE2\x80\x9Cx\xE2\x80\x9D") == "36F \"x\"");
  CHECK(ascii("\xE6\xB8\xA9\xE5\xAE\xA4") == "??");
  CHECK(ascii("a\tb\xFF") == "a?b?");
}

TEST_CASE("a row of the ledger keeps its columns over several lines") {
  Page page;
  add_row(page, "To buy", "boiler", std::string(60, 'x') + " end");
  REQUIRE(page.lines.size() == 2);
  CHECK(page.lines[0].substr(0, 25) == "To buy      boiler      x");
  CHECK(page.lines[1].substr(0, 24) == std::string(24, ' '));
  CHECK(page.lines[0].size() == page_width);
}

TEST_CASE("a table gives one column what the others leave") {
  Page page;
  add_table(page, {{left_column("place"), {"ft", "m"}}, {{std::string(70, 'a') + " b", "1,234,567"}}, 0});
  REQUIRE(page.lines.size() >= 4);
  CHECK(page.lines[0] == "  place" + std::string(62, ' ') + "         ft");
  for (const std::string& line : page.lines) CHECK(line.size() <= page_width);
  CHECK(page.lines[2].substr(page.lines[2].size() - 9) == "1,234,567");
}

TEST_CASE("a table whose numbers do not fit is a fault of ours") {
  Page page;
  CHECK_THROWS_AS(add_table(page, {{left_column(""), {"x"}}, {{"a", std::string(90, '9')}}, 0}), std::logic_error);
}

TEST_CASE("an empty line is not doubled") {
  Page page;
  add_gap(page);
  CHECK(page.lines.empty());
  add_text(page, "a");
  add_gap(page);
  add_gap(page);
  CHECK(page.lines == std::vector<std::string>{"a", ""});
}
