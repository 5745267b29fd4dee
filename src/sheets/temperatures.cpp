#include "sheets/temperatures.hpp"

#include "sheets/keyed.hpp"

#include <algorithm>

namespace slabwright {
namespace {

/// More cells across than this, and lines are no finer than a pen.
constexpr std::size_t most_columns = 300;

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
  const auto words = [&](const char* which, double degC, const char* key) {
    return joined({{which, ""}, degrees_of(degC, system, key)});
  };
  return {{{warm.x_m, warm.y_m}, words("warmest, ", warm.surface_degC, "field.warmest.surface_degC")},
          {{cold.x_m, cold.y_m}, words("coldest, ", cold.surface_degC, "field.coldest.surface_degC")}};
}

namespace {

KeyedWords weather_words(const Answer& answer) {
  const System system = answer.file.design.units;
  KeyedWords words{{"In the coldest weather planned for", ""}};
  if (answer.envelope) {
    words.push_back({", ", ""});
    words.push_back(degrees_of(answer.envelope->outdoor_degC, system, "envelope.outdoor_degC"));
    words.push_back({" outside", ""});
  }
  if (answer.point) {
    words.push_back({", with water at ", ""});
    words.push_back(degrees_of(answer.point->supply_degC, system, "point.supply_degC"));
  }
  words.push_back({".", ""});
  return words;
}

KeyedWords room_words(const RoomField& room, std::size_t row, System system) {
  const auto degrees = [&](double degC, const char* member) {
    return degrees_of(degC, system, key_of_row("field.room", row, member));
  };
  return {named_or(room.room, key_of_row("field.room", row, "room"), "floor"),
          {": ", ""},
          degrees(room.mean_degC, "mean_degC"),
          {" on average, from ", ""},
          degrees(room.coldest.surface_degC, "coldest.surface_degC"),
          {" to ", ""},
          degrees(room.warmest.surface_degC, "warmest.surface_degC"),
          {".", ""}};
}

}  // namespace

DrawnFloor warm_floor(DrawnFloor floor, const Answer& answer) {
  floor.title.push_back({": floor temperatures", ""});
  // Joints and jambs are for the crew's plan.
  const auto detail = [](const DrawnDimension& one) { return !one.whole; };
  floor.dimension.erase(std::remove_if(floor.dimension.begin(), floor.dimension.end(), detail), floor.dimension.end());
  floor.notes = {weather_words(answer),
                 {{"Lines: the floor's surface as means over squares a tube's spacing wide, without the stripes over "
                   "each tube. Corners where two cold edges meet are shown some degrees too cold.",
                   ""}}};
  for (std::size_t k = 0; k < answer.field->room.size(); ++k) {
    const RoomField& room = answer.field->room[k];
    if (room.floor_m2 > 0.0) floor.notes.push_back(room_words(room, k, answer.file.design.units));
  }
  for (const KeyedText& door : doors_without_place(answer.file.design))
    floor.notes.push_back({door, {" has no place on the plan: its cold is spread over the whole floor here.", ""}});
  floor.notes.push_back({{"Computed from the plan and our guesses, not measured.", ""}});
  return floor;
}

std::vector<KeyedText> doors_without_place(const Design& design) {
  const std::vector<PlanOpening> placed = openings_on_plan(design);
  std::vector<KeyedText> doors;
  for (std::size_t i = 0; i < design.opening.size(); ++i) {
    const Opening& door = design.opening[i];
    const bool shown =
        std::any_of(placed.begin(), placed.end(), [&](const PlanOpening& at) { return at.opening == i; });
    if (shown || door.kind != OpeningKind::big_door) continue;
    doors.push_back(door.name.empty() ? KeyedText{"The big door", ""}
                                      : joined({{"The ", ""}, {door.name, key_of_row("design.opening", i, "name")}}));
  }
  return doors;
}

}  // namespace slabwright
