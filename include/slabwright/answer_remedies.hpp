// One key and one value for each solve or search that stopped before it had what it was asked for.
#pragma once
#include <string>
#include <vector>

#include "slabwright/fields.hpp"

namespace slabwright {

/// Tried before it is stated: with this value in place of the design's own, what was said is said no more. Others may
/// still be, and a person may choose another way out. Where no single change that was tried ends it, `path` and `text`
/// are empty. `on_paper` where none does that a shop would make, and this one does in the sums: what the quantity that
/// stops it would have to be.
struct Remedy {
  std::string code;                ///< of what was said: "plant.boiler-too-small"
  std::string about;               ///< of the same: "boiler.power"
  std::string path;                ///< the key that stops it
  std::string text;                ///< as a design file would write it, without quotes; items of a list parted by "; "
  std::vector<std::string> tried;  ///< keys that were tried, in that order; `path` is among them
  bool on_paper = false;           ///< further than a shop goes: less than half its loss, a pump of more than 14 m
};

/// Whether a code says that a solve, a root or a search ended before it had what it was asked for.
bool is_stop(const std::string& code);

Record record_of(Remedy&);

}  // namespace slabwright
