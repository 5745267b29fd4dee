// What would lower the frost hold: each change tried on the whole answer, not guessed.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "answer/pass.hpp"
#include "slabwright/tube.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// Rows are counted from 1 in paths.
std::string of_opening(std::size_t i, std::string_view word) { return fmt::format("opening[{}].{}", i + 1, word); }

Candidate strip_at_doors(const Design& design) {
  Candidate candidate{fmt::format("{} strip across the slab at the big door", insulation_text(design.units)), true, {}};
  for (std::size_t i = 0; i < design.opening.size(); ++i) {
    if (design.opening[i].kind != OpeningKind::big_door) continue;
    const double now = design.opening[i].strip.value_or(design.edge.door_strip).resistance_m2K_per_W;
    if (now < 1.0) candidate.settings.push_back({of_opening(i, "strip"), insulation_text(design.units)});
  }
  return candidate;
}

Candidate tube_further_in(const Design& design) {
  const bool us = design.units == System::us;
  Candidate candidate{fmt::format("door-side tube {} further in", us ? "12 in" : "300 mm"), true, {}};
  const double further_m = us ? 12 * inch_m : 0.3;
  for (std::size_t i = 0; i < design.opening.size(); ++i) {
    if (design.opening[i].kind != OpeningKind::big_door) continue;
    const double now_m = design.opening[i].tube_distance_m.value_or(design.tube.from_doors_m);
    candidate.settings.push_back(
        {of_opening(i, "tube_distance"), write_quantity(now_m + further_m, Dimension::length, design.units)});
  }
  return candidate;
}

/// Deeper tube is farther from the cold air at a door, and nearer to the cold ground.
Candidate tube_deeper(const Design& design) {
  const bool us = design.units == System::us;
  Candidate candidate{fmt::format("tube {} deeper in the slab", us ? "1 in" : "25 mm"), true, {}};
  const TubeSize* tube = find_tube(design.tube.size.name);
  if (!tube || !design.slab.concrete_above_tube_m) return candidate;
  const double deeper_m = *design.slab.concrete_above_tube_m + (us ? inch_m : 0.025);
  if (deeper_m + tube->outside_diameter_m > design.slab.thickness_m) return candidate;
  candidate.settings.push_back({"slab.concrete_above_tube", write_quantity(deeper_m, Dimension::length, design.units)});
  return candidate;
}

/// Switching on and off scatters settings by a few hundredths; a change that makes no more makes none.
double worth_K(double difference_K) { return std::abs(difference_K) < 0.05 ? 0.0 : difference_K; }

/// Where the boiler gives all it can and that is too little: what holds the slab in the coldest hour, and a tenth.
Candidate larger_boiler(const Freeze& freeze) {
  if (freeze.beyond_boiler.empty()) return {};
  const std::string power = fmt::format("{:.0f} kW", std::ceil(1.1 * freeze.hold_W / 1000.0));
  return {"boiler of " + power, false, {{"boiler.kind", "electric boiler"}, {"boiler.power", power}}};
}

std::vector<Candidate> candidates(const Design& design, const Freeze& freeze) {
  std::vector<Candidate> all{strip_at_doors(design), tube_further_in(design)};
  if (design.edge.insulation.resistance_m2K_per_W < 1.0) {
    all.push_back({fmt::format("{} board outside along the slab's edge", insulation_text(design.units)),
                   false,
                   {{"edge.insulation", insulation_text(design.units)}}});
  }
  Candidate both{
      fmt::format("{} at the edge and across the slab at the door", insulation_text(design.units)), true, {}};
  if (all.size() == 3 && !all[0].settings.empty()) {
    both.settings = all[0].settings;
    both.settings.insert(both.settings.end(), all[2].settings.begin(), all[2].settings.end());
    all.push_back(std::move(both));
  }
  all.push_back(tube_deeper(design));
  all.push_back(larger_boiler(freeze));
  const bool us = design.units == System::us;
  if (!all[1].settings.empty() && design.frost_hold.door_air_share > 0.01)
    all.push_back({"curtain inside the big door", false, {{"frost_hold.door_air", "1 %"}}});
  if (design.frost_hold.sensor_error_K > 0.5)
    all.push_back({fmt::format("sensor that is right within {}", us ? "0.5 F" : "0.3 C"),
                   false,
                   {{"frost_hold.sensor_error", us ? "0.5 F" : "0.3 K"}}});
  if (design.fluid.kind == FluidKind::water) {
    all.push_back({"30 % glycol in the tubes (it helps the tubes, not the pipes)",
                   false,
                   {{"fluid.kind", "propylene glycol"}, {"fluid.glycol", "30 %"}}});
  }
  all.erase(std::remove_if(all.begin(), all.end(), [](const Candidate& c) { return c.settings.empty(); }), all.end());
  return all;
}

}  // namespace

std::string insulation_text(System system) { return system == System::us ? "R-10" : "1.8 m2K/W"; }
std::string thick_insulation_text(System system) { return system == System::us ? "R-20" : "3.6 m2K/W"; }

std::optional<DesignFile> with_all(const DesignFile& file, const std::vector<Setting>& settings) {
  std::optional<DesignFile> changed = file;
  for (const auto& [path, text] : settings) {
    changed = with_key(*changed, path, text);
    if (!changed) return std::nullopt;
  }
  return changed;
}

void add_changes(Answer& answer, const WeatherYear* weather) {
  if (!answer.freeze) return;
  Passing passing{EdgeFields(coarse_edges()), weather};
  passing.draws = false;
  const Answer base = pass(answer.file, Question::freeze, passing, Reach::frost_hold);
  const bool found = answer.freeze->verdict == FreezeVerdict::found;
  for (const Candidate& candidate : candidates(answer.file.design, *answer.freeze)) {
    const auto file = with_all(answer.file, candidate.settings);
    if (!file) continue;
    const Answer other = pass(*file, Question::freeze, passing, Reach::frost_hold);
    if (!base.freeze || !other.freeze || other.freeze->verdict != FreezeVerdict::found) continue;
    FreezeChange change{candidate.what, candidate.before_pour, found_dial_degC(other.freeze, &Freeze::slab),
                        other.freeze->air->dial_degC};
    // From the settings that were found, with their finer grid and their doubt, by the difference that it makes.
    if (found) {
      const System system = answer.file.design.units;
      const double error_K = file->design.frost_hold.sensor_error_K - answer.file.design.frost_hold.sensor_error_K;
      const auto moved_degC = [&](std::optional<DialSetting> Freeze::*dial) {
        const double moved_K = worth_K(((*other.freeze).*dial)->best_degC - ((*base.freeze).*dial)->best_degC);
        return dial_mark_degC(((*answer.freeze).*dial)->wanted_degC + error_K + moved_K, system);
      };
      if (base.freeze->air) change.air_dial_degC = moved_degC(&Freeze::air);
      if (change.slab_dial_degC && base.freeze->slab && answer.freeze->slab)
        change.slab_dial_degC = moved_degC(&Freeze::slab);
    }
    answer.change.push_back(std::move(change));
  }
  std::stable_sort(answer.change.begin(), answer.change.end(),
                   [](const FreezeChange& a, const FreezeChange& b) { return a.air_dial_degC < b.air_dial_degC; });
}

bool lowers(const FreezeChange& change, const Freeze& freeze) {
  constexpr double rounding_K = 1e-6;
  if (freeze.verdict != FreezeVerdict::found || change.air_dial_degC < freeze.air->dial_degC - rounding_K) return true;
  return change.slab_dial_degC && (!freeze.slab || *change.slab_dial_degC < freeze.slab->dial_degC - rounding_K);
}

}  // namespace slabwright
