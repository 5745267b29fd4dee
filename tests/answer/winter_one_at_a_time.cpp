// What only the winter reads is moved a little, one at a time, and the year run again in every way. The signs stand in
// moves/<shop>-winter.csv, read line by line against physics before they were kept; what has to be so in every way is
// said again in `physics()`. SLABWRIGHT_WRITE=1 writes the tables anew, to be read again.
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <map>
#include <numeric>
#include <set>

#include "answer/nudge.hpp"
#include "answer/pass.hpp"
#include "answer/winter_shops.hpp"
#include "support/catch.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// Thermostats switch: what rounding does to a year may be a quarter of an hour of a boiler, a part in 1e5 of its kWh.
constexpr double same_share = 1e-4;

struct Column {
  std::string name;
  std::function<double(const WayResult&)> of;
};

/// Of each way.
const std::vector<Column>& by_way() {
  static const std::vector<Column> all{{"kWh", [](const WayResult& way) { return way.use_J; }},
                                       {"money", [](const WayResult& way) { return way.money.value_or(0.0); }}};
  return all;
}

double seconds(const std::array<double, 12>& months) { return std::accumulate(months.begin(), months.end(), 0.0); }

/// The way's place that comes nearest to its limit.
double to_spare_K(const WayResult& way) {
  return way.place.empty() ? 0.0 : way.place.front().coldest_degC - way.place.front().limit_degC;
}

/// Of all ways together.
const std::vector<Column>& together() {
  static const std::vector<Column> all{
      {"peak", [](const WayResult& way) { return way.peak_W; }},
      {"carbon", [](const WayResult& way) { return way.carbon_kg.value_or(0.0); }},
      {"worked", [](const WayResult& way) { return way.comfort.worked_s; }},
      {"cold", [](const WayResult& way) { return way.comfort.below_Ks; }},
      {"to spare", to_spare_K},
      {"wet", [](const WayResult& way) { return seconds(way.sweating.wet_s) + seconds(way.sweating.damp_s); }},
      {"locked out", [](const WayResult& way) { return way.source.locked_s; }},
      {"cold start", [](const WayResult& way) { return way.source.cold_start_s; }},
  };
  return all;
}

std::string all_said(const Answer& a) {
  std::string all;
  for (const Diagnostic& d : a.said) all += say(d, System::si) + "\n";
  return all;
}

/// One move and what came of it.
struct Moved {
  std::string path, text;
  const Answer& before;
  Answer after;
};

/// Ways by their names: their order is one of cost, and that may move.
std::map<std::string, const WayResult*> ways_of(const Answer& answer) {
  std::map<std::string, const WayResult*> ways;
  for (const WayResult& way : answer.winter->way) ways[way.way.name] = &way;
  return ways;
}

/// A way before and after; null where the shop is no longer run in it.
using Pair = std::pair<const WayResult*, const WayResult*>;
std::vector<Pair> pairs_of(const Moved& moved) {
  const auto after = ways_of(moved.after);
  std::vector<Pair> pairs;
  for (const auto& [name, way] : ways_of(moved.before)) {
    const auto same = after.find(name);
    pairs.emplace_back(way, same == after.end() ? nullptr : same->second);
  }
  return pairs;
}

char sign_of(const std::vector<Pair>& pairs, const Column& column) {
  double before = 0.0, after = 0.0;
  for (const auto& [one, other] : pairs) {
    before += other ? column.of(*one) : 0.0;
    after += other ? column.of(*other) : 0.0;
  }
  return sign(before, after, same_share);
}

/// What the bill says of the shop.
double loss_by_bill(const Answer& answer) { return answer.winter->fit ? answer.winter->fit->loss_share : 0.0; }

/// One sign for each column of each way, then one for each of all ways, for the bill's fit, and whether anything else
/// is said.
std::string signs_of(const Moved& moved) {
  const std::vector<Pair> pairs = pairs_of(moved);
  std::string signs;
  for (const Pair& pair : pairs)
    for (const Column& column : by_way()) signs += fmt::format(",{}", pair.second ? sign_of({pair}, column) : '!');
  for (const Column& column : together()) signs += fmt::format(",{}", sign_of(pairs, column));
  signs += fmt::format(",{}", sign(loss_by_bill(moved.before), loss_by_bill(moved.after), same_share));
  return signs + (all_said(moved.before) == all_said(moved.after) ? ",0" : ",*");
}

/// Whether start, charge and frost hold that cost least are the same before and after: else the way is another.
bool run_alike(const WayResult& one, const WayResult& other) {
  return one.floor_lead_h == other.floor_lead_h && one.source_lead_h == other.source_lead_h &&
         one.way.charge_to_degC == other.way.charge_to_degC && std::abs(one.hold_degC - other.hold_degC) < 1e-6;
}

const Column& column_named(const std::string& name) {
  for (const auto* columns : {&by_way(), &together()})
    for (const Column& column : *columns)
      if (column.name == name) return column;
  throw std::runtime_error("no column " + name);
}

