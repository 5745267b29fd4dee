// What the parts of asking tell each other.
#pragma once
#include <string>

#include "slabwright/asking.hpp"

namespace slabwright::asking {

/// A refusal that is one sentence, about no place.
Refusal refusal_of(const std::string& sentence, int exit);

/// The problems of a text called `name` as a refusal.
Refusal refusal_of(const ReadDesign& read, std::string_view name);

/// What `drill` asks beside the design's anchors, or a sentence that says what to write instead.
struct AskedHole {
  DrillAsked asked;
  std::string problem;
};
AskedHole asked_hole(const Asked& asked, const GetFile& get);

/// The readings that are named or given, with their problems in them; nothing where there are none.
std::optional<Refusal> bring_meters(const Asked& asked, System system, const GetFile& get, Brought& into);

}  // namespace slabwright::asking
