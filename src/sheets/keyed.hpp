// Texts of a drawing with the keys of the answer that they tell.
#pragma once
#include <string>

#include "slabwright/drawing_words.hpp"
#include "slabwright/report_quotes.hpp"
#include "slabwright/units.hpp"

namespace slabwright {

/// "12 ft 4 1/4 in", "3.45 m": as a tape reads it.
KeyedText taped(double length_m, System system, std::string key);
/// Of tube: "212 ft", "64.6 m".
KeyedText run_of(double length_m, System system, std::string key);
/// Small: "2 1/2 in", "65 mm".
KeyedText small_of(double length_m, System system, std::string key);
/// "64.2 F".
KeyedText degrees_of(double degC, System system, std::string key);

/// A name of the answer, or nothing where it is empty.
KeyedText named(const std::string& name, std::string key);
/// The same; words of ours where it is empty.
KeyedText named_or(const std::string& name, std::string key, const std::string& ours);

}  // namespace slabwright
