// What a change of the shop would save in the winter's best way.
#include <fmt/format.h>

#include <algorithm>

#include "answer/pass.hpp"

namespace slabwright {
namespace {

/// A maker's table of one that gives so many times as much.
std::string points_text(const SecondSource& source, double times) {
  std::string text;
  for (SourcePoint point : source.points) {
    point.capacity_W *= times;
    text += (text.empty() ? "" : "; ") + write_words(point, System::si);
  }
  return text;
}

std::vector<Candidate> changes_of(const Design& design) {
  const System system = design.units;
  const SecondSource& source = design.second_source;
  std::vector<Candidate> all;
  constexpr double board_m2K_per_W = 1.0, thick_m2K_per_W = 3.4, larger = 1.5;
  if (design.edge.insulation.resistance_m2K_per_W < board_m2K_per_W)
    all.push_back({insulation_text(system) + " board outside along the slab's edge",
                   false,
                   {{"edge.insulation", insulation_text(system)}}});
  if (design.insulation.under.resistance_m2K_per_W < thick_m2K_per_W)
    all.push_back({thick_insulation_text(system) + " foam under the slab",
                   true,
                   {{"insulation.under", thick_insulation_text(system)}}});
  if (source.kind != SecondSourceKind::heat_pump) return all;
  Candidate larger_source{"second source half as large again", false, {}};
  if (source.capacity_W)
    larger_source.settings.emplace_back("second_source.capacity",
                                        write_quantity(larger * *source.capacity_W, Dimension::power, system));
  if (!source.points.empty()) larger_source.settings.emplace_back("second_source.points", points_text(source, larger));
  all.push_back(std::move(larger_source));
  return all;
}

/// The year in one way, on coarse edges.
std::optional<WayResult> year_in(DesignFile file, const WayEntry& way, const WeatherYear* weather) {
  // Alone, and without the bill, which says nothing of another shop.
  file.design.way = {way};
  file.design.way.front().last_winter = false;
  file.design.bill.months.clear();
  Passing passing{EdgeFields(coarse_edges()), weather};
  passing.draws = false;
  passing.runs_winter = true;
  Answer answer = pass(file, Question::winter, passing, Reach::no_site);
  answer.wishes.bands = false;
  add_winter(answer, passing);
  if (!answer.winter || answer.winter->way.empty()) return std::nullopt;
  return answer.winter->way.front();
}

}  // namespace

void add_pay_back(Answer& answer, const WeatherYear* weather) {
  if (!answer.winter || answer.winter->way.empty()) return;
  const WayEntry best = answer.winter->way.front().way;
  const std::vector<Candidate> all = changes_of(answer.file.design);
  if (all.empty()) return;
  const auto base = year_in(answer.file, best, weather);
  if (!base) return;
  for (const Candidate& change : all) {
    const auto file = with_all(answer.file, change.settings);
    if (!file) continue;
    const auto other = year_in(*file, best, weather);
    if (!other) continue;
    PayBack row{change.what, change.before_pour, base->use_J - other->use_J, {}};
    if (base->money && other->money) row.saved_money = *base->money - *other->money;
    answer.winter->pay_back.push_back(std::move(row));
  }
}

}  // namespace slabwright
