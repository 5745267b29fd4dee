// One guess at a time, from its usual value to both its ends.
#include <algorithm>
#include <cmath>

#include "answer/pass.hpp"

namespace slabwright {
namespace {

/// The same file once its building is described, so that walls, roof and leaks can be moved one at a time. Where it is
/// described already, nothing changes.
DesignFile with_described_building(const DesignFile& file) {
  if (file.design.building.described || file.design.building.heat_loss_W) return file;
  for (const Assumption& guess : file.assumed) {
    if (guess.path != "building.air_changes") continue;
    if (auto described = with_key(file, guess.path, guess.text)) return *described;
  }
  return file;
}

/// The ends are of our own guess; what something knows better does not reach that far.
bool is_known(const DesignFile& file, const std::string& path) {
  return std::any_of(file.known.begin(), file.known.end(), [&](const Assumption& known) { return known.path == path; });
}

double boiler_of(const Answer& answer) { return answer.sizes ? answer.sizes->boiler.wanted_W : 0.0; }

/// What a guess may move.
struct Moved {
  double boiler_W = 0.0;
  std::optional<double> hold_degC;
};
Moved moved_by(const DesignFile& file, Passing& passing) {
  const Answer answer = pass(file, Question::design, passing, Reach::no_frost_hold);
  return {boiler_of(answer), lasting_hold_degC(answer, passing)};
}

struct Ends {
  std::string_view tight, poor;
};
Ends ends_of(const Key& key, System system) {
  const bool si = system == System::si;
  return {si && !key.says.si_tight.empty() ? key.says.si_tight : key.says.tight,
          si && !key.says.si_poor.empty() ? key.says.si_poor : key.says.poor};
}

/// The larger of the two moves, boiler and hold each.
Sensitivity sensitivity_of(const DesignFile& file, const Assumption& guess, const Moved& base, Passing& passing) {
  Sensitivity found{guess.path, guess.text, 0.0, std::nullopt};
  const Key* key = key_at(file.design, guess.path);
  if (!key) return found;
  const Ends ends = ends_of(*key, file.design.units);
  for (const std::string_view end : {ends.tight, ends.poor}) {
    if (end.empty()) continue;
    const auto moved = with_key(file, guess.path, end);
    if (!moved) continue;
    const Moved other = moved_by(*moved, passing);
    found.boiler_W = std::max(found.boiler_W, std::abs(other.boiler_W - base.boiler_W));
    if (base.hold_degC && other.hold_degC)
      found.hold_K = std::max(found.hold_K.value_or(0.0), std::abs(*other.hold_degC - *base.hold_degC));
  }
  return found;
}

/// A boiler is bought in steps of a kilowatt and more; below a tenth of that a guess does not matter for it.
bool matters_more(const Sensitivity& a, const Sensitivity& b) {
  constexpr double step_W = 100.0;
  const double boiler_a = std::round(a.boiler_W / step_W), boiler_b = std::round(b.boiler_W / step_W);
  if (boiler_a != boiler_b) return boiler_a > boiler_b;
  return a.hold_K.value_or(0.0) > b.hold_K.value_or(0.0);
}

}  // namespace

void add_sensitivities(Answer& answer, const WeatherYear* weather) {
  if (!answer.envelope) return;
  Passing passing{EdgeFields(coarse_edges()), weather};
  passing.draws = false;
  const DesignFile file = with_described_building(answer.file);
  const Moved base = moved_by(file, passing);
  for (const Assumption& guess : answer.file.assumed) {
    const Key* key = key_at(file.design, guess.path);
    if (!key || key->says.poor.empty() || !key->says.only_for.empty() || is_known(file, guess.path)) continue;
    answer.sensitivity.push_back(sensitivity_of(file, guess, base, passing));
  }
  std::stable_sort(answer.sensitivity.begin(), answer.sensitivity.end(), matters_more);
}

}  // namespace slabwright
