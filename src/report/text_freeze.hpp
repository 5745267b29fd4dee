// The parts of `freeze`, a file for each group, and how they are brought onto one screen.
#pragma once
#include <string>
#include <vector>

#include "report/text.hpp"

namespace slabwright::report {

/// A paragraph or table that gives way where the screen is too small for everything.
struct Block {
  Page page;
  Page shorter = {};  ///< what stays of it then; may be empty
  int rank = 0;       ///< 0 stays as it is; of the others the highest gives way first
  bool apart = true;  ///< an empty line before it
};

/// All of them, the highest ranks shortened until what is there and what follows fit; all whole with `full`.
void add_blocks(Page& page, std::vector<Block> blocks, std::size_t for_the_end, bool full);

// text_freeze_setting.cpp: the dials, what was tried, the places.
Page setting(const Reader& reader);
Page door_guess(const Reader& reader);
Block places(const Reader& reader);
Page ice(const Reader& reader);
Block changes(const Reader& reader);

// text_outage.cpp: power off.
Page outage(const Reader& reader);
/// What to do in what order.
Page tonight(const Reader& reader);

// text_freeze_runs.cpp: one thing fails, back to work, everything off, the boiler.
Page faults(const Reader& reader);
Block recovery(const Reader& reader);
Page turn_off(const Reader& reader);
Page boiler_keeps(const Reader& reader);

// text_freeze_full.cpp: what only stands under --full.
void add_freeze_full(Page& page, const Reader& reader);

// text_explain.cpp: the arithmetic of the place that decides.
void add_explained(Page& page, const Reader& reader);

/// "8", "over 96", "under 1": whole hours, rounded down, as who is told three has three.
std::string whole_hours(std::optional<double> lasts_s, double longest_s, System system);

}  // namespace slabwright::report
