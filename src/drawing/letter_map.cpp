// The floor in letters.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "patches.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

constexpr int most_columns = 76, most_rows = 18;  // of the floor; a rim for doors and manifolds goes round it
constexpr const char* letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLNOPQRSTUVWXYZ";  // M is the manifold
constexpr std::size_t letters_number = 51;

struct Cells {
  Point low;  ///< lower left corner of the floor
  double width_m = 0.0, height_m = 0.0;
  int columns = 0, rows = 0;  ///< of the floor
  std::vector<std::string> line;

  Point middle(int c, int r) const { return {low.x_m + (c + 0.5) * width_m, low.y_m + (r + 0.5) * height_m}; }
  /// Column and row of a place, the rim allowed.
  std::pair<int, int> of(Point p) const {
    return {std::clamp(static_cast<int>(std::floor((p.x_m - low.x_m) / width_m)), -1, columns),
            std::clamp(static_cast<int>(std::floor((p.y_m - low.y_m) / height_m)), -1, rows)};
  }
  char& at(int c, int r) { return line[static_cast<std::size_t>(rows - r)][static_cast<std::size_t>(c + 1)]; }
};

Cells cells_over(const Floor& floor) {
  const Box box = box_round(floor.outline);
  const double width = box.high.x_m - box.low.x_m, height = box.high.y_m - box.low.y_m;
  // A letter is about twice as high as wide.
  const double cell = std::max({width / most_columns, height / (2.0 * most_rows), 1.0e-6});
  Cells cells{box.low, cell, 2.0 * cell, 0, 0, {}};
  cells.columns = std::clamp(static_cast<int>(std::ceil(width / cell - 1.0e-6)), 1, most_columns);
  cells.rows = std::clamp(static_cast<int>(std::ceil(height / (2.0 * cell) - 1.0e-6)), 1, most_rows);
  // Whole cells, so that none hangs over the far wall.
  cells.width_m = width / cells.columns;
  cells.height_m = height / cells.rows;
  cells.line.assign(static_cast<std::size_t>(cells.rows) + 2,
                    std::string(static_cast<std::size_t>(cells.columns) + 2, ' '));
  return cells;
}

char letter_at(const DrawnFloor& plan, const Raster& raster, Point p) {
  if (where_is(p, plan.floor) == Where::outside) return ' ';
  for (const DrawnNoTube& area : plan.no_tube) {
    if (where_is(p, area.outline) != Where::outside) return '#';
  }
  const int loop = raster.at(static_cast<int>((p.x_m - raster.low.x_m) / raster.cell_m),
                             static_cast<int>((p.y_m - raster.low.y_m) / raster.cell_m));
  return loop < 0 ? '.' : letters[static_cast<std::size_t>(loop) % letters_number];
}

/// Into the cell beyond the wall, where the place lies on one.
Point pushed_out(const DrawnFloor& plan, const Cells& cells, Point p) {
  const Point tries[] = {{p.x_m + 0.6 * cells.width_m, p.y_m},
                         {p.x_m - 0.6 * cells.width_m, p.y_m},
                         {p.x_m, p.y_m + 0.6 * cells.height_m},
                         {p.x_m, p.y_m - 0.6 * cells.height_m}};
  for (const Point out : tries) {
    const auto [c, r] = cells.of(out);
    if (where_is(out, plan.floor.outline) == Where::outside &&
        where_is(cells.middle(c, r), plan.floor.outline) == Where::outside) {
      return out;
    }
  }
  return p;
}

/// Also areas narrower than a letter: every cell that the area's middle line passes, upright or level.
void put_no_tube(const DrawnFloor& plan, Cells& cells) {
  for (const DrawnNoTube& area : plan.no_tube) {
    const Box box = box_round(area.outline);
    const Point middle{0.5 * (box.low.x_m + box.high.x_m), 0.5 * (box.low.y_m + box.high.y_m)};
    const auto put = [&](Point p) {
      const auto [c, r] = cells.of(p);
      if (c >= 0 && r >= 0 && c < cells.columns && r < cells.rows) cells.at(c, r) = '#';
    };
    put(middle);
    for (double x = box.low.x_m; x < box.high.x_m; x += 0.5 * cells.width_m) {
      if (where_is({x, middle.y_m}, area.outline) != Where::outside) put({x, middle.y_m});
    }
    for (double y = box.low.y_m; y < box.high.y_m; y += 0.5 * cells.height_m) {
      if (where_is({middle.x_m, y}, area.outline) != Where::outside) put({middle.x_m, y});
    }
  }
}

void put_doors(const DrawnFloor& plan, Cells& cells) {
  for (const DrawnDoor& door : plan.door) {
    const double length = distance_m(door.from, door.to);
    const int parts = static_cast<int>(length / (0.5 * cells.width_m)) + 1;
    for (int k = 0; k <= 2 * parts; ++k) {
      const double share = 0.02 + 0.96 * k / (2.0 * parts);
      const Point p{door.from.x_m + share * (door.to.x_m - door.from.x_m),
                    door.from.y_m + share * (door.to.y_m - door.from.y_m)};
      const auto [c, r] = cells.of(pushed_out(plan, cells, p));
      cells.at(c, r) = '=';
    }
  }
}

/// On one line, or on two where that is too long.
std::vector<std::string> legend(const DrawnFloor& plan) {
  const std::string signs = std::string(plan.no_tube.empty() ? "" : "# no tube   ") +
                            (plan.door.empty() ? "" : "= door   ") + "M manifold   . no tube near";
  if (plan.loop.empty()) return {signs};
  const std::size_t last = std::min(plan.loop.size(), letters_number) - 1;
  const std::string loops =
      plan.loop.size() == 1
          ? fmt::format("a loop {}", plan.loop[0].number.text)
          : fmt::format("a..{} loops {} to {}{}", letters[last], plan.loop.front().number.text,
                        plan.loop.back().number.text, plan.loop.size() > letters_number ? ", then a.. again" : "");
  if (loops.size() + 3 + signs.size() <= most_columns + 2) return {loops + "   " + signs};
  return {loops.substr(0, most_columns + 2), signs};
}

}  // namespace

std::vector<std::string> letter_map(const DrawnFloor& plan) {
  expects(plan.floor.outline.size() >= 3, "letter_map: a floor without an outline");
  Cells cells = cells_over(plan.floor);
  const double spacing = plan.spacing_m > 0.0 ? plan.spacing_m : cells.width_m;
  const Raster raster =
      nearest_loops(plan, 0.25 * std::min(spacing, cells.width_m), 1.2 * spacing + 0.25 * cells.width_m);
  for (int r = 0; r < cells.rows; ++r) {
    for (int c = 0; c < cells.columns; ++c) cells.at(c, r) = letter_at(plan, raster, cells.middle(c, r));
  }
  put_no_tube(plan, cells);
  put_doors(plan, cells);
  for (const DrawnManifold& manifold : plan.manifold) {
    const auto [c, r] = cells.of(pushed_out(plan, cells, manifold.place));
    cells.at(c, r) = 'M';
  }
  std::vector<std::string> lines;
  for (std::string& line : cells.line) {
    line.erase(line.find_last_not_of(' ') + 1);
    const bool first_blank = lines.empty() && line.empty();
    if (!first_blank) lines.push_back(std::move(line));
  }
  while (!lines.empty() && lines.back().empty()) lines.pop_back();
  for (std::string& line : legend(plan)) lines.push_back(std::move(line));
  return lines;
}

}  // namespace slabwright
