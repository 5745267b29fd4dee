// The floor's temperature everywhere: how even it is, where it is warmest and coldest.
#include <fmt/format.h>

#include "report/text.hpp"

namespace slabwright::report {
namespace {

std::string place_words(const Reader& reader, const FloorSpot& spot) {
  return fmt::format("{}, {}", spoken(Kind::length, spot.x_m, reader.system()), reader(Kind::length, spot.y_m));
}

std::string spot_words(const Reader& reader, const FloorSpot& spot) {
  return fmt::format("{} at {}", reader(Kind::fine_degree, spot.surface_degC), place_words(reader, spot));
}

}  // namespace

void add_field(Page& page, const Reader& reader) {
  const auto& field = reader.answer.field;
  if (!field) return;
  Table table{
      {left_column("room"), {"mean"}, {"even to"}, left_column("coldest (across, up)"), left_column("warmest")}, {}, 0};
  for (const RoomField& room : field->room) {
    if (room.floor_m2 <= 0.0) continue;
    table.rows.push_back({room.room, reader(Kind::fine_degree, room.mean_degC),
                          reader(Kind::rise, room.evenness.wide_spread_K), spot_words(reader, room.coldest),
                          spot_words(reader, room.warmest)});
  }
  add_text(page, "FLOOR EVERYWHERE, in the coldest weather, tube as it is drawn");
  add_table(page, table);
  add_text(page,
           "Even to: how far places a tube's spacing wide stand from the mean, usually. Heat that goes out at outer "
           "walls and big doors is taken where it goes; corners where two edges meet count both.");
  add_blank(page);
}

}  // namespace slabwright::report
