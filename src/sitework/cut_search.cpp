// Coils filled one after the other, all ways that could still be better.
#include "sitework/cut_search.hpp"

#include <algorithm>
#include <numeric>

namespace slabwright::sitework {
namespace {

/// Ways to fill a coil that are looked at, a tenth of a second of them.
constexpr int most_steps = 300000;

class Search {
 public:
  Search(const std::vector<double>& pieces_m, const std::vector<double>& rising_m, const CoilChoice& start)
      : rising_m_(rising_m),
        best_(start),
        best_m_(std::accumulate(start.length_m.begin(), start.length_m.end(), 0.0)),
        sums_(rising_m, best_m_) {
    order_.resize(pieces_m.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::stable_sort(order_.begin(), order_.end(),
                     [&](std::size_t a, std::size_t b) { return pieces_m[a] > pieces_m[b]; });
    const std::vector<double> shares_m = least_shares_m(pieces_m, rising_m);
    for (const std::size_t piece : order_) {
      falling_m_.push_back(pieces_m[piece]);
      share_m_.push_back(shares_m[piece]);
      unpaid_m_ += shares_m[piece];
    }
    left_.assign(pieces_m.size(), true);
    best_.bound_m = std::min(best_m_, sums_.next_m(unpaid_m_));
  }

  CoilChoice result() {
    best_.least = best_m_ <= best_.bound_m + rounding_m;
    if (best_.least) return best_;
    fill_coils();
    best_.least = steps_ <= most_steps || best_m_ <= best_.bound_m + rounding_m;
    if (best_.least) best_.bound_m = best_m_;
    return best_;
  }

 private:
  bool over() const { return steps_ > most_steps || best_m_ <= best_.bound_m + rounding_m; }

  void fill_coils() {
    const auto first = std::find(left_.begin(), left_.end(), true);
    if (first == left_.end()) return keep();
    const auto piece = static_cast<std::size_t>(first - left_.begin());
    std::vector<std::size_t> coil;
    take(piece, coil, 0.0);
  }

  void keep() {
    if (bought_m_ >= best_m_ - rounding_m) return;
    best_m_ = bought_m_;
    best_.coil = coils_;
    best_.length_m = lengths_m_;
  }

  /// The piece goes into the coil being filled; then all ways to go on.
  void take(std::size_t piece, std::vector<std::size_t>& coil, double used_m) {
    left_[piece] = false;
    unpaid_m_ -= share_m_[piece];
    coil.push_back(piece);
    go_on(piece + 1, coil, used_m + falling_m_[piece]);
    coil.pop_back();
    unpaid_m_ += share_m_[piece];
    left_[piece] = true;
  }

  /// Pieces from here on join the coil in turn, then it is closed.
  void go_on(std::size_t from, std::vector<std::size_t>& coil, double used_m) {
    for (std::size_t piece = from; piece < left_.size() && !over(); ++piece) {
      if (!left_[piece] || used_m + falling_m_[piece] > rising_m_.back() + rounding_m) continue;
      // Of equal pieces the first that is left stands for all.
      if (piece > from && left_[piece - 1] && falling_m_[piece - 1] == falling_m_[piece]) continue;
      take(piece, coil, used_m);
    }
    if (!over()) close(coil, used_m);
  }

  void close(const std::vector<std::size_t>& coil, double used_m) {
    ++steps_;
    const double length_m = *shortest_coil(rising_m_, used_m);
    // A coil that has room for another piece is no worse with it, and that way is tried too.
    const auto shortest_left = std::find(left_.rbegin(), left_.rend(), true);
    if (shortest_left != left_.rend()) {
      const auto row = static_cast<std::size_t>(left_.rend() - shortest_left) - 1;
      if (used_m + falling_m_[row] <= length_m + rounding_m) return;
    }
    if (sums_.next_m(bought_m_ + length_m + unpaid_m_) >= best_m_ - rounding_m) return;
    bought_m_ += length_m;
    lengths_m_.push_back(length_m);
    coils_.emplace_back();
    for (const std::size_t piece : coil) coils_.back().push_back(order_[piece]);
    std::sort(coils_.back().begin(), coils_.back().end());
    fill_coils();
    coils_.pop_back();
    lengths_m_.pop_back();
    bought_m_ -= length_m;
  }

  const std::vector<double>& rising_m_;
  std::vector<std::size_t> order_;  ///< [row]: piece, longest first
  std::vector<double> falling_m_, share_m_;
  std::vector<bool> left_;
  CoilChoice best_;
  double best_m_;
  CoilSums sums_;
  double bought_m_ = 0.0, unpaid_m_ = 0.0;
  std::vector<std::vector<std::size_t>> coils_;
  std::vector<double> lengths_m_;
  int steps_ = 0;
};

}  // namespace

CoilChoice searched(const std::vector<double>& pieces_m, const std::vector<double>& rising_m, const CoilChoice& start) {
  return Search(pieces_m, rising_m, start).result();
}

}  // namespace slabwright::sitework
