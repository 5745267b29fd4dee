// A weather file beside the design file, as the program finds it.
#include <fstream>

#include "climate/written.hpp"
#include "program.hpp"

using namespace slabwright::test;

namespace {

constexpr const char* nothing = "Nothing was computed, nothing was written.\n";

/// A folder with a design that names a weather file, and whatever else a test puts there.
struct Shop : Folder {
  explicit Shop(const std::string& weather) {
    std::ofstream(file("shop.toml")) << "units = \"SI\"\n[slab]\nsize = \"11 x 9 m\"\n[climate]\nweather = \""
                                     << weather << "\"\n";
  }
  void write(const std::string& name, const std::string& text) const { std::ofstream(file(name)) << text; }
  Ran ask(const std::string& words) const { return run(words + " " + file("shop.toml")); }
  /// A refusal: exit code 2, and this sentence behind the place of the key.
  void check_refused(const std::string& sentence) const {
    const Ran ran = ask("check");
    CHECK(ran.code == 2);
    CHECK(ran.out == file("shop.toml") + ":5:11: " + sentence + "\n" + nothing);
  }
};

}  // namespace

TEST_CASE("a weather file beside the design file answers what the design leaves open") {
  const Shop shop("town.epw");
  shop.write("town.epw", joined(epw_lines()));
  const Ran freeze = shop.ask("freeze --quick");
  CHECK((freeze.code == 0 || freeze.code == 3));
  CHECK(freeze.out.find("--outdoor") == std::string::npos);
  CHECK(shop.ask("check").out.find("The weather file is of Coldwell Field") != std::string::npos);
  const Ran full = shop.ask("check --full");
  CHECK(full.out.find("weather file") != std::string::npos);
  CHECK(shop.ask("freeze --quick --json").out == shop.ask("freeze --quick --json").out);
}

TEST_CASE("an option that names a weather file counts from where one is, and both answers have weather") {
  const Shop shop("town.epw");
  shop.write("town.epw", joined(epw_lines()));
  const Ran tried = run("freeze --quick " + shop.file("shop.toml") + " --set climate.weather=" + shop.file("town.epw"));
  CHECK((tried.code == 0 || tried.code == 3));
  const Ran missing = run("check --size '36 x 30 ft' --set climate.weather=no-such-town.epw");
  CHECK(missing.code == 2);
  CHECK(missing.out ==
        "--set: there is no weather file no-such-town.epw. Put it there, or take the key weather out.\n" +
            std::string(nothing));
}

TEST_CASE("a weather file that is not there") {
  const Shop shop("town.epw");
  shop.check_refused("there is no weather file " + shop.file("town.epw") +
                     ". Put it there, or take the key weather out.");
}

TEST_CASE("a folder, a device, or too large a file is no weather file") {
  const Shop folder(".");
  folder.check_refused(folder.file(".") + " is a folder. Name the weather file in it.");
  const Shop device("/dev/zero");
  device.check_refused("/dev/zero is no plain file. Name a weather file (EPW or TMY3).");
  const Shop large("large.epw");
  large.write("large.epw", std::string(8'000'001, 'x'));
  large.check_refused(large.file("large.epw") +
                      " is too large for a weather file: one year has less than 8 MB. Name another.");
  const Shop below("shop.toml/town.epw");
  CHECK(below.ask("check").code == 2);
}

TEST_CASE("a problem of the weather file names that file and its line") {
  const Shop shop("town.epw");
  FileLines lines = epw_lines();
  lines.resize(8 + 72);
  shop.write("town.epw", joined(lines));
  const Ran short_year = shop.ask("design");
  CHECK(short_year.code == 2);
  CHECK(short_year.out == shop.file("town.epw") +
                              ":80: the file ends after 72 hours; a year has 8760, or 8784 with 29 February.\n" +
                              nothing);
  shop.write("town.epw", "");
  CHECK(shop.ask("check").out.find("town.epw:1: neither EPW") != std::string::npos);
}
