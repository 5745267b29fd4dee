// Columns from left to right, tracks from the sides outward, paper as large as it takes.
#include "schematic_layout.hpp"

#include <algorithm>
#include <cmath>

#include "paper.hpp"

namespace slabwright::schematic {
namespace {

constexpr double rim_m = 8.0 * mm, title_room_m = 14.0 * mm, notes_room_m = 38.0 * mm;
constexpr double track_m = 6.5 * mm, device_room_m = 28.0 * mm, name_room_m = 7.0 * mm;
constexpr double between_manifolds_m = 4.0 * mm;

double widest(const std::vector<KeyedText>& lines) {
  double width = 0.0;
  for (const KeyedText& one : lines) width = std::max(width, text_size(one.text, word_m, false).width_m);
  return width;
}

/// How far a column reaches to either side of its line.
struct Reach {
  double left_m = 2.0 * mm, right_m = 2.0 * mm;
};

class Columns {
 public:
  Columns(const DrawnScheme& scheme, double pitch_m) : scheme_(scheme), pitch_m_(pitch_m) {
    int number = 0;
    for (const DrawnMeeting& one : scheme.meeting) number = std::max(number, one.column_number);
    for (const DrawnBranch& one : scheme.branch) number = std::max(number, one.column_number);
    for (const DrawnDevice& one : scheme.device) number = std::max(number, one.column_number);
    reach_.resize(static_cast<std::size_t>(number));
    x_m_.assign(reach_.size(), 0.0);
    end_m_.assign(scheme.meeting.size(), 0.0);
    for (const DrawnBranch& one : scheme.branch) reach(one);
    for (const DrawnDevice& one : scheme.device) reach(one);
    between_manifolds();
    place();
    for (int round = 0; round < 3; ++round) widen();
  }

  double width_m() const { return x_m_.empty() ? 0.0 : x_m_.back() + reach_.back().right_m; }
  const std::vector<double>& x_m() const { return x_m_; }

  /// The meeting's first and last column, and where what leaves it to the right does so.
  Rail rail_of(std::size_t meeting) const {
    Rail rail{HUGE_VAL, -HUGE_VAL, 0.0};
    const auto take = [&](int column, double beyond_m) {
      if (column == 0) return;
      const double x = x_m_[static_cast<std::size_t>(column - 1)];
      rail.low_x_m = std::min(rail.low_x_m, x);
      rail.high_x_m = std::max(rail.high_x_m, x + beyond_m);
    };
    take(scheme_.meeting[meeting].column_number, 0.0);
    for (const DrawnBranch& one : scheme_.branch) {
      if (one.from == meeting || one.to == meeting) take(one.column_number, 0.0);
    }
    // Beyond the words of its last device.
    for (const DrawnDevice& one : scheme_.device) {
      if (one.meeting == meeting)
        take(one.column_number, reach_[static_cast<std::size_t>(one.column_number - 1)].right_m);
    }
    return rail;
  }

 private:
  Reach& at(int column) { return reach_[static_cast<std::size_t>(column - 1)]; }

  void reach(const DrawnBranch& branch) {
    if (branch.column_number == 0) return;
    Reach& one = at(branch.column_number);
    if (branch.loop) {
      one = {0.3 * pitch_m_, 0.7 * pitch_m_};
      return;
    }
    for (const DrawnElement& element : branch.element) {
      one.left_m = std::max(one.left_m, 9.0 * mm);
      one.right_m = std::max(one.right_m, symbol_m + 3.5 * mm + widest(lines_of(element)) + 2.5 * mm);
    }
  }

  void reach(const DrawnDevice& device) {
    const double half = 0.5 * std::max(widest(lines_of(device.element, device_words_m)), 2.0 * symbol_m) + 1.2 * mm;
    Reach& one = at(device.column_number);
    one = {std::max(one.left_m, half), std::max(one.right_m, half)};
  }

  /// Loops of one manifold stand apart from those of the next, and their name has room above them.
  void between_manifolds() {
    const DrawnBranch* last = nullptr;
    double wide_m = 0.0;
    const auto close = [&] {
      if (!last) return;
      const double name_m = text_size(last->manifold.text, 2.8 * mm, true).width_m + 3.0 * mm;
      at(last->column_number).right_m += between_manifolds_m + std::max(0.0, name_m - wide_m);
    };
    for (int column = 1; column <= static_cast<int>(reach_.size()); ++column) {
      for (const DrawnBranch& one : scheme_.branch) {
        if (one.column_number != column || !one.loop) continue;
        if (last && last->manifold.text != one.manifold.text) {
          close();
          wide_m = 0.0;
        }
        wide_m += pitch_m_;
        last = &one;
      }
    }
    close();
  }

