// Other places for a manifold, along the walls.
#include <algorithm>
#include <cmath>

#include "lay_zone.hpp"
#include "slabwright/contract.hpp"
#include "zone_price.hpp"

namespace slabwright {
namespace routing {
namespace {

/// Places are tried so far apart, in spacings, and no more on one wall.
constexpr double step = 8.0;
constexpr int most_on_wall = 9;
/// A manifold keeps so far from corners, other manifolds and no-tube areas, in spacings.
constexpr double room = 4.0;
/// Of the places with the shortest ways so many are laid. A floor of more loops than this is laid once only.
constexpr std::size_t most_laid = 3;
constexpr double many_loops = 25.0;
/// Ways a tenth of the floor's size shorter are as good as two bends less in 100 ft.
constexpr double way_price = 20.0;
/// A place must be so much better to be worth saying, in bends in 100 ft.
constexpr double worth_saying = 1.0;

struct Trial {
  PortRow row;
  double way_m = 0.0;  ///< from the floor's middle cell to the nearest manifold, weighted by tube
};

class Places {
 public:
  Places(const LayoutTask& task, std::size_t manifold)
      : task_(on_zone(task, zone_of(task))),
        manifold_(manifold),
        north_(main_direction(task_.outline)),
        cells_(cells_of(seen_from_manifold(facing(task_, north_)), Fit{})) {}

  /// The shortest ways first.
  std::vector<Trial> along_walls() const {
    std::vector<Trial> all;
    const Polygon& o = task_.outline;
    for (std::size_t i = 0; i < o.size(); ++i) {
      const Point a = o[i], b = o[i + 1 < o.size() ? i + 1 : 0];
      const double length_m = distance_m(a, b), free_m = length_m - 2.0 * room * task_.spacing_m;
      if (free_m < 0.0 || !is_main(a, b)) continue;
      const int count = std::clamp(static_cast<int>(free_m / (step * task_.spacing_m)) + 1, 1, most_on_wall);
      for (int k = 0; k < count; ++k) {
        const double share = (room * task_.spacing_m + free_m * (k + 0.5) / count) / length_m;
        PortRow row = task_.manifold[manifold_];
        row.place = {a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)};
        row.facing = {-(b.y_m - a.y_m) / length_m, (b.x_m - a.x_m) / length_m};
        if (has_room(row)) all.push_back({row, way_m(row)});
      }
    }
    std::stable_sort(all.begin(), all.end(), [](const Trial& a, const Trial& b) { return a.way_m < b.way_m; });
    return all;
  }

  /// From the floor to the nearest manifold, this row in its place.
  double way_m(const PortRow& row) const {
    std::vector<double> nearest(static_cast<std::size_t>(cells_.size()), HUGE_VAL);
    for (std::size_t k = 0; k < task_.manifold.size(); ++k) {
      const PortRow& stands = k == manifold_ ? row : task_.manifold[k];
      const Point place = seen_along(stands.place, task_.manifold.front().place, north_);
      const std::vector<double> way_m = way_to_cells_m(cells_, place);
      for (std::size_t c = 0; c < way_m.size(); ++c) {
        if (way_m[c] >= 0.0) nearest[c] = std::min(nearest[c], way_m[c]);
      }
    }
    double sum = 0.0, tube_m = 0.0;
    for (int cell = 0; cell < cells_.size(); ++cell) {
      if (cells_.is(cell) != Kind::free) continue;
      tube_m += cells_.tube_m(cell);
      sum += cells_.tube_m(cell) * std::min(nearest[static_cast<std::size_t>(cell)], perimeter_m(task_.outline));
    }
    return tube_m > 0.0 ? rounded_off(sum / tube_m) : HUGE_VAL;
  }

  /// What the whole layout is worth with this row in its place; infinite where there is none.
  double price(const PortRow& row, const Progress& progress) const {
    LayoutTask moved = task_;
    moved.manifold[manifold_] = row;
    const auto laid = lay_tube(moved, progress);
    if (!laid) return HUGE_VAL;
    const double size_m = std::sqrt(signed_area_m2(task_.outline) / static_cast<double>(task_.manifold.size()));
    return layout_price(check_layout(moved, *laid.value)) + way_price * way_m(row) / size_m;
  }

  double loops() const { return signed_area_m2(task_.outline) / (task_.spacing_m * task_.longest_loop_m); }

 private:
  /// To the millimetre, so that a floor that lies elsewhere gets the same place.
  static double rounded_off(double m) { return std::floor(1000.0 * m + 0.5) / 1000.0; }

  bool is_main(Point a, Point b) const {
    const Point along = seen_along(b, a, north_);
    return std::min(std::abs(along.x_m), std::abs(along.y_m)) < 0.001 * distance_m(a, b);
  }

  bool has_room(const PortRow& row) const {
    const double room_m = room * task_.spacing_m;
    for (std::size_t k = 0; k < task_.manifold.size(); ++k) {
      if (k != manifold_ && distance_m(task_.manifold[k].place, row.place) < 2.0 * room_m) return false;
    }
    return std::none_of(task_.no_tube.begin(), task_.no_tube.end(), [&](const NoTubeArea& area) {
      return where_is(row.place, area.outline) != Where::outside ||
             distance_to_boundary_m(row.place, area.outline) < room_m;
    });
  }

  LayoutTask task_;
  std::size_t manifold_;
  Point north_;
  Cells cells_;
};

}  // namespace
}  // namespace routing

std::optional<PortRow> better_place(const LayoutTask& task, std::size_t manifold, const Progress& progress) {
  using namespace routing;
  expects(manifold < task.manifold.size(), "better_place: no such manifold");
  const Places places(task, manifold);
  const std::vector<Trial> trials = places.along_walls();
  const std::size_t most = places.loops() > many_loops ? 1 : most_laid;
  const std::size_t tried = std::min(most, trials.size());
  double least = places.price(task.manifold[manifold], part_of(progress, 0, tried + 1)) - worth_saying;
  std::optional<PortRow> best;
  for (std::size_t k = 0; k < tried; ++k) {
    const double price = places.price(trials[k].row, part_of(progress, k + 1, tried + 1));
    if (price >= least) continue;
    least = price;
    best = trials[k].row;
  }
  return best;
}

}  // namespace slabwright
