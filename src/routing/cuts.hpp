// The floor shared out: straight cuts from the apron to the walls, each between two gates.
#pragma once
#include "apron.hpp"
#include "work.hpp"

namespace slabwright::routing {

/// For each cell the loop that heats it, or -1.
struct Parts {
  std::vector<int> owner;
  double worst_ratio = 0.0;  ///< largest deviation of a part from its share
};

struct CutOptions {
  double bend_price = 3.0;
  double step_price = 0.12;
};

/// Shares out the free cells so that each loop's tube, `leaders_m` included, comes near to the mean. Each part is
/// connected and holds its gate. Cells that no gate reaches stay -1.
Parts cut_floor(const Cells& cells, const std::vector<Gate>& gates, const std::vector<double>& leaders_m,
                const CutOptions& options, Work& work);

}  // namespace slabwright::routing
