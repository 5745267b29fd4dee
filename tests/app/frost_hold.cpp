// freeze and its own options, as a person runs them.
#include <fstream>

#include "program.hpp"
#include "support/catch.hpp"

using namespace slabwright::test;

namespace {

std::string layout(const std::string& name) { return std::string(SLABWRIGHT_ROOT) + "/layouts/" + name + ".toml"; }

bool has(const Ran& ran, const std::string& part) { return ran.out.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("--explain shows the arithmetic and nothing else, with and without a file") {
  const Ran ran = run("freeze " + layout("ten-lines") + " --explain --quick");
  CHECK(ran.code == 0);
  CHECK(has(ran, "AT THE WALL THERMOSTAT"));
  CHECK(has(ran, "so the dial is asked for ("));
  CHECK_FALSE(has(ran, "Tonight"));
  CHECK(has(run("freeze --size '36 x 30 ft' --outdoor '-12 F' --explain --quick"), "gain x dial"));
}

TEST_CASE("--quick leaves the bands out and says so") {
  const Ran quick = run("freeze " + layout("ten-lines") + " --quick");
  CHECK(quick.code == 0);
  CHECK(has(quick, "out --quick."));
  CHECK_FALSE(has(quick, "95 of 100"));
  CHECK(has(run("freeze --help"), "--quick"));
}

TEST_CASE("options of freeze belong to no other command") {
  CHECK(run("design " + layout("ten-lines") + " --quick").code == 64);
  CHECK(run("balance " + layout("ten-lines") + " --explain").code == 64);
  CHECK_FALSE(has(run("design --help"), "--explain"));
}

TEST_CASE("in a pipe nothing shows how far it is") {
  const Ran errors = run("freeze " + layout("ten-lines"), "2>&1 >/dev/null");
  CHECK(errors.out.empty());
  const Ran all = run("freeze " + layout("ten-lines"));
  CHECK(all.out.find('\r') == std::string::npos);
  CHECK(has(all, "95 of 100 draws"));
}

TEST_CASE("power cuts and ways back are written as tables") {
  const Folder folder;
  CHECK(run("freeze " + layout("frame-shop") + " --quick --out " + folder.file("cold")).code == 0);
  for (const char* name : {"cold/outage.csv", "cold/recovery.csv"}) CHECK(std::filesystem::exists(folder.file(name)));
}
