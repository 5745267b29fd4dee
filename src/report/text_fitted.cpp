// Lengths of a poured slab's loops, fitted to readings, and as text for its file.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/text_readings.hpp"

namespace slabwright::report {
namespace {

const FittedLengths& fitted_of(const Reader& reader) { return *reader.answer.fitted; }

std::string total_words(const Reader& reader) {
  const FittedLengths& fitted = fitted_of(reader);
  return fmt::format("{} of tube in all, give or take {}", reader(Kind::length, fitted.total_m),
                     reader(Kind::length, fitted.total_error_m));
}

void add_verdict(Page& page, const Reader& reader) {
  const FittedLengths& fitted = fitted_of(reader);
  const auto told = std::count_if(fitted.loop.begin(), fitted.loop.end(), [](const FittedLength& l) { return l.told; });
  const auto odd = std::find_if(fitted.loop.begin(), fitted.loop.end(),
                                [&](const FittedLength& l) { return l.loop == fitted.odd_loop; });
  if (odd != fitted.loop.end()) {
    const std::string what = fitted.odd_cause == Cause::restricted ? "IS CHOKED"
                             : fitted.odd_cause == Cause::meter    ? "HAS A METER THAT SHOWS WRONG"
                                                                   : "IS ODD: choked, or its meter shows wrong";
    add_text(page,
             fmt::format("PORT {} ({}) {}.", port_words(reader, static_cast<std::size_t>(odd - fitted.loop.begin())),
                         odd->loop, what));
  }
  add_text(page, fmt::format("LENGTHS THAT FIT: {}; {} of {} are well told.", total_words(reader),
                             told == 0 ? "none" : fmt::format("{}", told), several(fitted.loop.size(), "loop")));
}

void add_fitted_ports(Page& page, const Reader& reader) {
  const FittedLengths& fitted = fitted_of(reader);
  const System system = reader.system();
  const std::string length(unit(Kind::length, system));
  Table table{{{"port"},
               left_column("goes to"),
               {"read", std::string(unit(Kind::flow, system))},
               {"guess", length},
               {"length", length},
               {"+ or -", length}},
              {},
              1};
  if (fitted.settings) table.columns.insert(table.columns.end(), {{"aim"}, {"then set", "turns"}, {"after"}});
  const std::size_t all = fitted.loop.size(), shown = reader.options.full ? all : std::min(all, most_ports);
  for (std::size_t i = 0; i < shown; ++i) {
    const FittedLength& one = fitted.loop[i];
    const auto& read = reader.answer.meters->readings.port[i].flow_m3_per_s;
    table.rows.push_back(
        {port_words(reader, i), one.loop, read ? flow(reader, *read) : "-", bare(Kind::length, one.guess_m, system),
         bare(Kind::length, one.length_m, system) + (one.told ? "  " : " ~"), bare(Kind::length, one.error_m, system)});
    if (!fitted.settings) continue;
    const PortSetting& set = fitted.settings->port[i];
    table.rows.back().push_back(flow(reader, set.aim_m3_per_s));
    table.rows.back().push_back(set.open ? "open" : bare(Kind::turns, set.set_turns, system));
    table.rows.back().push_back(flow(reader, set.after_m3_per_s) + (set.within ? "" : " !"));
  }
  add_table(page, table);
  if (shown < all) add_text(page, and_more(all - shown), "  ");
}

/// One line of the file, or several where it is long; the rows of a list as a file takes them.
void add_for_file(Page& page, const Reader& reader) {
  const FittedLengths& fitted = fitted_of(reader);
  std::string line = "loop = [";
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < fitted.loop.size(); ++i) {
    const std::string row = fmt::format("{{ length = \"{}\" }}{}", reader(Kind::length, fitted.loop[i].length_m),
                                        i + 1 < fitted.loop.size() ? "," : "]");
    if (line.size() + 1 + row.size() > page_width) {
      lines.push_back(line);
      line.clear();
    }
    if (line.empty() || line.back() != '[') line += ' ';
    line += row;
  }
  lines.push_back(line);
  add_text(page, "To keep them, put this above the first [section] of the file:");
  page.lines.insert(page.lines.end(), lines.begin(), lines.end());
}

void add_untold(Page& page, const Reader& reader) {
  const auto& loops = fitted_of(reader).loop;
  const auto known = [&](const FittedLength& l) { return l.told || l.loop == fitted_of(reader).odd_loop; };
  if (std::all_of(loops.begin(), loops.end(), known)) return;
  add_text(page, "~ is mostly a guess still: time the warm front of that loop. With its flow that is its volume.");
}

void add_fitted_pump(Page& page, const Reader& reader) {
  const FittedLengths& fitted = fitted_of(reader);
  add_text(page, fmt::format("The pump moves {:.2g} times what was thought, give or take {:.0f} %.",
                             fitted.common_share, 100.0 * fitted.common_error_share / fitted.common_share));
}

}  // namespace

void add_fitted(Page& page, const Reader& reader) {
  const FittedLengths& fitted = fitted_of(reader);
  add_verdict(page, reader);
  add_blank(page);
  add_fitted_ports(page, reader);
  add_untold(page, reader);
  add_fitted_pump(page, reader);
  add_said_of_readings(page, reader);
  if (!fitted.odd_loop.empty() && fitted.odd_cause != Cause::meter)
    add_text(page, "Clear it and read again before you set anything.");
  add_blank(page);
  add_for_file(page, reader);
  add_lacking(page, reader);
  if (reader.options.full) add_full(page, reader);
  add_end(page, reader, "balance");
}

}  // namespace slabwright::report
