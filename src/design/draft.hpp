// A design while it is being read.
#pragma once
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "design/statements.hpp"
#include "slabwright/design.hpp"

namespace slabwright {

struct Draft {
  Design design;
  System units = System::us;       ///< what sentences name first
  std::vector<std::string> given;  ///< in file order, then by option
  std::map<std::string, Spot> spots;
  std::vector<Diagnostic> said;
  std::set<std::string> broken;  ///< keys whose text was not read: nothing is concluded from them
};

/// A problem about a path, or where that is empty about the spot itself.
void say(Draft& draft, std::string code, std::string about, Spot spot, std::string sentence);

bool is_given(const Draft& draft, const std::string& path);

/// Walks the statements into the design.
void fill(Draft& draft, const FileStatements& statements);

/// Sets one key from outside the file.
void apply(Draft& draft, const Override& override);

/// The units a user thinks in, by those typed for slab and tube, else anywhere; nothing where none was typed.
std::optional<System> typed_units(const FileStatements& statements, const std::vector<Override>& overrides);

/// The keys whose place this one takes when it is set from outside the file: size, area and outline of a floor stand
/// for each other, and so do the coldest hour and its statistics, a snap day by day and its number of days.
std::vector<std::string> rivals_of(std::string_view path);

/// Fills every key that was not given from its description, adds the rows a workshop must have, and lists all of it.
/// What a former settling filled is filled anew. `known` stands before the descriptions' defaults.
std::vector<Assumption> settle(Design& design, const std::vector<std::string>& given,
                               const std::vector<Assumption>& known = {});

/// Everything that cannot be meant, among the keys that were read.
void judge(Draft& draft);

}  // namespace slabwright
