// Where `~` stands.
#include "sample.hpp"
#include "slabwright/report_guesses.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::report;
using namespace slabwright::test;

namespace {

Answer of_keys(const std::vector<std::pair<std::string, std::string>>& keys) {
  Answer answer;
  answer.file = from_keys(keys);
  return answer;
}

}  // namespace

TEST_CASE("a heat loss that is given leans on nothing of the building") {
  const Answer given = of_keys({{"slab.size", "36 x 30 ft"},
                                {"climate.outdoor", "-12 F"},
                                {"climate.indoor", "60 F"},
                                {"building.heat_loss", "23,000 Btu/h"},
                                {"building.big_door", "false"}});
  CHECK_FALSE(leans(given, Figure::loss));
  CHECK(leans(given, Figure::ground));
  CHECK(leans(given, Figure::heat));
  CHECK(leans(of_keys({{"slab.size", "36 x 30 ft"}, {"climate.outdoor", "-12 F"}}), Figure::loss));
}

TEST_CASE("a building that is described to the last key carries no mark on its loss") {
  std::vector<std::pair<std::string, std::string>> keys{
      {"slab.size", "36 x 30 ft"},          {"climate.outdoor", "-12 F"},
      {"climate.indoor", "60 F"},           {"building.wall_insulation", "R-19"},
      {"building.roof_insulation", "R-38"}, {"building.door_insulation", "R-6"},
      {"building.height", "12 ft"},         {"building.big_door", "false"},
      {"climate.altitude", "900 ft"},       {"building.air_changes", "0.5 per hour"}};
  CHECK_FALSE(leans(of_keys(keys), Figure::loss));
  keys.pop_back();
  CHECK(leans(of_keys(keys), Figure::loss));
  CHECK(marked("23,000 Btu/h", of_keys(keys), Figure::loss) == "23,000 Btu/h ~");
}

TEST_CASE("lengths of the file lean on nothing, lengths by count are a guess") {
  Answer answer = of_keys({{"slab.size", "36 x 30 ft"}});
  answer.loops = sample_loops();
  for (Loop& loop : answer.loops->loop) loop.from = LengthFrom::file;
  CHECK_FALSE(leans(answer, Figure::loops));
  for (Loop& loop : answer.loops->loop) loop.from = LengthFrom::count;
  CHECK(leans(answer, Figure::loops));
  Answer laid_out = of_keys({{"slab.size", "36 x 30 ft"}, {"tube.spacing", "12 in"}, {"tube.leader", "10 ft"}});
  laid_out.loops = sample_loops();
  CHECK_FALSE(leans(laid_out, Figure::loops));
}

TEST_CASE("what is bought already leans on nothing") {
  CHECK_FALSE(leans(of_keys({{"slab.size", "36 x 30 ft"}, {"boiler.power", "9 kW"}}), Figure::boiler));
  CHECK(leans(of_keys({{"slab.size", "36 x 30 ft"}}), Figure::boiler));
  CHECK_FALSE(leans(of_keys({{"slab.size", "36 x 30 ft"}, {"pump.flow", "2.5 gpm"}}), Figure::flow));
}

TEST_CASE("keys that only the winter reads count nowhere else") {
  const std::vector<std::pair<std::string, std::string>> keys{{"slab.size", "36 x 30 ft"},
                                                              {"climate.outdoor", "-12 F"}};
  auto more = keys;
  more.insert(more.end(), {{"electricity.price", "0.129 /kWh"}, {"work.days", "every day"}, {"way[1].name", "warm"}});
  const Answer plain = of_keys(keys), priced = of_keys(more);
  CHECK(given_read(plain) == 2);
  CHECK(given_read(priced) == 2);
  CHECK(guesses_read(priced).size() == guesses_read(plain).size());
  CHECK(guesses_read(plain).size() < plain.file.assumed.size());
  CHECK(is_read(plain, "work.hours"));
  CHECK_FALSE(is_read(plain, "work.days"));
}
