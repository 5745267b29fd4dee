#include "answer/winter_shops.hpp"

#include "answer/nudge.hpp"
#include "support/layouts.hpp"

namespace slabwright::test {
namespace {

/// A second source with all that its maker may say, a fan that draws cold air in, a van in the paint room.
Shop more_machines() {
  const Keys given{{"second_source.cut_out", "-4 F"},
                   {"second_source.cut_in", "0 F"},
                   {"second_source.start_above", "50 F"},
                   {"second_source.drain_pan", "80 W"},
                   {"second_source.gradient", "0.3 F/ft"},
                   {"exhaust[1].makeup", "untempered"},
                   {"vehicle[1].name", "van"},
                   {"vehicle[1].mass", "5000 lb"},
                   {"vehicle[1].arrives", "8:00"},
                   {"vehicle[1].snow", "60 lb"}};
  return {"frame-shop-machines",
          with_keys(layout("frame-shop").file, given),
          {{"second_source.cut_out", "-1 F"},
           {"second_source.cut_in", "10 F"},
           {"second_source.start_above", "56 F"},
           {"second_source.drain_pan", "160 W"},
           {"second_source.gradient", "0.6 F/ft"},
           {"second_source.defrost", "by clock"},
           {"second_source.room", "paint room"},
           {"exhaust[1].hours", "14:00 to 15:00"},
           {"vehicle[1].room", "paint room"},
           {"vehicle[1].snow", "200 lb"}}};
}

/// A second source by its plate alone.
Shop plate() {
  const Keys given{{"second_source.kind", "heat pump"},
                   {"second_source.capacity", "18000 Btu/h"},
                   {"second_source.defrost", "on demand"}};
  return {"ten-lines-plate",
          with_keys(layout("ten-lines").file, given),
          {{"second_source.capacity", "24000 Btu/h"}, {"second_source.defrost", "by clock"}}};
}

/// Ways that use every word a way has.
Shop own_ways() {
  const Keys given{
      {"way[1].name", "by slab and air"}, {"way[1].floor", "setpoint"},    {"way[1].sensor", "both"},
      {"way[1].setpoint", "60 F"},        {"way[1].rest", "50 F"},         {"way[1].rest_when", "nights and days off"},
      {"way[1].outdoor_reset", "true"},   {"way[1].early_start", "false"}, {"way[2].name", "charged"},
      {"way[2].charge", "21:00 to 7:00"}, {"way[2].charge_to", "70 F"},    {"way[3].name", "source first"},
      {"way[3].second_source", "always"}, {"way[3].source", "62 F"},       {"way[3].source_rest", "60 F"},
      {"way[4].name", "the last"},        {"way[4].floor", "setpoint"},    {"way[4].setpoint", "50 F"},
      {"way[4].last_winter", "true"}};
  return {"frame-shop-ways",
          with_keys(layout("frame-shop").file, given),
          {{"way[1].floor", "frost hold"},
           {"way[1].sensor", "slab"},
           {"way[1].setpoint", "64 F"},
           {"way[1].rest", "54 F"},
           {"way[1].rest_when", "days off"},
           {"way[1].early_start", "true"},
           {"way[1].outdoor_reset", "false"},
           {"way[2].charge", "21:00 to 5:00"},
           {"way[2].charge_to", "74 F"},
           {"way[3].second_source", "in working hours"},
           {"way[3].source", "66 F"},
           {"way[3].source_rest", "61 F"},
           {"way[3].early_start", "false"},
           {"way[4].last_winter", "false"}}};
}

/// A meter that others use too, with prices that know it.
Shop more_prices() {
  const Keys given{{"electricity.timed", "0.10 /kWh, 7:00 to 19:00, monday to friday, november to march"},
                   {"bill.months", "january 60000 kWh"},
                   {"bill.other", "9000 kWh"}};
  return {"county-garage-prices",
          with_keys(layout("county-garage").file, given),
          {{"bill.other", "14000 kWh"},
           {"electricity.heat_meter", "true"},
           {"electricity.timed", "0.10 /kWh, 7:00 to 22:00, monday to friday, november to march"},
           {"electricity.demand", "9.80 /kW, monday to friday, 8:00 to 21:00, ratchet 90 %"},
           {"electricity.tiers", "-0.008 /kWh above 40000 kWh"}}};
}

}  // namespace

std::vector<Shop> winter_shops() {
  std::vector<Shop> shops;
  for (const Layout& one : layouts()) shops.push_back({one.name, one.file, {}});
  for (Shop (*more)() : {more_machines, plate, own_ways, more_prices}) shops.push_back(more());
  return shops;
}

std::string any_row(std::string path) {
  const std::size_t open = path.find('[');
  if (open != std::string::npos) path.erase(open + 1, path.find(']') - open - 1);
  return path;
}

std::vector<std::pair<std::string, std::string>> moves_of(const Shop& shop) {
  if (!shop.moves.empty()) return shop.moves;
  std::vector<std::pair<std::string, std::string>> moves;
  std::set<std::string> seen;
  Design design = shop.file.design;
  walk(record_of(design), [&](const std::string& path, const Key& key, const Slot& slot) {
    if (!is_of_winter(path, key)) return;
    const std::string text = nudged(key, slot, design.units);
    // A tenth more than nothing is nothing; a guessed row goes when anything is given.
    const auto* number = std::get_if<Number>(&slot);
    if (text.empty() || (number && *number->at == 0.0) || !with_key(shop.file, path, text)) return;
    const bool is_way = path.compare(0, 4, "way[") == 0;
    if (is_way || seen.insert(any_row(path)).second) moves.emplace_back(path, text);
  });
  return moves;
}

const std::set<std::string>& passed_over_in_winter() {
  static const std::set<std::string> all{
      "frame-shop: second_source.capacity"};  // its maker's table stands in place of it
  return all;
}

std::set<std::string> keys_of_winter() {
  std::set<std::string> all;
  for (const Shop& shop : winter_shops()) {
    walk(reading(shop.file.design), [&](const std::string& path, const Key& key, const Slot&) {
      // Labels move nothing by design.
      const bool label = key.word == "name" || key.word == "currency";
      if (is_of_winter(path, key) && !label) all.insert(any_row(path));
    });
  }
  return all;
}

const std::vector<Physics>& physics() {
  static const std::vector<Physics> all{{"climate.latitude", "kWh", '+'},
                                        {"opening[].opened", "kWh", '+'},
                                        {"opening[].open", "kWh", '+'},
                                        {"opening[].sun", "kWh", '-'},
                                        {"gains[].hours", "kWh", '+'},
                                        {"exhaust[].hours", "wet", '+'},
                                        {"second_source.points", "kWh", '-'},
                                        {"second_source.least_setting", "kWh", '+'},
                                        {"second_source.cut_out", "locked out", '+'},
                                        {"second_source.cut_in", "locked out", '+'},
                                        {"second_source.start_above", "cold start", '+'},
                                        {"second_source.drain_pan", "kWh", '+'},
                                        {"second_source.gradient", "kWh", '+'},
                                        {"vehicle[].mass", "kWh", '+'},
                                        {"vehicle[].snow", "kWh", '+'},
                                        {"vehicle[].evaporates", "kWh", '+'},
                                        {"vehicle[].temperature", "kWh", '-'},
                                        {"work.people", "kWh", '-'},
                                        {"work.wash", "kWh", '+'},
                                        {"work.wash", "wet", '+'},
                                        {"work.dryer", "wet", '-'},
                                        {"work.dryer", "kWh", '-'},
                                        {"work.hours", "worked", '-'},
                                        {"electricity.price", "money", '+'},
                                        {"electricity.price", "kWh", '0'},
                                        {"electricity.standing", "money", '+'},
                                        {"electricity.timed", "money", '+'},
                                        {"electricity.timed", "kWh", '0'},
                                        {"electricity.carbon", "carbon", '+'},
                                        {"electricity.carbon", "money", '0'},
                                        {"way[].rest", "kWh", '+'},
                                        {"way[].setpoint", "kWh", '+'},
                                        {"way[].charge_to", "kWh", '+'},
                                        {"way[].source_rest", "kWh", '+'}};
  return all;
}

}  // namespace slabwright::test
