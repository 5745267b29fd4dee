#include "sheets/temperatures.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace slabwright {
namespace {

/// More cells across than this, and lines are no finer than a pen.
constexpr std::size_t most_columns = 300;

std::string degrees(double degC, System system) { return show(degC, Dimension::degree, system); }

}  // namespace

DrawnWarmth warmth_of(const FloorField& field) {
  const FloorRaster& fine = field.raster;
  const std::size_t step = 1 + std::max(fine.columns, fine.rows) / most_columns;
  DrawnWarmth warmth;
  warmth.corner = fine.corner;
  warmth.cell_m = fine.cell_m * static_cast<double>(step);
  warmth.columns = (fine.columns + step - 1) / step;
  warmth.rows = (fine.rows + step - 1) / step;
  std::vector<double> sum(warmth.columns * warmth.rows, 0.0), number = sum;
  for (std::size_t i = 0; i < fine.room.size(); ++i) {
    if (fine.room[i] < 0) continue;
    const std::size_t cell = i / fine.columns / step * warmth.columns + i % fine.columns / step;
    sum[cell] += field.wide_degC[i];
    number[cell] += 1.0;
  }
  for (std::size_t i = 0; i < sum.size(); ++i) {
    warmth.degC.push_back(number[i] > 0.0 ? sum[i] / number[i] : 0.0);
    warmth.on_floor.push_back(number[i] > 0.0);
  }
  return warmth;
}

std::vector<DrawnSpot> spots_of(const Answer& answer) {
  const System system = answer.file.design.units;
  const FloorSpot &cold = answer.field->coldest, &warm = answer.field->warmest;
  return {{{warm.x_m, warm.y_m}, "warmest, " + degrees(warm.surface_degC, system)},
          {{cold.x_m, cold.y_m}, "coldest, " + degrees(cold.surface_degC, system)}};
}

DrawnFloor warm_floor(DrawnFloor floor, const Answer& answer) {
  const System system = answer.file.design.units;
  floor.title += ": floor temperatures";
  floor.notes = {"In the coldest weather planned for" +
                     (answer.envelope ? ", " + degrees(answer.envelope->outdoor_degC, system) + " outside" : "") +
                     (answer.point ? ", with water at " + degrees(answer.point->supply_degC, system) : "") + ".",
                 "Lines: the floor's surface as means over squares a tube's spacing wide, without the stripes over "
                 "each tube. Corners where two cold edges meet are shown some degrees too cold."};
  for (const RoomField& room : answer.field->room) {
    if (room.floor_m2 <= 0.0) continue;
    floor.notes.push_back(fmt::format("{}: {} on average, from {} to {}.", room.room.empty() ? "floor" : room.room,
                                      degrees(room.mean_degC, system), degrees(room.coldest.surface_degC, system),
                                      degrees(room.warmest.surface_degC, system)));
  }
  for (const std::string& door : doors_without_place(answer.file.design))
    floor.notes.push_back(door + " has no place on the plan: its cold is spread over the whole floor here.");
  floor.notes.push_back("Computed from the plan and our guesses, not measured.");
  return floor;
}

std::vector<std::string> doors_without_place(const Design& design) {
  const std::vector<PlanOpening> placed = openings_on_plan(design);
  std::vector<std::string> doors;
  for (std::size_t i = 0; i < design.opening.size(); ++i) {
    const Opening& door = design.opening[i];
    const bool shown =
        std::any_of(placed.begin(), placed.end(), [&](const PlanOpening& at) { return at.opening == i; });
    if (shown || door.kind != OpeningKind::big_door) continue;
    doors.push_back(door.name.empty() ? "The big door" : "The " + door.name);
  }
  return doors;
}

}  // namespace slabwright
