// cure and gauge, as a person asks them.
#include <fstream>
#include <sstream>
#include <string>

#include "program.hpp"

using namespace slabwright::test;

namespace {

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

void fits_a_screen(const std::string& text) {
  std::istringstream lines(text);
  int count = 0;
  for (std::string line; std::getline(lines, line); ++count) {
    INFO(line);
    CHECK(line.size() <= 80);
  }
  CHECK(count <= 45);
}

struct Asked {
  std::string words, sentence;
};

}  // namespace

TEST_CASE("when may heat come on, with dates, from a file, options or nothing but the day") {
  const Folder folder;
  const std::string file = folder.file("shop.toml");
  std::ofstream(file)
      << "[project]\npoured = 2028-02-01\n[slab]\nsize = \"36 x 30 ft\"\n[climate]\noutdoor = \"-12 F\"\n";
  const Ran own = run("cure " + file);
  CHECK(own.code == 0);
  CHECK(has(own.out, "HEAT MAY COME ON FROM TUESDAY 2028-02-29, 28 days after the pour"));
  fits_a_screen(own.out);
  const Ran other = run("cure " + file + " --poured 2026-12-14");
  CHECK(has(other.out, "MONDAY 2027-01-11"));
  CHECK(has(other.out, "ACI 306"));
  fits_a_screen(other.out);
  const Ran bare = run("cure --poured 2026-09-14");
  CHECK(bare.code == 0);
  CHECK(has(bare.out, "MONDAY 2026-10-12"));
  fits_a_screen(bare.out);
  const Ran undated = run("cure " + file + " --set project.poured=");
  CHECK(undated.code == 2);
  const Ran json = run("cure --json --poured 2026-09-14");
  for (const char* key : {"\"cure\"", "\"heat_date\": \"2026-10-12\"", "\"pressure_test\"", "\"supply_degC\""})
    CHECK(has(json.out, key));
}

TEST_CASE("the longest calendar fits a screen, and is whole with --full") {
  const std::string words =
      "cure --size '36 x 30 ft' --outdoor '-40 F' --spacing '18 in' --poured 2026-12-14 --set slab.daily_rise='1 F' "
      "--set slab.topping='2 in' --set slab.topping_above_tube='1 in' --set project.name='a shop of a name'";
  const Ran brief = run(words);
  CHECK(brief.code == 0);
  CHECK(has(brief.out, "every day with --full"));
  CHECK(has(brief.out, "EN 1264-4"));
  fits_a_screen(brief.out);
  const Ran full = run(words + " --full");
  CHECK_FALSE(has(full.out, "every day with --full"));
  CHECK(has(full.out, "IRC M2101.10"));
}

TEST_CASE("--poured is a day for cure and sheets, and a number of loops for the others") {
  CHECK(run("design --size '40 x 24 ft' --outdoor '-5 F' --poured 5").code == 0);
  const Ran day = run("design --size '40 x 24 ft' --poured 2026-09-14");
  CHECK(day.code == 64);
  CHECK(has(day.out, "--poured takes the number of loops here"));
  const Ran loops = run("cure --poured 5");
  CHECK(loops.code == 2);
  CHECK(has(loops.out, "--poured: \"5\" is no date as it is read here. Write year, month and day: \"2026-09-14\"."));
  CHECK(has(run("cure --poured 2026-02-30").out, "February 2026 has 28 days"));
  CHECK(run("cure --poured ''").code == 64);
  CHECK(has(run("cure --help").out, "the day of the pour"));
  CHECK(has(run("design --help").out, "how many loops"));
}

