// Figures in the reader's unit, to the digits that mean something.
#include <limits>

#include "sample.hpp"
#include "slabwright/report_number.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::report;
using namespace slabwright::test;

TEST_CASE("what is bought is never printed smaller than it must be") {
  CHECK(figure(Kind::least_volume, 0.00121, System::si) == "1.3 L");
  CHECK(figure(Kind::least_volume, 0.0012, System::si) == "1.2 L");
  CHECK(figure(Kind::volume, 0.00121, System::si) == "1.2 L");
  CHECK(figure(Kind::least_volume, 0.0, System::us) == "0.0 gal");
}

TEST_CASE("figures of the United States") {
  constexpr System us = System::us;
  CHECK(figure(Kind::length, 1102.3 * ft, us) == "1,102 ft");
  CHECK(figure(Kind::short_length, 12 * 0.0254, us) == "12 in");
  CHECK(figure(Kind::short_length, 7.5 * 0.0254, us) == "7.5 in");
  CHECK(figure(Kind::degree, of_F(-12.2), us) == "-12 F");
  CHECK(figure(Kind::degree, of_F(-0.3), us) == "0 F");
  CHECK(figure(Kind::heat, 23149.0 * btu_h, us) == "23,100 Btu/h");
  CHECK(figure(Kind::heat, 1234567.0 * btu_h, us) == "1,234,600 Btu/h");
  CHECK(figure(Kind::heat, -23149.0 * btu_h, us) == "-23,100 Btu/h");
  CHECK(figure(Kind::heat, 344.0 * btu_h, us) == "340 Btu/h");
  CHECK(figure(Kind::boiler, 9000.0, us) == "9 kW");
  CHECK(figure(Kind::boiler, 4500.0, us) == "4.5 kW");
  CHECK(figure(Kind::flow, 0.6 * gpm, us) == "0.60 gpm");
  CHECK(figure(Kind::valve, 1.0, us) == "Cv 1.16");
  CHECK(figure(Kind::insulance, 1.76110, us) == "R-10.0");
  CHECK(figure(Kind::share, 0.213, us) == "21 %");
  CHECK(figure(Kind::rise, 2.0, us) == "3.6 F");
  CHECK(against(8.0 * ft, 0.0, us) == "8.0 ft of head");
}

TEST_CASE("metric figures") {
  constexpr System si = System::si;
  CHECK(figure(Kind::length, 900.0, si) == "900 m");
  CHECK(figure(Kind::length, 84.13, si) == "84.1 m");
  CHECK(figure(Kind::short_length, 0.15, si) == "150 mm");
  CHECK(figure(Kind::degree, 36.44, si) == "36.4 C");
  CHECK(figure(Kind::dial, 7.5, si) == "7.5 C");
  CHECK(figure(Kind::heat, 6773.0, si) == "6.77 kW");
  CHECK(figure(Kind::heat, 16234.0, si) == "16.2 kW");
  CHECK(figure(Kind::heat, 1234567.0, si) == "1235 kW");
  CHECK(figure(Kind::flow, 2.214e-3 / 60.0, si) == "2.21 L/min");
  CHECK(figure(Kind::flow, 18.84e-3 / 60.0, si) == "18.8 L/min");
  CHECK(figure(Kind::valve, 1.0, si) == "Kv 1.00");
  CHECK(against(2.71, 27400.0, si) == "27.4 kPa (2.71 m of head)");
}

TEST_CASE("a spread that prints alike is one figure") {
  CHECK(from_to(Kind::flow, 0.61 * gpm, 0.65 * gpm, System::us) == "0.61 to 0.65 gpm");
  CHECK(from_to(Kind::flow, 0.611 * gpm, 0.612 * gpm, System::us) == "0.61 gpm");
}

TEST_CASE("three guesses of a building") {
  CHECK(ranged(Kind::degree, {of_F(91), of_F(98), of_F(112)}, System::us) == "98 F ~ (91 if tight, 112 if poor)");
  CHECK(ranged(Kind::dial, {of_F(55), of_F(55), of_F(55)}, System::us) == "55 F ~ (tight or poor)");
}

TEST_CASE("columns keep their points in line and other programs get no commas") {
  CHECK(bare(Kind::length, 290.0 * ft, System::us) == "290");
  CHECK(bare(Kind::length, 100.0, System::si) == "100.0");
  CHECK(bare(Kind::heat, 23149.0 * btu_h, System::us) == "23,100");
  CHECK(plain(Kind::heat, 23149.0 * btu_h, System::us) == "23100");
}

TEST_CASE("what is no finite number is never printed") {
  for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                           -std::numeric_limits<double>::infinity()}) {
    for (const System system : {System::us, System::si}) {
      CHECK_THROWS_AS(figure(Kind::heat, bad, system), std::logic_error);
      CHECK_THROWS_AS(bare(Kind::flow, bad, system), std::logic_error);
      CHECK_THROWS_AS(plain(Kind::length, bad, system), std::logic_error);
    }
  }
}

TEST_CASE("counts in words") {
  CHECK(counted(1) == "one");
  CHECK(counted(10) == "ten");
  CHECK(counted(11) == "11");
  CHECK(several(1, "loop") == "1 loop");
  CHECK(several(4, "loop") == "4 loops");
}
