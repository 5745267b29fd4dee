// The design file's description as a JSON Schema: for editors that complete and check while one types.
#pragma once
#include <string>

namespace slabwright {

/// Draft 7, a TOML file taken as JSON data: manuals/design-file.schema.json. It says how a value is best written. The
/// reader is more forgiving (other capitals, a count in quotes, "yes" for true) and looks at more (units, ranges, what
/// fits together).
std::string design_schema();

}  // namespace slabwright
