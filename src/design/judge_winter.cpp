// What cannot be meant of prices, bills, cold vehicles, and the ways of running a winter.
#include <fmt/format.h>

#include <algorithm>

#include "design/judge.hpp"
#include "design/words_when.hpp"

namespace slabwright {
namespace {

using measured::degree;

std::string winter_row(std::string_view section, std::size_t i) { return fmt::format("{}[{}]", section, i + 1); }

/// Everything that stands beside a price says nothing without one.
void judge_without_price(Judge& judge) {
  if (judge.given("electricity.price") || !judge.sound({"electricity.price"})) return;
  for (const char* word : {"standing", "timed", "tiers", "demand"}) {
    const std::string path = fmt::format("electricity.{}", word);
    if (!judge.given(path)) continue;
    judge.problem(path, "electricity.no-price",
                  fmt::format("{} needs a price beside it: write price = \"{}\" too.", word, EnergyPrice::example));
  }
}

void judge_timed(Judge& judge) {
  for (const TimedPriceText& timed : judge.design.electricity.timed) {
    if (!judge.sound({"electricity.timed"}) || !(timed.price.when == PriceTimes{})) continue;
    return judge.problem("electricity.timed", "electricity.always",
                         fmt::format("\"{}\" holds always: it goes in price, or takes its hours, \"{}\".",
                                     write_words(timed, judge.design.units), TimedPriceText::example));
  }
}

void judge_tiers(Judge& judge) {
  const auto& tiers = judge.design.electricity.tiers;
  for (std::size_t i = 1; i < tiers.size() && judge.sound({"electricity.tiers"}); ++i) {
    if (tiers[i].price.from_J > tiers[i - 1].price.from_J) continue;
    const System units = judge.design.units;
    return judge.problem("electricity.tiers", "electricity.tiers",
                         fmt::format("the limits do not grow from \"{}\" to \"{}\". Lowest limit first.",
                                     write_words(tiers[i - 1], units), write_words(tiers[i], units)));
  }
}

void judge_months(Judge& judge) {
  const Bill& bill = judge.design.bill;
  if (!judge.sound({"bill.months", "bill.other"})) return;
  for (std::size_t i = 0; i < bill.months.size(); ++i) {
    const BillMonth& month = bill.months[i];
    const auto same = [&](const BillMonth& other) { return other.month == month.month; };
    if (std::any_of(bill.months.begin(), bill.months.begin() + static_cast<std::ptrdiff_t>(i), same)) {
      judge.problem("bill.months", "bill.twice",
                    fmt::format("{} stands in the bill twice. Keep one.", month_name(month.month)));
    } else if (month.use_J < bill.other_J) {
      judge.problem("bill.months", "bill.other",
                    fmt::format("\"{}\" is less than the {{}} that other says was no heat.",
                                write_words(month, judge.design.units)),
                    {Measured{bill.other_J, Dimension::energy}});
    }
  }
  if (bill.months.empty() && judge.given("bill.other")) {
    judge.problem(
        "bill.other", "bill.alone",
        fmt::format("other stands beside the months of a bill: write months = [\"{}\", ...] too.", BillMonth::example));
  }
}

void judge_vehicles(Judge& judge) {
  const Design& design = judge.design;
  for (std::size_t i = 0; i < design.vehicle.size(); ++i) {
    const VehicleEntry& vehicle = design.vehicle[i];
    const std::string row = winter_row("vehicle", i), at = row + ".temperature";
    if (!judge.sound({at, row + ".snow"})) continue;
    if (vehicle.snow_kg <= 0.0 && judge.given(row + ".evaporates")) {
      judge.problem(row + ".evaporates", "vehicle.no-snow",
                    "evaporates is a share of its snow: write snow too, or leave this out.");
    }
    if (!vehicle.temperature_degC) continue;
    if (*vehicle.temperature_degC >= design.climate.indoor_degC && judge.sound({"climate.indoor"})) {
      judge.problem(at, "vehicle.warm", "it comes in at {}, no colder than indoors, {}: leave it out.",
                    {degree(*vehicle.temperature_degC), degree(design.climate.indoor_degC)});
    } else if (*vehicle.temperature_degC > 0.0 && vehicle.snow_kg > 0.0) {
      judge.problem(at, "vehicle.snow", "snow on a vehicle of {} would have melted: {} or colder.",
                    {degree(*vehicle.temperature_degC), degree(0.0)});
    }
  }
}

/// Keys of one way that only mean something beside another.
class JudgeWay {
 public:
  JudgeWay(Judge& judge, std::size_t i) : judge_(judge), way_(judge.design.way[i]), row_(winter_row("way", i)) {}

