#include "design/choices.hpp"

#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr Says cure_says{
    .meaning =
        "From the pour to the first heat, as the concrete's supplier says: `\"35 d\"`. When absent 28 days "
        "(practice), or 21 where the tube lies in a topping (EN 1264-4, cement screed; from memory).",
    .least = 3.0 * day_s,
    .most = 180.0 * day_s,
    .only_for = "cure"};
constexpr Says rise_says{.meaning = "How much warmer the water goes out each day of the first heating.",
                         .us = "9 F",
                         .si = "5 K",
                         .source = "practice",
                         .least = 0.5,
                         .most = 10.0,
                         .only_for = "cure"};

}  // namespace

Record record_of(Slab& x) {
  static constexpr Key keys[] = {
      key<&Slab::size>({.meaning = "Inside size of a rectangular slab."}),
      key<&Slab::area_m2>(
          {.meaning = "Floor inside the walls, where no size or outline is given.", .least = 1.0, .most = 1e5}),
      key<&Slab::outline>({.meaning = "Corners of the floor, one after the other, either way round: "
                                      "[\"0 ft, 0 ft\", \"40 ft, 0 ft\", ...]."}),
      key<&Slab::thickness_m>({.meaning = "Depth of concrete.",
                               .us = "5 in",
                               .si = "120 mm",
                               .source = "practice",
                               .least = 0.05,
                               .most = 0.6,
                               .tight = "4 in",
                               .poor = "6 in",
                               .si_tight = "100 mm",
                               .si_poor = "150 mm"}),
      key<&Slab::concrete_above_tube_m>({.meaning = "From the top of the concrete to the top of the tube; the tube "
                                                    "lies mid-depth when absent.",
                                         .least = 0.01,
                                         .most = 0.5}),
      key<&Slab::exposed_perimeter_m>(
          {.meaning = "Edge that faces outdoors; all of it when absent.", .least = 0.0, .most = 2000.0}),
      key<&Slab::conductivity_W_per_mK>({.meaning = "Heat conductivity of the concrete.",
                                         .us = "1.75 W/mK",
                                         .source = "practice",
                                         .least = 0.3,
                                         .most = 4.0,
                                         .tight = "2.0 W/mK",
                                         .poor = "1.4 W/mK"}),
      key<&Slab::covering>({.meaning = "Wood, rubber or mats on top of the concrete.",
                            .us = "none",
                            .source = "practice",
                            .tight = "none",
                            .poor = "R-0.5"}),
      key<&Slab::topping_m>({.meaning = "Thickness of a screed or topping poured over the slab; none when absent.",
                             .least = 0.01,
                             .most = 0.3}),
      key<&Slab::topping_conductivity_W_per_mK>(
          {.meaning = "Heat conductivity of the topping; 1.2 W/mK when absent (practice: cement screed).",
           .least = 0.1,
           .most = 4.0}),
      key<&Slab::topping_above_tube_m>({.meaning = "From the top of the topping to the top of a tube that lies in it; "
                                                   "the tube lies in the slab when absent.",
                                        .least = 0.005,
                                        .most = 0.3}),
      key<&Slab::mats_share>({.meaning = "Part of the floor under pallets, benches that reach the floor, or mats; none "
                                         "when absent.",
                              .least = 0.0,
                              .most = 0.9}),
      key<&Slab::mat_insulation>({.meaning =
                                      "What those add; 0.15 m2K/W when absent (practice: half an inch of rubber, "
                                      "or a loaded pallet)."}),
      key<&Slab::cure_s>(cure_says),
      key<&Slab::daily_rise_K>(rise_says)};
  return {keys, &x};
}

namespace {

constexpr std::string_view coils_meaning =
    "Coils as your dealer sells them: `[\"300 ft\", \"500 ft\"]`. When absent the usual ones: 100, 300, 500 and 1000 "
    "ft, or 100, 120, 200, 240 and 500 m.";
constexpr std::string_view fit_meaning =
    "Whether the spacing is stretched a little to fill what lies between walls, or kept exactly (for mesh with a "
    "pitch).";
constexpr std::string_view balance_meaning =
    "Whether drawn loops get the same length, or the same heat: then loops along outer walls get less floor.";

constexpr std::string_view leader_meaning =
    "The leader (run to the manifold) of each loop, each way, where loops are not drawn.";
constexpr std::string_view radius_meaning =
    "Least radius of its bends, to the tube's centre line; eight outside diameters when absent (trade table).";
constexpr std::string_view runs_meaning =
    "Which way most tube runs: along the slab's longer side, along its shorter one, or as fits best when absent.";
constexpr std::string_view rest_meaning =
    "True where loops listed with a `path` stay as they are and the floor that they leave is laid with more loops; "
    "else those listed are all there are.";

}  // namespace

