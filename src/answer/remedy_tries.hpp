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

/// The same for what cannot be laid, and for the frost hold.
std::vector<RemedyTry> layout_tries(const Answer& answer, const Diagnostic& said);
std::vector<RemedyTry> frost_tries(const Answer& answer, const Diagnostic& said);

/// As somebody would type it: two figures, whole degrees, rounded up or down.
std::string typed_up(double si, Dimension dimension, System system);
std::string typed_down(double si, Dimension dimension, System system);
/// The same for each multiple.
std::vector<std::string> typed_up(double si, const std::vector<double>& by, Dimension dimension, System system);
std::vector<std::string> typed_down(double si, const std::vector<double>& by, Dimension dimension, System system);

/// What a room loses most by, cut down by at least `excess_W`: its largest parts first.
std::vector<RemedyTry> less_loss(const Answer& answer, std::size_t room, double excess_W);

/// The temperature wanted in a room: its own where the user wrote one, else the climate's.
std::string indoor_path(const DesignFile& file, std::size_t room);

/// A boiler for the floor at work and for the frost hold, and larger ones.
RemedyTry larger_boilers(const Answer& answer);

/// Whether a row was written by the user: the guessed ones take no key.
bool row_is_given(const DesignFile& file, const std::string& row);

}  // namespace slabwright
