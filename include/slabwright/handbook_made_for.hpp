// Whether a formula was made for the case it is asked about, and why not.
#pragma once
#include <string_view>
#include <vector>

namespace slabwright {

/// A formula outside its range still gives a number; this says that the number is not to be trusted, and why.
struct MadeFor {
  std::vector<std::string_view> why_not;  ///< empty inside the range; each a clause in plain words
  bool holds() const { return why_not.empty(); }
};

}  // namespace slabwright
