// Tube on slabs drawn at random: what must never be broken, and how good all of them are together.
#include <cstdio>
#include <cstdlib>

#include "drawn_slabs.hpp"
#include "necks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace floors;

namespace {

/// The value that this share of them does not exceed.
double share_of(std::vector<double> values, double share) {
  if (values.empty()) return 0.0;
  std::sort(values.begin(), values.end());
  return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

struct Figures {
  int slabs = 0, refused = 0, sound = 0, crossings = 0, must_be = 0, uneven = 0;
  std::vector<double> spread, far, bends, apart, bulbs_apart, dense;
  std::vector<std::uint64_t> failed;  ///< refused, not sound, uneven or bare, and no second check says it must be
  std::array<int, shape_names.size()> by_shape{};
  int turned = 0, at_corner = 0, in_arm = 0, at_slant = 0, with_holes = 0;
  std::array<int, 7> by_areas{};
};

constexpr double most_spread = 0.06, most_far = 0.005;

void add_share(Figures& f, const Slab& slab) {
  ++f.slabs;
  ++f.by_shape[static_cast<std::size_t>(slab.shape)];
  ++f.by_areas[slab.task.no_tube.size()];
  f.turned += slab.turned ? 1 : 0;
  f.at_corner += slab.at_corner ? 1 : 0;
  f.in_arm += slab.in_arm ? 1 : 0;
  f.at_slant += slab.at_slant ? 1 : 0;
  f.with_holes += slab.holes_number > 0 ? 1 : 0;
}

void add(Figures& f, const Slab& slab, std::uint64_t number) {
  add_share(f, slab);
  const auto laid = lay_tube(slab.task);
  if (!laid) {
    ++f.refused;
    const bool must = refusal_must_be(slab.task);
    f.must_be += must ? 1 : 0;
    if (!must) f.failed.push_back(number);
    CHECK(any(laid.said, Severity::problem));
    return;
  }
  const LayoutCheck c = check_layout(slab.task, *laid.value);
  f.crossings += c.crossings_number;
  f.sound += c.sound() ? 1 : 0;
  f.spread.push_back(c.spread_ratio);
  f.far.push_back(c.far_floor_ratio);
  f.bends.push_back(c.bends_per_100ft_ratio);
  f.apart.push_back(c.separation_ratio);
  f.bulbs_apart.push_back(c.bulb_separation_ratio);
  f.dense.push_back(c.apron_m_per_m2 * slab.task.spacing_m);
  CHECK(c.crossings_number == 0);
  CHECK(c.wrong_ends_number == 0);
  CHECK(c.broken_number == 0);
  // What is not sound is said as a failure.
  CHECK(c.sound() != any(laid.said, Severity::failure));
  const int loops = static_cast<int>(laid.value->loop.size());
  const bool uneven_must_be = c.spread_ratio > most_spread && uneven_must_be_so(slab.task, loops, most_spread);
  const bool bare_must_be =
      c.far_floor_ratio > most_far && c.far_floor_ratio - floor_out_of_reach_ratio(slab.task) <= most_far;
  f.uneven += c.spread_ratio > most_spread && !uneven_must_be ? 1 : 0;
  f.must_be += uneven_must_be || bare_must_be ? 1 : 0;
  if ((!c.sound() && !uneven_must_be) || (c.spread_ratio > most_spread && !uneven_must_be) ||
      (c.far_floor_ratio > most_far && !bare_must_be)) {
    f.failed.push_back(number);
  }
}

void print(const Figures& f) {
  const auto per_cent = [&](int count) { return 100.0 * count / f.slabs; };
  std::printf("%d slabs:", f.slabs);
  for (std::size_t k = 0; k < f.by_shape.size(); ++k)
    std::printf(" %s %.0f %%,", shape_names[k], per_cent(f.by_shape[k]));
  std::printf("\n no-tube areas 0 to 6:");
  for (const int count : f.by_areas) std::printf(" %.0f", per_cent(count));
  std::printf(
      " %%, holes %.0f %%, manifold near a corner %.0f %%, in an arm %.0f %%, on a slanted wall %.0f %%, turned %.0f "
      "%%\n",
      per_cent(f.with_holes), per_cent(f.at_corner), per_cent(f.in_arm), per_cent(f.at_slant), per_cent(f.turned));
  std::printf(" refused %d, sound %d, crossings %d, must be so %d, uneven without need %d, failed %zu\n", f.refused,
              f.sound, f.crossings, f.must_be, f.uneven, f.failed.size());
  const auto row = [](const char* what, const std::vector<double>& v, double by) {
    std::printf(" %s: median %.2f, 95th percentile %.2f, least %.2f, most %.2f\n", what, by * share_of(v, 0.5),
                by * share_of(v, 0.95), by * share_of(v, 0.0), by * share_of(v, 1.0));
  };
  row("spread, %", f.spread, 100.0);
  row("floor beyond a spacing, %", f.far, 100.0);
  row("bends in 100 ft", f.bends, 1.0);
  row("separation, spacings", f.apart, 1.0);
  row("beside bulbs, spacings", f.bulbs_apart, 1.0);
  row("apron's densest square, times the field", f.dense, 1.0);
  std::printf(" failed:");
  for (const std::uint64_t number : f.failed) std::printf(" %d", static_cast<int>(number));
  std::printf("\n");
}

Figures figures_of(std::uint64_t from, int count) {
  Figures f;
  for (std::uint64_t number = from; number < from + static_cast<std::uint64_t>(count); ++number) {
    CAPTURE(number);
    add(f, slab_number(number), number);
  }
  return f;
}

/// A slab seen in a mirror, far away, its no-tube areas in another order.
LayoutTask mirrored(LayoutTask task) {
  const auto seen = [](Point p) { return Point{256.0 - p.x_m, p.y_m - 64.0}; };
  const auto all = [&](Polygon& polygon) {
    for (Point& p : polygon) p = seen(p);
    std::reverse(polygon.begin(), polygon.end());
  };
  all(task.outline);
  for (NoTubeArea& area : task.no_tube) all(area.outline);
  std::reverse(task.no_tube.begin(), task.no_tube.end());
  PortRow& row = task.manifold.front();
  row.place = seen(row.place);
  row.facing.x_m = -row.facing.x_m;
  return task;
}

}  // namespace

TEST_CASE("five hundred slabs drawn at random", "[whole]") {
  const Figures f = figures_of(1, 500);
  print(f);
  CHECK(f.crossings == 0);
  CHECK(f.refused <= f.slabs / 100);
  CHECK(f.uneven <= 2 * f.slabs / 100);
  CHECK(share_of(f.spread, 0.5) <= 0.02);
  CHECK(share_of(f.spread, 0.95) <= 0.04);
  CHECK(share_of(f.far, 0.5) <= 0.001);
  CHECK(share_of(f.bulbs_apart, 0.0) >= 0.6);
  CHECK(share_of(f.apart, 0.0) >= 0.93);
}

// SLABWRIGHT_SLABS="first count" lays others than the 5 000.
TEST_CASE("five thousand slabs drawn at random", "[.many]") {
  long first = 501, count = 5000;
  if (const char* wanted = std::getenv("SLABWRIGHT_SLABS")) {
    char* end = nullptr;
    first = std::strtol(wanted, &end, 10);
    count = std::strtol(end, nullptr, 10);
  }
  print(figures_of(static_cast<std::uint64_t>(first), static_cast<int>(count)));
}

TEST_CASE("a slab in a mirror, far away, written in another order, has the same lengths") {
  for (std::uint64_t number = 601; number <= 606; ++number) {
    CAPTURE(number);
    const LayoutTask task = slab_number(number).task;
    LayoutTask other = mirrored(task);
    std::rotate(other.outline.begin(), other.outline.begin() + 1, other.outline.end());
    const auto first = lay_tube(task), second = lay_tube(other);
    REQUIRE((first && second));
    const std::size_t loops = first.value->loop.size();
    REQUIRE(second.value->loop.size() == loops);
    for (std::size_t k = 0; k < loops; ++k) {
      CHECK(second.value->loop[loops - 1 - k].length_m == Approx(first.value->loop[k].length_m).epsilon(1e-6));
    }
    const LayoutCheck check = check_layout(other, *second.value);
    CHECK(check.wrong_ends_number == 0);
    CHECK(check.crossings_number == 0);
  }
}
