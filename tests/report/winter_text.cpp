// What `winter` says, from answers made by hand.
#include <nlohmann/json.hpp>

#include "report/ledger.hpp"
#include "sample.hpp"
#include "slabwright/winter_keys.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;
using Json = nlohmann::ordered_json;

namespace {

constexpr double kWh = 3.6e6;

void check_part(const std::string& all, const std::string& part) { CHECK_THAT(all, Catch::Matchers::Contains(part)); }

/// A way that uses so much, a tenth of it in January more than in other months, a fifth of a unit of money for a kWh.
WayResult way(const std::string& name, double use_kWh, bool priced) {
  WayResult result;
  result.way.name = name;
  result.use_J = use_kWh * kWh;
  result.worst_month = 1;
  for (WayMonth& month : result.month) month.boiler_J = 0.05 * result.use_J;
  result.month[0].boiler_J = 0.45 * result.use_J;
  if (priced) {
    result.money = 0.2 * use_kWh;
    for (WayMonth& month : result.month) month.money = 0.2 * month.boiler_J / kWh;
  }
  result.peak_W = 9000.0;
  result.comfort.worked_s = 1500.0 * hour_s;
  result.comfort.cold_s = 15.0 * hour_s;
  result.comfort.mornings = 150;
  result.comfort.failed_mornings = 3;
  result.comfort.lowest_degC = of_F(55.0);
  PlaceInWinter place;
  place.name = "water line in the wall";
  place.coldest_degC = of_F(41.0);
  place.limit_degC = of_F(40.0);
  place.as_before_degC = of_F(43.5);
  place.new_building_degC = of_F(39.0);
  place.day = 19;
  result.place = {place};
  for (auto* series :
       {&result.outdoor_degC, &result.air_degC, &result.floor_degC, &result.slab_degC, &result.use_hour_J})
    series->assign(8760, 1.0);
  return result;
}

/// Three ways, best first, the last too cold at work and cheapest of all.
Answer sample_winter(bool priced) {
  Answer answer = sample(Question::winter);
  if (priced) answer.file.design.electricity.currency = "$";
  WayResult best = way("frost hold, second source", 6000.0, priced);
  best.way.second_source = WaySource::in_working_hours;
  best.source_lead_h = 4;
  best.month[0].source_J = 100.0 * kWh;
  best.source = {900.0 * hour_s, 120.0 * hour_s, 46.0 * hour_s, 0.0, 7.0 * hour_s};
  WayResult before = way("floor at work", 10000.0, priced);
  before.way.last_winter = true;
  WayResult cold = way("hardly heated", 3000.0, priced);
  cold.fails.comfort = true;
  cold.comfort.cold_s = 750.0 * hour_s;
  Winter& winter = answer.winter.emplace();
  winter.weather = "made up";
  winter.way = {best, before, cold};
  return answer;
}

std::string text(const Answer& answer, bool full = false) { return text_of(answer, {"harness.toml", full, ""}); }

void fill(Winter& winter, bool priced) {
  const auto money = [&](double amount) { return priced ? std::optional<double>(amount) : std::nullopt; };
  winter.hold_way = winter.way[0].way.name;
  winter.use_J_per_K = 180.0 * kWh;
  winter.money_per_K = money(36.0);
  winter.hold = {{of_F(47.0), 6000.0 * kWh, money(1200.0), {}, {}}, {of_F(52.0), 6500.0 * kWh, money(1300.0), {}, {}}};
  winter.dry_hold_degC = of_F(52.0);
  Search search;
  search.way = winter.hold_way;
  search.tried.resize(400);
  search.tried[7] = {of_F(48.0), 3, of_F(60.0), 5900.0 * kWh, money(1180.0), {}};
  search.best = 7;
  search.hold_low_degC = of_F(47.0);
  search.hold_high_degC = of_F(49.0);
  search.lead_low_h = 2;
  search.lead_high_h = 5;
  winter.search = search;
  winter.pay_back = {{"R-10 board outside the edge", false, 800.0 * kWh, money(160.0)},
                     {"R-20 under the slab", true, 300.0 * kWh, money(60.0)}};
  BillFit fit;
  fit.misfit_share = 0.04;
  fit.loss_share = 1.1;
  fit.loss_low_share = 0.9;
  fit.loss_high_share = 1.3;
  fit.ridge = {"leaky and well founded"};
  fit.implies = {"wet foam"};
  winter.fit = fit;
  WayResult& best = winter.way[0];
  best.use_low_J = 5200.0 * kWh;
  best.use_high_J = 7100.0 * kWh;
  best.low_money = money(1040.0);
  best.high_money = money(1420.0);
  best.ten = {10, 0, of_F(-31.0), "water line in the wall", of_F(40.5), 9, 260.0 * hour_s, 80.0 * hour_s};
  best.sweating.inside_known = true;
  best.sweating.wet_s[3] = 30.0 * hour_s;
}

}  // namespace

