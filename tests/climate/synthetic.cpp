// The made-up year keeps its months, its spell and its bytes.
#include "slabwright/climate_synthetic.hpp"

#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <cstring>

#include "slabwright/climate.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// A cold inland place, round numbers.
SyntheticYear cold_place() {
  SyntheticYear of;
  of.normals.mean_degC = {-12, -9, -2, 6, 14, 19, 22, 20, 15, 8, 0, -8};
  of.normals.swing_K = {10, 10, 10, 11, 12, 12, 12, 12, 12, 11, 8, 8};
  of.normals.deviation_K = {7, 6.5, 5.5, 6, 4.5, 4, 3, 3, 4.5, 4.5, 5, 6.5};
  return of;
}

std::vector<double> made(const SyntheticYear& of) {
  const auto year = synthetic_year_degC(of);
  REQUIRE(year);
  REQUIRE(year.value->size() == 8760);
  return *year.value;
}

/// 64-bit FNV-1a over the bytes.
std::uint64_t hash_of(const std::vector<double>& values) {
  std::uint64_t hash = 14695981039346656037u;
  for (const double value : values) {
    unsigned char bytes[sizeof value];
    std::memcpy(bytes, &value, sizeof value);
    for (const unsigned char byte : bytes) hash = (hash ^ byte) * 1099511628211u;
  }
  return hash;
}

double worst_month_K(const std::vector<double>& year, const Monthly& mean_degC) {
  const Monthly found = month_means_degC(year);
  double worst = 0.0;
  for (std::size_t month = 0; month < 12; ++month) worst = std::max(worst, std::abs(found[month] - mean_degC[month]));
  return worst;
}

/// What a spell promises: every day reaches its lowest, which is the year's, and no other day is colder on the mean.
void check_spell(const std::vector<double>& year, const ColdSpell& spell) {
  CHECK(year[lowest_hour(year)] == spell.lowest_degC);
  const std::vector<double> means = day_means_degC(year), swings = day_swings_K(year);
  const auto first = static_cast<std::size_t>(spell.first_day);
  for (std::size_t day = 0; day < 365; ++day) {
    const bool within = day >= first && day < first + static_cast<std::size_t>(spell.days);
    if (within)
      CHECK(*std::min_element(year.begin() + static_cast<std::ptrdiff_t>(24 * day),
                              year.begin() + static_cast<std::ptrdiff_t>(24 * day + 24)) == spell.lowest_degC);
    if (within) CHECK(swings[day] == Approx(spell.swing_K));
    if (!within) CHECK(means[day] >= means[first]);
  }
}

}  // namespace

TEST_CASE("months have their means, with a spell and without") {
  SyntheticYear of = cold_place();
  CHECK(worst_month_K(made(of), of.normals.mean_degC) < 1e-11);
  of.spell = ColdSpell{24, 4, -38.0, 12.0, 1};
  const std::vector<double> year = made(of);
  CHECK(worst_month_K(year, of.normals.mean_degC) < 1e-11);
  check_spell(year, *of.spell);
  // Half an hour into a blending day the share is 1/48, so the day before the spell begins in its own weather.
  double jump = 0.0;
  for (std::size_t hour = 1; hour < year.size(); ++hour) jump = std::max(jump, std::abs(year[hour] - year[hour - 1]));
  CHECK(jump < 6.0);
}

TEST_CASE("the same seed gives the same bytes, another seed another year") {
  SyntheticYear of = cold_place();
  of.spell = ColdSpell{10, 3, -36.0, 10.0, 2};
  const std::vector<double> once = made(of), again = made(of);
  CHECK(std::memcmp(once.data(), again.data(), once.size() * sizeof(double)) == 0);
  // The bytes of g++ and clang; a change of the recipe changes them, and the commit has to say so.
  CHECK(hash_of(once) == 0xb08d93bda2849bedu);
  of.seed = 2;
  CHECK(made(of) != once);
}

