// What to try for what stopped: keys in the order in which they are likely to be what stops it.
#pragma once
#include <string>
#include <vector>

#include "slabwright/answer.hpp"

namespace slabwright {

/// A key and texts for it, the mildest first.
struct RemedyTry {
  std::string path;
  std::vector<std::string> texts;
};
/// Empty for what is no stop.
std::vector<RemedyTry> remedy_tries(const Answer& answer, const Diagnostic& said);

// The same for one stop or a few that are alike. Each takes what was said, and what an answer lacks it does without.

std::vector<RemedyTry> cool_boiler_tries(const Answer& answer, const Diagnostic& said);
std::vector<RemedyTry> injection_tries(const Answer& answer, const Diagnostic& said);
std::vector<RemedyTry> circuit_tries(const Answer& answer, const Diagnostic& said);
std::vector<RemedyTry> hot_supply_tries(const Answer& answer, const Diagnostic& said);

std::vector<RemedyTry> weak_pump_tries(const Answer& answer, const Diagnostic& said);
std::vector<RemedyTry> out_of_band_tries(const Answer& answer, const Diagnostic& said);

std::vector<RemedyTry> warm_floor_tries(const Answer& answer, const Diagnostic& said);

std::vector<RemedyTry> no_setting_tries(const Answer& answer, const Diagnostic& said);
std::vector<RemedyTry> not_called_tries(const Answer& answer, const Diagnostic& said);

std::vector<RemedyTry> wide_bend_tries(const Answer& answer, const Diagnostic& said);
std::vector<RemedyTry> few_port_tries(const Answer& answer, const Diagnostic& said);
std::vector<RemedyTry> round_drawn_tries(const Answer& answer, const Diagnostic& said);
std::vector<RemedyTry> no_way_tries(const Answer& answer, const Diagnostic& said);

// What they share.

void add_to(std::vector<RemedyTry>& tries, std::vector<RemedyTry> more);

/// As somebody would type it: two figures, whole degrees, rounded up or down.
std::string typed_up(double si, Dimension dimension, System system);
std::string typed_down(double si, Dimension dimension, System system);
/// The same for each multiple.
std::vector<std::string> typed_up(double si, const std::vector<double>& by, Dimension dimension, System system);
std::vector<std::string> typed_down(double si, const std::vector<double>& by, Dimension dimension, System system);
/// Temperatures so far above one.
std::vector<std::string> typed_above(double from_degC, const std::vector<double>& by_K, System system);
/// Whole numbers from one to another.
std::vector<std::string> typed_counts(int from, int to);

/// What a room loses most by, cut down by at least `excess_W`: its largest parts first, then all together.
std::vector<RemedyTry> less_loss(const Answer& answer, std::size_t room, double excess_W);

/// The tube table's longest loop, where the file lets them be longer.
std::vector<RemedyTry> usual_loops(const Design& design);
/// Tube as close as floors usually have it, where it lies wider.
RemedyTry closer_tube(const Answer& answer);
/// Loops that are shorter: more of them where their number is given, else a lower limit. Empty where each is listed.
std::vector<RemedyTry> shorter_loops(const Answer& answer);
/// Strong enough for the hardest loop at the flow wanted, with something to spare.
RemedyTry stronger_pump(const Answer& answer);
/// Valves as wide as usual, where those of the file choke their loops.
std::vector<RemedyTry> wider_valves(const Answer& answer);
/// Flow in the boiler's own circuit.
RemedyTry boiler_flow(const Answer& answer);

/// The temperature wanted in a room: its own where the user wrote one, else the climate's.
std::string indoor_path(const DesignFile& file, std::size_t room);

/// A boiler for the floor at work and for the frost hold, and larger ones.
RemedyTry larger_boilers(const Answer& answer);

/// Whether a row was written by the user: the guessed ones take no key.
bool row_is_given(const DesignFile& file, const std::string& row);

}  // namespace slabwright
