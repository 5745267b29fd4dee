// What warms the air beside the floor.
#include "design/choices.hpp"

namespace slabwright {
namespace {

constexpr std::string_view winter_alone = "winter";

}  // namespace

Record record_of(SecondSource& x) {
  static constexpr Key keys[] = {
      key<&SecondSource::kind>({.meaning = "What heats beside the boiler: a heat pump warms the air; a water heat pump "
                                           "stands outdoors with the loops' water in it.",
                                .us = "none",
                                .source = "practice"}),
      key<&SecondSource::cut_out_degC>(
          {.meaning = "Colder than this outdoors and it stops.", .least = -50.0, .most = 20.0}),
      key<&SecondSource::capacity_W>({.meaning = "Heat it gives at 47 F (8.3 C) outdoors, as its plate says. What it "
                                                 "gives in the cold follows a cold-climate unit's curve.",
                                      .least = 500.0,
                                      .most = 200000.0}),
      key<&SecondSource::current_A>(
          {.meaning = "The most current it takes, as its plate says.", .least = 0.1, .most = 5000.0}),
      key<&SecondSource::points>({.meaning =
                                      "Its maker's table, two rows or more, coldest first, in place of `capacity`: "
                                      "[\"5 F: 17000 Btu/h, COP 2.0\", ...].",
                                  .only_for = winter_alone}),
      key<&SecondSource::defrost>({.meaning = "Frost on its coil: \"in table\", the rows of `points` have it in them; "
                                              "\"on demand\", thawed when there is some; \"by clock\", thawed now and "
                                              "then in any case.",
                                   .us = "on demand",
                                   .source = "practice",
                                   .only_for = winter_alone}),
      key<&SecondSource::cut_in_degC>({.meaning =
                                           "Stopped by the cold, it starts again at this outdoor temperature; 5 F "
                                           "or 3 K above `cut_out` when absent.",
                                       .least = -50.0,
                                       .most = 25.0,
                                       .only_for = winter_alone}),
      key<&SecondSource::start_above_degC>({.meaning = "It starts in no colder room; in any when absent.",
                                            .least = -20.0,
                                            .most = 25.0,
                                            .only_for = winter_alone}),
      key<&SecondSource::least_setting_degC>(
          {.meaning = "The lowest that its thermostat can be set to; any when absent.",
           .least = 0.0,
           .most = 25.0,
           .only_for = winter_alone}),
      key<&SecondSource::drain_pan_W>({.meaning = "Power of its drain pan's and crankcase's heaters, while it is near "
                                                  "freezing or colder outdoors.",
                                       .us = "50 W",
                                       .source = "practice",
                                       .least = 0.0,
                                       .most = 5000.0,
                                       .only_for = winter_alone}),
      key<&SecondSource::room>(
          {.meaning = "The room it blows into; the first with a heated floor when absent.", .only_for = winter_alone}),
      key<&SecondSource::gradient_K_per_m>({.meaning = "How much warmer the air gets with height while it blows.",
                                            .us = "0.3 F/ft",
                                            .si = "0.5 K/m",
                                            .source = "practice",
                                            .least = 0.0,
                                            .most = 5.0,
                                            .only_for = winter_alone})};
  return {keys, &x};
}

}  // namespace slabwright
