// The files that a question names beside the design, from the disk.
#pragma once
#include <string>

#include "slabwright/asking.hpp"

namespace slabwright::app {

/// `design_name` is the design file's, empty where options alone say everything: a name in the file is counted from the
/// file's folder, a name in an option from the folder one is in.
GetFile from_disk(const std::string& design_name);

}  // namespace slabwright::app