TEST_CASE("the verdict names the cheapest way that passes, and what it was before") {
  const std::string all = text(sample_winter(true));
  check_part(
      flat(all),
      "CHEAPEST OF THOSE THAT PASS: \"frost hold, second source\", $1,200 ~ a year, 40 % less than as it was run "
      "before.");
  check_part(flat(all), "January costs most: $540");
}

TEST_CASE("no price, no money anywhere, and how to give one") {
  Answer answer = sample_winter(false);
  fill(*answer.winter, false);
  for (const bool full : {false, true}) {
    const std::string all = text(answer, full);
    check_part(flat(all), "USES LEAST OF THOSE THAT PASS: \"frost hold, second source\", 6,000 kWh ~ a year");
    check_part(flat(all), "--set electricity.price=\"... /kWh\"");
    for (const char* word : {"$", "EUR", "cost, ", "costs most", "money (", "0.2"}) {
      INFO(word);
      CHECK_FALSE(has(all, word));
    }
  }
  const std::string json = json_of(answer);
  CHECK_FALSE(has(json, "money\":"));
  CHECK_FALSE(has(json, "money_per_K"));
}

TEST_CASE("a way that fails stands below all that pass, says why and is never the verdict") {
  const std::string all = text(sample_winter(true));
  CHECK(all.find("  floor at work") < all.find("  hardly heated"));
  check_part(flat(all), "Fails: \"hardly heated\": more than 3.6 F too cold for 50 % of the work, 55 F at the lowest.");
  Answer none = sample_winter(true);
  for (WayResult& one : none.winter->way) one.fails.frost_hold = true;
  check_part(
      flat(text(none)),
      "NO WAY OF RUNNING PASSES: too cold at work in 1 of 3, something too near freezing in all of them. Nearest "
      "to it comes \"frost hold, second source\", $1,200 ~ a year.");
}

TEST_CASE("the table has every way against before, mornings, spare and power") {
  const std::string all = flat(text(sample_winter(true)));
  check_part(all, "frost hold, second 1,200 -40 % 99 % 3/150 1.0 9.0 passes source floor");
  check_part(all, "floor at work 2,000 before 99 % 3/150 1.0 9.0 passes");
  check_part(all, "hardly heated 600 -70 % 50 % 3/150 1.0 9.0 cold");
}

TEST_CASE("starts are hours of the clock, and the day before where it must be") {
  Answer answer = sample_winter(true);
  check_part(flat(text(answer)), "Start the second source at 3:00, 4 h before work.");
  answer.winter->way[0].source_lead_h = 12;
  check_part(flat(text(answer)), "Start the second source at 19:00 the day before, 12 h before work.");
  answer.winter->way[0].source_lead_h = 36;
  check_part(flat(text(answer)), "Start the second source at 19:00 two days before, 36 h before work.");
}

TEST_CASE("the days without the second source, and three soils") {
  const std::string all = flat(text(sample_winter(true)));
  check_part(all,
             "runs 900 h; too cold outdoors for it 120 h, 46 h at one stretch; at work in them the boiler alone "
             "leaves the room too cold for 7 h.");
  check_part(
      all,
      "Nearest to its limit of 40.0 F: water line in the wall, 19 January: 41.0 ~ this way for years, 43.5 with the "
      "soil as run before, 39.0 in a new building.");
}

TEST_CASE("what nobody worked out is not on the page") {
  const std::string all = text(sample_winter(true));
  for (const char* word : {"Best of", "of frost hold costs", "winters with", "sweat", "A change of the shop", "bill"}) {
    INFO(word);
    CHECK_FALSE(has(all, word));
  }
}

TEST_CASE("search, frost hold, hard winters, wet floor, changes and bill, where they were") {
  Answer answer = sample_winter(true);
  fill(*answer.winter, true);
  const std::string all = flat(text(answer, true));
  check_part(all, "9 of 10 such winters, shops and machines: $1,040 to $1,420.");
  check_part(all, "1 F more of frost hold costs 100 kWh ($20.00) a year.");
  check_part(all,
             "Best of 400 settings: frost hold 48 F, second source at 60 F from 4:00: $1,180. Within 2 %: 47 to 49 F, "
             "from 2:00 "
             "to 5:00.");
  check_part(
      all,
      "Ten winters with cold snaps to -31 F: everything above its limit, nearest water line in the wall at 40.5 F; at "
      "worst 9 cold starts, second source out 260 h, 80 h at one stretch.");
  check_part(all,
             "The floor sweats in April 30 h. From a frost hold of 52 F on it is dry in spring, for $100 a year more.");
  check_part(flat(text(answer)), "The floor sweats 30 h a year, most in April (30 h).");
  check_part(flat(text(answer)), "Would save a year: R-10 board outside the edge $160; R-20");
  check_part(all, "R-10 board outside the edge $160");
  check_part(all, "fits within 4 % a month at 1.10 (0.90 to 1.30) times the design's loss to air");
  check_part(all, "leaky and well founded wet foam");
}

