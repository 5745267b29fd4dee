// The program as a person runs it: words in, words and exit code out.
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "program.hpp"
#include "support/table.hpp"

using namespace slabwright::test;
namespace fs = std::filesystem;

namespace {

std::string layout(const std::string& name) { return std::string(SLABWRIGHT_ROOT) + "/layouts/" + name + ".toml"; }

}  // namespace

TEST_CASE("slabwright alone explains itself on one screen") {
  const Ran ran = run("");
  CHECK(ran.code == 0);
  std::istringstream lines(ran.out);
  int count = 0;
  for (std::string line; std::getline(lines, line); ++count) CHECK(line.size() <= 80);
  CHECK(count <= 24);
}

TEST_CASE("exit codes by layout and command") {
  for (const std::string command : {"design", "freeze --quick"}) {
    CHECK(run(command + " " + layout("frame-shop")).code == 0);
    CHECK(run(command + " " + layout("ten-lines")).code == 0);
    CHECK(run(command + " " + layout("cold-door")).code == 3);
  }
  CHECK(run("balance " + layout("cold-door")).code == 0);
  CHECK(run("check " + layout("cold-door")).code != 2);
}

TEST_CASE("the three short questions need no file") {
  CHECK(run("design --size '36 x 30 ft' --spacing '12 in'").code == 0);
  CHECK(run("balance --tube '1/2 in' --lengths '188 241 262 290 ft'").code == 0);
  CHECK(run("freeze --quick --size '36 x 30 ft' --outdoor '-12 F'").code == 0);
  CHECK(run("design --area '100 m2' --poured 4 --outdoor '-20 C'").code == 0);
}

TEST_CASE("a question that lacks what it needs exits with 2 and says what to give") {
  const Ran ran = run("freeze --size '36 x 30 ft'");
  CHECK(ran.code == 2);
  CHECK(ran.out.find("--outdoor") != std::string::npos);
}

TEST_CASE("the winter from a file or a few words, quickly, and as tables") {
  const Folder folder;
  CHECK(run("winter --quick " + layout("cold-door")).code == 3);
  CHECK(run("winter " + layout("frame-shop") + " --out " + folder.file("year")).code != 2);
  CHECK(fs::exists(folder.file("year/winter-ways.csv")));
  CHECK(fs::exists(folder.file("year/winter-hours.csv")));
  const Ran ran = run("winter --size '36 x 30 ft' --outdoor '-12 F'");
  CHECK(ran.code != 2);
  CHECK(ran.out.find("electricity.price") != std::string::npos);
  CHECK(run("winter --size '36 x 30 ft'").code == 2);
  CHECK(run("winter --help").out.find("electricity.price") != std::string::npos);
}

TEST_CASE("new writes a valid file and never over one that is there") {
  const Folder folder;
  const std::string file = folder.file("my-shop.toml");
  CHECK(run("new " + file + " --size '36 x 30 ft' --outdoor '-12 F'").code == 0);
  CHECK(run("check " + file).code == 0);
  std::ofstream(file, std::ios::app) << "# mine\n";
  CHECK(run("new " + file + " --size '20 x 20 ft'").code == 2);
  std::ifstream in(file);
  std::ostringstream text;
  text << in.rdbuf();
  CHECK(text.str().find("# mine") != std::string::npos);
  CHECK(text.str().find("20 x 20") == std::string::npos);
}

TEST_CASE("wrong words get one sentence and 64") {
  for (const std::string words : {"desgn x.toml", "design --sze '3 ft'", "design --size", "design a.toml b.toml"}) {
    INFO(words);
    const Ran ran = run(words);
    CHECK(ran.code == 64);
    CHECK(!ran.out.empty());
  }
  CHECK(run("design --units US --units SI").out.find("--units stands there more than once.") == 0);
  CHECK(run("design --full=banana").out.find("--full is a switch") == 0);
  CHECK(run("design --units").out.find("--units needs a value") == 0);
  CHECK(run("desgn x.toml").out.find("did you mean \"design\"?") != std::string::npos);
}

TEST_CASE("a bad file is told whole, on stderr, and nothing is printed or written") {
  const Folder folder;
  std::ofstream(folder.file("bad.toml"))
      << "[slab]\nsize = \"36 x 30 ft\"\nthickness = 5\n[tubing]\nspacing = \"12 in\"\n";
  const Ran out_only = run("design " + folder.file("bad.toml") + " --out " + folder.file("out"), "2>/dev/null");
  CHECK(out_only.code == 2);
  CHECK(out_only.out.empty());
  CHECK_FALSE(fs::exists(folder.file("out")));
  const Ran both = run("design " + folder.file("bad.toml"));
  CHECK(both.out.find("bad.toml:3:") != std::string::npos);
  CHECK(both.out.find("bad.toml:4:") != std::string::npos);
}

TEST_CASE("the same question gives the same bytes, and --out writes tables") {
  const Folder folder;
  const std::string words = "design " + layout("potting-house") + " --json";
  CHECK(run(words).out == run(words).out);
  CHECK(run("balance " + layout("frame-shop") + " --out " + folder.file("cards")).code == 0);
  CHECK(fs::exists(folder.file("cards/loops.csv")));
  CHECK(fs::exists(folder.file("cards/balance.csv")));
}

TEST_CASE("options win over the file, and both are shown") {
  const Ran ran = run("freeze --quick " + layout("ten-lines") + " --edge R-10 --door R-10");
  CHECK(ran.code == 0);
  CHECK(ran.out.find("as written") != std::string::npos);
  CHECK(ran.out.find("as tried") != std::string::npos);
}

TEST_CASE("the file may stand behind --set") {
  CHECK(run("check --set slab.mats='20 %' --set tube.spacing='9 in' " + layout("ten-lines")).code == 0);
}

TEST_CASE("no progress is shown in a pipe, however long the work") {
  for (const std::string& words : {"route " + layout("county-garage"), "freeze " + layout("ten-lines")})
    CHECK(run(words, "2>&1 >/dev/null").out.empty());
}

TEST_CASE("the next command is one that the program takes") {
  const Folder folder;
  const std::string shop = layout("ten-lines"), out = " --out " + folder.file("cards");
  const auto next = [](const std::string& words) {
    const std::string all = run(words).out, lead = "Next:  slabwright ";
    return all.substr(all.find(lead) + lead.size());
  };
  for (const std::string& words :
       {"sheets " + shop + " --quick --edge R-10" + out, "balance " + shop + out, "winter --wide --quick " + shop,
        "freeze --quick --out=" + folder.file("cold") + " " + shop}) {
    const std::string told = next(words);
    INFO(words << "\n" << told);
    CHECK(told.find(shop) != std::string::npos);
    CHECK(told.find("--out") == std::string::npos);
    CHECK(told.find("--quick") == std::string::npos);
    CHECK(told.find("--wide") == std::string::npos);
  }
  CHECK(next("sheets " + shop + " --edge R-10 --quick" + out).find("--edge R-10") != std::string::npos);
}

TEST_CASE("an endless design file is not read to its end") {
  const Ran endless = run("check /dev/zero");
  CHECK(endless.code == 2);
  CHECK(endless.out.find("the file has more than 1000 kB; a design file has less.") != std::string::npos);
}
