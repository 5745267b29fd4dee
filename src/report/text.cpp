// What every text report has: its first line, the verdict's reasons, what would sharpen it, the end.
#include "report/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "slabwright/contract.hpp"

namespace slabwright {
namespace report {
namespace {

constexpr std::size_t most_name = 24;

/// "36 x 30 ft", "1,080 ft2", or nothing where no floor is known.
std::string floor_words(const Reader& reader) {
  const Slab& slab = reader.design().slab;
  const System system = reader.system();
  if (slab.size) {
    const std::string depth = reader(Kind::length, slab.size->depth_m);
    return fmt::format("{} x {}", spoken(Kind::length, slab.size->width_m, system), depth);
  }
  const double area_m2 = floor_shape(slab).area_m2;
  return area_m2 > 0.0 ? reader(Kind::area, area_m2) : std::string{};
}

std::string slab_words(const Reader& reader) {
  const std::string floor = floor_words(reader);
  const std::string tube = fmt::format("{} tube every {}", reader.design().tube.size.name,
                                       reader(Kind::short_length, reader.design().tube.spacing_m));
  // A manifold balanced by its lengths alone has no floor to speak of.
  if (floor.empty()) return reader.design().tube.size.name + " tube";
  return fmt::format("{}, {} slab, {}", floor, reader(Kind::short_length, reader.design().slab.thickness_m), tube);
}

std::string shown_name(const Reader& reader) {
  const std::string name = ascii(reader.design().project.name);
  if (name.empty()) return "YOUR SHOP";
  return upper(name.size() <= most_name ? name : name.substr(0, most_name - 3) + "...");
}

/// A word as a shell takes it.
std::string in_quotes(const std::string& word) {
  return word.find(' ') == std::string::npos ? word : fmt::format("\"{}\"", word);
}

/// "slabwright freeze my-shop.toml --edge R-10", or the options alone.
std::string command_words(const Reader& reader, const std::string& command, const std::string& option) {
  std::string words = "slabwright " + command;
  for (const std::string& part : {in_quotes(reader.options.file_name), reader.options.command, option}) {
    if (!part.empty()) words += " " + part;
  }
  return words;
}

/// A command longer than the page goes on in the next line, as a shell takes it.
void add_command(Page& page, const std::string& lead, const std::string& command) {
  constexpr std::size_t for_backslash = 2;
  const std::vector<std::string> parts = wrapped(ascii(command), page_width - lead.size() - for_backslash);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const std::string before = i == 0 ? lead : std::string(lead.size(), ' ');
    page.lines.push_back(before + parts[i] + (i + 1 < parts.size() ? " \\" : ""));
  }
}

/// What a guess moves, or nothing where that is less than is printed.
std::string moved(const Reader& reader, Kind kind, double si, double least_si) {
  return si < least_si ? std::string{} : reader(kind, si);
}

/// A quantity of a stage's sentence as the rest of the report prints it.
std::string in_sentence(const Measured& measured, System system) {
  const double si = measured.si;
  switch (measured.dimension) {
    case Dimension::power: return figure(Kind::heat, si, system);
    case Dimension::degree: return figure(Kind::degree, si, system);
    case Dimension::flow: return figure(Kind::flow, si, system);
    case Dimension::length: return figure(std::abs(si) < 1.0 ? Kind::short_length : Kind::length, si, system);
    default: break;
  }
  expects(std::isfinite(si), "report: a sentence about what is not a finite number");
  return show(si, measured.dimension, system);
}

/// As it stands in a design file: a list by its items.
std::string as_typed(const std::string& text) {
  std::string typed = "\"";
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool parted = text.compare(i, 2, "; ") == 0;
    typed += parted ? "\", \"" : std::string(1, text[i]);
    i += parted ? 1 : 0;
  }
  typed += "\"";
  return text.find("; ") == std::string::npos ? typed : "[" + typed + "]";
}

Page begun(const Reader& reader) {
  Page page;
  switch (reader.answer.wishes.question) {
    case Question::check: add_check(page, reader); break;
    case Question::design: add_design(page, reader); break;
    case Question::route: add_route(page, reader); break;
    case Question::balance: add_balance(page, reader); break;
    case Question::freeze: add_freeze(page, reader); break;
    case Question::winter: add_winter(page, reader); break;
    case Question::drill: add_drill(page, reader); break;
    case Question::sheets: add_sheets(page, reader); break;
    case Question::cure: add_cure(page, reader); break;
  }
  return page;
}

}  // namespace

