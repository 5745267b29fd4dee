// drill, as a person asks it.
#include <fstream>
#include <sstream>
#include <string>

#include "program.hpp"

using namespace slabwright::test;

namespace {

const std::string shop = "--size '36 x 30 ft' --spacing '12 in'";
const std::string place = "--at '12 ft 4 in from west wall, 7 ft from south wall' --diameter '1/2 in' --depth '3 in'";

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("may I drill here, in words") {
  const Ran ran = run("drill " + shop + " " + place);
  CHECK((ran.code == 0 || ran.code == 3));
  CHECK(has(ran.out, "may I drill here?"));
  CHECK(has(ran.out, "12 ft 4 in"));
  CHECK(has(ran.out, "west wall"));
  CHECK(has(ran.out, "The drawn position is not the cast position"));
  CHECK(has(ran.out, "by this drawing; for tube that was laid otherwise"));
  std::istringstream lines(ran.out);
  int count = 0;
  for (std::string line; std::getline(lines, line); ++count) CHECK(line.size() <= 80);
  CHECK(count <= 45);
}

TEST_CASE("the same question gives the same bytes, and a program its keys") {
  const std::string words = "drill " + shop + " " + place;
  CHECK(run(words).out == run(words).out);
  const Ran json = run(words + " --json");
  for (const char* key : {"\"drill\"", "\"strike_share\"", "\"clear_m\"", "\"depth_margin_m\"", "\"along_m\""})
    CHECK(has(json.out, key));
}

TEST_CASE("some place over tube is not to be drilled, some is likely clear, and the exit codes tell") {
  bool clear = false, never = false;
  // Slanting across the rows, whichever way they run.
  for (int inches = 0; inches < 12; inches += 2) {
    const Ran ran = run("drill " + shop + " --at '" + std::to_string(180 + inches) + " in from west wall, " +
                        std::to_string(60 + inches) + " in from south wall' --depth '4 in'");
    clear = clear || (ran.code == 0 && has(ran.out, "LIKELY CLEAR"));
    never = never || (ran.code == 3 && has(ran.out, "DO NOT DRILL"));
  }
  CHECK(clear);
  CHECK(never);
}

TEST_CASE("what is wrong with the question is said") {
  CHECK(run("drill " + shop).code == 2);
  CHECK(has(run("drill " + shop).out, "--at"));
  CHECK(run("drill " + shop + " --at 'somewhere'").code == 64);
  // Nowhere is no question, and the file's anchors are no answer to it.
  CHECK(run("drill " + shop + " --at ''").code == 64);
  CHECK(has(run("drill " + shop + " --at ''").out, "--at has nothing between its quotes. Write --at \"12 ft"));
  CHECK(run("drill " + shop + " " + place + " --depth ''").code == 64);
  CHECK(has(run("drill " + shop + " --at '3 ft from west wall'").out, "two"));
  CHECK(run("drill " + shop + " --at '3 ft from moon wall, 2 ft from south wall'").code == 2);
  CHECK(run("drill " + shop + " " + place + " --diameter '1/2'").code == 64);
  CHECK(run("drill " + shop + " --at '3 ft, 3 ft' --depth '-3 in'").code == 64);
  CHECK(run("drill --area '1,080 ft2' --at '3 ft, 3 ft'").code == 2);
}

TEST_CASE("places where tube was found are read from a file") {
  const Folder folder;
  const std::string file = folder.file("found.txt");
  std::ofstream(file)
      << "# thermal camera\n12 ft 4 in from west wall, 7 ft from south wall\n\n3 m, 2 m ; 3.01 m, 2 m\n";
  const Ran ran = run("drill " + shop + " " + place + " --found " + file);
  CHECK((ran.code == 0 || ran.code == 3));
  CHECK(has(ran.out, "2 places"));
  std::ofstream(file) << "over there\n";
  const Ran wrong = run("drill " + shop + " " + place + " --found " + file);
  CHECK(wrong.code == 64);
  CHECK(has(wrong.out, "found.txt:1:"));
  CHECK(run("drill " + shop + " " + place + " --found " + folder.file("none.txt")).code == 64);
  const Ran endless = run("drill " + shop + " " + place + " --found /dev/zero");
  CHECK(endless.code == 64);
  CHECK(has(endless.out, "/dev/zero is no plain file."));
  std::ofstream(file) << std::string(100'001, '\n');
  CHECK(has(run("drill " + shop + " " + place + " --found " + file).out, "found.txt is too large"));
  std::ofstream(file) << std::string(500, '3') << " ft, 3 ft\n";
  CHECK(has(run("drill " + shop + " " + place + " --found " + file).out, "is too long for a place."));
  CHECK(has(run("drill " + shop + " --at '" + std::string(500, '3') + " ft, 3 ft'").out, "is too long for a place."));
}

TEST_CASE("route hands out lines, walks, coils and materials") {
  const Folder folder;
  const std::string out = folder.file("out");
  CHECK(run("route " + shop + " --out " + out).code == 0);
  for (const char* name : {"lines.csv", "walks.csv", "coils.csv", "materials.csv"})
    CHECK(std::filesystem::exists(std::filesystem::path(out) / name));
}
