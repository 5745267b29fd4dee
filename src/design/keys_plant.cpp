#include "design/choices.hpp"

namespace slabwright {

Record record_of(FluidEntry& x) {
  static constexpr Key keys[] = {
      key<&FluidEntry::kind>({.meaning = "What the loops carry.", .us = "water", .source = "practice"}),
      key<&FluidEntry::glycol>({.meaning = "Share of glycol: by volume unless \"by mass\" is written. Below 20 % the "
                                           "inhibitor is too weak.",
                                .us = "0 %",
                                .source = "practice"}),
      key<&FluidEntry::start_degC>({.meaning = "Slab and fluid when the system is filled and first fired. Below 0 C "
                                               "water freezes in the tubes; a glycol may start colder.",
                                    .us = "40 F",
                                    .si = "5 C",
                                    .source = "practice",
                                    .least = -40.0,
                                    .most = 40.0})};
  return {keys, &x};
}

Record record_of(Boiler& x) {
  static constexpr Key keys[] = {
      key<&Boiler::kind>({.meaning = "What warms the water; none where tube is laid now and the boiler comes later.",
                          .us = "electric boiler",
                          .source = "practice"}),
      key<&Boiler::power_W>({.meaning = "Its power; the answer sizes it when absent.", .least = 100.0, .most = 1e6}),
      key<&Boiler::hottest_degC>({.meaning = "The hottest water it can be set to.",
                                  .us = "120 F",
                                  .si = "49 C",
                                  .source = "practice",
                                  .least = 20.0,
                                  .most = 110.0}),
      key<&Boiler::piping>({.meaning = "How it meets the floor's water: \"direct\"; at \"closely spaced tees\", in a "
                                       "\"separator\" or a \"buffer\", with a pump of its own; through a \"mixing "
                                       "valve\"; or by \"injection\", a small pump from its own circuit.",
                            .us = "direct",
                            .source = "practice"}),
      key<&Boiler::least_flow_m3_per_s>({.meaning = "The least flow its maker asks for; from its power and a rise of "
                                                    "20 K when absent.",
                                         .least = 0.0,
                                         .most = 0.1}),
      key<&Boiler::coefficient_kv>({.meaning = "Its own resistance to flow.",
                                    .us = "Cv 7",
                                    .si = "Kv 6",
                                    .source = "practice",
                                    .least = 0.1,
                                    .most = 1000.0,
                                    .tight = "Kv 10",
                                    .poor = "Kv 3"}),
      key<&Boiler::stages_number>({.meaning = "Equal stages that it switches by itself; as many as keep each within 6 "
                                              "kW when absent. A tank heater has one.",
                                   .least = 1.0,
                                   .most = 24.0}),
      key<&Boiler::differential_K>({.meaning = "How far its water cools from its going off to its coming on again.",
                                    .us = "10 F",
                                    .si = "5 K",
                                    .source = "practice",
                                    .least = 0.5,
                                    .most = 40.0}),
      key<&Boiler::least_on_s>({.meaning = "A stage should run this long at least: shorter runs wear out its switches.",
                                .us = "5 min",
                                .source = "practice",
                                .least = 10.0,
                                .most = 7200.0}),
      key<&Boiler::rated_voltage_V>({.meaning =
                                         "The voltage its power is stated at; the service's when absent. A 240 V "
                                         "element gives 75 % on 208 V.",
                                     .least = 100.0,
                                     .most = 1000.0}),
      key<&Boiler::flow_m3_per_s>({.meaning = "Flow in its own circuit, where it has one; as much as the floor's, or "
                                              "the least flow if that is more, when absent.",
                                   .least = 1e-6,
                                   .most = 0.1}),
      key<&Boiler::pump_points>({.meaning = "Curve of its own pump, at least two points, highest head first; one that "
                                            "gives `flow` when absent."}),
      key<&Boiler::buffer_m3>(
          {.meaning = "Water in a buffer tank, where `piping` has one.", .least = 0.005, .most = 20.0}),
      key<&Boiler::check_valve>({.meaning = "True where a check valve keeps water from running back through it."})};
  return {keys, &x};
}

Record record_of(PumpEntry& x) {
  static constexpr Key keys[] = {
      key<&PumpEntry::points>({.meaning =
                                   "Its curve, at least two points, highest head first: "
                                   "[\"19 ft at 0 gpm\", \"12 ft at 8 gpm\", ...]. The duty to buy is worked out "
                                   "when absent."}),
      key<&PumpEntry::flow_m3_per_s>(
          {.meaning = "Total flow to aim for; from heat and `drop` when absent.", .least = 1e-6, .most = 0.1}),
      key<&PumpEntry::drop_K>({.meaning = "Supply less return on the coldest day.",
                               .us = "20 F",
                               .si = "10 K",
                               .source = "practice",
                               .least = 1.0,
                               .most = 40.0,
                               .tight = "10 F",
                               .poor = "25 F",
                               .si_tight = "5 K",
                               .si_poor = "14 K"}),
      key<&PumpEntry::efficiency_share>({.meaning = "What the water gets of the power it takes: 5 to 15 % old small "
                                                    "pumps, 25 to 45 % with a speed-controlled motor.",
                                         .us = "30 %",
                                         .source = "from memory",
                                         .least = 0.01,
                                         .most = 0.9}),
      key<&PumpEntry::season_s>({.meaning = "How long it runs in a winter.",
                                 .us = "4000 h",
                                 .source = "practice",
                                 .least = 0.0,
                                 .most = 31622400.0}),
      key<&PumpEntry::control>({.meaning = "What its own control does: \"constant speed\", nothing, when absent; "
                                           "\"constant pressure\" holds the head of the design flow; \"proportional "
                                           "pressure\" lets it fall to half as the flow falls."}),
      key<&PumpEntry::pumps>(
          {.meaning = "How many of one kind stand together; one when absent.", .least = 1.0, .most = 4.0}),
      key<&PumpEntry::together>({.meaning = "Several pumps \"in parallel\", each with a check valve, when absent, or "
                                            "\"in series\"."}),
      key<&PumpEntry::second_points>({.meaning = "Curve of the second of several pumps, highest head first; as the "
                                                 "first's when absent."}),
      key<&PumpEntry::bypass_opening_Pa>({.meaning =
                                              "Pressure between supply and return at which a bypass valve opens; "
                                              "there is none when absent.",
                                          .least = 1e3,
                                          .most = 2e5}),
      key<&PumpEntry::bypass_coefficient_kv>(
          {.meaning = "The bypass valve, wide open; Kv 2.5 when absent.", .least = 0.1, .most = 100.0})};
  return {keys, &x};
}

Record record_of(Valve& x) {
  static constexpr Key keys[] = {
      key<&Valve::coefficient_kv>({.meaning = "Balancing valve of a port, wide open: \"Kv 1.1\" or \"Cv 1.3\".",
                                   .us = "Kv 1.1",
                                   .source = "practice",
                                   .least = 0.05,
                                   .most = 50.0}),
      key<&Valve::turns>(
          {.meaning = "Turns from shut to wide open.", .us = "5", .source = "practice", .least = 1.0, .most = 30.0}),
      key<&Valve::shape>(
          {.meaning = "How its coefficient grows with the turns.", .us = "linear", .source = "practice"}),
      key<&Valve::points>({.meaning = "The maker's table, which wins over `coefficient`, `turns` and `shape`: "
                                      "[\"Kv 0.1 at 1 turns\", ...]."}),
      key<&Valve::return_coefficient_kv>({.meaning = "Valve at the return end of a port, open.",
                                          .us = "Kv 2.0",
                                          .source = "practice",
                                          .least = 0.05,
                                          .most = 50.0}),
      key<&Valve::meter_most_m3_per_s>({.meaning =
                                            "The highest mark on a port's flow meter, which is read well between "
                                            "20 and 90 % of it; chosen by the answer when absent.",
                                        .least = 1e-6,
                                        .most = 0.1})};
  return {keys, &x};
}

Record record_of(Service& x) {
  static constexpr Key keys[] = {
      key<&Service::voltage_V>({.meaning = "Voltage at the boiler; between phases where there are three.",
                                .us = "240 V",
                                .si = "230 V",
                                .source = "practice",
                                .least = 100.0,
                                .most = 1000.0}),
      key<&Service::phases>(
          {.meaning = "Phases of the supply, 1 or 3.", .us = "1", .source = "practice", .least = 1.0, .most = 3.0}),
      key<&Service::current_A>({.meaning = "Current that is free for the boiler.", .least = 1.0, .most = 5000.0}),
      key<&Service::main_breaker_A>(
          {.meaning = "The main breaker of the whole service.", .least = 1.0, .most = 5000.0}),
      key<&Service::other_loads_A>(
          {.meaning = "What lights, compressor and tools may take in the same hour.", .least = 0.0, .most = 5000.0})};
  return {keys, &x};
}

Record record_of(Pressure& x) {
  static constexpr Key keys[] = {key<&Pressure::fill_Pa>({.meaning = "Least pressure at the tank, when all is "
                                                                     "coldest, by the gauge.",
                                                          .us = "12 psi",
                                                          .si = "1.0 bar",
                                                          .source = "practice",
                                                          .least = 0.0,
                                                          .most = 1e6}),
                                 key<&Pressure::relief_Pa>({.meaning = "Relief valve opens, by the gauge.",
                                                            .us = "30 psi",
                                                            .si = "3.0 bar",
                                                            .source = "practice",
                                                            .least = 5e4,
                                                            .most = 2e6}),
                                 key<&Pressure::height_m>({.meaning = "Highest pipe above the expansion tank.",
                                                           .us = "8 ft",
                                                           .si = "2.5 m",
                                                           .source = "practice",
                                                           .least = 0.0,
                                                           .most = 60.0})};
  return {keys, &x};
}

Record record_of(FrostHold& x) {
  static constexpr Key keys[] = {
      key<&FrostHold::margin_K>({.meaning = "Kept over the freezing point at tube and slab.",
                                 .us = "3.6 F",
                                 .si = "2 K",
                                 .source = "practice",
                                 .least = 0.0,
                                 .most = 10.0}),
      key<&FrostHold::pipe_limit_degC>({.meaning = "The coldest air that a water line in air may stand in.",
                                        .us = "40 F",
                                        .si = "4.4 C",
                                        .source = "NFPA 13-2019 16.4.1.1 (40 F), as quoted",
                                        .least = 0.0,
                                        .most = 15.0}),
      key<&FrostHold::sensor_error_K>({.meaning = "A sensor may read too high by this much; added to every dial.",
                                       .us = "1.8 F",
                                       .si = "1 K",
                                       .source = "practice",
                                       .least = 0.0,
                                       .most = 5.0}),
      key<&FrostHold::door_air_share>({.meaning = "How far the air over the first metre of floor at a big door stands "
                                                  "on the way from room air to outdoor air.",
                                       .us = "5 %",
                                       .source = "practice",
                                       .least = 0.0,
                                       .most = 0.5}),
      key<&FrostHold::deadband_K>({.meaning = "Deadband of either thermostat, half of it on each side of the dial.",
                                   .us = "2 F",
                                   .si = "1 K",
                                   .source = "practice",
                                   .least = 0.0,
                                   .most = 10.0}),
      key<&FrostHold::satisfied_s>({.meaning = "How long sun, a hot engine or a heater may keep the floor off in the "
                                               "coldest hours.",
                                    .us = "4 h",
                                    .source = "practice",
                                    .least = 0.0,
                                    .most = 172800.0})};
  return {keys, &x};
}

Record record_of(WatchEntry& x) {
  static constexpr Key keys[] = {
      key<&WatchEntry::name>({.meaning = "What it is: \"water line in the north wall\"."}),
      key<&WatchEntry::kind>(
          {.meaning = "A water line in an outer wall or in room air, a drain trap, a sprinkler line, a hose "
                      "bib through an outer wall, or a line outdoors that holds the loops' water.",
           .us = "wall pipe",
           .source = "practice"}),
      key<&WatchEntry::room>({.meaning = "The room it stands in; the first room when absent."}),
      key<&WatchEntry::limit_degC>(
          {.meaning = "Its own limit; by its kind when absent.", .least = -60.0, .most = 30.0}),
      key<&WatchEntry::toward_outdoor_share>({.meaning = "For a wall pipe or a hose bib: how far it stands on the way "
                                                         "from room air to outdoor air; 50 % for a hose bib when "
                                                         "absent.",
                                              .us = "10 %",
                                              .source = "practice",
                                              .least = 0.0,
                                              .most = 1.0})};
  return {keys, &x};
}

}  // namespace slabwright
