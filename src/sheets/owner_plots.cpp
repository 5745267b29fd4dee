#include "sheets/owner_plots.hpp"

#include "sheets/plots.hpp"

namespace slabwright::sheets {
Markup plots_of_the_owner(const Source& source) {
  const Markup plots = plot_figures(source.q, {"months", "setting", "heat", "week", "sweating"});
  return plots.html.empty() ? Markup{} : section("In pictures", wrap("div", plots, "plots"));
}

}  // namespace slabwright::sheets
