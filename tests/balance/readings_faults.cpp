// Five hundred manifolds' worth of faults: who is named, against the best that anybody could do with these readings.
#include <array>
#include <cstdio>

#include "balance/best_classifier.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr std::size_t manifolds = 25, faults_each = 20;
/// Required of each kind of readings, and how far ours may stay behind the best.
constexpr double behind_best_points = 5.0, most_false_alarms = 0.10;

struct Count {
  std::size_t right = 0, best_right = 0, all = 0;
  std::array<std::size_t, tolds> told{};
};

struct Table {
  const char* name;
  Kinds kinds;
  double least_right;
  std::array<Count, wrongs> of_wrong{};

  double share(std::size_t Count::*which) const {
    double hits = 0.0, all = 0.0;
    for (const Count& c : of_wrong) {
      hits += static_cast<double>(c.*which);
      all += static_cast<double>(c.all);
    }
    return hits / all;
  }
  double false_alarms() const {
    const Count& healthy = of_wrong[0];
    return 1.0 - static_cast<double>(healthy.right) / static_cast<double>(healthy.all);
  }
};

std::string lines_of(const Table& table) {
  static constexpr std::array<const char*, wrongs> names = {"nothing", "longer", "choked", "meter", "swapped"};
  std::string text;
  char line[200];
  std::snprintf(line, sizeof line, "%s\nright %.1f %%, best possible %.1f %%, healthy called faulty %.1f %%\n",
                table.name, 100.0 * table.share(&Count::right), 100.0 * table.share(&Count::best_right),
                100.0 * table.false_alarms());
  text += line;
  text += "truth   drawn right best | none less more long choke meter swap short\n";
  for (std::size_t w = 0; w < wrongs; ++w) {
    const Count& c = table.of_wrong[w];
    std::snprintf(line, sizeof line, "%-8s%5zu%6zu%5zu |", names[w], c.all, c.right, c.best_right);
    text += line;
    for (const std::size_t told : c.told) {
      std::snprintf(line, sizeof line, "%5zu", told);
      text += line;
    }
    text += "\n";
  }
  return text + "\n";
}

void try_fault(Draw& draw, const DrawnManifold& manifold, const BestClassifier& best, std::vector<Table>& tables) {
  const PutFault fault = draw_fault(draw, manifold.healthy.loop.size());
  const Readings all = read_with_noise(draw, manifold, fault, true_state(manifold, fault));
  for (Table& table : tables) {
    const Readings readings = only(all, table.kinds);
    const Answered right = right_answer(fault, table.kinds);
    const auto back = read_back(manifold.plant, readings, manifold.piped.conditions, {});
    REQUIRE(back);
    const Answered ours = answer_of(*back.value, table.kinds);
    Count& count = table.of_wrong[static_cast<std::size_t>(fault.wrong)];
    ++count.all;
    ++count.told[static_cast<std::size_t>(ours.told)];
    count.right += same(ours, right) ? 1 : 0;
    count.best_right += same(best.answer(readings, table.kinds), right) ? 1 : 0;
  }
}

}  // namespace

// Ports stand wide open, as readings ought to be taken.
TEST_CASE("the right loop and cause come first as often as anybody could name them", "[whole]") {
  std::vector<Table> tables{{"flows only", {}, 0.55, {}},
                            {"flows only, meters told apart", {false, false, true}, 0.0, {}},
                            {"with return temperatures", {true, false}, 0.75, {}},
                            {"with front times", {false, true}, 0.80, {}}};
  Draw draw(20261126);
  for (std::size_t m = 0; m < manifolds; ++m) {
    const DrawnManifold manifold = draw_manifold(draw, 4 + draw.below(9), false);
    const BestClassifier best(manifold);
    for (std::size_t k = 0; k < faults_each; ++k) try_fault(draw, manifold, best, tables);
  }
  std::string text;
  for (const Table& table : tables) text += lines_of(table);
  WARN(text);
  for (const Table& table : tables) {
    INFO(table.name);
    CHECK(table.share(&Count::right) >= table.least_right);
    CHECK(table.share(&Count::right) >= table.share(&Count::best_right) - 0.01 * behind_best_points);
    CHECK(table.false_alarms() <= most_false_alarms);
  }
}
