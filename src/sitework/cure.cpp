#include "slabwright/sitework_cure.hpp"

#include <algorithm>
#include <cmath>

#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

constexpr int slab_wait_days = 28, topping_wait_days = 21;
constexpr int cold_days = 3;  // in which no screed may get colder than cold_degC: EN 1264-4:2021
constexpr double screed_least_degC = 5.0;
constexpr int screed_start_days = 3, top_days = 4;  // EN 1264-4, from memory
constexpr double first_degC = 20.0;                 // EN 1264-4: 20 to 25 degC, from memory; trade practice the same
constexpr double guessed_top_degC = 40.0;
constexpr int judge_days = 7;
constexpr double cold_month_degC = 5.0;  // its nights freeze

constexpr std::string_view practice = "common practice", screeds = "EN 1264-4, screeds";
constexpr std::string_view screeds_from_memory = "EN 1264-4, screeds; from memory";

std::string text(std::string_view words) { return std::string(words); }

/// Fills rows and dates.
class Writer {
 public:
  Writer(CureCalendar& calendar, const std::optional<CivilDate>& poured) : calendar_(calendar), poured_(poured) {}

  std::string date(int day) const { return poured_ ? iso_text(days_after(*poured_, day)) : std::string{}; }
  std::string weekday(int day) const { return poured_ ? text(weekday_of(days_after(*poured_, day))) : std::string{}; }

  CureDay& add(int day, std::string what, std::string_view source) {
    calendar_.row.push_back({day, date(day), weekday(day), std::move(what), {}, {}, text(source)});
    return calendar_.row.back();
  }

 private:
  CureCalendar& calendar_;
  const std::optional<CivilDate>& poured_;
};

void add_cure(CureCalendar& calendar, Writer& writer) {
  writer.add(0, "pour, test gauge in sight", practice);
  writer.add(0, "kept warm", screeds).least_degC = screed_least_degC;
  writer.add(cold_days, "ask before blankets come off", screeds);
  CureDay& heat = writer.add(calendar.wait_days,
                             calendar.start_days > 1 ? "first heat, three days the same, if the supplier agrees"
                                                     : "first heat, if the supplier agrees",
                             calendar.wait_source);
  heat.supply_degC = calendar.start_degC;
}

void add_heat(CureCalendar& calendar, Writer& writer, bool topping) {
  int day = calendar.wait_days + calendar.start_days - 1;
  double supply_degC = calendar.start_degC;
  for (int i = 1; i <= calendar.rise_days; ++i) {
    ++day;
    supply_degC = std::min(calendar.top_degC, calendar.start_degC + calendar.rise_K * i);
    const bool top = i == calendar.rise_days;
    writer.add(day, top ? "design supply, held four days" : "warmer", top && topping ? screeds_from_memory : practice)
        .supply_degC = supply_degC;
  }
  writer.add(calendar.done_day, "first heat is over", practice);
  writer.add(calendar.judge_day, "judge the balance", practice);
}

/// Means of the months from the pour to the first heat.
void add_months(CureCalendar& calendar, const CureTask& task) {
  if (!task.poured) return;
  const auto mean = [&](int month) { return task.month_degC[static_cast<std::size_t>(month - 1)]; };
  calendar.pour_month_degC = calendar.coldest_month_degC = mean(task.poured->month);
  for (int day = 1; day <= calendar.wait_days; ++day)
    calendar.coldest_month_degC = std::min(*calendar.coldest_month_degC, mean(days_after(*task.poured, day).month));
}

void add_words(CureCalendar& calendar) {
  calendar.log = {"date and hour", "water out and back", "slab sensor", "outdoor air", "kWh meter", "pressure gauge"};
  calendar.never = {
      "Never heat through the tubes to make concrete cure faster: it dries out and cracks.",
      "Never run a fuel heater that breathes the shop's air over fresh concrete: carbon monoxide for people, "
      "a soft, dusty surface for the floor.",
      "Never let it freeze in its first days: blankets, or heat in the room.",
      "Do not judge the balance in the first week: the slab still dries and the ground below still warms."};
  if (calendar.pour_month_degC && *calendar.pour_month_degC < cold_month_degC)
    calendar.caution.emplace_back(
        "The month of the pour is cold. Have insulating blankets on the site before the truck comes, and ask the "
        "supplier for a cold-weather plan (ACI 306 is the guide to ask for).");
  if (calendar.coldest_month_degC && *calendar.coldest_month_degC < cold_month_degC)
    calendar.caution.emplace_back(
        "Frost may come before heat does: leave no water in tubes that could freeze, and keep the test on air.");
}

}  // namespace

CureCalendar cure_calendar(const CureTask& task) {
  expects(task.rise_K > 0.0 && (!task.wait_days || *task.wait_days >= 1), "a wait and a rise");
  CureCalendar calendar;
  calendar.wait_days = task.wait_days.value_or(task.topping ? topping_wait_days : slab_wait_days);
  calendar.wait_source =
      task.wait_days ? "the file, as the supplier says" : text(task.topping ? screeds_from_memory : practice);
  calendar.rise_K = task.rise_K;
  calendar.top_is_ours = !task.supply_degC;
  calendar.top_degC = task.supply_degC.value_or(guessed_top_degC);
  calendar.start_degC = std::min(first_degC, calendar.top_degC);
  calendar.start_days = task.topping ? screed_start_days : 1;
  // A rise that ends within a thousandth of the top has reached it.
  calendar.rise_days = static_cast<int>(std::ceil((calendar.top_degC - calendar.start_degC) / task.rise_K - 1e-3));
  calendar.rise_days = std::max(calendar.rise_days, 0);
  calendar.hold_days = top_days;
  const int before_top_days = calendar.rise_days > 0 ? calendar.start_days - 1 + calendar.rise_days : 0;
  calendar.done_day = calendar.wait_days + before_top_days + top_days;
  calendar.judge_day = std::max(calendar.done_day, calendar.wait_days + judge_days);
  Writer writer(calendar, task.poured);
  calendar.poured = writer.date(0);
  calendar.poured_weekday = writer.weekday(0);
  calendar.heat_date = writer.date(calendar.wait_days);
  calendar.heat_weekday = writer.weekday(calendar.wait_days);
  calendar.done_date = writer.date(calendar.done_day);
  calendar.done_weekday = writer.weekday(calendar.done_day);
  calendar.judge_date = writer.date(calendar.judge_day);
  calendar.judge_weekday = writer.weekday(calendar.judge_day);
  add_cure(calendar, writer);
  add_heat(calendar, writer, task.topping);
  add_months(calendar, task);
  add_words(calendar);
  return calendar;
}

CureCalendar cure_calendar(const Design& design, std::optional<double> supply_degC,
                           const std::array<double, 12>& month_degC) {
  CureTask task;
  if (design.project.poured) task.poured = design.project.poured->on;
  if (design.slab.cure_s) task.wait_days = static_cast<int>(std::ceil(*design.slab.cure_s / day_s - 1e-6));
  task.rise_K = design.slab.daily_rise_K;
  task.supply_degC = supply_degC;
  task.topping = design.slab.topping_above_tube_m.has_value();
  task.month_degC = month_degC;
  return cure_calendar(task);
}

}  // namespace slabwright
