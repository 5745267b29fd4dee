// The manifold card: one panel a port, for somebody on their knees with a phone or a pencil.
#include "sheets/page.hpp"

namespace slabwright::sheets {
namespace {

using report::Kind;

bool several_manifolds(const Source& source) { return source.answer.file.design.manifold.size() > 1; }

/// The manifold's own name where there is more than one to mistake it for.
Markup manifold_words(const Source& source, std::size_t loop) {
  if (!several_manifolds(source) || !source.answer.loops || loop >= source.answer.loops->loop.size()) return {};
  const std::string key = key_of_row("design.manifold", source.answer.loops->loop[loop].manifold, "name");
  return source.q.has(key) ? say(" at ", source.q.words(key)) : Markup{};
}

/// What is done once for the whole manifold.
Markup first_panel(const Source& source) {
  const Quotes& q = source.q;
  const Answer& answer = source.answer;
  std::vector<Fact> rows;
  rows.push_back(
      {prose("All ports together"), say(q.figure("balance.aim_m3_per_s", Kind::flow), " aimed for; ",
                                        q.figure("balance.total_open_m3_per_s", Kind::flow), " with every port open")});
  if (answer.point)
    rows.push_back({prose("Water in the coldest weather"),
                    say(q.figure("point.supply_degC", Kind::degree, report::Figure::water), " out, ",
                        q.figure("point.return_degC", Kind::degree, report::Figure::water), " back")});
  if (answer.sizes) {
    rows.push_back({prose("Pump"), say(q.figure("balance.aim_m3_per_s", Kind::flow), " against ",
                                       q.figure("sizes.pump.head_m", Kind::head), " of head")});
    rows.push_back({prose("Fill, cold"), say(q.figure("sizes.tank.start_Pa", Kind::gauge), " with water at ",
                                             q.figure("sizes.tank.start_degC", Kind::degree))});
  }
  rows.push_back({prose("Meters must show up to"), quoted(q.figure("balance.meter_most_m3_per_s", Kind::flow))});
  return facts(rows);
}

Markup others_read(const Source& source, std::size_t move) {
  const Quotes& q = source.q;
  const std::string list = key_of_row("balance.move", move, "then_m3_per_s");
  Markup all;
  for (std::size_t i = 0; i < q.rows(list); ++i) {
    if (source.answer.balance->port[i].loop == source.answer.balance->move[move].loop) continue;
    all += say(all.html.empty() ? "" : ", ", q.words(key_of_row("balance.port", i, "loop")), ": ",
               q.bare(key_of_row(list, i), Kind::flow));
  }
  return all;
}

Markup moves(const Source& source) {
  const Quotes& q = source.q;
  if (source.answer.balance->open_is_enough)
    return paragraph("Nothing need be turned: open every port fully and leave it so.");
  std::vector<Markup> steps{prose("Open every port fully. Pump as it will run.")};
  for (std::size_t i = 0; i < source.answer.balance->move.size(); ++i) {
    const auto key = [&](std::string_view member) { return key_of_row("balance.move", i, member); };
    Markup step = say("Turn port ", q.figure(key("port"), Kind::count), " (", q.words(key("loop")),
                      ") down until its meter shows ", q.figure(key("until_m3_per_s"), Kind::flow), ", ",
                      q.figure(key("to_turns"), Kind::turns), " from shut.");
    if (const Markup rest = others_read(source, i); !rest.html.empty())
      step += say(" The others should then read ", rest, ".");
    steps.push_back(std::move(step));
  }
  steps.push_back(prose("Stop when every loop is inside its band. Turns are counted from shut."));
  return numbered(steps);
}

std::vector<Fact> air_out(const Source& source, std::size_t port) {
  const Quotes& q = source.q;
  if (!source.answer.sizes || port >= source.answer.sizes->purge.size()) return {};
  const auto key = [&](std::string_view member) { return key_of_row("sizes.purge", port, member); };
  return {{prose("Air out, this port alone"),
           say(q.figure(key("flow_m3_per_s"), Kind::flow), " for ", q.figure(key("for_s"), Kind::minutes),
               " or until no bubbles come, never below ", q.figure(key("least_m3_per_s"), Kind::flow))}};
}

Markup port_panel(const Source& source, std::size_t port) {
  const Quotes& q = source.q;
  const PortSetting& setting = source.answer.balance->port[port];
  const auto key = [&](std::string_view member) { return key_of_row("balance.port", port, member); };
  Markup panel = wrap(
      "h2", say("Port ", q.figure(key("port"), Kind::count), manifold_words(source, port), ": ", q.words(key("loop"))));
  panel += wrap("p", say("Aim ", q.figure(key("aim_m3_per_s"), Kind::flow)), "big");
  panel += wrap("p",
                say("Good enough from ", q.figure(key("least_m3_per_s"), Kind::flow), " to ",
                    q.figure(key("most_m3_per_s"), Kind::flow)),
                "verdict");
  std::vector<Fact> rows;
  rows.push_back(
      {prose("Valve"), setting.open ? prose("fully open") : quoted(q.figure(key("set_turns"), Kind::turns))});
  rows.push_back({prose("Meter should then show"), quoted(q.figure(key("after_m3_per_s"), Kind::flow))});
  if (!setting.within) rows.push_back({prose("Note"), prose("no setting brings this loop inside its band")});
  rows.push_back({prose("Loop"), say(q.figure(key("length_m"), Kind::length), " long")});
  for (Fact& row : air_out(source, port)) rows.push_back(std::move(row));
  rows.push_back({prose("Meter read"), blank()});
  rows.push_back({prose("Turns set"), blank()});
  rows.push_back({prose("Return, slab warm"), blank()});
  rows.push_back({prose("Date and initials"), blank()});
  return wrap("div", panel + facts(rows), "card");
}

}  // namespace

std::optional<SheetBody> manifold_card(const Source& source) {
  if (!source.answer.balance || source.answer.balance->port.empty()) return std::nullopt;
  Markup first = wrap("h2", prose("Before the ports")) + first_panel(source);
  first += paragraph(
      "Do not chase the last digit: meters of this kind are only true to about a tenth of what they "
      "show, and a loop at the edge of its band loses next to nothing of its heat.");
  first += caution(prose("Water may be hot and under pressure. Open bleeders slowly, cloth in hand."));
  first += caution(prose("Set with warm water; read again when the slab is warm: all returns should feel alike."));
  Markup all = wrap("div", first, "card");
  all += wrap("div", wrap("h2", prose("In this order")) + moves(source), "card long");
  for (std::size_t i = 0; i < source.answer.balance->port.size(); ++i) all += port_panel(source, i);
  return SheetBody{wrap("div", all, "cards")};
}

}  // namespace slabwright::sheets
