// Prices, spans of the day, bills and heat pumps' rows: read in the ways people write them, written so that they read
// back.
#include "design/support.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

constexpr double kWh = 3.6e6, hour = 3600.0;

template <class Words>
Words read(std::string_view text) {
  Words words;
  const std::string problem = read_words(text, words);
  INFO(text);
  CHECK(problem == "");
  return words;
}

template <class Words>
std::string refused(std::string_view text) {
  Words words;
  const Words untouched = words;
  const std::string problem = read_words(text, words);
  CHECK(words == untouched);
  return problem;
}

/// Read, written and read again.
template <class Words>
void check_back(const Words& words) {
  for (const System system : {System::us, System::si}) {
    const std::string text = write_words(words, system);
    INFO(text);
    Words back;
    CHECK(read_words(text, back).empty());
    CHECK(back == words);
    CHECK(write_words(back, system) == text);
  }
}

double drawn_number(double least, double most) {
  return least + (most - least) * *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, 1000001)) / 1e6;
}

int drawn_whole(int least, int most) { return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(least, most + 1)); }

PriceTimes drawn_times() {
  PriceTimes when;
  when.first_month = drawn_whole(1, 12);
  when.last_month = drawn_whole(1, 12);
  when.days = static_cast<PriceDays>(drawn_whole(0, 2));
  when.from_hour = drawn_whole(0, 23);
  when.to_hour = drawn_whole(1, 24);
  if (when.from_hour == when.to_hour) when.to_hour = 24;
  return when;
}

}  // namespace

TEST_CASE("a price of energy is read with its currency before, after, or without") {
  for (const std::string_view text :
       {"0.129 /kWh", "$0.129/kWh", "0.129 $/kWh", "0.129 per kWh", "0.129 a kWh", "EUR 0.129 /kWh", "0.129 EUR/kWh",
        "€0.129 /kWh", "0.129 €/kWh", "CA$0.129/kWh", ".129/KWH", "129 /MWh", "0.1290 kr/kWh"}) {
    INFO(text);
    CHECK(read<EnergyPrice>(text).money_per_J == Approx(0.129 / kWh).epsilon(1e-14));
  }
  CHECK(read<EnergyPrice>("1,250 /kWh").money_per_J == 1250.0 / kWh);
  CHECK(write_words(EnergyPrice{0.129 / kWh}, System::us) == "0.129 /kWh");
  CHECK(write_words(EnergyPrice{1250.0 / kWh}, System::us) == "1250 /kWh");
  CHECK(write_words(EnergyPrice{}, System::us) == "0 /kWh");
}

TEST_CASE("cents, decimal commas and quantities are told what to write") {
  for (const std::string_view text :
       {"12.9 cents", "12.9 c/kWh", "12.9 ct/kWh", "12.9¢", "12.9 ¢/kWh", "12.9 Cents per kWh"})
    CHECK(refused<EnergyPrice>(text) == "cents: write \"0.129 /kWh\".");
  CHECK(refused<EnergyPrice>("0,129 /kWh") == "decimal comma: write \"0.129 /kWh\".");
  CHECK(refused<EnergyPrice>("0.129 kWh") == "\"0.129 kWh\" is no price but a quantity. Write \"0.129 /kWh\".");
  CHECK(refused<EnergyPrice>("0.129") == "0.129 for what? Write \"0.129 /kWh\".");
  for (const std::string_view text :
       {"", "/kWh", "kWh", "cheap", "0.129 /m", "0.129 dollars/kWh", "0.1.2 /kWh", "nan /kWh"})
    CHECK(refused<EnergyPrice>(text).find("Write \"0.129 /kWh\".") != std::string::npos);
  CHECK(refused<MonthPrice>("0.129 /kWh") == "\"0.129 /kWh\" is no price. Write \"18.50 a month\".");
}

TEST_CASE("a charge for a month") {
  for (const std::string_view text : {"18.50 a month", "$18.50 per month", "18.5/month", "18.50 EUR monthly"})
    CHECK(read<MonthPrice>(text).money == 18.5);
}

TEST_CASE("a timed price takes hours, days and months in any order") {
  const TimedPriceText night = read<TimedPriceText>("$0.058/kWh, October to May, 22:00 to 6:00, Mon-Fri");
  CHECK(night.price.when == PriceTimes{10, 5, PriceDays::monday_to_friday, 22, 6});
  CHECK(night.price.money_per_J == 0.058 / kWh);
  CHECK(write_words(night, System::us) == "0.058 /kWh, 22:00 to 6:00, monday to friday, october to may");
  CHECK(read<TimedPriceText>("0.2 /kWh, january").price.when == PriceTimes{1, 1, PriceDays::every, 0, 24});
  CHECK(read<TimedPriceText>("0.2 /kWh,7:00-21:00").price.when == PriceTimes{1, 12, PriceDays::every, 7, 21});
  CHECK(read<TimedPriceText>("0.2 /kWh, weekends, 20:00 to 24:00").price.when ==
        PriceTimes{1, 12, PriceDays::saturday_and_sunday, 20, 24});
  CHECK(read<TimedPriceText>("0.2 /kWh, nov. to feb., all day").price.when ==
        PriceTimes{11, 2, PriceDays::every, 0, 24});
  CHECK(refused<TimedPriceText>("0.2 /kWh, tuesday").find("is no time for a price") != std::string::npos);
  CHECK(refused<TimedPriceText>("0.2 /kWh, weekdays, weekends") ==
        "a price says its days once; write a price for each.");
}

