// balance: which port to turn down, until its meter shows what, and when to stop.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/text.hpp"
#include "report/text_speed.hpp"

namespace slabwright::report {
namespace {

/// More lines of moves than this are told shorter.
constexpr std::size_t most_move_lines = 12;
/// What stands below the table's rows: totals, the rest's count, pump, advice, caution, next command.
constexpr std::size_t below_ports = 16, least_ports = 4;

Figure flow_of(const Reader& reader) { return reader.answer.floor ? Figure::flow : Figure::balance; }

/// Which manifold is which number.
void add_manifold_numbers(Page& page, const Reader& reader) {
  const auto& manifolds = reader.design().manifold;
  if (manifolds.size() < 2 || !reader.answer.loops) return;
  std::string names;
  for (std::size_t m = 0; m < manifolds.size(); ++m) {
    names += fmt::format("{}{} {}", m == 0 ? "" : ", ", m + 1,
                         manifolds[m].name.empty() ? fmt::format("manifold {}", m + 1) : manifolds[m].name);
  }
  add_text(page, fmt::format("Manifolds: {}. Port 2-1 is the first of the second.", names));
}

std::size_t row_of(const Reader& reader, const BalanceMove& move) {
  const auto& ports = reader.answer.balance->port;
  const auto found = std::find_if(ports.begin(), ports.end(),
                                  [&](const PortSetting& p) { return p.port == move.port && p.loop == move.loop; });
  return static_cast<std::size_t>(found - ports.begin());
}

std::string balance_verdict(const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.balance) return "NOTHING TO BALANCE YET.";
  const std::size_t moves = answer.balance->move.size();
  const bool fails = answer.verdict.kind == VerdictKind::fails;
  const std::string but = fails ? " The shop does not work as it stands: see below." : "";
  if (moves == 0 || answer.balance->open_is_enough) {
    return "NOTHING NEED BE TURNED. Open every port fully and leave it so." + but;
  }
  return fmt::format("{} MOVE{}. Open every port fully{}, then:{}", upper(counted(moves)), moves == 1 ? "" : "S",
                     answer.file.design.pump.points.empty() ? "" : ", pump as it is", but);
}

/// "others should then read  2: 0.68   3: 0.65".
std::string others(const Reader& reader, const BalanceMove& move, std::size_t own_row) {
  std::string words;
  for (std::size_t i = 0; i < move.then_m3_per_s.size(); ++i) {
    if (i == own_row) continue;
    words +=
        fmt::format("{}{}: {}", words.empty() ? "" : ", ", port_words(reader, i), flow(reader, move.then_m3_per_s[i]));
  }
  return words;
}

/// The first `shown` moves, and where `told` what the other meters should then read.
Page moves_told(const Reader& reader, std::size_t shown, bool told) {
  const Balance& balance = *reader.answer.balance;
  Page page;
  for (std::size_t i = 0; i < shown; ++i) {
    const BalanceMove& move = balance.move[i];
    const std::size_t row = row_of(reader, move);
    add_text(page,
             fmt::format("turn PORT {} down until its meter shows {} ({} turns from shut)", port_words(reader, row),
                         flow(reader, move.until_m3_per_s), bare(Kind::turns, move.to_turns, reader.system())),
             fmt::format("  {}  ", i + 1));
    const std::string rest = others(reader, move, row);
    if (told && !rest.empty()) add_text(page, "the others should then read  " + rest, "       ");
  }
  return page;
}

/// All of it where that is short; else a line for each move, as many as fit.
void add_moves(Page& page, const Reader& reader) {
  const Balance& balance = *reader.answer.balance;
  if (balance.open_is_enough) return;
  const std::size_t all = balance.move.size();
  Page moves = moves_told(reader, all, true);
  std::size_t shown = all;
  if (!reader.options.full && moves.lines.size() > most_move_lines) {
    shown = std::min(all, most_move_lines);
    moves = moves_told(reader, shown, false);
  }
  page.lines.insert(page.lines.end(), moves.lines.begin(), moves.lines.end());
  if (shown < all) add_text(page, and_more(all - shown), "     ");
}

/// Where it ends, and which port is never touched.
void add_stop(Page& page, const Reader& reader) {
  const Balance& balance = *reader.answer.balance;
  if (balance.open_is_enough) return add_text(page, "Every loop is inside its range.");
  const bool all_within =
      std::all_of(balance.port.begin(), balance.port.end(), [](const PortSetting& p) { return p.within; });
  add_text(page, fmt::format("Stop there. {} Leave port {} open: its loop is the hardest, the one that asks the pump "
                             "for most.",
                             all_within ? "Every loop is inside its range." : "Not every loop comes inside its range.",
                             port_words(reader, balance.hardest)));
}

void add_ports(Page& page, const Reader& reader) {
  const Balance& balance = *reader.answer.balance;
  const System system = reader.system();
  const bool full = reader.options.full;
  Table table{{{"port"},
               left_column("goes to"),
               {std::string(unit(Kind::length, system))},
               {"all open"},
               {"aim"},
               {"good enough"},
               {"after"},
               {"turns"}},
              {},
              1};
  if (full) table.columns.push_back({"authority"});
  const std::size_t room = most_lines - std::min(most_lines, page.lines.size() + below_ports);
  const std::size_t shown = full ? balance.port.size() : std::min(balance.port.size(), std::max(room, least_ports));
  for (std::size_t i = 0; i < shown; ++i) {
    const PortSetting& p = balance.port[i];
    table.rows.push_back({port_words(reader, i), p.loop, bare(Kind::length, p.length_m, system),
                          flow(reader, p.open_m3_per_s), flow(reader, p.aim_m3_per_s),
                          flow(reader, p.least_m3_per_s) + " to " + flow(reader, p.most_m3_per_s),
                          flow(reader, p.after_m3_per_s) + (p.within ? "" : " !"),
                          p.open ? "open" : bare(Kind::turns, p.set_turns, system)});
    if (full) table.rows.back().push_back(bare(Kind::share, p.authority_share, system));
  }
  table.rows.push_back({"", marked(fmt::format("total, {}", unit(Kind::flow, system)), reader.answer, flow_of(reader)),
                        "", flow(reader, balance.total_open_m3_per_s), flow(reader, balance.aim_m3_per_s), "",
                        flow(reader, balance.total_after_m3_per_s), ""});
  if (full) table.rows.back().emplace_back();
  add_table(page, table);
  if (shown < balance.port.size()) {
    add_text(page, and_more(balance.port.size() - shown) + ", or --out DIR for a table", "  ");
  }
  if (full) {
    add_text(page, "Authority: valve authority, the share of a loop's pressure drop, in %, that its open valve takes.");
    add_least_speed(page, reader);
  }
}

void add_balance_pump(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.file.design.pump.points.empty()) return;
  const Balance& balance = *answer.balance;
  const double duty_m = answer.sizes ? answer.sizes->pump.head_m : balance.duty_Pa / metre_of_water_Pa;
  add_text(page,
           fmt::format("No pump is described: the readings are for one set to {} against {}{}.",
                       figure(Kind::flow, balance.aim_m3_per_s, reader.system()),
                       against(duty_m, balance.duty_Pa, reader.system()), leans(answer, flow_of(reader)) ? " ~" : ""));
}