Record record_of(Tube& x) {
  static constexpr Key keys[] = {
      key<&Tube::size>({.meaning = "Tube by its trade size.", .us = "1/2 in", .si = "16 x 2 mm", .source = "practice"}),
      key<&Tube::spacing_m>({.meaning = "From tube to tube.",
                             .us = "12 in",
                             .si = "300 mm",
                             .source = "practice",
                             .least = 0.05,
                             .most = 0.75,
                             .tight = "9 in",
                             .poor = "16 in",
                             .si_tight = "200 mm",
                             .si_poor = "400 mm"}),
      key<&Tube::from_walls_m>({.meaning = "From the wall's inner face to the first tube.",
                                .us = "6 in",
                                .si = "150 mm",
                                .source = "practice",
                                .least = 0.03,
                                .most = 3.0}),
      key<&Tube::from_doors_m>({.meaning = "From a big door's inner face to the first tube.",
                                .us = "12 in",
                                .si = "300 mm",
                                .source = "practice",
                                .least = 0.05,
                                .most = 5.0,
                                .tight = "24 in",
                                .poor = "6 in",
                                .si_tight = "600 mm",
                                .si_poor = "150 mm"}),
      key<&Tube::leader_m>(
          {.meaning = leader_meaning, .us = "10 ft", .si = "3 m", .source = "practice", .least = 0.0, .most = 60.0}),
      key<&Tube::tail_m>({.meaning = "Left over at each end of a loop, to work with at the manifold.",
                          .us = "2 ft",
                          .si = "600 mm",
                          .source = "practice",
                          .least = 0.0,
                          .most = 5.0}),
      key<&Tube::coils>({.meaning = coils_meaning}),
      key<&Tube::bend_radius_m>({.meaning = radius_meaning, .least = 0.02, .most = 1.0}),
      key<&Tube::fit>({.meaning = fit_meaning, .us = "stretched", .source = "practice"}),
      key<&Tube::balance_by>({.meaning = balance_meaning, .us = "length", .source = "practice"}),
      key<&Tube::runs>({.meaning = runs_meaning}),
      key<&Tube::lay_rest>({.meaning = rest_meaning}),
      key<&Tube::longest_loop_m>({.meaning = "Longest loop allowed, leaders included; by the tube's size when absent "
                                             "(CSA B214 for inch sizes, practice for metric ones).",
                                  .least = 5.0,
                                  .most = 500.0}),
      key<&Tube::roughness_m>({.meaning = "Roughness of the bore; 0.007 mm when absent.", .least = 0.0, .most = 1e-3}),
      key<&Tube::conductivity_W_per_mK>({.meaning = "Heat conductivity of the tube's wall; 0.38 W/mK for inch sizes, "
                                                    "0.35 for metric ones when absent.",
                                         .least = 0.05,
                                         .most = 400.0})};
  return {keys, &x};
}

Record record_of(Manifold& x) {
  static constexpr Key keys[] = {
      key<&Manifold::name>({.meaning = "What it is called."}),
      key<&Manifold::place>({.meaning =
                                 "Where its ports come up, as the middle of their row: coordinates, or distances "
                                 "from two walls."}),
      key<&Manifold::facing>(
          {.meaning = "Which way its loops leave, on the plan.", .us = "away from wall", .source = "practice"}),
      key<&Manifold::port_pitch_m>({.meaning = "From port to port along the row, supply and return taking turns.",
                                    .us = "2 in",
                                    .si = "50 mm",
                                    .source = "practice",
                                    .least = 0.02,
                                    .most = 0.3}),
      key<&Manifold::loops_number>({.meaning = "How many loops leave it: where the slab is poured and lengths are not "
                                               "known, or, beside a `place`, as drawn loops shall have it.",
                                    .least = 1.0,
                                    .most = 60.0}),
      key<&Manifold::ports_number>(
          {.meaning = "Ports it has; as many as are needed and one spare when absent.", .least = 1.0, .most = 60.0}),
      key<&Manifold::reverse_return>({.meaning =
                                          "True where the first loop on the supply bar is the last on the return "
                                          "bar."})};
  return {keys, &x};
}

Record record_of(Mains& x) {
  static constexpr Key keys[] = {
      key<&Mains::length_m>({.meaning = "From boiler to manifold, one way.",
                             .us = "10 ft",
                             .si = "3 m",
                             .source = "practice",
                             .least = 0.0,
                             .most = 500.0}),
      key<&Mains::inside_diameter_m>({.meaning = "Inside diameter of the mains.",
                                      .us = "1 in",
                                      .si = "25 mm",
                                      .source = "practice",
                                      .least = 0.008,
                                      .most = 0.2,
                                      .tight = "1.25 in",
                                      .poor = "0.75 in",
                                      .si_tight = "32 mm",
                                      .si_poor = "20 mm"}),
      key<&Mains::return_way>({.meaning = "Several manifolds \"each its own\" mains from the "
                                          "boiler, when absent; on common mains, \"direct\", "
                                          "the nearest on the supply also on the return; or "
                                          "\"reverse\", the nearest on the supply the last "
                                          "on the return, which runs on and comes back."}),
      key<&Mains::between_m>({.meaning = "From one manifold to the next on common mains; as "
                                         "`length` when absent.",
                              .least = 0.1,
                              .most = 500.0})};
  return {keys, &x};
}

Record record_of(LoopEntry& x) {
  static constexpr Key keys[] = {
      key<&LoopEntry::name>({.meaning = "Where it goes, in your own words."}),
      key<&LoopEntry::room>({.meaning = "The room it heats; the first heated room when absent."}),
      key<&LoopEntry::manifold>({.meaning = "The manifold it leaves; the first when absent."}),
      key<&LoopEntry::length_m>({.meaning = "Tube from manifold to manifold, or without leaders: see `leaders`. A "
                                            "`path` stands in its place.",
                                 .least = 1.0,
                                 .most = 1000.0}),
      key<&LoopEntry::path>({.meaning = "Its corners on the plan, from its supply port to its return port, where it is "
                                        "drawn already; the tube rounds them. Its length is measured along it."}),
      key<&LoopEntry::leaders>({.meaning = "\"included\" in the length, or \"15 ft each way\" to be added; included "
                                           "when absent."}),
      key<&LoopEntry::shut>({.meaning = "True to see what becomes of the others while its zone valve is shut."})};
  return {keys, &x};
}

}  // namespace slabwright
