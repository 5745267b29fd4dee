// The door of a browser: text in, JSON out. No disk, no clock, nothing kept from one question to the next.
#pragma once
#include <string>
#include <string_view>

namespace slabwright {

/// Answers a request, a JSON object with
///   command  "freeze"; as the command line has it, `new` excepted
///   design   the design file's text; absent where options alone say everything
///   name     what the design file is called in problems; "design" when absent
///   options  by their names: {"--spacing": "9 in", "--quick": true, "--set": ["tube.size=5/8 in"]}
///   files    texts that the design or an option names: {"town.epw": "LOCATION,..."}
///   digits   that numbers have, 3 to 17; 6 when absent, as on the command line
/// The answer is the very text that `--json` prints. Where there is none it is an object with `exit` (the exit code
/// that the command line has), `text` (what it prints) and `problems`: each with `sentence` and, where known, `file`,
/// `line`, `column`, `option`, `code` and `about`. Never throws; a fault of our own has the exit code 70.
std::string page_answer(std::string_view request);

}  // namespace slabwright