TEST_CASE("twenty seeds come near the spread and the swing asked for") {
  SyntheticYear of = cold_place();
  double spread = 0.0, swing = 0.0;
  for (of.seed = 1; of.seed <= 20; ++of.seed) {
    const MonthlyNormals normals = normals_of(made(of));
    for (std::size_t month = 0; month < 12; ++month) {
      spread += normals.deviation_K[month] / of.normals.deviation_K[month] / 240.0;
      swing += normals.swing_K[month] / of.normals.swing_K[month] / 240.0;
    }
  }
  CHECK(spread == Approx(1.0).margin(0.1));
  // From midnight to midnight the weather drifts, which adds to the wave.
  CHECK(swing == Approx(1.0).margin(0.1));
}

TEST_CASE("where the seasons are level, spread and persistence are those of a month cut out of an endless series") {
  SyntheticYear of = cold_place();
  of.normals.mean_degC.fill(0.0);
  of.normals.deviation_K.fill(5.0);
  double spread = 0.0, persistence = 0.0;
  for (of.seed = 1; of.seed <= 40; ++of.seed) {
    const std::vector<double> year = made(of);
    for (const double each : normals_of(year).deviation_K) spread += each / 5.0 / 480.0;
    persistence += day_persistence(year) / 40.0;
  }
  // A mean of 31 days varies with 0.167 of a day's variance at persistence 0.7; taking it away leaves 0.833 of the
  // variance, of which a sample shows 31/30, and (0.7 - 0.167) / 0.833 of the persistence.
  CHECK(spread == Approx(std::sqrt(0.833 * 31.0 / 30.0)).margin(0.03));
  CHECK(persistence == Approx(0.640).margin(0.03));
}

TEST_CASE("no spread and no swing leave a smooth line through the months") {
  SyntheticYear of = cold_place();
  of.normals.deviation_K = {};
  of.normals.swing_K = {};
  const std::vector<double> year = made(of);
  CHECK(worst_month_K(year, of.normals.mean_degC) < 1e-11);
  for (std::size_t hour = 1; hour < year.size(); ++hour)
    if (std::abs(year[hour] - year[hour - 1]) > 0.03) FAIL(hour);
}

TEST_CASE("any spell with room is kept, the others are refused") {
  CHECK(rc::check([] {
    SyntheticYear of = cold_place();
    of.seed = *rc::gen::arbitrary<std::uint64_t>();
    ColdSpell spell;
    spell.days = *rc::gen::inRange(1, 8);
    spell.blend_days = *rc::gen::inRange(1, 4);
    spell.first_day = *rc::gen::inRange(3, 50);
    spell.lowest_degC = *rc::gen::inRange(-450, -330) / 10.0;
    spell.swing_K = *rc::gen::inRange(0, 130) / 10.0;
    of.spell = spell;
    const std::vector<double> year = made(of);
    RC_ASSERT(worst_month_K(year, of.normals.mean_degC) < 1e-11);
    check_spell(year, spell);
  }));
  SyntheticYear mild = cold_place();
  mild.spell = ColdSpell{24, 4, -10.0, 5.0, 1};
  const auto refused = synthetic_year_degC(mild);
  REQUIRE(!refused);
  REQUIRE(refused.said.size() == 1);
  CHECK(
      say(refused.said.front(), System::si) ==
      "a cold spell of 4 days down to -10.0 C cannot be the year's coldest: the months' means leave the other days no "
      "room above it");
}

TEST_CASE("a spell of wide waves is the coldest by its days too, not by its nights alone") {
  SyntheticYear of = cold_place();
  of.spell = ColdSpell{24, 3, -34.0, 20.0, 1};
  for (of.seed = 1; of.seed <= 20; ++of.seed) check_spell(made(of), *of.spell);
}

TEST_CASE("broken contracts of a made-up year") {
  SyntheticYear of = cold_place();
  of.spell = ColdSpell{0, 3, -35.0, 10.0, 1};
  CHECK_THROWS_AS(synthetic_year_degC(of), std::logic_error);
  of.spell->first_day = 362;
  CHECK_THROWS_AS(synthetic_year_degC(of), std::logic_error);
  of = cold_place();
  of.normals.deviation_K[3] = -1.0;
  CHECK_THROWS_AS(synthetic_year_degC(of), std::logic_error);
  of = cold_place();
  of.normals.mean_degC[3] = std::nan("");
  CHECK_THROWS_AS(synthetic_year_degC(of), std::logic_error);
  of = cold_place();
  of.persistence_share = 0.2;
  CHECK_THROWS_AS(synthetic_year_degC(of), std::logic_error);
}
