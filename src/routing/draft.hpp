// One way to lay a floor: first its cells shared out, then the tube itself.
#pragma once
#include <optional>

#include "cuts.hpp"
#include "finish.hpp"

namespace slabwright::routing {

struct Attempt {
  int loops = 1;
  ApronShape apron;
  Fit fit;
  CutOptions cut;
  bool halves = false;  ///< of a symmetric task with an even number of loops: one half and its mirror image
};

struct Draft {
  Cells cells;
  std::optional<Cells> whole;  ///< of a floor shared out by halves: until it is laid, `cells` are those of the left one
  Apron apron;
  std::vector<int> owner;        ///< of each cell: the loop that heats it, or -1
  std::vector<double> leader_m;  ///< of each loop, both, in the apron
  double spread_ratio = 0.0;     ///< of the loops' lengths, or of their heat, as far as cells tell
  double longest_m = 0.0;        ///< the longest loop, as far as cells tell
  std::vector<Path> path;        ///< from each loop's right port to its left one, as seen from the manifold
  std::vector<Path> plain_path;  ///< the same before tube was moved towards bare floor
  std::vector<char> cold_last;   ///< whether a loop's tube beside walls lies in its second half
};

/// A share-out that cells say is more uneven is laid only where none is better.
constexpr double fair_spread = 0.06;

/// By cuts, and where these shut loops in, by borders moved from there. Absent where the apron has no room, and by
/// halves where cells are not their own mirror image.
std::optional<Draft> share_out(const LayoutTask& task, const Attempt& attempt, Work& work);

/// One task twice: its clearances enlarged so that cells leave room for bends, and as they are asked for; and what may
/// still be tried to fill bare floor.
struct Tasks {
  const LayoutTask& roomy;
  const ExactTask& exact;
  Work& filling;
};

/// Lays the tube of each part and trades cells once more by the lengths that come out.
void lay(const Tasks& tasks, Draft& draft);

}  // namespace slabwright::routing