std::string flow(const Reader& reader, double m3_per_s) { return bare(Kind::flow, m3_per_s, reader.system()); }

std::string upper(std::string text) {
  for (char& c : text) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return text;
}

std::string and_more(std::size_t left_out, std::string_view one) {
  return fmt::format("and {} more: add --full", one.empty() ? std::to_string(left_out) : several(left_out, one));
}

std::string sentence(const std::string& text) {
  std::string out = text;
  if (out.empty()) return out;
  out[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(out[0])));
  if (const char last = out.back(); last != '.' && last != '?' && last != '!') out += '.';
  return out;
}

std::string sentence(const Diagnostic& said, System system) {
  Diagnostic shown = said;
  for (auto& part : shown.parts) {
    if (const auto* measured = std::get_if<Measured>(&part)) part = in_sentence(*measured, system);
  }
  return sentence(say(shown, system));
}

/// "; tried: valve.turns, valve.shape"; the first few of many, where not all is asked for.
std::string tried_words(const std::vector<std::string>& paths, bool full) {
  const std::size_t most_named = full ? paths.size() : 4;
  std::string text;
  for (std::size_t i = 0; i < std::min(most_named, paths.size()); ++i) text += (i == 0 ? "; tried: " : ", ") + paths[i];
  return paths.size() > most_named ? fmt::format("{} and {} more", text, paths.size() - most_named) : text;
}

std::string with_remedy(const Reader& reader, const Diagnostic& said) {
  const Answer& answer = reader.answer;
  const std::string text = sentence(said, answer.file.design.units);
  for (const Remedy& one : answer.remedy) {
    if (one.code != said.code || one.about != said.about) continue;
    if (one.on_paper)
      return fmt::format("{} No single change that was tried ends this; the sums would need {} = {}.", text, one.path,
                         as_typed(one.text));
    if (!one.path.empty()) return fmt::format("{} Tried: {} = {} ends this.", text, one.path, as_typed(one.text));
    return fmt::format("{} No single change was found that ends this{}.", text,
                       tried_words(one.tried, reader.options.full));
  }
  return text;
}

void add_first_line(Page& page, const Reader& reader, const std::string& topic) {
  std::string line = shown_name(reader);
  std::vector<std::string> rest{topic.empty() ? slab_words(reader) : topic};
  const std::string& path = reader.options.file_name;
  const std::string file = path.substr(path.find_last_of("/\\") + 1);
  if (!file.empty()) rest.push_back(fmt::format("({})", ascii(file)));
  for (const std::string& part : rest) {
    if (line.size() + 3 + part.size() <= page_width) line += "   " + part;
  }
  page.lines.push_back(line);
  add_blank(page);
}

std::string counts(const Reader& reader) {
  const std::size_t yours = given_read(reader.answer), guesses = guesses_read(reader.answer).size();
  if (guesses == 0) return fmt::format("All {} are yours.", several(yours, "value"));
  const auto are = [](std::size_t n) { return n == 1 ? "is" : "are"; };
  return fmt::format("{} {} yours, {} {} our {}. ~ leans on a guess.", several(yours, "value"), are(yours), guesses,
                     are(guesses), guesses == 1 ? "guess" : "guesses");
}

