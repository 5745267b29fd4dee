// What stands behind the frost hold, under --full.
#include <fmt/format.h>

#include "report/text_freeze.hpp"

namespace slabwright::report {
namespace {

void add_part(Page& page, std::string_view title, const Table& table) {
  if (table.rows.empty()) return;
  add_gap(page);
  add_text(page, title);
  add_table(page, table);
}

std::string or_none(const Reader& reader, Kind kind, std::optional<double> si) {
  return si ? figure(kind, *si, reader.system()) : "none";
}

/// What every place asks for, those that are only reported too.
void add_all_asked(Page& page, const Reader& reader) {
  const System system = reader.system();
  Table table{{left_column(fmt::format("in {}", unit(Kind::degree, system))),
               {"asks", "wall"},
               {"asks", "slab"},
               {"loop shut", "for good"},
               {"ice below", "outside"}},
              {},
              0};
  const auto bare_or_none = [&](std::optional<double> degC) {
    return degC ? bare(Kind::fine_degree, *degC, system) : std::string("none");
  };
  for (const PlaceAtSetting& place : reader.answer.freeze->place)
    table.rows.push_back({place.name, place.decides ? bare_or_none(place.asks_air_degC) : "",
                          place.decides ? bare_or_none(place.asks_slab_degC) : "",
                          bare(Kind::fine_degree, place.shut_degC, system),
                          place.decides ? "" : bare_or_none(place.ice_below_degC)});
  add_part(page, "WHAT EVERY PLACE ASKS FOR, before sensor error; the last two in weather that lasts", table);
}

void add_lasting(Page& page, const Reader& reader) {
  const Freeze& freeze = *reader.answer.freeze;
  if (!freeze.air) return;
  Table table{{left_column("in " + reader(Kind::degree, freeze.outdoor_degC) + " for weeks"),
               {"wall", "thermostat"},
               {"slab", "sensor"}},
              {},
              0};
  table.rows.push_back({"the pump kept running", or_none(reader, Kind::dial, freeze.lasting_air_dial_degC),
                        or_none(reader, Kind::dial, freeze.lasting_slab_dial_degC)});
  table.rows.push_back({"any one loop shut for good", or_none(reader, Kind::dial, freeze.shut_air_dial_degC),
                        or_none(reader, Kind::dial, freeze.shut_slab_dial_degC)});
  add_part(page, "HAD THE COLDEST HOUR LASTED", table);
}

std::string hours(const Reader& reader, double lasts_s) {
  return reader.answer.outage ? whole_hours(lasts_s, reader.answer.outage->longest_s, reader.system()) : "";
}

void add_band_table(Page& page, const Reader& reader) {
  if (!reader.answer.bands) return;
  const Bands& bands = *reader.answer.bands;
  const System system = reader.system();
  const auto degrees = [&](std::optional<double> degC) { return degC ? bare(Kind::fine_degree, *degC, system) : "-"; };
  Table table{{left_column("enough in"),
               {"wall, " + std::string(unit(Kind::degree, system))},
               {"slab, " + std::string(unit(Kind::degree, system))},
               {"power cut, h"}},
              {},
              0};
  table.rows = {
      {"5 of 100 draws", degrees(bands.air_low_degC), degrees(bands.slab_low_degC), hours(reader, bands.lasts_high_s)},
      {"50 of 100 draws", degrees(bands.air_middle_degC), degrees(bands.slab_middle_degC),
       hours(reader, bands.lasts_middle_s)},
      {"95 of 100 draws", degrees(bands.air_high_degC), degrees(bands.slab_high_degC),
       hours(reader, bands.lasts_low_s)}};
  add_part(page, "WHAT NOBODY CAN KNOW (5 to 95 of 100 draws)", table);
  Table moves{{left_column("moves the setting, from end to end"), {"wall"}, {"slab"}}, {}, 0};
  for (const BandInput& input : bands.input)
    moves.rows.push_back(
        {input.what, reader(Kind::rise, input.air_K), input.slab_K ? reader(Kind::rise, *input.slab_K) : "-"});
  if (!moves.rows.empty()) add_table(page, moves);
  const std::string slab =
      bands.slab_error_K ? fmt::format(", {} (slab)", reader(Kind::rise, *bands.slab_error_K)) : "";
  add_text(page,
           fmt::format("{} draws from a surface through {} whole solves; {} others found it off by {} (wall){} and {} "
                       "(hours) at most, which is in the band.",
                       bands.samples, bands.solves, bands.checks, reader(Kind::rise, bands.air_error_K), slab,
                       reader(Kind::share, bands.lasts_error_share)),
           "  ");
}

void add_sensor_cases(Page& page, const Reader& reader) {
  const System system = reader.system();
  Table table{
      {left_column("slab sensor"), {"reads", "more by"}, {"set it", "there to"}, {"to spare if", "not changed"}},
      {},
      0};
  for (const SensorCase& one : reader.answer.sensor) {
    table.rows.push_back({one.where, bare(Kind::rise, one.reads_off_K, system),
                          bare(Kind::fine_degree, one.dial_degC, system),
                          bare(Kind::rise, one.coldest_spare_K, system)});
  }
  add_part(
      page,
      fmt::format("A SENSOR IN THE WRONG PLACE, in {} (to spare above what freezes first)", unit(Kind::degree, system)),
      table);
}

}  // namespace

void add_freeze_full(Page& page, const Reader& reader) {
  add_all_asked(page, reader);
  add_lasting(page, reader);
  add_band_table(page, reader);
  add_sensor_cases(page, reader);
}

}  // namespace slabwright::report