TEST_CASE("everything filled still fits a screen, whole words, plain letters") {
  Answer answer = sample_winter(true);
  fill(*answer.winter, true);
  for (int i = 0; i < 3; ++i) answer.winter->way.push_back(answer.winter->way.back());
  answer.verdict.reasons = {said(Severity::warning, "a thing to mend")};
  const std::string all = text(answer);
  CHECK(lines_of(all).size() <= report::most_lines);
  for (const std::string& line : lines_of(all)) CHECK(line.size() <= report::page_width);
  for (const char* word : {"setpoint", "schedule", "routine", "plan ", "mode ", "safe"}) CHECK_FALSE(has(all, word));
}

TEST_CASE("a dozen ways with long names still fit a screen") {
  Answer answer = sample_winter(true);
  fill(*answer.winter, true);
  for (int i = 0; i < 9; ++i) {
    answer.winter->way.push_back(answer.winter->way.back());
    answer.winter->way.back().way.name = std::string(30, 'w') + " " + std::string(200, 'x');
  }
  answer.verdict.reasons = {said(Severity::failure, "a thing that fails"), said(Severity::warning, "one to mend")};
  const std::string all = text(answer);
  CHECK(lines_of(all).size() <= report::most_lines);
  for (const std::string& line : lines_of(all)) CHECK(line.size() <= report::page_width);
  check_part(all, "  And four more, no better: add --full.\n");
}

TEST_CASE("the label stands before the amount in plain letters") {
  Answer answer = sample_winter(true);
  for (const auto& [label, shown] :
       {std::pair{"EUR", "EUR 1,200 ~"}, {"\xE2\x82\xAC", "EUR 1,200 ~"}, {"", ", 1,200 ~"}}) {
    answer.file.design.electricity.currency = label;
    check_part(flat(text(answer)), shown);
  }
}

TEST_CASE("under --full the balance of heat closes on the page") {
  Answer answer = sample_winter(true);
  ShopHeat& heat = answer.winter->way[0].heat;
  heat.tubes_J = 5000.0 * kWh;
  heat.light_J = 3000.0 * kWh;
  heat.opaque_J = 1500.0 * kWh;
  heat.slab_J = 400.0 * kWh;
  const std::string all = flat(text(answer, true));
  check_part(all, "in tubes 5,000 0 0");
  check_part(all, "out windows, doors, leaks 3,000 0 0");
  check_part(all, "stored slab 400 0 0");
  check_part(all, "missing in less out less stored, over in 2e-02 0e+00 0e+00");
}

TEST_CASE("without weather no winter can be run, and how to give some") {
  Answer answer;
  answer.wishes.question = Question::winter;
  answer.file = from_keys({{"slab.size", "36 x 30 ft"}});
  const std::string all = text_of(answer, {"", false, "--size \"36 x 30 ft\""});
  check_part(all, "\nWHAT THE WINTER COSTS CANNOT BE SAID YET.\n");
  check_part(all, "slabwright winter --size \"36 x 30 ft\" --outdoor \"-12 F\"");
}

TEST_CASE("every described key of the winter is there, the hours are not") {
  Answer answer = sample_winter(true);
  fill(*answer.winter, true);
  const Json json = Json::parse(json_of(answer));
  CHECK(json["question"] == "winter");
  const Json& winter = json.at("winter");
  for (const Key& key : reading(*answer.winter).keys) CHECK(winter.contains(key.member));
  const Json& best = winter.at("way")[0];
  for (const Key& key : reading(answer.winter->way[0]).keys)
    if (key.member != "carbon_kg") CHECK(best.contains(key.member));
  CHECK(best.at("month").size() == 12);
  CHECK(best["month"][0]["source_J"] == 100.0 * kWh);
  CHECK(best["sweating"]["wet_s"][3] == 30.0 * hour_s);
  CHECK(best["way"]["name"] == "frost hold, second source");
  CHECK(best["money"] == 1200.0);
  CHECK(winter["search"]["tried"].size() == 400);
  CHECK_FALSE(best.contains("use_hour_J"));
}

TEST_CASE("tables of the winter: a row for each way, and each hour of the best") {
  const std::vector<Sheet> sheets = tables_of(sample_winter(false));
  const auto named = [&](const std::string& name) {
    for (const Sheet& sheet : sheets)
      if (sheet.name == name) return lines_of(sheet.content);
    return std::vector<std::string>{};
  };
  const auto ways = named("winter-ways.csv"), hours = named("winter-hours.csv");
  REQUIRE(ways.size() == 4);
  CHECK(ways[1] ==
        "\"frost hold, second source\",,6000.0,,9.0,6000.0,100.0,0.0,150,3,1500.0,15.0,120.0,water line in the "
        "wall,41.0,40.0");
  CHECK(has(ways[3], "hardly heated,cold,"));
  REQUIRE(hours.size() == 8761);
  CHECK(hours[1] == "1,33.8,33.8,33.8,33.8,0.00");
}
