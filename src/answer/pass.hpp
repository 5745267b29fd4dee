// One pass through the stages, without ranges.
#pragma once
#include <string>

#include "slabwright/answer.hpp"

namespace slabwright {

/// What a pass is run for: the whole line, or only as much as the frost hold needs.
enum class Reach { whole, frost_hold };

/// Runs the stages in their order. `fields` remembers edges between passes.
Answer pass(const DesignFile& file, Question question, EdgeFields& fields, Reach reach = Reach::whole);

/// The stages that a question has to answer completely; the rest may be absent.
bool answered(const Answer& answer);

/// `kind` and `reasons` from everything that was said.
Verdict verdict_of(const std::vector<Diagnostic>& said);

/// Settings that also cover what nobody can know.
void add_bands(Answer& answer, EdgeFields& fields);

/// Power cuts, faults, the way back to work and the like, from the settings that were found.
void add_cold_runs(Answer& answer, EdgeFields& fields);

/// Ranges of a building that is not described, into the fields of the answer that are of three.
void add_ranges(Answer& answer, EdgeFields& fields);

/// What matters most and what would lower the frost hold.
void add_sensitivities(Answer& answer);
void add_changes(Answer& answer, EdgeFields& fields);

}  // namespace slabwright
