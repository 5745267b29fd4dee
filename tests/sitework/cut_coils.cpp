// Coils against an exhaustive search of another kind, and what a cut list must hold.
#include <algorithm>
#include <numeric>
#include <random>

#include "sitework/cut_search.hpp"
#include "slabwright/sitework.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// Every piece in turn goes to every coil that has been begun, or begins one: all ways, one after the other.
double least_bought(const std::vector<double>& pieces, const std::vector<double>& coils, std::vector<double> used = {},
                    std::size_t next = 0) {
  constexpr double never = 1e9;
  if (next == pieces.size()) {
    double bought = 0.0;
    for (const double length : used) {
      double shortest = never;
      for (const double coil : coils)
        if (coil >= length - 1e-9) shortest = std::min(shortest, coil);
      bought += shortest;
    }
    return bought;
  }
  double least = never;
  for (std::size_t i = 0; i <= used.size(); ++i) {
    std::vector<double> with = used;
    if (i == used.size()) with.push_back(0.0);
    with[i] += pieces[next];
    least = std::min(least, least_bought(pieces, coils, with, next + 1));
  }
  return least;
}

/// The same by sets of pieces: the coil of the first piece of each set, then the rest.
double least_of_sets(const std::vector<double>& pieces, const std::vector<double>& coils) {
  const std::size_t sets = std::size_t{1} << pieces.size();
  std::vector<double> length(sets, 0.0), best(sets, 0.0);
  for (std::size_t set = 1; set < sets; ++set) {
    for (std::size_t piece = 0; piece < pieces.size(); ++piece)
      if (set >> piece & 1) length[set] += pieces[piece];
    best[set] = 1e9;
    const std::size_t first = set & (~set + 1), others = set ^ first;
    for (std::size_t with = others;; with = (with - 1) & others) {
      for (const double coil : coils)
        if (coil >= length[with | first] - 1e-9) best[set] = std::min(best[set], coil + best[others ^ with]);
      if (with == 0) break;
    }
  }
  return best[sets - 1];
}

double bought(const CoilChoice& choice) { return std::accumulate(choice.length_m.begin(), choice.length_m.end(), 0.0); }

void check_holds(const CoilChoice& choice, const std::vector<double>& pieces) {
  std::vector<int> times(pieces.size(), 0);
  for (std::size_t coil = 0; coil < choice.coil.size(); ++coil) {
    double used = 0.0;
    for (const std::size_t piece : choice.coil[coil]) {
      ++times[piece];
      used += pieces[piece];
    }
    CHECK(used <= choice.length_m[coil] + 1e-6);
  }
  CHECK(std::all_of(times.begin(), times.end(), [](int n) { return n == 1; }));
}

std::vector<double> random_pieces(std::mt19937_64& engine, std::size_t count) {
  std::vector<double> pieces;
  for (std::size_t i = 0; i < count; ++i) pieces.push_back(30.0 + static_cast<double>(engine() % 270));
  return pieces;
}

const std::vector<double> feet{100.0, 300.0, 500.0, 1000.0};

}  // namespace

TEST_CASE("four equal loops come off four coils, short ones share one") {
  const CoilChoice four = cut_coils({276.0, 276.0, 276.0, 276.0}, {300.0});
  CHECK(four.coil.size() == 4);
  CHECK(bought(four) == 1200.0);
  const CoilChoice shared = cut_coils({240.0, 250.0, 90.0}, feet);
  CHECK(bought(shared) == 600.0);
  CHECK(shared.coil.size() == 2);
  CHECK(cut_coils({1200.0}, feet).coil.empty());
  CHECK(cut_coils({}, feet).coil.empty());
  CHECK(cut_coils({300.0}, feet).length_m == std::vector<double>{300.0});
}

TEST_CASE("no other way buys less, over random shops") {
  std::mt19937_64 engine(3);
  for (int i = 0; i < 60; ++i) {
    const std::vector<double> pieces = random_pieces(engine, 1 + engine() % 7);
    const CoilChoice choice = cut_coils(pieces, feet);
    check_holds(choice, pieces);
    CHECK(choice.least);
    CHECK(bought(choice) == Approx(least_bought(pieces, feet)));
  }
}

