// The sections of a design file, in the order in which they are written.
#include "design/choices.hpp"

namespace slabwright {

Record record_of(Design& x) {
  static constexpr Key keys[] = {
      key<&Design::units>({.meaning = "What is printed: \"US\" or \"SI\". Stands above the first section.",
                           .us = "US",
                           .si = "SI",
                           .source = "the units that are typed"}),
      key<&Design::codes>(
          {.meaning = "Whose codes electrical wording, pressure tests and remarks on tube in concrete follow.",
           .us = "north america",
           .si = "europe",
           .source = "settled by the units"}),
      key<&Design::project>({.meaning = "The shop's name."}),
      key<&Design::climate>({.meaning = "Outdoors and indoors."}),
      key<&Design::ground>({.meaning = "The soil."}),
      key<&Design::building>({.meaning = "Walls, roof, doors and air leaks, where rooms do not say otherwise."}),
      key<&Design::room>({.meaning = "One for each room; the whole slab is one room when absent."}),
      key<&Design::wall>(
          {.meaning = "One for each wall that places are measured from, or that tube lies closer along."}),
      key<&Design::partition>({.meaning = "One for each wall inside; tube passes at its openings only."}),
      key<&Design::opening>({.meaning = "One for each door and window."}),
      key<&Design::exhaust>({.meaning = "One for each fan that takes air out."}),
      key<&Design::gains>({.meaning = "Heat that can be counted on, a room each."}),
      key<&Design::slab>({.meaning = "The concrete."}),
      key<&Design::insulation>({.meaning = "Under the slab."}),
      key<&Design::edge>({.meaning = "Round the slab and at its doors."}),
      key<&Design::edge_part>({.meaning =
                                   "One for each rectangle of material of your own at the edge; later ones cover "
                                   "earlier ones and all of [edge]."}),
      key<&Design::no_tube>({.meaning =
                                 "One for each area where no tube may lie: a drain, a column, a machine's pad, a "
                                 "wall to come."}),
      key<&Design::joint>({.meaning = "One for each joint of the concrete."}),
      key<&Design::border>({.meaning = "One for each line that no loop crosses, where loops shall end."}),
      key<&Design::anchor>({.meaning = "One for each anchor, or pattern of anchors, that shall be drilled."}),
      key<&Design::tube>({.meaning = "The tube and how it lies."}),
      key<&Design::manifold>({.meaning = "One for each manifold; one when absent."}),
      key<&Design::mains>({.meaning = "Between boiler and manifold."}),
      key<&Design::loop>({.meaning =
                              "One for each loop whose length or path is known; worked out from area and spacing when "
                              "absent."}),
      key<&Design::fluid>({.meaning = "Water or glycol."}),
      key<&Design::boiler>({.meaning = "What warms the water."}),
      key<&Design::pump>({.meaning = "What moves it."}),
      key<&Design::valve>({.meaning = "The balancing valves of the ports."}),
      key<&Design::second_source>({.meaning = "What warms the air beside the floor."}),
      key<&Design::service>({.meaning = "The electric supply."}),
      key<&Design::pressure>({.meaning = "Fill and relief."}),
      key<&Design::frost_hold>({.meaning = "Margins of the lowest setting."}),
      key<&Design::watch>({.meaning = "Places of your own that must not freeze."}),
      key<&Design::work>({.meaning = "When people work there, and the water they bring."}),
      key<&Design::vehicle>({.meaning = "One for each cold vehicle that comes in on a day of work and is warmed."}),
      key<&Design::electricity>({.meaning = "What electricity costs."}),
      key<&Design::way>(
          {.meaning = "One for each way of running the winter; the usual ones are compared when absent."}),
      key<&Design::bill>({.meaning = "Last winter's bill, which the answer can be fitted to."})};
  return {keys, &x};
}

}  // namespace slabwright
