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

/// Whose weather it is, what was mended in it, and what became of it.
std::vector<Diagnostic> weather_said(const DesignFile& file, const Brought& brought);

/// How long a power cut may last, from the settings that were found.
void add_outage(Answer& answer, EdgeFields& fields);

/// Ranges of a building that is not described, into the fields of the answer that are of three.
void add_ranges(Answer& answer, EdgeFields& fields);

/// What matters most and what would lower the frost hold.
void add_sensitivities(Answer& answer);
void add_changes(Answer& answer, EdgeFields& fields);

}  // namespace slabwright
