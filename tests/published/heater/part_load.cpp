// Running for a part of the time: three laws, and how often a thermostat switches. Values by a second program.
#include <array>

#include "slabwright/heater.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double three_an_hour_per_s = 3.0 / 3600.0;

std::string percent(double share) { return std::to_string(static_cast<int>(100.0 * share + 0.5)) + " % load"; }

}  // namespace

TEST_CASE("part load of EN 14825 and AHRI 210/240") {
  const Source water{"EN 14825", "part load of air to water, 0.9", Oracle::derived};
  const Source air{"AHRI 210/240", "part load of air to air, 0.25 (form from memory)", Oracle::derived};
  struct Row {
    double load;
    const char *water, *air;
  };
  for (const Row& r : {Row{1.0, "1", "1"}, Row{0.75, "0.96774", "0.9375"}, Row{0.5, "0.90909", "0.875"},
                       Row{0.25, "0.76923", "0.8125"}, Row{0.1, "0.52632", "0.775"}}) {
    CHECK_PUBLISHED(water, percent(r.load), r.water,
                    part_load_share({PartLoadLaw::hyperbola, 0.9, 60.0, three_an_hour_per_s}, r.load));
    CHECK_PUBLISHED(air, percent(r.load), r.air,
                    part_load_share({PartLoadLaw::straight, 0.25, 60.0, three_an_hour_per_s}, r.load));
  }
}

TEST_CASE("part load by the time that starting takes") {
  const Source source{"ASHRAE Transactions 102(1), 1996", "at most 3 starts an hour (form from memory)",
                      Oracle::derived};
  struct Row {
    double start_s;
    std::array<const char*, 3> share;
  };
  const std::array<double, 3> load{0.25, 0.5, 0.75};
  for (const Row& r : {Row{60.0, {"0.8584", "0.9099", "0.9568"}}, Row{30.0, {"0.9270", "0.9525", "0.9768"}}})
    for (std::size_t i = 0; i < 3; ++i)
      CHECK_PUBLISHED(source, std::to_string(static_cast<int>(r.start_s)) + " s, " + percent(load[i]), r.share[i],
                      part_load_share({PartLoadLaw::starting, 0.25, r.start_s, three_an_hour_per_s}, load[i]));
}

TEST_CASE("a thermostat of three cycles an hour") {
  const Source source{"Thermostat cycling, 4 N x (1 - x)", "N 3 per hour (form from memory)", Oracle::derived};
  struct Row {
    double load;
    const char *per_h, *on_min, *off_min;
  };
  for (const Row& r : {Row{0.1, "1.08", "5.56", "50"}, Row{0.25, "2.25", "6.67", "20"}, Row{0.5, "3", "10", "10"},
                       Row{0.75, "2.25", "20", "6.67"}}) {
    const Cycling cycling = thermostat_cycling(r.load, three_an_hour_per_s);
    CHECK_PUBLISHED(source, percent(r.load) + ": per hour", r.per_h, cycling.cycles_per_s * 3600.0);
    CHECK_PUBLISHED(source, percent(r.load) + ": on, min", r.on_min, cycling.on_s / 60.0);
    CHECK_PUBLISHED(source, percent(r.load) + ": off, min", r.off_min, cycling.off_s / 60.0);
  }
}
