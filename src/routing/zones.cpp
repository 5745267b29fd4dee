#include "zones.hpp"

#include <algorithm>
#include <cmath>

#include "remarks_layout.hpp"

namespace slabwright::routing {
namespace {

/// Cuts looked at closely, with cells of their own: so many, and as many that lie on joints or in partitions.
constexpr std::size_t looked_at = 5;
constexpr double on_line_ratio = 0.3;
/// Lines that bent borders are tried on, besides those that corners, joints and manifolds ask for.
constexpr std::size_t bent_lines = 12;

/// Borders lie no nearer beside walls, in spacings.
constexpr double least_strip = 1.0;

double rounded_off(double value) { return std::floor(value * 1048576.0 + 0.5) / 1048576.0; }

struct Candidate {
  Chord chord;
  double share = 0.0;  ///< of the heat, on the chord's first side
  double price = HUGE_VAL;
};

class Cutter {
 public:
  Cutter(const ZonePrices& prices, const ZonePiece& piece) : prices_(prices), piece_(piece) {}

  /// The cheapest first.
  std::vector<Candidate> candidates() {
    for (const bool upright : {true, false}) straight(upright);
    for (const double x_m : marks(true, bent_lines)) {
      for (int way = 0; way < 4; ++way) bent(x_m, way % 2 == 0, way / 2 == 0);
    }
    std::stable_sort(all_.begin(), all_.end(),
                     [](const Candidate& a, const Candidate& b) { return a.price < b.price; });
    return std::move(all_);
  }

 private:
  /// Lines that borders may lie on: of these cells about `most`, and what asks for a border.
  std::vector<double> marks(bool upright, std::size_t most) const {
    std::vector<double> lines;
    for (const Point& p : piece_.zone.corner) lines.push_back(upright ? p.x_m : p.y_m);
    for (const double at_m : prices_.marks(upright)) add_apart(at_m, upright, lines);
    const std::vector<double>& of_cells = upright ? prices_.cells().x_m : prices_.cells().y_m;
    const std::size_t step = std::max<std::size_t>(1, of_cells.size() / most);
    for (std::size_t k = step / 2; k < of_cells.size(); k += step) add_apart(of_cells[k], upright, lines);
    std::sort(lines.begin(), lines.end());
    lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
    return lines;
  }

  /// Beside a wall a border would leave a strip too narrow for tube.
  bool is_beside_wall(double at_m, bool upright) const {
    return std::any_of(piece_.zone.corner.begin(), piece_.zone.corner.end(), [&](Point p) {
      return std::abs((upright ? p.x_m : p.y_m) - at_m) < least_strip * prices_.spacing_m();
    });
  }
  void add_apart(double at_m, bool upright, std::vector<double>& lines) const {
    if (!is_beside_wall(at_m, upright)) lines.push_back(at_m);
  }

  void straight(bool upright) {
    std::vector<Candidate> before;
    double before_m = 0.0;
    for (const double at_m : marks(upright, 10000)) {
      for (const bool beyond : {false, true}) {
        std::vector<Candidate> here;
        for (Chord& chord : chords_on(piece_.zone, upright, at_m, beyond)) here.push_back(priced(std::move(chord)));
        if (!beyond) {
          for (const Candidate& a : before) {
            for (const Candidate& b : here) {
              between(a, b, before_m, at_m, [&](double line_m) {
                if (is_beside_wall(line_m, upright)) return;
                for (Chord& chord : chords_on(piece_.zone, upright, line_m, false)) keep(priced(std::move(chord)));
              });
            }
          }
        }
        for (const Candidate& made : here) keep(made);
        before = std::move(here);
      }
      before_m = at_m;
    }
  }

  void bent(double x_m, bool east, bool north) {
    std::optional<Candidate> before;
    double before_m = 0.0;
    for (const double y_m : marks(false, bent_lines)) {
      const auto chord = bent_chord(piece_.zone, {x_m, y_m}, east, north);
      std::optional<Candidate> here;
      if (chord) here = priced(*chord);
      if (here && before) {
        between(*before, *here, before_m, y_m, [&](double line_m) {
          if (is_beside_wall(line_m, false)) return;
          if (const auto made = bent_chord(piece_.zone, {x_m, line_m}, east, north)) keep(priced(*made));
        });
      }
      if (here) keep(*here);
      before = std::move(here);
      before_m = y_m;
    }
  }