TEST_CASE("is the pressure test leaking, with exit codes") {
  const Ran holds = run("gauge --then '60 psi at 70 F' --now '53 psi at 20 F'");
  CHECK(holds.code == 0);
  CHECK(has(holds.out, "IT HOLDS"));
  CHECK(has(holds.out, "52.9 psi at 20 F"));
  fits_a_screen(holds.out);
  const Ran leaks = run("gauge --then '4 bar at 20 C' --now '3 bar at 18 C' --after '20 h'");
  CHECK(leaks.code == 3);
  CHECK(has(leaks.out, "IT LEAKS"));
  CHECK(has(leaks.out, "bar an hour"));
  CHECK_FALSE(has(leaks.out, "psi"));
  fits_a_screen(leaks.out);
  const Ran later = run("gauge --then '60 psi at 70 F' --now '49 psi at 20 F' --after '16 h'");
  CHECK(later.code == 2);
  CHECK(has(later.out, "in 8 hours"));
  CHECK(has(run("gauge --then '60 psi at 70 F' --now '49 psi at 20 F'").out, "24 hours after the first reading"));
  const Ran water = run("gauge --then '6 bar at 20 C' --now '5.5 bar at 12 C' --test water");
  CHECK(water.code == 2);
  CHECK(has(water.out, "corrects nothing"));
  fits_a_screen(water.out);
  CHECK(has(run("gauge --then '6 bar at 2 C' --now '5.5 bar at -3 C' --test water").out, "ice"));
  CHECK(run("gauge --then '60 psig at 70°F' --now '60 psi at 70 F'").code == 0);
}

TEST_CASE("errors and altitude that are given move the gauge's answer") {
  const std::string words = "gauge --then '60 psi at 70 F' --now '49 psi at 20 F' --json";
  const std::string base = run(words).out;
  for (const char* more : {"--gauge-error '0.5 psi'", "--thermometer-error '5 F'", "--altitude '5,300 ft'",
                           "--after 5h", "--test water"}) {
    INFO(more);
    CHECK(run(words + " " + more).out != base);
  }
  CHECK(run("gauge --then '60 psi at 70 F' --now '49 psi at 20 F' --gauge-error '0.5 psi'").code == 3);
}

TEST_CASE("a reading that is none gets one sentence") {
  const std::string now = " --now '53 psi at 20 F'";
  for (const Asked& asked : {
           Asked{"gauge", "gauge needs two readings"},
           {"gauge --then '60 psi at 70 F'", "gauge needs two readings"},
           {"gauge --then '60 psi'" + now, "--then takes a pressure at a temperature"},
           {"gauge --then '60 at 70 F'" + now, "each number needs its unit"},
           {"gauge --then '60 psi at 70'" + now, "each number needs its unit"},
           {"gauge --then '60 ft at 70 F'" + now, "--then takes a pressure at a temperature"},
           {"gauge --then '60 psia at 70 F'" + now, "over the air outside"},
           {"gauge --then '4,5 bar at 20 C'" + now, "decimal comma"},
           {"gauge --then '0 psi at 70 F'" + now, "a test begins above 0"},
           {"gauge --then '600 bar at 20 C'" + now, "See the unit"},
           {"gauge --then '60 psi at 700 F'" + now, "See the unit"},
           {"gauge --then '60 psi at 70 F' --now '-1 psi at 20 F'", "below 0"},
           {"gauge --then ''" + now, "--then has nothing between its quotes"},
           {"gauge --then '60 psi at 70 F' --test oil" + now, "--test is \"air\" or \"water\""},
           {"gauge --then '60 psi at 70 F' --gauge-error 3" + now, "--gauge-error takes a number above 0"},
           {"gauge --then '60 psi at 70 F' --gauge-error '50 psi'" + now, "tells nothing"},
           {"gauge --then '60 psi at 70 F' --thermometer-error '50 F'" + now, "tells nothing"},
           {"gauge --then '60 psi at 70 F' --after '-3 h'" + now, "--after takes a number above 0"},
           {"gauge --then '60 psi at 70 F' --altitude '90000 ft'" + now, "See the unit"},
           {"gauge shop.toml --then '60 psi at 70 F'" + now, "gauge takes no file"},
           {"gauge --them '60 psi at 70 F'" + now, "did you mean --then?"},
       }) {
    INFO(asked.words);
    const Ran ran = run(asked.words);
    CHECK(ran.code == 64);
    CHECK(has(ran.out, asked.sentence));
  }
  CHECK(has(run("gauge --help").out, "--thermometer-error"));
}
