// balance with readings, as a person at the manifold asks it.
#include <fstream>
#include <sstream>
#include <string>

#include "program.hpp"

using namespace slabwright::test;

namespace {

const std::string four = "balance --tube '1/2 in' --lengths '188 241 262 290 ft' ";
const std::string layouts = SLABWRIGHT_ROOT "/layouts/";

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

void check_page(const Ran& ran) {
  std::istringstream lines(ran.out);
  int count = 0;
  for (std::string line; std::getline(lines, line); ++count) CHECK(line.size() <= 80);
  CHECK(count <= 45);
}

std::string written(const Folder& folder, const std::string& text) {
  std::ofstream(folder.file("meters.csv"), std::ios::binary) << text;
  return folder.file("meters.csv");
}

}  // namespace

TEST_CASE("a loop that reads a third is named, with what to do") {
  const Ran ran = run(four + "--read '0.73 0.64 0.2 0.57'");
  CHECK(ran.code == 0);
  CHECK(has(ran.out, "LOOK AT PORT 3 (loop 3): it shows less than it should."));
  CHECK(has(ran.out, "choked to"));
  CHECK(has(ran.out, "To part them: "));
  CHECK(has(ran.out, "CLEAR PORT 3 FIRST"));
  CHECK_FALSE(has(ran.out, "then set"));
  check_page(ran);
}

TEST_CASE("what all show is called healthy, and two ports changed over are seen") {
  const Ran healthy = run(four + "--read '0.72 0.64 0.62 0.56'");
  CHECK(healthy.code == 0);
  CHECK(has(healthy.out, "NOTHING IS WRONG that these readings can show."));
  check_page(healthy);
  // Meters true to a hundredth tell 100 ft from 300 ft.
  const Ran swapped =
      run("balance --tube '1/2 in' --lengths '100 200 300 ft' --read '0.56 0.7 1.0' --meter-error '3 %'");
  CHECK(has(swapped.out, "PORTS 1 AND 3"));
  CHECK(has(swapped.out, "then set"));
  check_page(swapped);
}

TEST_CASE("a port that reads nothing is to be cleared, a port that was not read is none") {
  const Ran stands = run(four + "--read '0.73 0.64 0 0.57'");
  CHECK(stands.code == 0);
  CHECK(has(stands.out, "LOOK AT PORT 3"));
  CHECK(has(stands.out, "CLEAR PORT 3 FIRST"));
  const Ran unread = run(four + "--read '0.73 0.64 - 0.57'");
  CHECK(unread.code == 0);
  CHECK_FALSE(has(unread.out, "LOOK AT PORT 3"));
}

TEST_CASE("clumsy words get a sentence each, exit code 2, and nothing on stdout") {
  const std::pair<const char*, const char*> cases[] = {
      {"0.73 0.64 0.2", "--read: 3 readings for 4 loops: write one for each port, and - where none was taken"},
      {"0,73 0,64 0,2 0,57", "--read: decimal comma: write 0.73"},
      {"2.9 2.5 2.4 2.2", "were they L/min? Write the unit behind the last"},
      {"0 0 0 0", "no port shows any flow"},
      {"a b c d", "--read: "}};
  for (const auto& [words, sentence] : cases) {
    INFO(words);
    const Ran ran = run(four + "--read '" + words + "'");
    CHECK(ran.code == 2);
    CHECK(has(ran.out, sentence));
    CHECK(has(ran.out, "Nothing was computed, nothing was written."));
    CHECK(run(four + "--read '" + words + "'", "2>/dev/null").out.empty());
  }
  CHECK(run(four + "--read ''").code == 64);
  CHECK(run(four + "--read '1 1 1 1' --readings m.csv").code == 64);
  CHECK(run(four + "--water '95 F'").code == 64);
  CHECK(run("design --size '36 x 30 ft' --read '1 1'").code == 64);
}

TEST_CASE("a table's problems carry file, line and column, with those of options") {
  const Folder folder;
  const std::string csv = written(folder, "loop, flow (gpm)\n1, 0.73\n2, 0,64\n5, 0.2\n");
  const Ran ran = run(four + "--readings " + csv + " --water 95");
  CHECK(ran.code == 2);
  CHECK(has(ran.out, csv + ":3:"));
  CHECK(has(ran.out, csv + ":4:1: there is no loop or port \"5\" here"));
  CHECK(has(ran.out, "--water: \"95\" has no unit: write --water \"95 F\""));
  CHECK(run(four + "--readings " + folder.file("none.csv")).code == 2);
  CHECK(has(run(four + "--readings " + folder.file("none.csv")).out, "there is no file of readings"));
  CHECK(has(run(four + "--readings " + folder.path.string()).out, "is a folder"));
  CHECK(has(run(four + "--readings " + written(folder, "")).out, "there is nothing in it"));
}

TEST_CASE("the old pour's readings give lengths, the odd loop, and text for its file") {
  const Ran ran = run("balance " + layouts + "old-pour.toml --readings " + layouts + "old-pour-readings.csv");
  CHECK(ran.code == 0);
  CHECK(has(ran.out, "PORT 4 (loop 4) IS ODD"));
  CHECK(has(ran.out, "LENGTHS THAT FIT"));
  check_page(ran);
  const std::size_t begin = ran.out.find("loop = [");
  REQUIRE(begin != std::string::npos);
  const std::string rows = ran.out.substr(begin, ran.out.find(']', begin) + 1 - begin);
  std::ifstream plain(layouts + "old-pour.toml");
  std::stringstream text;
  text << rows << '\n' << plain.rdbuf();
  const Folder folder;
  std::ofstream(folder.file("mine.toml")) << text.str();
  const Ran again = run("balance " + folder.file("mine.toml") + " --readings " + layouts + "old-pour-readings.csv");
  CHECK(again.code == 0);
  CHECK(has(again.out, "PORT 4"));
}

TEST_CASE("the same readings give the same bytes, and a program its keys") {
  const std::string words = four + "--read '0.73 0.64 0.2 0.57'";
  CHECK(run(words).out == run(words).out);
  const Ran json = run(words + " --json");
  CHECK(json.code == 0);
  for (const char* key : {"\"readings\"", "\"read_back\"", "\"ranked\"", "\"probability_share\"", "\"settings\"",
                          "\"apart_number\"", "\"common_share\""})
    CHECK(has(json.out, key));
  const Ran fitted = run("balance " + layouts + "old-pour.toml --json --readings " + layouts + "old-pour-readings.csv");
  for (const char* key : {"\"fitted\"", "\"odd_loop\"", "\"error_m\"", "\"settings\""}) CHECK(has(fitted.out, key));
  CHECK(run(words + " --full").code == 0);
}
