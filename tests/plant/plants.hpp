// Layouts piped up, for the tests of plant and balance.
#pragma once
#include "slabwright/plant.hpp"
#include "support/layouts.hpp"

namespace slabwright::test {

struct Piped {
  LoopPlan loops;
  Envelope envelope;
  FloorPlan floor;
  Plant plant;
  Conditions conditions;
  std::vector<double> wanted_W;
};

inline Piped piped(const Design& design) {
  const LoopPlan loops = plan_loops(design).value.value();
  const Envelope envelope = envelope_of(design).value.value();
  const FloorPlan floor = floor_of(design, loops, envelope).value.value();
  Piped all{loops, envelope, floor, pipe_up(design, loops, &floor).value.value(), {}, {}};
  all.conditions.outdoor_degC = envelope.outdoor_degC;
  for (const RoomLoss& room : envelope.room) {
    all.conditions.room_degC.push_back(room.indoor_degC);
    all.wanted_W.push_back(room.wanted_W);
  }
  return all;
}

}  // namespace slabwright::test
