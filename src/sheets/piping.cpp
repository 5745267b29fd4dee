// The piping scheme, laid out from the plant as it is piped up, and what a code may ask for beside it.
#include "sheets/drawings.hpp"
#include "sheets/page.hpp"

namespace slabwright::sheets {

std::optional<SheetBody> piping_sheet(const Source& source) {
  const auto picture = schematic_picture(source.answer);
  if (!picture) return std::nullopt;
  return SheetBody{paragraph("Not to scale. What others bring is marked so.") +
                       caution(prose("Relief valve, backflow protection, low-water cut-off and their sizes are for the "
                                     "local code and a licensed installer.")),
                   {*picture}};
}

}  // namespace slabwright::sheets
