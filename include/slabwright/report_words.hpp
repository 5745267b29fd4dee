// Words that the text report and the sheets share.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/answer.hpp"

namespace slabwright::report {

/// What a person should know about safety.
enum class Caution { frost, electricity, hot_water, glycol, pressure_test, structure, fumes, drilling };

/// Its sentence, in plain ASCII and without a digit.
std::string_view caution_words(Caution about);

/// All that apply to this answer, what fits its question best first. On sheets a whole job is told, and so are the
/// cautions of every step.
std::vector<std::string> cautions(const Answer& answer);

/// "January"; 1 to 12.
std::string month_name_of(int month);

}  // namespace slabwright::report
