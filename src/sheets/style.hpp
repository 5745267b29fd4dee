#pragma once
#include <string>

#include "sheets/page.hpp"

namespace slabwright::sheets {

/// The style sheet of a page, printed on the paper of the reader's own continent.
std::string style_of(const SheetPage& page, System system);

}  // namespace slabwright::sheets