  void place() {
    double x = 0.0;
    for (std::size_t c = 0; c < reach_.size(); ++c) {
      x += reach_[c].left_m;
      x_m_[c] = x;
      x += reach_[c].right_m;
    }
  }

  /// Columns move to the right until what runs along a side between two neighbours has room.
  void widen() {
    for (std::size_t c = 1; c < x_m_.size(); ++c) {
      double short_m = 0.0;
      for (const DrawnBranch& one : scheme_.branch) {
        if (one.column_number != 0) continue;
        Rail near = rail_of(one.from), far = rail_of(one.to);
        const bool turned = near.low_x_m > far.low_x_m;
        if (turned) std::swap(near, far);
        if (far.low_x_m != x_m_[c]) continue;
        const KeyedText& water = scheme_.meeting[turned ? one.to : one.from].water;
        const double label_m =
            water.text.empty() ? 0.0 : near.low_x_m + text_size(water.text, word_m, false).width_m + 3.0 * mm;
        const double start = std::max(near.high_x_m, label_m);
        short_m = std::max(short_m, start + lane_room_m(one) - far.low_x_m);
      }
      if (short_m <= 0.0) continue;
      for (std::size_t k = c; k < x_m_.size(); ++k) x_m_[k] += short_m;
    }
  }

  const DrawnScheme& scheme_;
  double pitch_m_;
  std::vector<Reach> reach_;
  std::vector<double> x_m_, end_m_;
};

/// Branches along one side: which keep its level, and on which track the others run.
class Tracks {
 public:
  Tracks(const DrawnScheme& scheme, const Columns& columns, bool supply) : scheme_(scheme), supply_(supply) {
    for (std::size_t m = 0; m < scheme.meeting.size(); ++m) rails_.push_back(columns.rail_of(m));
    for (std::size_t i = 0; i < scheme.branch.size(); ++i) {
      const DrawnBranch& one = scheme.branch[i];
      if (one.column_number == 0 && scheme.meeting[one.from].supply == supply) rows_.push_back(i);
    }
    // Short ones nearest, so that what leaves a longer one passes over none.
    std::stable_sort(rows_.begin(), rows_.end(), [&](std::size_t a, std::size_t b) { return span(a) < span(b); });
    for (const std::size_t i : rows_) assign(i);
    measure();
  }

  double depth_m() const { return level_m_.empty() ? 0.0 : level_m_.back() + room_m_.back(); }
  void write(Layout& layout) const {
    for (std::size_t k = 0; k < rows_.size(); ++k) {
      Lane& lane = layout.lane[rows_[k]];
      const auto [near, far] = ends(rows_[k]);
      lane.straight = track_[k] == 0;
      const double out = level_m_[static_cast<std::size_t>(track_[k])];
      lane.level_m = supply_ ? layout.supply_m + out : layout.return_m - out;
      lane.from_x_m = rails_[near].high_x_m;
      lane.to_x_m = rails_[far].low_x_m;
      const KeyedText& water = scheme_.meeting[near].water;
      lane.words_x_m = lane.from_x_m;
      if (!water.text.empty())
        lane.words_x_m =
            std::max(lane.words_x_m, rails_[near].low_x_m + text_size(water.text, word_m, false).width_m + 3.0 * mm);
    }
  }

 private:
  /// Left and right meeting.
  std::pair<std::size_t, std::size_t> ends(std::size_t branch) const {
    const DrawnBranch& one = scheme_.branch[branch];
    return rails_[one.from].low_x_m <= rails_[one.to].low_x_m ? std::pair{one.from, one.to}
                                                              : std::pair{one.to, one.from};
  }
  double span(std::size_t branch) const {
    const auto [near, far] = ends(branch);
    return rails_[far].low_x_m - rails_[near].high_x_m;
  }

  /// Whether another meeting of the side, or another branch, stands between the two.
  bool blocked(std::size_t branch) const {
    const auto [near, far] = ends(branch);
    const double a = rails_[near].high_x_m, b = rails_[far].low_x_m;
    for (std::size_t m = 0; m < rails_.size(); ++m) {
      if (m == near || m == far || scheme_.meeting[m].supply != supply_) continue;
      if (rails_[m].high_x_m > a + 1e-9 && rails_[m].low_x_m < b - 1e-9) return true;
    }
    return b <= a;
  }

  bool meets(std::size_t a, std::size_t b) const {
    const auto [na, fa] = ends(a);
    const auto [nb, fb] = ends(b);
    return rails_[na].high_x_m < rails_[fb].low_x_m - 1e-9 && rails_[nb].high_x_m < rails_[fa].low_x_m - 1e-9;
  }

  void assign(std::size_t branch) {
    int track = blocked(branch) ? 1 : 0;
    for (bool taken = true; taken; track += taken) {
      taken = false;
      for (std::size_t k = 0; k < track_.size(); ++k) taken = taken || (track_[k] == track && meets(rows_[k], branch));
    }
    track_.push_back(track);
  }

