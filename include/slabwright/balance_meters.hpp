// Readings of a manifold as people write them: a table with a heading line, or flows in a row. Forgiving in form,
// strict in meaning.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/balance_readings.hpp"
#include "slabwright/design.hpp"

namespace slabwright {

/// One row as written: of which port, and what was read there. What is blank, "-" or "?" was not read.
struct MeterRow {
  std::string at;  ///< a loop's name, "3", "port 3", or "2-3": the third port of the second manifold; may be empty
  std::optional<double> flow_m3_per_s, supply_degC, return_degC, front_s;
  std::optional<double> open_turns;  ///< of its valve, from shut; absent: wide open
};

/// A text read, and not yet laid against a manifold.
struct MeterSheet {
  std::vector<MeterRow> row;
  bool in_port_order = false;  ///< no row says of which port it is: there must be one for each
  bool unit_written = true;    ///< false where bare flows were taken to be in the file's unit
  std::optional<double> water_degC;
  std::optional<double> meter_error_share;
  std::optional<double> room_degC;    ///< air in the shop while it was read
  std::vector<Diagnostic> problems;   ///< `about` is a key of `spots`
  std::map<std::string, Spot> spots;  ///< "row[2].flow"; "readings" is the whole
};

/// A table: the first line that is neither blank nor a remark (#) names the columns and their units, as "loop, flow
/// (gpm), return (F), front (min)". Commas, semicolons or tabs part the cells; a cell may carry a unit of its own.
/// Columns: loop or port, flow, supply, return, front (also "4:50"), turns, water, room, meter error, remarks.
/// Problems: what has no unit or another kind's, decimal commas, unknown columns, figures that no manifold shows.
MeterSheet read_meters(std::string_view text);

/// "0.73 0.64 - 0.57", port by port, "-" where none was read; "3: 0.2 gpm" of some ports only. Bare numbers are in the
/// design file's unit. `option` is named where something is wrong.
MeterSheet read_flows(std::string_view text, System system, std::string_view option);

/// What an option says beside it: "--water", "--room" or "--meter-error" with its text. It wins over the table.
MeterSheet with_option(MeterSheet sheet, std::string_view option, std::string_view text);

/// Readings row for row of the plan's loops, and the valves they were read with (empty: all wide open).
struct MetersRead {
  Readings readings;
  ValveTurns turns;
};
/// Absent where the sheet has problems, names what the plan does not have or names it twice, has too few or too many
/// rows, or no flow above zero: all problems together, in the order of the text.
Checked<MetersRead> match_meters(const MeterSheet& sheet, const LoopPlan& plan, const Design& design);

/// Why flows that were written without a unit cannot be taken: they are about 3.8 times, or about a 3.8th of, what the
/// ports would carry, as L/min taken for gpm are. Nothing where they can. `expected` is a row for each port.
std::optional<Diagnostic> unit_mistaken(const MeterSheet& sheet, const Readings& readings,
                                        const std::vector<double>& expected_m3_per_s, System system);

}  // namespace slabwright
