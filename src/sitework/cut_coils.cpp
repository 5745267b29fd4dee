// Which coils, and which pieces off which.
#include <algorithm>
#include <numeric>
#include <optional>

#include "sitework/cut_search.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

/// All ways: 3 to the power of this.
constexpr std::size_t most_pieces_for_all_ways = 12;
using sitework::rounding_m;
using sitework::shortest_coil;

/// What a set of pieces costs at best: length bought, then coils.
struct Cost {
  double bought_m = 0.0;
  int coils = 0;
};
bool cheaper(const Cost& a, const Cost& b) {
  if (std::abs(a.bought_m - b.bought_m) > rounding_m) return a.bought_m < b.bought_m;
  return a.coils < b.coils;
}

/// Sets of pieces as bits. The lowest piece of a set is cut off some coil together with some others of it; all such
/// coils are tried, each with the best way for the rest.
CoilChoice of_all_ways(const std::vector<double>& pieces_m, const std::vector<double>& rising_m) {
  const std::size_t sets = std::size_t{1} << pieces_m.size();
  std::vector<double> sum_m(sets, 0.0);
  for (std::size_t set = 1; set < sets; ++set) {
    std::size_t lowest = 0;
    while ((set >> lowest & 1) == 0) ++lowest;
    sum_m[set] = sum_m[set & (set - 1)] + pieces_m[lowest];
  }
  std::vector<Cost> best(sets);
  std::vector<std::size_t> first_coil(sets, 0);
  for (std::size_t set = 1; set < sets; ++set) {
    const std::size_t lowest = set & (~set + 1), others = set ^ lowest;
    std::optional<Cost> least;
    for (std::size_t with = others;; with = (with - 1) & others) {
      if (const auto coil_m = shortest_coil(rising_m, sum_m[with | lowest])) {
        const Cost& rest = best[others ^ with];
        const Cost cost{*coil_m + rest.bought_m, 1 + rest.coils};
        if (!least || cheaper(cost, *least)) {
          least = cost;
          first_coil[set] = with | lowest;
        }
      }
      if (with == 0) break;
    }
    best[set] = *least;
  }
  CoilChoice choice;
  for (std::size_t set = sets - 1; set != 0; set ^= first_coil[set]) {
    choice.coil.emplace_back();
    for (std::size_t piece = 0; piece < pieces_m.size(); ++piece)
      if (first_coil[set] >> piece & 1) choice.coil.back().push_back(piece);
    choice.length_m.push_back(*shortest_coil(rising_m, sum_m[first_coil[set]]));
  }
  choice.bound_m = std::accumulate(choice.length_m.begin(), choice.length_m.end(), 0.0);
  return choice;
}

/// Longest first, each off the open coil of this length that it leaves least of, or off a new one; at the end every
/// coil is bought as short as its pieces allow.
CoilChoice longest_first(const std::vector<double>& pieces_m, const std::vector<double>& rising_m, double coil_m) {
  std::vector<std::size_t> order(pieces_m.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return pieces_m[a] > pieces_m[b]; });
  CoilChoice choice;
  std::vector<double> used_m;
  for (const std::size_t piece : order) {
    std::optional<std::size_t> tightest;
    for (std::size_t coil = 0; coil < used_m.size(); ++coil)
      if (used_m[coil] + pieces_m[piece] <= coil_m + rounding_m && (!tightest || used_m[coil] > used_m[*tightest]))
        tightest = coil;
    if (!tightest || pieces_m[piece] > coil_m) {
      tightest = used_m.size();
      used_m.push_back(0.0);
      choice.coil.emplace_back();
    }
    used_m[*tightest] += pieces_m[piece];
    choice.coil[*tightest].push_back(piece);
  }
  for (std::size_t coil = 0; coil < used_m.size(); ++coil) {
    std::sort(choice.coil[coil].begin(), choice.coil[coil].end());
    choice.length_m.push_back(*shortest_coil(rising_m, used_m[coil]));
  }
  return choice;
}

Cost cost_of(const CoilChoice& choice) {
  return {std::accumulate(choice.length_m.begin(), choice.length_m.end(), 0.0),
          static_cast<int>(choice.length_m.size())};
}

}  // namespace

CoilChoice cut_coils(const std::vector<double>& pieces_m, const std::vector<double>& coils_m) {
  for (const double piece_m : pieces_m) expects(piece_m > 0.0, "sitework: a piece has a length");
  std::vector<double> rising_m = coils_m;
  std::sort(rising_m.begin(), rising_m.end());
  for (const double piece_m : pieces_m)
    if (!shortest_coil(rising_m, piece_m)) return {};
  if (pieces_m.size() <= most_pieces_for_all_ways) return of_all_ways(pieces_m, rising_m);
  CoilChoice best = longest_first(pieces_m, rising_m, rising_m.back());
  for (const double coil_m : rising_m) {
    CoilChoice other = longest_first(pieces_m, rising_m, coil_m);
    if (cheaper(cost_of(other), cost_of(best))) best = std::move(other);
  }
  return sitework::searched(pieces_m, rising_m, best);
}

}  // namespace slabwright