/// "45 % too much", "2.3 times its aim", "12 % too little".
std::string miss_words(const Reader& reader, double share) {
  if (share >= 1.0) return fmt::format("{:.1f} times its aim", 1.0 + share);
  return fmt::format("{} too {}", reader(Kind::share, std::abs(share)), share > 0.0 ? "much" : "little");
}

void add_untouched(Page& page, const Reader& reader) {
  const Balance& balance = *reader.answer.balance;
  if (balance.open_is_enough) return;
  add_text(page, fmt::format("Left untouched, {} gets {}, and no loop is further off.", balance.untouched_loop,
                             miss_words(reader, balance.untouched_worst_share)));
}

/// ": 3 minutes each at 2.2 gpm, never below 1.1".
std::string purge_words(const Reader& reader) {
  if (!reader.answer.sizes || reader.answer.sizes->purge.empty()) return {};
  const std::vector<Purge>& all = reader.answer.sizes->purge;
  double longest_s = 0.0;
  for (const Purge& purge : all) longest_s = std::max(longest_s, purge.for_s);
  const double minutes = std::ceil(longest_s / 60.0);
  return fmt::format(": {:.0f} minute{} each at {}, never below {}", minutes, minutes > 1.0 ? "s" : "",
                     reader(Kind::flow, all.front().flow_m3_per_s), reader(Kind::flow, all.front().least_m3_per_s));
}

void add_advice(Page& page, const Reader& reader) {
  const bool heat = reader.answer.floor.has_value();
  add_text(page, fmt::format("\"Good enough\" {}. Do not chase the rest: meters of this kind ({}) are only true to "
                             "about 10 %.",
                             heat ? "costs a loop at most 3 % of its heat" : "is 10 % under to 15 % over the aim",
                             "to " + reader(Kind::flow, reader.answer.balance->meter_most_m3_per_s)));
  add_untouched(page, reader);
  add_text(page, "Air out first, one port at a time" + purge_words(reader) +
                     ", until no bubbles come. Turns are counted from shut.");
  add_text(page, heat ? "Check again when the slab is warm: all returns should feel alike."
                      : "The aims share the flow by length; for heat and supply give --size and --outdoor.");
}

}  // namespace

std::string port_words(const Reader& reader, std::size_t row) {
  const Answer& answer = reader.answer;
  const std::string port = fmt::format("{}", answer.balance->port[row].port);
  if (reader.design().manifold.size() < 2 || !answer.loops || row >= answer.loops->loop.size()) return port;
  return fmt::format("{}-{}", answer.loops->loop[row].manifold + 1, port);
}

void add_balance(Page& page, const Reader& reader) {
  constexpr std::size_t most_reason_lines = 6;
  if (reader.answer.meters) return add_readings(page, reader);
  const Answer& answer = reader.answer;
  const std::size_t loops = answer.loops ? answer.loops->loop.size() : 0;
  add_first_line(
      page, reader,
      fmt::format("setting the manifold   {}, {} tube", several(loops, "loop"), reader.design().tube.size.name));
  add_text(page, balance_verdict(reader));
  if (!answer.balance) {
    add_lacking(page, reader);
    add_reasons(page, reader, answer.verdict.reasons, most_reason_lines);
    return add_end(page, reader, "design");
  }
  add_manifold_numbers(page, reader);
  add_moves(page, reader);
  add_stop(page, reader);
  add_reasons(page, reader, answer.verdict.reasons, most_reason_lines);
  add_blank(page);
  add_ports(page, reader);
  add_balance_pump(page, reader);
  add_blank(page);
  add_advice(page, reader);
  add_lacking(page, reader);
  if (reader.options.full) add_full(page, reader);
  add_end(page, reader, answer.floor ? "freeze" : "design");
}

}  // namespace slabwright::report