  void run() {
    setpoint();
    rest();
    charge();
    source();
    settings();
  }

 private:
  bool given(const char* word) const { return judge_.given(fmt::format("{}.{}", row_, word)); }
  bool sound(const char* word) const { return judge_.sound({fmt::format("{}.{}", row_, word)}); }
  void problem(const char* word, std::string code, std::string sentence, Judge::Parts parts = {}) {
    judge_.problem(fmt::format("{}.{}", row_, word), "way." + std::move(code), std::move(sentence), std::move(parts));
  }

  void setpoint() {
    if (!sound("floor") || !sound("setpoint")) return;
    const bool own = way_.floor == WayFloor::setpoint;
    if (own && !way_.setpoint_degC)
      problem("floor", "setpoint", "floor = \"setpoint\" takes one: write setpoint = \"55 F\" or \"13 C\" below it.");
    if (!own && way_.setpoint_degC)
      problem("setpoint", "setpoint", "setpoint is read where floor = \"setpoint\": write that, or leave this out.");
  }

  void rest() {
    if (!sound("floor") || !way_.rest_degC) return;
    if (way_.floor == WayFloor::work || way_.floor == WayFloor::setpoint) return;
    problem("rest", "rest",
            "rest is read where floor = \"work\" or \"setpoint\": write one of them, or leave this out.");
  }

  void charge() {
    if (!sound("charge") || !sound("charge_to") || !sound("floor")) return;
    if (way_.charge && !way_.charge_to_degC)
      problem("charge", "charge",
              "charge takes the slab's temperature at its end: write charge_to = \"75 F\" or "
              "\"24 C\" too.");
    if (!way_.charge && way_.charge_to_degC)
      problem("charge_to", "charge", "charge_to takes the hours of charging: write charge = \"22:00 to 6:00\" too.");
    if (way_.charge && way_.floor == WayFloor::off)
      problem("charge", "charge", "the floor of this way is off: write floor = \"frost hold\", or leave charge out.");
  }

  void source() {
    if (!sound("second_source") || !judge_.sound({"second_source.kind"})) return;
    const bool runs = way_.second_source != WaySource::off;
    if (runs && judge_.design.second_source.kind == SecondSourceKind::none) {
      problem("second_source", "no-source",
              "there is no second source: write [second_source] with kind = \"heat pump\", or leave this out.");
    }
    if (!runs && given("source"))
      problem("source", "source-off",
              "the second source of this way is off: write second_source = \"always\" or \"in "
              "working hours\", or leave this out.");
    if (way_.second_source != WaySource::always && given("source_rest"))
      problem("source_rest", "source-off",
              "source_rest is read where second_source = \"always\": write that, or leave "
              "this out.");
  }

  void settings() {
    const auto& least_degC = judge_.design.second_source.least_setting_degC;
    if (!least_degC || !judge_.sound({"second_source.least_setting"})) return;
    for (const auto& [word, set] :
         {std::pair{"source", way_.source_degC}, std::pair{"source_rest", way_.source_rest_degC}}) {
      if (!set || *set >= *least_degC) continue;
      problem(word, "setting", fmt::format("{} {{}} is below {{}}, the least that its thermostat can be set to.", word),
              {degree(*set), degree(*least_degC)});
    }
  }

  Judge& judge_;
  const WayEntry& way_;
  std::string row_;
};

void judge_last_winter(Judge& judge) {
  const auto& ways = judge.design.way;
  std::optional<std::size_t> first;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    if (!ways[i].last_winter) continue;
    const std::string path = winter_row("way", i) + ".last_winter";
    if (first) {
      judge.problem(path, "way.two-winters",
                    fmt::format("two ways are last winter's{}: one of them was.",
                                judge.line_of(winter_row("way", *first) + ".last_winter")));
    }
    if (!first) first = i;
  }
}

}  // namespace

void judge_winter(Judge& judge) {
  judge_without_price(judge);
  judge_timed(judge);
  judge_tiers(judge);
  judge_months(judge);
  judge_vehicles(judge);
  for (std::size_t i = 0; i < judge.design.way.size(); ++i) JudgeWay(judge, i).run();
  judge_last_winter(judge);
}

}  // namespace slabwright
