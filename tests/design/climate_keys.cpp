// The coldest hour from a station's statistics, a snap of the user's own, and values known from elsewhere.
#include "design/support.hpp"
#include "slabwright/handbook_extremes.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

std::string source_of(const DesignFile& file, std::string_view path) {
  for (const Assumption& assumption : file.assumed) {
    if (assumption.path == path) return assumption.source;
  }
  return "-";
}

double coldest(const DesignFile& file) { return file.design.climate.coldest_degC.value_or(99.0); }

const std::string station =
    "units = \"SI\"\n[climate]\noutdoor = \"-20 C\"\nyearly_minimum = \"-26 C\"\nminimum_spread = \"3 K\"\n";

const std::vector<Assumption> known{{"climate.outdoor", "-25.0 C", "weather file"},
                                    {"climate.coldest", "-31.1 C", "weather file, lowest hour"},
                                    {"climate.mean", "7.7 C", "weather file"}};

}  // namespace

TEST_CASE("the coldest hour from the mean and the spread of the yearly lowest hours") {
  const DesignFile file = must_read(station);
  CHECK(coldest(file) == n_year_minimum_degC(-26.0, 3.0, 20.0));
  CHECK(source_of(file, "climate.coldest") == "20-year minimum");
  CHECK(guess(file, "climate.return_years") == "20");
  const DesignFile fifty = must_read(station + "return_years = 50\n");
  CHECK(coldest(fifty) == n_year_minimum_degC(-26.0, 3.0, 50.0));
  CHECK(coldest(fifty) < coldest(file));
  CHECK(coldest(*with_key(file, "climate.return_years", "10")) > coldest(file));
  CHECK(coldest(*with_key(file, "climate.minimum_spread", "4 K")) < coldest(file));
  CHECK(coldest(*with_key(file, "climate.yearly_minimum", "-27 C")) == Approx(coldest(file) - 1.0));
}

TEST_CASE("return_years is a guess only where it is asked for") {
  CHECK(guess(must_read("[climate]\noutdoor = \"-12 F\""), "climate.return_years") == "-");
  CHECK(guess(*with_key(must_read(station), "climate.coldest", "-40 C"), "climate.return_years") == "-");
}

TEST_CASE("an option's coldest hour wins over the file's statistics") {
  const DesignFile tried = must_read(station, {{"climate.coldest", "-33 C", "--coldest"}});
  CHECK(coldest(tried) == -33.0);
}

TEST_CASE("a snap of the user's own, day by day") {
  const DesignFile file = must_read("[climate]\nsnap = [\"-12 F\", \"-20 F\", \"-5 C\"]\n");
  REQUIRE(file.design.climate.snap.size() == 3);
  CHECK(file.design.climate.snap[1].lowest_degC == Approx((-20.0 - 32.0) / 1.8));
  CHECK(file.design.climate.snap[2].lowest_degC == -5.0);
  CHECK(guess(file, "climate.snap_days") == "-");
  CHECK(guess(must_read("[climate]\nsnap = []\n"), "climate.snap_days") == "3");
  CHECK(must_read(write_design(file)).design == file.design);
  CHECK(guess(must_read("units = \"SI\""), "climate.snap_swing") == "10 K");
}

TEST_CASE("a weather file's name is kept as it is written") {
  const DesignFile file = must_read("[climate]\nweather = \"weather/town 1.epw\"\n");
  CHECK(file.design.climate.weather == "weather/town 1.epw");
  CHECK(must_read(write_design(file)) == file);
}

TEST_CASE("what is known stands before our guesses and behind what is given") {
  const DesignFile plain = must_read("units = \"SI\"\n[climate]\naltitude = \"300 m\"\n");
  const DesignFile file = with_known(plain, known);
  CHECK(*file.design.climate.outdoor_degC == -25.0);
  CHECK(file.design.climate.mean_degC == 7.7);
  CHECK(file.design.climate.altitude_m == 300.0);
  CHECK(source_of(file, "climate.mean") == "weather file");
  CHECK(file.given == plain.given);
  const DesignFile given =
      with_known(must_read("units = \"SI\"\n[climate]\nmean = \"3 C\"\noutdoor = \"-5 C\""), known);
  CHECK(given.design.climate.mean_degC == 3.0);
  CHECK(*given.design.climate.outdoor_degC == -5.0);
  CHECK(source_of(given, "climate.mean") == "-");
}

TEST_CASE("what is known stays when other keys change") {
  const DesignFile file = with_known(must_read("units = \"SI\"\n"), known);
  for (const auto& [path, text] : std::vector<std::pair<std::string, std::string>>{
           {"building.quality", "poor"}, {"room[1].indoor", "12 C"}, {"opening[1].strip", "R-10"}}) {
    const DesignFile changed = *with_key(file, path, text);
    CHECK(changed.design.climate == file.design.climate);
    CHECK(source_of(changed, "climate.outdoor") == "weather file");
  }
  const DesignFile own = *with_key(file, "climate.mean", "5 C");
  CHECK(own.design.climate.mean_degC == 5.0);
  CHECK(source_of(own, "climate.mean") == "-");
}

TEST_CASE("the coldest hour known is a bound: a typical year hides extremes") {
  const DesignFile file = with_known(must_read("units = \"SI\"\n"), known);
  CHECK(coldest(file) == -32.0);
  CHECK(source_of(file, "climate.coldest") == "7 K below outdoor; practice");
  const DesignFile mild = *with_key(file, "climate.outdoor", "-20 C");
  CHECK(coldest(mild) == -31.1);
  CHECK(source_of(mild, "climate.coldest") == "weather file, lowest hour");
  CHECK(coldest(with_known(must_read(station), known)) == coldest(must_read(station)));
}
