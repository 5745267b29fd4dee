// The files that a design names beside itself.
#pragma once
#include <string>

#include "app/request.hpp"
#include "slabwright/answer.hpp"

namespace slabwright::app {

/// What a design names, read, or what to print where it cannot be.
struct BroughtFiles {
  Brought brought;
  std::string problem;
};

/// `design_name` is the design file's, empty where options alone say everything. A name in the file is counted from the
/// file's folder, a name in an option from the folder one is in. `read` has a design.
BroughtFiles bring(const ReadDesign& read, const std::string& design_name);

/// The readings that a request names or gives, with their problems in them; nothing where there are none. `problem`
/// says why a file cannot be read.
BroughtFiles bring_meters(const Request& request, System system);

/// The problems of readings that were brought, as lines; nothing where an answer has none.
std::string meter_problems(const Request& request, const MeterSheet& sheet, const Answer& answer);

}  // namespace slabwright::app
