// Every command on every layout: what a screen keeps to, and the golden answers. SLABWRIGHT_WRITE=1 writes those anew,
// to be read again by somebody.
#include <array>
#include <cstdlib>
#include <fstream>

#include "golden.hpp"
#include "report/ledger.hpp"
#include "sample.hpp"
#include "support/catch.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Command {
  std::string name;
  Question question;
};
const std::array<Command, 6> commands{{{"check", Question::check},
                                       {"design", Question::design},
                                       {"balance", Question::balance},
                                       {"freeze", Question::freeze},
                                       {"winter", Question::winter},
                                       {"cure", Question::cure}}};

void check_lines(const std::string& text, std::size_t most) {
  const auto lines = lines_of(text);
  CHECK(lines.size() <= most);
  CHECK(text.back() == '\n');
  for (const std::string& line : lines) {
    INFO(line);
    CHECK(line.size() <= report::page_width);
    CHECK((line.empty() || line.back() != ' '));
    for (const char c : line) CHECK((c >= 0x20 && c < 0x7F));
  }
}

/// Words for which the project has others of its own.
void check_words(const std::string& text) {
  for (const char* word : {"auxiliary", "keepout", "simulation", "probe", "setpoint", "routine", "schedule"}) {
    INFO(word);
    CHECK_FALSE(has(text, word));
  }
}

void check_golden(const std::string& text, const std::string& name) {
  const std::string path = "tests/golden/" + name + ".txt";
  if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(std::string(SLABWRIGHT_ROOT) + "/" + path) << text;
  CHECK(golden_difference(read_text(path), text) == "");
}

}  // namespace

TEST_CASE("golden answers tell a change from a rounding") {
  CHECK(golden_difference("supply  98 F ~,\nback 0.61", "supply 98 F ~, back 0.62").empty());
  CHECK(golden_difference("loses 23,100 Btu/h", "loses 23,200 Btu/h").empty());
  CHECK_FALSE(golden_difference("loses 23,100 Btu/h", "loses 23,300 Btu/h").empty());
  CHECK_FALSE(golden_difference("back 0.61", "back 0.63").empty());
  CHECK_FALSE(golden_difference("at -12 F", "at 12 F").empty());
  CHECK_FALSE(golden_difference("IT WORKS", "IT FAILS").empty());
  CHECK_FALSE(golden_difference("one two", "one").empty());
}

TEST_CASE("every command answers every layout on one screen, as it did before", "[whole]") {
  for (const Layout& one : layouts()) {
    for (const Command& command : commands) {
      INFO(one.name << " " << command.name);
      const Answer found = answer(one.file, {command.question, true});
      const std::string file = one.name + ".toml";
      const std::string text = text_of(found, {file, false, ""});
      check_lines(text, report::most_lines);
      CHECK(text == text_of(found, {file, false, ""}));
      const std::string full = text_of(found, {file, true, ""});
      check_lines(full, 10000);
      check_words(text + full);
      check_golden(text, one.name + "." + command.name);
    }
  }
}
