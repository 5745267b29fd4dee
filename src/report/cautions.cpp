// What a person should know about safety where it applies to this answer.
#include <algorithm>

#include "report/text.hpp"

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
    case Question::freeze: return "A careful estimate, no promise that nothing freezes: own a freeze alarm.";
  }
  return "";
}

}  // namespace

std::vector<std::string> cautions(const Reader& reader) {
  const Design& design = reader.design();
  const bool glycol = design.fluid.kind != FluidKind::water;
  std::vector<std::string> all{own_caution(reader.answer.wishes.question)};
  const Question question = reader.answer.wishes.question;
  if (question == Question::check || question == Question::drill) return all;
  if (reader.answer.wishes.question != Question::freeze) {
    all.push_back("No setting is a promise that nothing freezes: sensors and power fail, doors stand open.");
  }
  if (reader.answer.sizes) {
    all.push_back("Electrical work is for a licensed electrician, who sizes wire, breaker and disconnect.");
  }
  if (design.boiler.hottest_degC > too_hot_for_floor_degC) {
    all.push_back("Hot water scalds and harms floors: a mixing valve or a high limit stands between boiler and floor.");
  }
  if (glycol) {
    all.push_back(
        "Glycol: propylene, not ethylene, where children or pets can reach it; label the system; backflow protection "
        "or no permanent fill; never into a drain or the ground.");
  }
  all.push_back("A pressure test stores energy, above all with air: keep people away and stay within what is allowed.");
  all.push_back("A slab that carries load, its joints, foam under posts and every anchor are an engineer's matter.");
  const bool big_door = std::any_of(design.opening.begin(), design.opening.end(),
                                    [](const Opening& o) { return o.kind == OpeningKind::big_door; });
  if (big_door) {
    all.push_back("Vehicles and fuel heaters in a closed shop kill by carbon monoxide: fit alarms, let in air.");
  }
  all.push_back("Drilling concrete makes silica dust and may hit a tube: drop the pressure first.");
  return all;
}

}  // namespace slabwright::report