TEST_CASE("tiers may be dearer or cheaper than the hour's price") {
  CHECK(read<TierText>("0.02 /kWh above 1,500 kWh").price == TierPrice{1500.0 * kWh, 0.02 / kWh});
  CHECK(read<TierText>("-0.01 /kWh over 2000 kWh").price == TierPrice{2000.0 * kWh, -0.01 / kWh});
  CHECK_FALSE(refused<TierText>("0.02 /kWh above 0 kWh").empty());
}

TEST_CASE("a demand price takes its times, a ratchet and a least power in any order") {
  const DemandText demand = read<DemandText>("10 /kW, at least 5 kW, ratchet 70 %, 8:00 to 20:00");
  CHECK(demand.price ==
        DemandPrice{{1, 12, PriceDays::every, 8, 20}, 0.01, 5000.0, from_unit(70.0, "%", Dimension::share)});
  CHECK(write_words(demand, System::us) == "10 /kW, 8:00 to 20:00, ratchet 70 %, at least 5 kW");
  CHECK(read<DemandText>("$9.80 per kW").price.money_per_W == 9.8 / 1000.0);
  CHECK_FALSE(refused<DemandText>("10 /kWh").empty());
}

TEST_CASE("a span of the day may go over midnight, and ends at another time than it begins") {
  CHECK(read<ClockSpan>("7:00 to 17:00") == ClockSpan{7 * hour, 17 * hour});
  CHECK(read<ClockSpan>("22:00-6:30") == ClockSpan{22 * hour, 6.5 * hour});
  CHECK(read<ClockSpan>("18:00 until 0:00") == ClockSpan{18 * hour, 24 * hour});
  CHECK(read<ClockSpan>("all day") == ClockSpan{0.0, 24 * hour});
  CHECK(write_words(ClockSpan{18 * hour, 24 * hour}, System::us) == "18:00 to 24:00");
  for (const std::string_view text : {"7:00", "7 to 17", "7:00 to", "25:00 to 6:00", "24:00 to 6:00", "7am to 5pm", ""})
    CHECK_FALSE(refused<ClockSpan>(text).empty());
}

TEST_CASE("a month of a bill, and a row of a heat pump's table") {
  CHECK(read<BillMonth>("January: 2,140 kWh") == BillMonth{1, 2140.0 * kWh});
  CHECK(read<BillMonth>("sept 90 kWh") == BillMonth{9, 90.0 * kWh});
  CHECK_FALSE(refused<BillMonth>("ma 90 kWh").empty());
  const SourcePoint row = read<SourcePoint>("5 °F: 17,000 Btu/h, cop 2.0");
  CHECK(row.outdoor_degC == -15.0);
  CHECK(row.cop_number == 2.0);
  CHECK(write_words(row, System::us) == "5 F: 17000 Btu/h, COP 2");
  CHECK(read<SourcePoint>("-15 C: 5 kW, COP 1.9") == SourcePoint{-15.0, 5000.0, 1.9});
  for (const std::string_view text :
       {"5 F: 17000 Btu/h", "5 F: COP 2, 17000 Btu/h", "5: 17000 Btu/h, COP 2", "5 F: 0 W, COP 2"})
    CHECK_FALSE(refused<SourcePoint>(text).empty());
}

TEST_CASE("whatever is written reads back to the same value") {
  CHECK(rc::check("winter words", [] {
    check_back(EnergyPrice{drawn_number(0.0, 1.0) / kWh});
    check_back(EnergyPrice{drawn_number(0.0, 3e-7)});  // not made from a price for a kWh
    check_back(MonthPrice{drawn_number(0.0, 1e4)});
    check_back(TimedPriceText{{drawn_times(), drawn_number(0.0, 2.0) / kWh}});
    check_back(TierText{{drawn_number(1e6, 1e10), drawn_number(-0.1, 0.1) / kWh}});
    check_back(DemandText{{drawn_times(), drawn_number(0.0, 0.05), drawn_number(0.0, 1e5), drawn_number(0.0, 1.0)}});
    check_back(ClockSpan{60.0 * drawn_whole(0, 700), 60.0 * drawn_whole(701, 1440)});
    check_back(BillMonth{drawn_whole(1, 12), drawn_number(0.0, 1e11)});
    check_back(SourcePoint{drawn_number(-40.0, 20.0), drawn_number(100.0, 1e5), drawn_number(0.5, 6.0)});
  }));
}
