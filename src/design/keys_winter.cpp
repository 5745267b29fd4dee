// How the winter is worked, run and paid for. Most of it only the winter reads.
#include "design/choices.hpp"

namespace slabwright {
namespace {

constexpr std::string_view winter = "winter";

}  // namespace

Record record_of(Work& x) {
  static constexpr Key keys[] = {
      key<&Work::hours>({.meaning = "When people work there. The way back to working temperature ends when they begin.",
                         .us = "7:00 to 17:00",
                         .source = "practice"}),
      key<&Work::days>(
          {.meaning = "On which days.", .us = "monday to friday", .source = "practice", .only_for = winter}),
      key<&Work::people_number>({.meaning = "How many people work there: each warms the room and breathes out water.",
                                 .us = "0",
                                 .source = "practice",
                                 .least = 0.0,
                                 .most = 1000.0,
                                 .only_for = winter}),
      key<&Work::wash_kg>(
          {.meaning = "Water from washing that dries off in the room, each day of work; the room gives the heat "
                      "for that.",
           .us = "0 lb",
           .si = "0 kg",
           .source = "practice",
           .least = 0.0,
           .most = 1e5,
           .only_for = winter}),
      key<&Work::dryer_kg>({.meaning = "Water that a dehumidifier takes out in a day.",
                            .us = "0 lb",
                            .si = "0 kg",
                            .source = "practice",
                            .least = 0.0,
                            .most = 1e5,
                            .only_for = winter})};
  return {keys, &x};
}

Record record_of(VehicleEntry& x) {
  static constexpr Key keys[] = {
      key<&VehicleEntry::name>({.meaning = "What it is called.", .only_for = winter}),
      key<&VehicleEntry::room>({.meaning = "The room it stands in; the first room when absent.", .only_for = winter}),
      key<&VehicleEntry::mass_kg>(
          {.meaning = "Its own mass, which is warmed to the room.", .least = 1.0, .most = 2e5, .only_for = winter}),
      key<&VehicleEntry::arrives>(
          {.meaning = "When it comes in, each day of work.", .us = "16:00", .source = "practice", .only_for = winter}),
      key<&VehicleEntry::temperature_degC>({.meaning = "How cold it comes in; as cold as outdoors when absent.",
                                            .least = -60.0,
                                            .most = 30.0,
                                            .only_for = winter}),
      key<&VehicleEntry::snow_kg>({.meaning = "Snow and ice on it, which melt in the room.",
                                   .us = "0 lb",
                                   .si = "0 kg",
                                   .source = "practice",
                                   .least = 0.0,
                                   .most = 2e4,
                                   .only_for = winter}),
      key<&VehicleEntry::evaporates_share>({.meaning = "How much of that dries off in the room; the rest runs off.",
                                            .us = "10 %",
                                            .source = "practice",
                                            .least = 0.0,
                                            .most = 1.0,
                                            .only_for = winter})};
  return {keys, &x};
}

Record record_of(Electricity& x) {
  static constexpr Key keys[] = {
      key<&Electricity::currency>({.meaning = "A label before amounts: `\"$\"`, `\"EUR\"`.", .only_for = winter}),
      key<&Electricity::price>({.meaning =
                                    "The price in all hours that no timed price covers. Where it is absent there "
                                    "is no money in the answer, only kWh.",
                                .only_for = winter}),
      key<&Electricity::standing>({.meaning = "A charge for each month, used or not.", .only_for = winter}),
      key<&Electricity::timed>({.meaning =
                                    "Prices of certain hours, days or months, each of which may be left out; the "
                                    "first that holds counts.",
                                .only_for = winter}),
      key<&Electricity::tiers>({.meaning =
                                    "What comes on top of the price, or below zero off it, for what a month takes "
                                    "beyond a limit, until the next limit. Lowest limit first.",
                                .only_for = winter}),
      key<&Electricity::demand>({.meaning = "A price for a month's highest power: in all hours or certain ones, with a "
                                            "ratchet (this share of the year's highest is billed at least), with a "
                                            "power that is billed in any case.",
                                 .only_for = winter}),
      key<&Electricity::heat_meter>({.meaning = "True where heat has a meter of its own, and tiers and demand of its "
                                                "own with it, beside which `other` of [bill] does not count.",
                                     .only_for = winter}),
      key<&Electricity::carbon_kg_per_J>({.meaning = "Carbon dioxide of the electricity; left out of the answer when "
                                                     "absent.",
                                          .least = 0.0,
                                          .most = 1e-6,
                                          .only_for = winter})};
  return {keys, &x};
}

Record record_of(WayEntry& x) {
  static constexpr Key keys[] = {
      key<&WayEntry::name>({.meaning = "What this way of running is called.", .only_for = winter}),
      key<&WayEntry::floor>({.meaning =
                                 "What the floor is held at: warm enough for \"work\", on \"frost hold\", \"off\", "
                                 "or at a \"setpoint\" of its own.",
                             .us = "frost hold",
                             .source = "practice",
                             .only_for = winter}),
      key<&WayEntry::sensor>(
          {.meaning = "What its thermostat feels on frost hold or at a temperature of its own: the air, the slab, or "
                      "both, each of which may call for heat. For work it is the air.",
           .us = "air",
           .source = "practice",
           .only_for = winter}),
      key<&WayEntry::setpoint_degC>({.meaning = "The setpoint, of the sensor, where floor is \"setpoint\".",
                                     .least = 0.0,
                                     .most = 40.0,
                                     .only_for = winter}),
      key<&WayEntry::rest_degC>({.meaning = "The same outside working hours and on days off; as in them when absent.",
                                 .least = 0.0,
                                 .most = 40.0,
                                 .only_for = winter}),
      key<&WayEntry::rest_when>({.meaning =
                                     "When that is: whenever nobody works, or only where a whole day off lies in "
                                     "between.",
                                 .us = "nights and days off",
                                 .source = "practice",
                                 .only_for = winter}),
      key<&WayEntry::charge>({.meaning = "The only hours in which the floor is heated, up to `charge_to`; below the "
                                         "frost hold it is heated at any hour.",
                              .only_for = winter}),
      key<&WayEntry::charge_to_degC>(
          {.meaning = "The slab's temperature at which that ends.", .least = 5.0, .most = 40.0, .only_for = winter}),
      key<&WayEntry::second_source>(
          {.meaning = "When the second source runs.", .us = "off", .source = "practice", .only_for = winter}),
      key<&WayEntry::source_degC>({.meaning = "The second source's thermostat; the working temperature when absent.",
                                   .least = 0.0,
                                   .most = 35.0,
                                   .only_for = winter}),
      key<&WayEntry::source_rest_degC>({.meaning = "The same outside working hours and on days off, where it runs "
                                                   "always; as in them when absent.",
                                        .least = 0.0,
                                        .most = 35.0,
                                        .only_for = winter}),
      key<&WayEntry::early_start>({.meaning = "True where heating starts so long before work that it is warm by then.",
                                   .us = "true",
                                   .source = "practice",
                                   .only_for = winter}),
      key<&WayEntry::outdoor_reset>({.meaning = "True where water is made no warmer than the weather asks for.",
                                     .us = "false",
                                     .source = "practice",
                                     .only_for = winter}),
      key<&WayEntry::last_winter>({.meaning = "True for the way it was run before: [bill] is compared with it, and the "
                                              "soil remembers it.",
                                   .us = "false",
                                   .source = "practice",
                                   .only_for = winter})};
  return {keys, &x};
}

Record record_of(Bill& x) {
  static constexpr Key keys[] = {
      key<&Bill::months>(
          {.meaning = "What the meter counted in each month of last winter that is known.", .only_for = winter}),
      key<&Bill::other_J>({.meaning = "What of that was not heat, in a month: lights, tools, compressor.",
                           .us = "0 kWh",
                           .source = "practice",
                           .least = 0.0,
                           .most = 1e12,
                           .only_for = winter})};
  return {keys, &x};
}

}  // namespace slabwright