/// Every way that is run alike goes that way or stays, and one at least goes where all are.
void check_law(const Moved& moved, const Physics& law) {
  const Column& column = column_named(law.column);
  bool any_goes = law.sign == '0', all_alike = true;
  for (const Pair& pair : pairs_of(moved)) {
    const bool alike = pair.second && run_alike(*pair.first, *pair.second);
    all_alike = all_alike && alike;
    if (!alike) continue;
    const char goes = sign_of({pair}, column);
    any_goes = any_goes || goes == law.sign;
    INFO(law.column << " of " << pair.first->way.name << ": " << column.of(*pair.first) << " to "
                    << column.of(*pair.second));
    CHECK((goes == law.sign || goes == '0'));
  }
  INFO(law.column);
  CHECK((any_goes || !all_alike));
}

void check_physics(const Moved& moved) {
  for (const Physics& law : physics())
    if (law.path == any_row(moved.path)) check_law(moved, law);
}

std::string head_of(const Shop& shop, const Answer& base) {
  std::string ways, head = "path,moved to";
  int number = 0;
  for (const auto& [name, way] : ways_of(base)) {
    ways += fmt::format("# way {}: {}\n", ++number, name);
    for (const Column& column : by_way()) head += fmt::format(",{} {}", column.name, number);
  }
  for (const Column& column : together()) head += "," + column.name;
  return "# expected sign of each output when one input of " + shop.name + " is moved as written\n" + ways + head +
         ",bill,said\n";
}

bool is_asked(const Shop& shop, const std::string& path) {
  const bool given = std::count(shop.file.given.begin(), shop.file.given.end(), path) > 0;
  return (given || !shop.moves.empty()) && passed_over_in_winter().count(shop.name + ": " + path) == 0;
}

/// The year for the same shop: what the stages before the winter found stands.
Answer with_winter(Answer answer, const DesignFile& file, Passing& passing) {
  answer.file = file;
  answer.wishes.bands = false;
  add_winter(answer, passing);
  return answer;
}

std::string page_of(const Shop& shop, const std::function<void(const Moved&, const std::string&)>& look) {
  Passing passing{EdgeFields(coarse_edges()), nullptr};
  passing.draws = false;
  passing.runs_winter = true;
  const Answer found = pass(shop.file, Question::winter, passing);
  const Answer base = with_winter(found, shop.file, passing);
  REQUIRE(base.winter);
  std::string page = head_of(shop, base);
  for (const auto& [path, text] : moves_of(shop)) {
    const auto file = with_key(shop.file, path, text);
    if (!file) throw std::runtime_error(path + " does not take " + text);
    const Moved moved{path, text, base, with_winter(found, *file, passing)};
    const std::string signs = signs_of(moved);
    page += path + ",\"" + text + "\"" + signs + "\n";
    look(moved, signs);
  }
  return page;
}

}  // namespace

TEST_CASE("every input of the winter moves what physics says it moves", "[whole]") {
  std::set<std::string> moving;
  for (const Shop& shop : winter_shops()) {
    const std::string page = page_of(shop, [&](const Moved& moved, const std::string& signs) {
      INFO(shop.name << ": " << moved.path << " to " << moved.text << signs);
      const bool moves = signs.find_first_not_of(",0") != std::string::npos;
      if (moves) moving.insert(any_row(moved.path));
      // Guesses stand in the table too, but only what the shop itself says must move something.
      if (!is_asked(shop, moved.path)) return;
      CHECK(moves);
      check_physics(moved);
    });
    const std::string file = "tests/answer/moves/" + shop.name + "-winter.csv";
    if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(std::string(SLABWRIGHT_ROOT) + "/" + file) << page;
    CHECK(page == read_text(file));
  }
  for (const std::string& path : keys_of_winter()) {
    INFO(path << " moves nothing in any shop");
    CHECK(moving.count(path) == 1);
  }
}

TEST_CASE("what only the winter reads moves nothing before it", "[whole]") {
  for (const Shop& shop : winter_shops()) {
    Passing passing{EdgeFields(coarse_edges()), nullptr};
    passing.draws = false;
    DesignFile file = shop.file;
    for (const auto& [path, text] : moves_of(shop)) {
      const Key* key = key_at(file.design, path);
      if (key && key->says.only_for == "winter") file = with_key(file, path, text).value_or(file);
    }
    const Answer one = pass(shop.file, Question::freeze, passing), other = pass(file, Question::freeze, passing);
    INFO(shop.name);
    REQUIRE(one.freeze.has_value());
    REQUIRE(other.freeze.has_value());
    for (const auto dial : {&Freeze::air, &Freeze::slab}) {
      const auto &setting = (*one.freeze).*dial, &then = (*other.freeze).*dial;
      REQUIRE(setting.has_value() == then.has_value());
      if (setting) CHECK(setting->dial_degC == then->dial_degC);
    }
    CHECK(one.envelope->loss_W == other.envelope->loss_W);
    CHECK(one.point->supply_degC == other.point->supply_degC);
    CHECK(one.sizes->boiler.power_W == other.sizes->boiler.power_W);
    CHECK(all_said(one) == all_said(other));
  }
}
