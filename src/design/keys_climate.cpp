#include "design/choices.hpp"

namespace slabwright {
namespace {

constexpr Key keys[] = {
    key<&Climate::outdoor_degC>(
        {.meaning = "The coldest weather to plan for (the 99.6 % hour): sizes floor and boiler.",
         .least = -60.0,
         .most = 30.0}),
    key<&Climate::coldest_degC>({.meaning = "The coldest hour in 20 years: decides what freezes. When it is not "
                                            "given, from `yearly_minimum` and `minimum_spread`; else 12 F (7 K) "
                                            "below `outdoor`, or the weather file's lowest hour where that is colder.",
                                 .least = -70.0,
                                 .most = 30.0}),
    key<&Climate::indoor_degC>({.meaning = "The temperature wanted inside while somebody works.",
                                .us = "60 F",
                                .si = "16 C",
                                .source = "practice",
                                .least = 0.0,
                                .most = 35.0,
                                .tight = "55 F",
                                .poor = "65 F",
                                .si_tight = "13 C",
                                .si_poor = "18 C"}),
    key<&Climate::mean_degC>({.meaning = "Yearly mean of the outdoor air, which deep ground keeps.",
                              .us = "45 F",
                              .si = "7 C",
                              .source = "practice",
                              .least = -20.0,
                              .most = 30.0,
                              .tight = "50 F",
                              .poor = "38 F",
                              .si_tight = "10 C",
                              .si_poor = "3 C"}),
    key<&Climate::half_swing_K>({.meaning = "Half the difference between the warmest and the coldest month's mean.",
                                 .us = "22 F",
                                 .si = "12 K",
                                 .source = "practice",
                                 .least = 0.0,
                                 .most = 40.0}),
    key<&Climate::altitude_m>({.meaning = "Height above sea level: thinner air carries less heat out.",
                               .us = "0 ft",
                               .si = "0 m",
                               .source = "practice",
                               .least = -500.0,
                               .most = 5000.0}),
    key<&Climate::wind_m_per_s>({.meaning = "Wind with the coldest weather: it takes heat from the slab's edge.",
                                 .us = "9 mph",
                                 .si = "4 m/s",
                                 .source = "practice, the wind of ISO 6946's outside film",
                                 .least = 0.0,
                                 .most = 40.0,
                                 .tight = "5 mph",
                                 .poor = "22 mph",
                                 .si_tight = "2 m/s",
                                 .si_poor = "10 m/s"}),
    key<&Climate::weather>({.meaning = "An hourly weather file (EPW or TMY3) beside this file: `\"town.epw\"`. It "
                                       "gives what is not given here of `outdoor` (its 99.6 % hour), `coldest`, "
                                       "`mean`, `half_swing` and `altitude`, and the cold snap."}),
    key<&Climate::yearly_minimum_degC>({.meaning = "Mean of the yearly lowest hours, from a station's published "
                                                   "statistics. With `minimum_spread` it gives `coldest`.",
                                        .least = -70.0,
                                        .most = 30.0}),
    key<&Climate::minimum_spread_K>(
        {.meaning = "Standard deviation of the yearly lowest hours.", .least = 0.0, .most = 12.0}),
    key<&Climate::return_years>({.meaning = "The coldest hour in how many years, beside `yearly_minimum`.",
                                 .us = "20",
                                 .source = "practice",
                                 .least = 5.0,
                                 .most = 100.0}),
    key<&Climate::snap_days>({.meaning = "How many days a cold snap lasts at its lowest.",
                              .us = "3",
                              .source = "practice",
                              .least = 1.0,
                              .most = 10.0}),
    key<&Climate::snap_swing_K>({.meaning = "Highest less lowest of a cold snap's days. A weather file's days have "
                                            "their own.",
                                 .us = "18 F",
                                 .si = "10 K",
                                 .source = "practice",
                                 .least = 0.0,
                                 .most = 30.0}),
    key<&Climate::snap>({.meaning = "A cold snap of your own, day by day, at most 10: [\"-12 F\", \"-20 F\", ...]. "
                                    "It stands in place of `snap_days` and of the weather file's."}),
    key<&Climate::latitude_deg>({.meaning = "Latitude, north: how high the sun stands. A weather file says its own; no "
                                            "sun is counted where neither does.",
                                 .least = 0.0,
                                 .most = 75.0,
                                 .only_for = "winter"})};

}  // namespace

Record record_of(Climate& x) { return {keys, &x}; }

}  // namespace slabwright