  /// Lines between two where the floor on one side is just enough for a whole number of loops.
  template <class Do>
  void between(const Candidate& a, const Candidate& b, double a_m, double b_m, Do what) const {
    if (a.chord.from.edge != b.chord.from.edge || a.chord.to.edge != b.chord.to.edge) return;
    const double least = std::min(a.share, b.share), most = std::max(a.share, b.share);
    for (int k = static_cast<int>(least * piece_.loops) + 1; k < most * piece_.loops; ++k) {
      const double wanted = static_cast<double>(k) / piece_.loops;
      what(rounded_off(a_m + (wanted - a.share) / (b.share - a.share) * (b_m - a_m)));
    }
  }

  Candidate priced(Chord chord) const {
    Candidate made{std::move(chord), 0.0, HUGE_VAL};
    const auto sides = cut(piece_.zone, made.chord, prices_.border_clearance_m(made.chord));
    if (!sides) return made;
    made.share = prices_.heat(sides->first) / prices_.heat(piece_.zone);
    if (const auto split = prices_.split(piece_, *sides)) {
      made.share = split->share;
      made.price = prices_.price(piece_, *split, made.chord);
    }
    return made;
  }
  void keep(const Candidate& made) {
    if (made.price < HUGE_VAL) all_.push_back(made);
  }

  const ZonePrices& prices_;
  const ZonePiece& piece_;
  std::vector<Candidate> all_;
};

/// A manifold for each piece, or the two manifolds that no border parts.
bool split_up(const ZonePrices& prices, const ZonePiece& piece, std::vector<ZonePiece>& done) {
  if (piece.manifold.size() == 1) {
    done.push_back(piece);
    return true;
  }
  std::optional<ZoneSplit> best;
  double least = HUGE_VAL;
  const std::vector<Candidate> all = Cutter(prices, piece).candidates();
  std::size_t seen = 0, on_lines = 0;
  for (const Candidate& candidate : all) {
    const bool on_line = prices.on_lines_ratio(candidate.chord) > on_line_ratio;
    if (on_line ? ++on_lines > looked_at : ++seen > looked_at) continue;
    const Chord& chord = candidate.chord;
    auto split = prices.split(piece, *cut(piece.zone, chord, prices.border_clearance_m(chord)));
    const double price = candidate.price + prices.close_price(*split);
    if (price >= least) continue;
    least = price;
    best = std::move(split);
  }
  return best && split_up(prices, best->first, done) && split_up(prices, best->second, done);
}

/// Corners of the floor stay what they are to the last bit; new ones are turned back.
Zone seen_from_outside(const Zone& zone, const LayoutTask& task, const Zone& seen, const Zone& whole) {
  Zone made = zone;
  for (Point& p : made.corner) {
    const auto found = std::find(seen.corner.begin(), seen.corner.end(), p);
    p = found != seen.corner.end() ? whole.corner[static_cast<std::size_t>(found - seen.corner.begin())]
                                   : routing::seen_from_outside(p, task);
  }
  return made;
}

}  // namespace

Checked<std::vector<ZoneShare>> zones_of(const LayoutTask& task, const ZoneNotes& notes) {
  const Zone whole = zone_of(task);
  const LayoutTask sound = on_zone(task, whole);
  const Point north = main_direction(whole.corner);
  const ZonePrices prices(sound, north, notes);
  const LayoutTask turned = facing(sound, north);
  for (std::size_t k = 0; k < task.manifold.size(); ++k) {
    if (!prices.stands_on_floor(k)) return {std::nullopt, {no_floor_at_manifold(manifold_named(task, k))}};
  }
  const ZonePiece all = prices.whole();
  if (all.loops > prices.most_loops(all.manifold)) {
    return {std::nullopt, {too_few_ports(task, all.loops, prices.most_loops(all.manifold), prices.tube_m())}};
  }
  std::vector<ZonePiece> pieces;
  if (!split_up(prices, all, pieces)) return {std::nullopt, {manifolds_not_parted()}};
  std::vector<ZoneShare> shares;
  for (ZonePiece& piece : pieces) {
    shares.push_back({seen_from_outside(piece.zone, turned, all.zone, whole), piece.manifold.front(), piece.loops});
  }
  std::sort(shares.begin(), shares.end(),
            [](const ZoneShare& a, const ZoneShare& b) { return a.manifold < b.manifold; });
  return {std::move(shares), {}};
}

}  // namespace slabwright::routing
