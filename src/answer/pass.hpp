// One pass through the stages, without ranges.
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "slabwright/answer.hpp"

namespace slabwright {

/// What a pass is run for: the whole line, the line without what is bought and laid on the site, only as much as the
/// frost hold needs, or the line without any frost hold.
enum class Reach { whole, no_site, frost_hold, no_frost_hold };

/// What passes over one file share: edges that were solved before, and the weather that was brought.
struct Passing {
  EdgeFields fields;
  const WeatherYear* weather = nullptr;
  const MeterSheet* meters = nullptr;  ///< for the answer itself
  LaidBefore laid{};
  bool sees_floor = false;   ///< the floor's temperature everywhere: for the answer itself, not for passes beside it
  bool plots = false;        ///< curves and series that sheets draw: for the answer itself
  Works progress{};          ///< for the answer itself, not for passes beside it
  bool runs_winter = false;  ///< then `water` is kept
  std::optional<WaterCurve> water{};  ///< what the plant gives at which supply
  bool draws = true;  ///< false where only differences count: loops are then worked out from area and spacing
};

/// Coarser edges than the answer's own, where only differences count and many passes are made.
constexpr FieldOptions coarse_edges() { return {0.02, 1.5, 1.0, false}; }

/// Runs the stages in their order.
Answer pass(const DesignFile& file, Question question, Passing& passing, Reach reach = Reach::whole);

/// The stages that a question has to answer completely; the rest may be absent.
bool answered(const Answer& answer);

/// `kind` and `reasons` from everything that was said.
Verdict verdict_of(const std::vector<Diagnostic>& said);

/// Keeps the value, and what was said about it either way.
template <class T>
std::optional<T> keep(Checked<T> checked, std::vector<Diagnostic>& said) {
  said.insert(said.end(), checked.said.begin(), checked.said.end());
  return std::move(checked.value);
}

/// A plant, what its loops aim for, and its settings.
struct Balanced {
  Plant plant;
  FlowTarget target;
  Balance balance;
};

/// What was read, held against that plant: causes and settings where lengths are known, else fitted lengths.
void add_readings(Answer& answer, const MeterSheet& sheet, const Balanced& hydronics);

/// Rooms and weather as an envelope has them.
Conditions conditions_at(const Envelope& envelope);

/// Whose weather it is, what was mended in it, and what became of it.
std::vector<Diagnostic> weather_said(const DesignFile& file, const Brought& brought);

/// What the slab would have to be had the coldest hour lasted: for differences.
std::optional<double> lasting_hold_degC(const Answer& answer, Passing& passing);

/// Settings that also cover what nobody can know.
void add_bands(Answer& answer, Passing& passing);

/// Power cuts, faults, the way back to work and the like, from the settings that were found.
void add_cold_runs(Answer& answer, Passing& passing);

/// From the pour to the floor at work, and the pressure test before it.
void add_site_days(Answer& answer, const WeatherYear* weather);

/// The year in every way of running, from the settings that were found.
void add_winter(Answer& answer, Passing& passing);

/// What an edge board, more foam or a larger second source would save in the best way.
void add_pay_back(Answer& answer, const WeatherYear* weather);

/// Settings that an owner chooses between, and how early the second source starts before work.
struct OwnerAsked {
  std::vector<double> setting_degC;
  int source_lead_h = 0;
};
/// Of the shop as it is.
std::vector<OwnerCost> owner_costs_of(const Answer& answer, Passing& passing, const OwnerAsked& asked);
/// The same with other insulation too, all on coarse edges, into the winter's series.
void add_owner_costs(Answer& answer, const WeatherYear* weather);

/// A key and the text that it is set to.
using Setting = std::pair<std::string, std::string>;
/// A change of the shop in words and in keys.
struct Candidate {
  std::string what;
  bool before_pour = false;  ///< too late once the concrete is in
  std::vector<Setting> settings;
};
/// The file with all of them set; empty where one does not fit.
std::optional<DesignFile> with_all(const DesignFile& file, const std::vector<Setting>& settings);
/// Foam as it is proposed for edges and doors, and twice that.
std::string insulation_text(System system);
std::string thick_insulation_text(System system);

/// Ranges of a building that is not described, into the fields of the answer that are of three.
void add_ranges(Answer& answer, Passing& passing);

/// For each kind of stop among the verdict's reasons, in that order, the first value of the first key that ends it;
/// where none does, which keys were tried. Told of the files that `passing` has seen.
void add_remedies(Answer& answer, Passing& passing);

/// What matters most and what would lower the frost hold.
void add_sensitivities(Answer& answer, const WeatherYear* weather);
void add_changes(Answer& answer, const WeatherYear* weather);

}  // namespace slabwright
