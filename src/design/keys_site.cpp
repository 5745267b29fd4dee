#include "design/choices.hpp"

#include "slabwright/units_exact.hpp"

namespace slabwright {

Record record_of(Project& x) {
  static constexpr Key keys[] = {
      key<&Project::name>({.meaning = "What the shop is called on every sheet."}),
      key<&Project::poured>({.meaning =
                                 "The day of the pour: of the slab, or of the topping that the tube lies in. The "
                                 "first heat is counted from it.",
                             .only_for = "cure"})};
  return {keys, &x};
}

Record record_of(Ground& x) {
  static constexpr Key keys[] = {key<&Ground::conductivity_W_per_mK>({.meaning = "Heat conductivity of the soil.",
                                                                      .us = "2.0 W/mK",
                                                                      .source = "ISO 13370, sand or gravel",
                                                                      .least = 0.2,
                                                                      .most = 6.0,
                                                                      .tight = "1.5 W/mK",
                                                                      .poor = "2.8 W/mK"})};
  return {keys, &x};
}

namespace {

constexpr Key building_keys[] = {
    key<&Building::quality>({.meaning = "How well the building keeps its heat where nothing more is known.",
                             .us = "usual",
                             .source = "practice"}),
    key<&Building::wall_insulation>({.meaning = "Outer walls, everything counted.",
                                     .us = "R-13",
                                     .si = "2.3 m2K/W",
                                     .source = "practice",
                                     .tight = "R-19",
                                     .poor = "R-8",
                                     .si_tight = "3.3 m2K/W",
                                     .si_poor = "1.4 m2K/W"}),
    key<&Building::roof_insulation>({.meaning = "Roof or ceiling.",
                                     .us = "R-30",
                                     .si = "5.3 m2K/W",
                                     .source = "practice",
                                     .tight = "R-38",
                                     .poor = "R-19",
                                     .si_tight = "6.7 m2K/W",
                                     .si_poor = "3.3 m2K/W"}),
    key<&Building::door_insulation>({.meaning = "Big doors as installed, joints counted.",
                                     .us = "R-6",
                                     .si = "1.05 m2K/W",
                                     .source = "practice",
                                     .tight = "R-8",
                                     .poor = "R-4",
                                     .si_tight = "1.4 m2K/W",
                                     .si_poor = "0.7 m2K/W"}),
    key<&Building::height_m>({.meaning = "Floor to ceiling.",
                              .us = "12 ft",
                              .si = "3.6 m",
                              .source = "practice",
                              .least = 1.8,
                              .most = 20.0,
                              .tight = "10 ft",
                              .poor = "14 ft",
                              .si_tight = "3 m",
                              .si_poor = "4.2 m"}),
    key<&Building::air_changes_per_s>({.meaning = "Air that leaks in, as changes of all the air inside.",
                                       .us = "0.6 per hour",
                                       .source = "practice",
                                       .least = 0.0,
                                       .most = 0.01,
                                       .tight = "0.35 per hour",
                                       .poor = "0.9 per hour"}),
    key<&Building::big_door>({.meaning = "False where the shop has no big door; one is our guess until an opening or "
                                         "this says otherwise.",
                              .us = "true",
                              .source = "practice"}),
    key<&Building::mass>({.meaning = "What stores heat on the inner side of walls and roof: \"light\", a frame with "
                                     "boards, or steel; \"medium\", boards on masonry; \"heavy\", bare masonry.",
                          .us = "light",
                          .source = "practice",
                          .only_for = "winter"}),
    key<&Building::heat_loss_W>({.meaning = "The heat loss of the whole building at `climate.outdoor`, without the "
                                            "ground, where somebody has worked it out.",
                                 .least = 10.0,
                                 .most = 1e7})};

}  // namespace

Record record_of(Building& x) { return {building_keys, &x}; }

Record record_of(Room& x) {
  static constexpr Key keys[] = {
      key<&Room::name>({.meaning = "What the room is called."}),
      key<&Room::size>({.meaning = "Inside size of a rectangular room."}),
      key<&Room::area_m2>(
          {.meaning = "Floor inside the walls, where no size or outline is given.", .least = 0.5, .most = 1e5}),
      key<&Room::outline>({.meaning = "Corners of the floor, one after the other, either way round."}),
      key<&Room::indoor_degC>(
          {.meaning = "Temperature wanted here; the climate's `indoor` when absent.", .least = 0.0, .most = 35.0}),
      key<&Room::outer_wall_m>({.meaning = "Length of its walls that face outdoors; shared out by floor area when "
                                           "absent.",
                                .least = 0.0,
                                .most = 2000.0}),
      key<&Room::height_m>({.meaning = "Floor to ceiling; the building's when absent.", .least = 1.8, .most = 20.0}),
      key<&Room::heated_floor>(
          {.meaning = "False where no tube lies under this room.", .us = "true", .source = "practice"}),
      key<&Room::own_loops>({.meaning = "True where its tube belongs to loops that heat nothing else.",
                             .us = "false",
                             .source = "practice"}),
      key<&Room::shut>({.meaning = "True to see what becomes of the others while the zone valves of its loops are "
                                   "shut."})};
  return {keys, &x};
}

Record record_of(Opening& x) {
  static constexpr Key keys[] = {
      key<&Opening::name>({.meaning = "What it is called."}),
      key<&Opening::kind>({.meaning = "What it is; only a big door lets the slab run out under it.",
                           .us = "big door",
                           .source = "practice"}),
      key<&Opening::room>({.meaning = "The room it opens into; the first room when absent."}),
      key<&Opening::size>({.meaning = "Width x height."}),
      key<&Opening::place>({.meaning = "Its middle on the plan, at a wall."}),
      key<&Opening::insulation>({.meaning = "As installed. A big door's is the building's `door_insulation` when "
                                            "absent; a door R-5, a window R-2 (practice)."}),
      key<&Opening::strip>({.meaning = "Foam across the slab under the leaf; the edge's `door_strip` when absent."}),
      key<&Opening::tube_distance_m>({.meaning = "The nearest tube inside it, from the leaf's inner face; the tube's "
                                                 "`from_doors` when absent.",
                                      .least = 0.05,
                                      .most = 5.0}),
      key<&Opening::tube_spacing_m>(
          {.meaning = "Closer tube before it, where loops are drawn; `tube.spacing` when absent.",
           .least = 0.05,
           .most = 0.75}),
      key<&Opening::band_width_m>(
          {.meaning = "How far into the floor that reaches; 4 ft or 1.2 m when absent.", .least = 0.1, .most = 10.0}),
      key<&Opening::opened_number>({.meaning = "How often it is opened on a day of work; a door or a window never when "
                                               "absent.",
                                    .us = "4",
                                    .source = "practice",
                                    .least = 0.0,
                                    .most = 500.0,
                                    .only_for = "winter"}),
      key<&Opening::open_s>({.meaning = "How long it stands open each time.",
                             .us = "5 min",
                             .source = "practice",
                             .least = 0.0,
                             .most = day_s,
                             .only_for = "winter"}),
      key<&Opening::sun_share>({.meaning = "Of the sun outside that comes in through glass and frame; none through a "
                                           "door when absent.",
                                .us = "50 %",
                                .source = "practice",
                                .least = 0.0,
                                .most = 1.0,
                                .only_for = "winter"})};
  return {keys, &x};
}

Record record_of(Exhaust& x) {
  static constexpr Key keys[] = {
      key<&Exhaust::room>({.meaning = "The room it takes air from."}),
      key<&Exhaust::flow_m3_per_s>({.meaning = "Air taken out while the fan runs.", .least = 0.0, .most = 50.0}),
      key<&Exhaust::makeup>({.meaning = "Whether the air that comes in instead is warmed before it does. Untempered "
                                        "air is carried by floor and boiler, as far as they can.",
                             .us = "tempered",
                             .source = "practice"}),
      key<&Exhaust::hours>(
          {.meaning = "When the fan runs, on days of work; in working hours when absent.", .only_for = "winter"})};
  return {keys, &x};
}

Record record_of(Gains& x) {
  static constexpr Key keys[] = {
      key<&Gains::room>({.meaning = "The room the heat is set free in."}),
      key<&Gains::power_W>({.meaning = "Heat from machines, lamps and people that can be counted on at the coldest.",
                            .least = 0.0,
                            .most = 1e6}),
      key<&Gains::hours>(
          {.meaning = "When it is set free, on days of work; always when absent.", .only_for = "winter"})};
  return {keys, &x};
}

}  // namespace slabwright
