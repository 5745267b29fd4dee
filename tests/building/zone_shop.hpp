// A shop as one zone.
#pragma once
#include "envelope/coarse_fields.hpp"
#include "envelope/shops.hpp"
#include "slabwright/building_zone.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"

namespace slabwright::test {

struct ZoneShop {
  Design design;
  Envelope envelope;
  FloorPlan floor;
  WatchedPlaces places;
  Zone zone;
};

inline ZoneShop zone_shop(const Design& design, EdgeFields& fields = coarse_fields()) {
  const auto envelope = envelope_of(design, fields);
  const auto loops = plan_loops(design);
  REQUIRE((envelope && loops));
  const auto floor = floor_of(design, *loops.value, *envelope.value);
  REQUIRE(floor);
  const WatchedPlaces places = watched_places(design, *envelope.value, fields);
  const auto zone = heated_zone(design, *envelope.value, *floor.value, places, fields);
  REQUIRE(zone);
  return {design, *envelope.value, *floor.value, places, *zone};
}

/// Row of the deciding place with this word in its name.
inline std::size_t place_row(const WatchedPlaces& places, const std::string& word) {
  for (std::size_t i = 0; i < places.place.size(); ++i)
    if (places.place[i].decides && places.place[i].name.find(word) != std::string::npos) return i;
  throw std::logic_error("no such place: " + word);
}

inline ZoneStep dark(const Zone& zone, double outdoor_degC) {
  ZoneStep step;
  step.outdoor_degC = outdoor_degC;
  step.needs = needs_without_power(zone);
  return step;
}

/// The same step over and over.
inline std::vector<ZoneRow> rows_of(const Zone& zone, const ZoneHistory& history, const ZoneStep& step, double step_s,
                                    double longest_s) {
  ZoneRun run(zone, history, step_s);
  std::vector<ZoneRow> rows{run.row()};
  while (rows.back().time_s < longest_s - 1.0) {
    run.step(step);
    rows.push_back(run.row());
  }
  return rows;
}

}  // namespace slabwright::test
