// What the loops are laid with, to buy and to count. Numbers in, numbers out: nothing here knows a design.
#pragma once
#include <string>
#include <vector>

#include "slabwright/fields.hpp"
#include "slabwright/geometry_path.hpp"
#include "slabwright/units.hpp"

namespace slabwright {

/// How loops are tied and sleeved, and what is wasted. All of it practice, but for the sleeve at an expansion joint:
/// 12 in on each side (California Mechanical Code 1217.5).
struct LayingPractice {
  double tie_m = 0.0;         ///< from tie to tie on straight tube
  double sleeve_m = 0.0;      ///< length of a sleeve, the joint at its middle
  double waste_share = 0.08;  ///< of foam cut to fit: 5 to 10 %
};
/// 2 ft and 24 in, or 600 and 650 mm.
LayingPractice laying_practice(System system);

/// Ties of a drawn loop: at both ends of each straight piece, where a bend begins, and between them no farther apart
/// than asked for; straight pieces shorter than half of that have one, and arcs none, but for wide ones (1 m of radius
/// or more), which are tied like straight tube.
int ties_along(const Path& path, double tie_m);
/// Of a loop of which only the length is known: one at each distance, and one more for each half turn that a patch
/// this large at this spacing has, as square as it may be.
int ties_by_length(double length_m, double patch_m2, double spacing_m, double tie_m);

struct LoopTies {
  std::string loop;
  int ties_number = 0;
};

struct Materials {
  double tube_m = 0.0;  ///< cut off coils, with what is left over at the ends
  int ties_number = 0;
  double foam_m2 = 0.0;       ///< under the slab, waste counted
  double edge_foam_m2 = 0.0;  ///< boards outside its edge, waste counted
  double waste_share = 0.0;
  int manifolds_number = 0;
  int loops_number = 0;
  int ports_number = 0;          ///< spares counted; each is a supply and a return
  int sleeves_number = 0;        ///< one where a loop crosses a joint
  double sleeve_m = 0.0;         ///< each
  int bend_supports_number = 0;  ///< where tube turns up to its port: two for each loop
  bool drawn = false;            ///< ties and sleeves counted on drawn loops; else from lengths, and sleeves unknown
  double tie_m = 0.0;            ///< from tie to tie on straight tube
  std::vector<LoopTies> loop;    ///< of `ties_number`
};

Record record_of(LoopTies&);

Record record_of(Materials&);

}  // namespace slabwright