void add_reasons(Page& page, const Reader& reader, const std::vector<Diagnostic>& reasons, std::size_t most) {
  std::size_t end = page.lines.size() + most;
  const auto reason = [&](std::size_t i, bool remedied) {
    Page one;
    const std::string text = remedied ? with_remedy(reader, reasons[i]) : sentence(reasons[i], reader.system());
    add_text(one, text, fmt::format("({}) ", i + 1));
    return one.lines;
  };
  // What is wrong goes before what would mend it: remedies stand where they push no reason off the page. Only the first
  // stands there with its own in any case: somebody must begin somewhere.
  std::size_t used = 0;
  for (std::size_t i = 0; i < reasons.size(); ++i) used += reason(i, false).size();
  for (std::size_t i = 0; i < reasons.size(); ++i) {
    const std::size_t more = reason(i, true).size() - reason(i, false).size();
    const bool remedied = reader.options.full || i == 0 || used + more <= most;
    if (remedied) used += more;
    if (i == 0) end += more;
    const std::vector<std::string> lines = reason(i, remedied);
    const std::size_t for_count = i + 1 < reasons.size() ? 1 : 0;
    if (i > 0 && !reader.options.full && page.lines.size() + lines.size() + for_count > end) {
      return add_text(page, and_more(reasons.size() - i), "    ");
    }
    page.lines.insert(page.lines.end(), lines.begin(), lines.end());
  }
}

void add_lacking(Page& page, const Reader& reader) {
  for (const std::string& line : reader.answer.lacking) add_text(page, line);
}

void add_sharpen(Page& page, const Reader& reader, const std::string& heading) {
  constexpr std::size_t most_guesses = 3;
  constexpr double least_boiler_W = 50.0, least_hold_K = 0.1;
  Table table{{left_column(heading), left_column("our guess"), {"moves boiler"}, {"frost hold"}}, {}, 0};
  for (const Sensitivity& guess : reader.answer.sensitivity) {
    const std::string boiler = moved(reader, Kind::boiler, guess.boiler_W, least_boiler_W);
    const std::string hold = moved(reader, Kind::rise, guess.hold_K.value_or(0.0), least_hold_K);
    if ((boiler.empty() && hold.empty()) || table.rows.size() == most_guesses) continue;
    table.rows.push_back({guess.path, guess.guess, boiler, hold});
  }
  if (!table.rows.empty()) add_table(page, table);
}

void add_notes(Page& page, const Reader& reader, std::string_view stage) {
  constexpr std::size_t for_the_end = 5;
  for (const Diagnostic& said : reader.answer.said) {
    if (said.severity != Severity::note || said.code.substr(0, stage.size()) != stage) continue;
    Page one;
    add_text(one, sentence(said, reader.system()));
    if (!reader.options.full && page.lines.size() + one.lines.size() + for_the_end > most_lines) continue;
    page.lines.insert(page.lines.end(), one.lines.begin(), one.lines.end());
  }
}

void add_end(Page& page, const Reader& reader, const std::string& next_command, const std::string& option) {
  add_gap(page);
  const std::vector<std::string> all = cautions(reader.answer);
  const std::size_t shown = reader.options.full ? all.size() : std::min<std::size_t>(1, all.size());
  for (std::size_t i = 0; i < shown; ++i) add_text(page, all[i]);
  const std::string lead = "Next:  ", command = command_words(reader, next_command, option);
  const std::string more = reader.options.full ? "" : "      all figures:  add --full";
  if (lead.size() + command.size() + more.size() <= page_width) {
    page.lines.push_back(lead + ascii(command) + more);
    return;
  }
  add_command(page, lead, command);
  if (!more.empty()) page.lines.emplace_back("All figures:  add --full");
}

std::string boiler_words(BoilerKind kind) { return kind == BoilerKind::tank_heater ? "tank heater" : "boiler"; }

std::string keeps_to(const Reader& reader, double degC, Figure leaning) {
  // Colder than any weather that a design file may name for its coldest hour.
  constexpr double beyond_us_degC = -60.0 * 5.0 / 9.0 - 160.0 / 9.0, beyond_si_degC = -50.0;
  const double beyond_degC = reader.system() == System::us ? beyond_us_degC : beyond_si_degC;
  if (degC >= beyond_degC) return "down to " + reader(Kind::degree, degC, leaning);
  return "even below " + reader(Kind::degree, beyond_degC);
}

}  // namespace report

std::string text_of(const Answer& answer, const ReportOptions& options) {
  report::Page page = report::begun({answer, options});
  return report::text_of(page);
}

}  // namespace slabwright
