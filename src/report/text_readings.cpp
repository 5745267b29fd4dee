// balance with readings: what may be wrong, likeliest first, the test that parts it, and what to set then.
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "slabwright/units_exact.hpp"

#include "report/text.hpp"
#include "report/text_readings.hpp"

namespace slabwright::report {
namespace {

// Of a hundred; what is less likely is for --full.
constexpr double worth_showing_share = 0.03;
constexpr std::size_t most_rows = 6;

const ReadBack& back_of(const Reader& reader) { return *reader.answer.read_back; }

/// "33 %".
std::string share_words(double share) { return fmt::format("{:.0f} %", 100.0 * share); }

std::string of_hundred(double share) {
  const double hundred = std::round(100.0 * share);
  return hundred >= 100.0 ? "99" : hundred < 1.0 ? "<1" : fmt::format("{:.0f}", hundred);
}

double length_of(const Reader& reader, const Suspect& s) { return reader.answer.loops->loop[s.loop].length_m; }

/// A meter that sticks at nothing. Who reads nothing had better look for water first.
bool shows_nothing(const Suspect& s) { return s.cause == Cause::meter && s.size_share < 0.05; }

/// What is wrong with the loop, by its size: to follow the loop's name or "it".
std::string cause_words(const Reader& reader, const Suspect& s) {
  switch (s.cause) {
    case Cause::none: return "nothing is wrong";
    case Cause::longer:
    case Cause::shorter:
      return fmt::format("{} than drawn: about {}, not {}", s.cause == Cause::longer ? "longer" : "shorter",
                         reader(Kind::length, s.size_share * length_of(reader, s)),
                         reader(Kind::length, length_of(reader, s)));
    case Cause::restricted:
      return fmt::format("choked to {} of its flow: air, kink, valve partly shut", share_words(s.size_share));
    case Cause::stopped: return "all but stopped: air lock, shut valve or actuator, kink";
    case Cause::meter:
      if (shows_nothing(s)) return "its meter sticks: water flows, and it shows nothing";
      return fmt::format("its meter shows {} of what flows", share_words(s.size_share));
    case Cause::swapped: return "tubes or labels changed over";
  }
  return {};
}

/// A few words for one side of a test.
std::string short_words(const Reader& reader, const Suspect& s) {
  const std::string loop = "port " + port_words(reader, s.loop);
  switch (s.cause) {
    case Cause::none: return "nothing is wrong";
    case Cause::longer: return loop + "'s loop is longer";
    case Cause::shorter: return loop + "'s loop is shorter";
    case Cause::restricted: return loop + " is choked";
    case Cause::stopped: return loop + " stands still";
    case Cause::meter: return fmt::format("{}'s meter is wrong", loop);
    case Cause::swapped:
      return fmt::format("ports {} and {} are changed over", port_words(reader, s.loop), port_words(reader, s.other));
  }
  return {};
}

std::string place_words(const Reader& reader, const SuspectGroup& group) {
  if (group.group == CauseGroup::swapped)
    return fmt::format("ports {} and {}", port_words(reader, group.loop), port_words(reader, group.other));
  return "port " + port_words(reader, group.loop);
}

/// What follows a port's name in the verdict.
std::string verdict_words(const Reader& reader, const SuspectGroup& group) {
  switch (group.group) {
    case CauseGroup::reads_less: return "it shows less than it should";
    case CauseGroup::reads_more: return "it shows more than it should";
    case CauseGroup::longer: return "its loop is longer than drawn";
    case CauseGroup::shorter: return "its loop is shorter than drawn";
    case CauseGroup::restricted: return "it is choked";
    case CauseGroup::meter: return "its meter shows wrong";
    default: return cause_words(reader, group.member.front());
  }
}

/// Something is likelier than that all is well, though not by enough to be named.
bool may_be_ill(const ReadBack& back) {
  return back.healthy && back.ranked[1].probability_share > back.ranked[0].probability_share;
}

std::string verdict(const Reader& reader) {
  const ReadBack& back = back_of(reader);
  const SuspectGroup& first = back.ranked.front();
  const auto& loops = reader.answer.loops->loop;
  if (back.healthy) {
    return may_be_ill(back) ? "NOTHING SURE IS WRONG: what is off here, meters show by chance often enough."
                            : "NOTHING IS WRONG that these readings can show.";
  }
  std::string place = place_words(reader, first);
  for (char& c : place) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  const std::string names = first.group == CauseGroup::swapped
                                ? fmt::format("{} and {}", loops[first.loop].name, loops[first.other].name)
                                : loops[first.loop].name;
  return fmt::format("LOOK {}AT {} ({}): {}.{}", back.clear ? "" : "FIRST ", place, names, verdict_words(reader, first),
                     back.clear ? "" : " That is likely, not sure.");
}

bool chokes(const Suspect& s) { return s.cause == Cause::restricted || s.cause == Cause::stopped; }

/// Causes of a group that ask for the same work are one row, the likeliest's.
std::vector<Suspect> rows_of(const SuspectGroup& group) {
  std::vector<Suspect> rows;
  for (const Suspect& s : group.member) {
    const auto same = std::find_if(rows.begin(), rows.end(), [&](const Suspect& r) { return chokes(r) && chokes(s); });
    if (same != rows.end())
      same->probability_share += s.probability_share;
    else
      rows.push_back(s);
  }
  return rows;
}

/// What it may be, row by row, each with its odds.
void add_causes(Page& page, const Reader& reader) {
  const ReadBack& back = back_of(reader);
  if (back.healthy && !may_be_ill(back) && !reader.options.full) return;
  const double least = reader.options.full ? 0.005 : worth_showing_share;
  Table table{{{"of 100"}, left_column("where"), left_column("what it may be")}, {}, 2};
  for (const SuspectGroup& group : back.ranked) {
    std::string where = group.group == CauseGroup::healthy ? "" : place_words(reader, group);
    for (const Suspect& s : rows_of(group)) {
      if (s.probability_share < least && !table.rows.empty()) continue;
      if (!reader.options.full && table.rows.size() == most_rows) break;
      table.rows.push_back({of_hundred(s.probability_share), where, cause_words(reader, s)});
      where.clear();
    }
  }
  add_table(page, table);
}

std::string minutes(double seconds) {
  const int whole = static_cast<int>(std::lround(seconds));
  return fmt::format("{}:{:02d} min", whole / 60, whole % 60);
}

/// What a test shows under one of the two.
std::string shows(const Reader& reader, const NextTest& next, bool first) {
  const auto& degree = first ? next.first_return_degC : next.second_return_degC;
  const auto& front = first ? next.first_front_s : next.second_front_s;
  const auto& flows = first ? next.first_flow_m3_per_s : next.second_flow_m3_per_s;
  if (degree) return reader(Kind::fine_degree, *degree);
  if (front) return *front < 6 * hour_s ? minutes(*front) : "hours";
  return flows ? reader(Kind::flow, *flows) : std::string{};
}

void add_next_test(Page& page, const Reader& reader) {
  const ReadBack& back = back_of(reader);
  const NextTest& next = back.next;
  if (back.healthy && !may_be_ill(back) && !reader.options.full) return;
  const std::string port = "port " + port_words(reader, next.loop);
  std::string how;
  switch (next.kind) {
    case TestKind::none: return;
    case TestKind::returns: how = fmt::format("hold a thermometer to the return of {}", port); break;
    case TestKind::front:
      how = fmt::format("let the loop of {} go cold, send warm water in, and time until its return gets warm", port);
      break;
    case TestKind::bucket: how = fmt::format("measure what {} really carries, with a bucket and a watch", port); break;
    case TestKind::open_ports:
      how = fmt::format("open every port fully and read all meters again; look at {}", port);
      break;
    case TestKind::read_again:
      how = fmt::format("read all meters four times more and take the means; {} tells most", port);
      break;
  }
  add_text(page,
           fmt::format("To part them: {}. About {}: {}. About {}: {}.{}", how, shows(reader, next, true),
                       short_words(reader, next.first), shows(reader, next, false), short_words(reader, next.second),
                       next.apart_number < 2.0 ? " (Not a sharp test; there is no better one.)" : ""));
}

void add_what_then(Page& page, const Reader& reader) {
  const ReadBack& back = back_of(reader);
  const Suspect& first = back.ranked.front().member.front();
  const std::string port = port_words(reader, first.loop);
  if (back.healthy) {
    add_text(page, "Set the manifold as planned: \"then set\" below, move by move without readings.");
  } else if (chokes(first)) {
    add_text(page, fmt::format("If it is choked, CLEAR PORT {} FIRST: shut the others, purge it alone, open its valve "
                               "and actuator, look for a kink. Then read again. Do not set round it.",
                               port));
  } else if (shows_nothing(first)) {
    add_text(page,
             fmt::format("CLEAR PORT {0} FIRST all the same: shut the others, open its valve and actuator, purge it "
                         "alone. If its return then warms, only its meter sticks: set it by its turns.",
                         port));
  } else if (first.cause == Cause::meter) {
    add_text(page, fmt::format("If only the meter of port {} is wrong, set all ports as planned and set this one by "
                               "its turns.",
                               port));
  } else if (first.cause == Cause::swapped) {
    add_text(page, "If they are changed over, mend the labels and the file; \"then set\" below has them so.");
  } else {
    add_text(page, "If its length is so, mend the file; \"then set\" below has it so.");
  }
}

/// Settings that are worth making now; none where something must be cleared before.
const Balance* settings_of(const Reader& reader) {
  const ReadBack& back = back_of(reader);
  if (!back.settings || (chokes(back.ranked.front().member.front()) && !reader.options.full)) return nullptr;
  return &*back.settings;
}

/// "-27 %", "0 %".
std::string heat_off(const PortSetting& port, double flow_m3_per_s) {
  const long hundredths = std::lround(100.0 * (heat_share_at(port, flow_m3_per_s).value_or(1.0) - 1.0));
  return hundredths == 0 ? "0 %" : fmt::format("{:+} %", hundredths);
}

bool knows_heat(const Reader& reader) {
  const auto& port = reader.answer.balance->port.front();
  return heat_share_at(port, port.aim_m3_per_s).has_value();
}

/// What a port aims for: with the cause in it, where settings are made for that.
const PortSetting& aims_of(const Reader& reader, std::size_t i) {
  const Balance* settings = settings_of(reader);
  return settings ? settings->port[i] : reader.answer.balance->port[i];
}

std::vector<std::string> port_row(const Reader& reader, std::size_t i) {
  const ReadBack& back = back_of(reader);
  const PortSetting& port = aims_of(reader, i);
  const auto& read = reader.answer.meters->readings.port[i].flow_m3_per_s;
  std::vector<std::string> row{port_words(reader, i),
                               port.loop,
                               read ? flow(reader, *read) : "-",
                               flow(reader, back.healthy_m3_per_s[i]),
                               flow(reader, back.flow_m3_per_s[i]),
                               flow(reader, port.aim_m3_per_s),
                               flow(reader, port.least_m3_per_s) + " to " + flow(reader, port.most_m3_per_s)};
  if (knows_heat(reader)) row.push_back(heat_off(port, back.flow_m3_per_s[i]));
  if (settings_of(reader)) row.push_back(port.open ? "open" : bare(Kind::turns, port.set_turns, reader.system()));
  return row;
}

void add_read_ports(Page& page, const Reader& reader) {
  const bool heat = knows_heat(reader), settings = settings_of(reader) != nullptr;
  const std::string as = back_of(reader).healthy ? "likely" : "if so";
  Table table{{{"port"}, left_column("goes to"), {"read"}, {"as drawn"}, {as}, {"aim"}, {"good enough"}}, {}, 1};
  if (heat) table.columns.push_back({"heat"});
  if (settings) table.columns.push_back({"then set"});
  const std::size_t all = reader.answer.balance->port.size();
  const std::size_t shown = reader.options.full ? all : std::min(all, most_ports);
  for (std::size_t i = 0; i < shown; ++i) table.rows.push_back(port_row(reader, i));
  add_table(page, table);
  if (shown < all) add_text(page, and_more(all - shown), "  ");
  add_text(page, fmt::format("Flows in {}.{}{}", unit(Kind::flow, reader.system()),
                             heat ? " Heat: what the loop gives at the flow it likely has, against its aim." : "",
                             settings ? " Turns are counted from shut." : ""));
}

void add_held_against(Page& page, const Reader& reader) {
  const MetersRead& meters = *reader.answer.meters;
  add_text(page, fmt::format("Held against: {}, water at {} in the loops, meters true to {}{}.",
                             meters.turns.empty() ? "all ports wide open" : "ports set as listed",
                             reader(Kind::degree, meters.readings.water_degC),
                             reader(Kind::share, meters.readings.meter_error_share),
                             reader.design().pump.points.empty() ? ", a pump of our guess" : ""));
}

}  // namespace

void add_said_of_readings(Page& page, const Reader& reader) {
  // These stand in the verdict, in the tables, or below them.
  constexpr std::string_view told[] = {"readings.verdict", "readings.likely", "readings.length-untold"};
  for (const Diagnostic& d : reader.answer.said) {
    if (d.code.compare(0, 9, "readings.") != 0 || std::find(std::begin(told), std::end(told), d.code) != std::end(told))
      continue;
    add_text(page, sentence(d, reader.system()));
  }
  for (const Diagnostic& d : reader.answer.verdict.reasons) {
    if (d.severity == Severity::failure) add_text(page, sentence(d, reader.system()));
  }
}

void add_readings(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  add_first_line(page, reader,
                 fmt::format("what the meters say   {}, {} tube", several(answer.loops->loop.size(), "loop"),
                             reader.design().tube.size.name));
  if (answer.fitted) return add_fitted(page, reader);
  add_text(page, verdict(reader));
  add_blank(page);
  add_causes(page, reader);
  add_next_test(page, reader);
  add_what_then(page, reader);
  add_blank(page);
  add_read_ports(page, reader);
  add_held_against(page, reader);
  add_said_of_readings(page, reader);
  add_lacking(page, reader);
  if (reader.options.full) add_full(page, reader);
  add_end(page, reader, "balance");
}

}  // namespace slabwright::report
