// Row numbers that cannot be mixed up.
#pragma once
#include <cstddef>

namespace slabwright {

/// A row number of one kind of thing: Id<struct NodeTag> and Id<struct BranchTag> do not convert into each other.
template <class Tag>
struct Id {
  std::size_t at = 0;
  friend bool operator==(Id a, Id b) { return a.at == b.at; }
  friend bool operator!=(Id a, Id b) { return a.at != b.at; }
  friend bool operator<(Id a, Id b) { return a.at < b.at; }
};

}  // namespace slabwright