TEST_CASE("no other way buys less for a shop of up to eighteen loops") {
  std::mt19937_64 engine(11);
  for (int i = 0; i < 12; ++i) {
    const std::vector<double> pieces = random_pieces(engine, 13 + engine() % 6);
    const CoilChoice choice = cut_coils(pieces, feet);
    check_holds(choice, pieces);
    CHECK(choice.least);
    CHECK(choice.bound_m == bought(choice));
    if (pieces.size() <= 14) CHECK(bought(choice) == Approx(least_of_sets(pieces, feet)));
  }
}

TEST_CASE("what is proved is never more than what the best way buys") {
  std::mt19937_64 engine(17);
  for (int i = 0; i < 60; ++i) {
    const std::vector<double> pieces = random_pieces(engine, 1 + engine() % 7);
    const std::vector<double> coils{90.0 + static_cast<double>(engine() % 100), 310.0, 333.3};
    const std::vector<double> shares = sitework::least_shares_m(pieces, coils);
    const double paid = std::accumulate(shares.begin(), shares.end(), 0.0);
    const double least = least_bought(pieces, coils);
    CHECK(paid <= least + 1e-6);
    CHECK(paid >= std::accumulate(pieces.begin(), pieces.end(), 0.0) - 1e-6);
    CHECK(sitework::CoilSums({100.0, 300.0}, 1e4).next_m(paid) >= paid - 1e-3);
  }
  CHECK(sitework::CoilSums({300.0, 500.0}, 5000.0).next_m(601.0) == 800.0);
  CHECK(sitework::CoilSums({300.0, 500.0}, 5000.0).next_m(1201.0) == 1300.0);
}

TEST_CASE("loops that fill no coil well are known to need one each") {
  const CoilChoice choice = cut_coils(std::vector<double>(51, 276.0), {300.0, 500.0});
  CHECK(choice.least);
  CHECK(choice.coil.size() == 51);
  CHECK(bought(choice) == 51 * 300.0);
}

TEST_CASE("many loops are cut well, and it is said how much less may be possible") {
  std::mt19937_64 engine(5);
  for (int i = 0; i < 10; ++i) {
    const std::vector<double> pieces = random_pieces(engine, 40);
    const CoilChoice choice = cut_coils(pieces, feet);
    check_holds(choice, pieces);
    CHECK(choice.bound_m >= std::accumulate(pieces.begin(), pieces.end(), 0.0));
    CHECK(choice.bound_m <= bought(choice));
    CHECK(choice.least == (choice.bound_m == bought(choice)));
    CHECK(bought(choice) - choice.bound_m < 0.05 * bought(choice));
  }
}

TEST_CASE("the cut list of every layout adds up") {
  for (const Layout& one : layouts()) {
    CAPTURE(one.name);
    const auto plan = plan_loops(one.file.design);
    REQUIRE(plan);
    const auto list = cut_list(one.file.design, *plan.value);
    const bool poured = one.name == "old-pour";
    CHECK(list.value.has_value() != poured);
    if (poured) continue;
    double cut_m = 0.0;
    std::size_t pieces = 0;
    for (const CutCoil& coil : list.value->coil) {
      double used_m = 0.0;
      for (const CutPiece& piece : coil.piece) used_m += piece.length_m;
      CHECK(coil.left_m == Approx(coil.length_m - used_m).margin(1e-9));
      CHECK(coil.left_m >= -1e-6);
      cut_m += used_m;
      pieces += coil.piece.size();
    }
    CHECK(pieces == plan.value->loop.size());
    CHECK(cut_m == Approx(plan.value->tube_m + 2.0 * one.file.design.tube.tail_m * static_cast<double>(pieces)));
    CHECK(list.value->bought_m == Approx(cut_m + list.value->left_m));
  }
}

TEST_CASE("a loop longer than every coil is said") {
  Design design = layout("ten-lines").file.design;
  design.tube.coils = {{50.0}};
  const auto list = cut_list(design, *plan_loops(design).value);
  CHECK_FALSE(list);
  REQUIRE(list.said.size() == 1);
  CHECK(list.said[0].code == "sitework.no-coil");
}