  /// From a track to the next as much as its symbols and words want.
  void measure() {
    const int most = track_.empty() ? 0 : *std::max_element(track_.begin(), track_.end());
    level_m_.assign(static_cast<std::size_t>(most) + 1, 0.0);
    room_m_.assign(level_m_.size(), track_m);
    for (std::size_t k = 0; k < rows_.size(); ++k) {
      for (const DrawnElement& element : scheme_.branch[rows_[k]].element) {
        if (!has_symbol(element)) continue;
        const double lines = static_cast<double>(lines_of(element).size());
        double& room = room_m_[static_cast<std::size_t>(track_[k])];
        room = std::max(room, symbol_m + word_pitch_m * lines + 2.5 * mm);
      }
    }
    // Names of manifolds stand between the side and its first track.
    if (supply_) room_m_[0] = std::max(room_m_[0], name_room_m);
    for (std::size_t t = 1; t < level_m_.size(); ++t) level_m_[t] = level_m_[t - 1] + room_m_[t - 1] + below_m(t);
  }

  /// A pump's lower half.
  double below_m(std::size_t track) const { return room_m_[track] > track_m ? symbol_m : 0.0; }

  const DrawnScheme& scheme_;
  bool supply_;
  std::vector<Rail> rails_;
  std::vector<std::size_t> rows_;
  std::vector<int> track_;
  std::vector<double> level_m_, room_m_;
};

bool devices_on(const DrawnScheme& scheme, bool supply) {
  return std::any_of(scheme.device.begin(), scheme.device.end(),
                     [&](const DrawnDevice& one) { return scheme.meeting[one.meeting].supply == supply; });
}

}  // namespace

std::vector<KeyedText> lines_of(const DrawnElement& element, double wide_m) {
  std::vector<KeyedText> lines;
  for (const KeyedWords& words : element.words) {
    for (KeyedText& line : wrapped(words, word_m, wide_m)) lines.push_back(std::move(line));
  }
  return lines;
}

bool has_symbol(const DrawnElement& element) {
  return element.symbol != SchematicSymbol::pipe && element.symbol != SchematicSymbol::bar;
}

double lane_room_m(const DrawnBranch& branch) {
  double room = branch.words.empty() ? 0.0 : text_size(joined(branch.words).text, word_m, false).width_m + 4.0 * mm;
  for (const DrawnElement& element : branch.element) {
    if (has_symbol(element)) room += std::max(widest(lines_of(element)), 2.0 * symbol_m) + 3.0 * mm;
  }
  return room;
}

Layout layout_of(const DrawnScheme& scheme) {
  Layout layout;
  for (const drawn::Paper& paper : drawn::papers(scheme.units)) {
    layout.width_m = paper.width_m;
    layout.height_m = paper.height_m;
    layout.pitch_m = least_pitch_m;
    const double room = paper.width_m - 2.0 * rim_m;
    if (Columns(scheme, least_pitch_m).width_m() > room) continue;
    for (double pitch = best_pitch_m; pitch > least_pitch_m; pitch -= 0.25 * mm) {
      if (Columns(scheme, pitch).width_m() > room) continue;
      layout.pitch_m = pitch;
      break;
    }
    break;
  }
  const Columns columns(scheme, layout.pitch_m);
  // Larger than all paper: as wide as it takes.
  layout.width_m = std::max(layout.width_m, columns.width_m() + 2.0 * rim_m);
  const double shift = 0.5 * (layout.width_m - columns.width_m());
  const Tracks above(scheme, columns, true), below(scheme, columns, false);
  layout.top_m = layout.height_m - rim_m - title_room_m;
  layout.bottom_m = rim_m + notes_room_m;
  layout.supply_m = layout.top_m - std::max(above.depth_m(), devices_on(scheme, true) ? device_room_m : 0.0);
  layout.return_m = layout.bottom_m + std::max(below.depth_m(), devices_on(scheme, false) ? device_room_m : 0.0);
  layout.lane.resize(scheme.branch.size());
  above.write(layout);
  below.write(layout);
  for (Lane& lane : layout.lane) {
    lane.from_x_m += shift;
    lane.to_x_m += shift;
    lane.words_x_m += shift;
  }
  for (const double x : columns.x_m()) layout.column_x_m.push_back(x + shift);
  for (std::size_t m = 0; m < scheme.meeting.size(); ++m) {
    Rail rail = columns.rail_of(m);
    const double level = scheme.meeting[m].supply ? layout.supply_m : layout.return_m;
    layout.rail.push_back({rail.low_x_m + shift, rail.high_x_m + shift, level});
  }
  return layout;
}

}  // namespace slabwright::schematic
