// Every demo scenario, so that what must hold for one is tried on all.
#pragma once
#include <string>
#include <vector>

#include "slabwright/design.hpp"

namespace slabwright::test {

struct Layout {
  std::string name;  ///< "frame-shop"
  std::string text;
  DesignFile file;
};

/// All of layouts/*.toml, by name. Throws where one does not read: the tests are then broken.
std::vector<Layout> layouts();
Layout layout(const std::string& name);

/// A design from options alone: {"slab.size", "36 x 30 ft"}.
using Keys = std::vector<std::pair<std::string, std::string>>;
DesignFile from_keys(const Keys& keys);

/// The same design with other values of some keys. Throws where one does not read.
DesignFile with_keys(DesignFile file, const Keys& keys);

}  // namespace slabwright::test
