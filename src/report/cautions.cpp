// What a person should know about safety where it applies to this answer.
#include <algorithm>

#include "slabwright/report_words.hpp"

namespace slabwright::report {
namespace {

constexpr double too_hot_for_floor_degC = 49.0;  ///< 120 F, practice

const char* own_caution(Question question) {
  switch (question) {
    case Question::check: return "slabwright heats slabs; it does not engineer the concrete. Local codes come first.";
    case Question::design:
      return "Not an approval. It heats the slab and does not engineer it: concrete, pressure and wiring are for "
             "licensed people, and local codes come first.";
    case Question::route:
      return "A drawing, not the concrete: measure where the tube lies before the pour, and keep photographs. Joints "
             "and "
             "whatever carries load are an engineer's matter.";
    case Question::balance: return "Water may be hot and under pressure: open bleeders slowly, cloth in hand.";
    case Question::drill:
      return "The drawn position is not the cast position: scan the floor and mark what is found before you drill. Let "
             "the pressure off and keep a gauge in sight, set a depth stop, use a GFCI outlet, and bind the silica "
             "dust "
             "with water or a vacuum. What an anchor carries is an engineer's matter.";
    case Question::winter: return "An estimate of one winter among many: prices, weather and habits will differ.";
    case Question::sheets:
      return "Sheets tell what was computed, not what was built: check each on the site. Local codes come first.";
    case Question::cure:
      return "A calendar, not an approval: when this concrete may be heated is for its supplier and the engineer to "
             "say.";
    case Question::freeze: return "A careful estimate, no promise that nothing freezes: own a freeze alarm.";
  }
  return "";
}

}  // namespace

std::string_view caution_words(Caution about) {
  switch (about) {
    case Caution::frost:
      return "No setting is a promise that nothing freezes: sensors and power fail, doors stand open.";
    case Caution::electricity:
      return "Electrical work is for a licensed electrician, who sizes wire, breaker and disconnect.";
    case Caution::hot_water:
      return "Hot water scalds and harms floors: a mixing valve or a high limit stands between boiler and floor.";
    case Caution::glycol:
      return "Glycol: propylene, not ethylene, where children or pets can reach it; label the system; backflow "
             "protection or no permanent fill; never into a drain or the ground.";
    case Caution::pressure_test:
      return "A pressure test stores energy, above all with air: keep people away and stay within what is allowed.";
    case Caution::structure:
      return "A slab that carries load, its joints, foam under posts and every anchor are an engineer's matter.";
    case Caution::fumes:
      return "Vehicles and fuel heaters in a closed shop kill by carbon monoxide: fit alarms, let in air.";
    case Caution::drilling: return "Drilling concrete makes silica dust and may hit a tube: drop the pressure first.";
  }
  return "";
}

std::vector<std::string> cautions(const Answer& answer) {
  const Question question = answer.wishes.question;
  std::vector<std::string> all{own_caution(question)};
  const auto add = [&](Caution about) { all.emplace_back(caution_words(about)); };
  if (question == Question::check || question == Question::drill || question == Question::cure) return all;
  const Design& design = answer.file.design;
  if (question != Question::freeze) add(Caution::frost);
  if (answer.sizes) add(Caution::electricity);
  if (design.boiler.hottest_degC > too_hot_for_floor_degC) add(Caution::hot_water);
  if (design.fluid.kind != FluidKind::water) add(Caution::glycol);
  add(Caution::pressure_test);
  add(Caution::structure);
  const bool big_door = std::any_of(design.opening.begin(), design.opening.end(),
                                    [](const Opening& o) { return o.kind == OpeningKind::big_door; });
  if (big_door) add(Caution::fumes);
  if (question != Question::sheets) {
    add(Caution::drilling);
    return all;
  }
  for (const Question step : {Question::route, Question::balance, Question::winter, Question::drill})
    all.emplace_back(own_caution(step));
  return all;
}

}  // namespace slabwright::report
