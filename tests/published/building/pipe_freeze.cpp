// Standing water in pipes. Two times are printed by texts that quote the source; the tables were computed by a second
// program from the same formula.
#include <array>

#include "slabwright/handbook_pipe_freeze.hpp"
#include "slabwright/units_exact.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double btu_in_W_per_mK = 1055.05585262 / 3600.0 * 1.8 / 0.3048 / 12.0;  // Btu in/(h ft2 degF)
constexpr double btu_W_per_m2K = 1055.05585262 / 3600.0 * 1.8 / (0.3048 * 0.3048);

double from_degF(double degF) { return (degF - 32.0) / 1.8; }

StandingPipe lagged(double inside_in, double outside_in, double thick_in) {
  return {inside_in * inch_m, outside_in * inch_m,    std::nullopt,
          thick_in * inch_m,  0.30 * btu_in_W_per_mK, std::nullopt};
}

double freezing_h(const StandingPipe& pipe, double start_degF, double air_degF) {
  return time_to_freezing_s(pipe, from_degF(start_degF), from_degF(air_degF)).value() / hour_s;
}

double ice_h(const StandingPipe& pipe, double air_degF) {
  return time_to_ice_s(pipe, from_degF(air_degF)).value() / hour_s;
}

struct Times {
  const char *freezing, *ice;
};

}  // namespace

TEST_CASE("a 2 in pipe under 1.5 in of insulation") {
  const Source printed{"ASHRAE Fundamentals 2009 and 2019", "insulation chapter, time to freeze, as quoted"};
  const Source digits{"ASHRAE Fundamentals 2009, insulation chapter", "eq. 1, more digits by a second program",
                      Oracle::derived};
  const StandingPipe pipe = lagged(2.067, 2.375, 1.5);
  CHECK_PUBLISHED(printed, "2 in pipe, 42 degF water in air of -18 degF, h to 32 degF", "1.4",
                  freezing_h(pipe, 42.0, -18.0));
  CHECK_PUBLISHED(printed, "2 in pipe, 42 degF water in air of 20 degF, h to 32 degF", "4.6",
                  freezing_h(pipe, 42.0, 20.0));
  CHECK_PUBLISHED(digits, "2 in pipe, 42 degF water in air of 20 degF, h to 32 degF", "4.583",
                  freezing_h(pipe, 42.0, 20.0));
}

TEST_CASE("insulated steel pipes") {
  const Source table{"ASHRAE Fundamentals 2009, insulation chapter",
                     "eq. 1 and its latent part, 42 degF water, -18 degF air, by a second program", Oracle::derived};
  struct Row {
    const char* name;
    double inside_in, outside_in;
    std::array<Times, 4> times;
  };
  const std::array<const char*, 4> thick{"0.5", "1", "1.5", "2"};
  const std::array<double, 4> thick_in{0.5, 1.0, 1.5, 2.0};
  for (const Row& r :
       {Row{"1/2", 0.622, 0.840, {{{"0.12", "1.89"}, {"0.19", "2.93"}, {"0.23", "3.66"}, {"0.27", "4.21"}}}},
        Row{"3/4", 0.824, 1.050, {{{"0.18", "2.82"}, {"0.29", "4.50"}, {"0.36", "5.70"}, {"0.42", "6.63"}}}},
        Row{"1", 1.049, 1.315, {{{"0.25", "3.87"}, {"0.40", "6.33"}, {"0.52", "8.13"}, {"0.61", "9.56"}}}},
        Row{"1-1/2", 1.610, 1.900, {{{"0.43", "6.82"}, {"0.74", "11.59"}, {"0.97", "15.27"}, {"1.16", "18.26"}}}},
        Row{"2", 2.067, 2.375, {{{"0.59", "9.34"}, {"1.03", "16.23"}, {"1.38", "21.70"}, {"1.67", "26.23"}}}},
        Row{"3", 3.068, 3.500, {{{"0.93", "14.71"}, {"1.68", "26.46"}, {"2.30", "36.23"}, {"2.83", "44.61"}}}},
        Row{"4", 4.026, 4.500, {{{"1.28", "20.23"}, {"2.35", "37.06"}, {"3.27", "51.49"}, {"4.07", "64.10"}}}}})
    for (std::size_t i = 0; i < 4; ++i) {
      const StandingPipe pipe = lagged(r.inside_in, r.outside_in, thick_in[i]);
      const std::string at = std::string(r.name) + " in steel, " + thick[i] + " in around it: ";
      CHECK_PUBLISHED(table, at + "h to 32 degF", r.times[i].freezing, freezing_h(pipe, 42.0, -18.0));
      CHECK_PUBLISHED(table, at + "h from there to ice", r.times[i].ice, ice_h(pipe, -18.0));
    }
}

TEST_CASE("bare tubes in still air") {
  const Source table{"ASHRAE Fundamentals 2009, insulation chapter",
                     "eq. 1 with a film of 1.65 Btu/(h ft2 degF), 45 degF water, by a second program", Oracle::derived};
  struct Row {
    const char* name;
    double inside_in, outside_in;
    std::optional<double> wall_btu_in;
    std::array<Times, 3> times;
  };
  const std::array<double, 3> air_degF{20.0, 10.0, 0.0};
  for (const Row& r :
       {Row{"1/2 in copper", 0.545, 0.625, {}, {{{"0.27", "4.48"}, {"0.17", "2.44"}, {"0.13", "1.68"}}}},
        Row{"3/4 in copper", 0.785, 0.875, {}, {{{"0.41", "6.64"}, {"0.26", "3.62"}, {"0.19", "2.49"}}}},
        Row{"1/2 in polymer", 0.475, 0.625, 2.6, {{{"0.22", "3.59"}, {"0.14", "1.96"}, {"0.10", "1.34"}}}},
        Row{"3/4 in polymer", 0.671, 0.875, 2.6, {{{"0.32", "5.21"}, {"0.20", "2.84"}, {"0.15", "1.95"}}}}})
    for (std::size_t i = 0; i < 3; ++i) {
      StandingPipe pipe{r.inside_in * inch_m, r.outside_in * inch_m};
      pipe.film_W_per_m2K = 1.65 * btu_W_per_m2K;
      if (r.wall_btu_in) pipe.wall_W_per_mK = *r.wall_btu_in * btu_in_W_per_mK;
      const std::string at = std::string(r.name) + ", " + std::to_string(static_cast<int>(air_degF[i])) + " degF: ";
      CHECK_PUBLISHED(table, at + "h to 32 degF", r.times[i].freezing, freezing_h(pipe, 45.0, air_degF[i]));
      CHECK_PUBLISHED(table, at + "h from there to ice", r.times[i].ice, ice_h(pipe, air_degF[i]));
    }
}
