// Every command and option with what is said about it.
#include "slabwright/asking_options.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "slabwright/design.hpp"

namespace slabwright {
namespace {

constexpr std::array<ShortOption, 17> key_options{{
    {"--size", "slab.size", "36 x 30 ft", "inside size of the slab"},
    {"--area", "slab.area", "1,080 ft2", "floor area, where the size is not known"},
    {"--thickness", "slab.thickness", "5 in", "depth of concrete"},
    {"--foam", "insulation.under", "R-10", "foam under the slab, or \"none\""},
    {"--edge", "edge.insulation", "R-10", "board outside the slab's edge, or \"none\""},
    {"--door", "edge.door_strip", "R-10", "foam across the slab under the big door, or \"none\""},
    {"--tube", "tube.size", "1/2 in", "tube by its trade size"},
    {"--spacing", "tube.spacing", "12 in", "from tube to tube"},
    {"--leader", "tube.leader", "10 ft", "run to the manifold, each way"},
    {"--poured", "manifold[1].loops", "5", "already poured: how many loops leave the manifold"},
    {"--outdoor", "climate.outdoor", "-12 F", "the coldest weather to plan for"},
    {"--coldest", "climate.coldest", "-24 F", "the coldest hour in 20 years"},
    {"--indoor", "climate.indoor", "60 F", "temperature wanted inside"},
    {"--building", "building.quality", "usual", "tight, usual or poor"},
    {"--boiler", "boiler.power", "9 kW", "power of the boiler, where it is bought already"},
    {"--flow", "pump.flow", "2.5 gpm", "total flow to aim for"},
    {"--units", "units", "US", "US or SI: what is printed"},
}};

constexpr std::array<Command, 11> all_commands{{
    {"new", "make the file"},
    {"check", "read it, compute nothing but what matters most"},
    {"design", "everything at once"},
    {"route", "the loops as lines to lay"},
    {"balance", "set the manifold"},
    {"freeze", "lowest setting at which nothing freezes"},
    {"winter", "what each way of running the winter costs"},
    {"drill", "may I drill here?"},
    {"gauge", "is the pressure test leaking?"},
    {"cure", "when heat may come on after the pour"},
    {"sheets", "pages to print, one for each reader"},
}};

constexpr std::string_view out_heading = "What comes out",
                           hole_heading = "Which hole (without --at: the anchors of the file)",
                           meters_heading = "What the meters show (then: which loop is odd, and why)",
                           gauge_heading = "The two readings, each a gauge's pressure at the temperature of the tube";

// Headings come in this order, and options in theirs below them.
constexpr OptionWords all_options[] = {
    {"", key_heading, "--lengths", "188 241 ft", "loops by their lengths, leaders included"},
    {"", key_heading, "--set", "key=\"text\"", "any key: --set ground.conductivity=\"2.0 W/mK\""},

    {"drill", hole_heading, "--at", PlanPlace::example, "the place, or its \"x, y\""},
    {"drill", hole_heading, "--diameter", "1/2 in", "of the hole"},
    {"drill", hole_heading, "--depth", "3 in", "of the hole"},
    {"drill", hole_heading, "--tolerance", "1.5 in", "19 of 20 places of tube lie so near to the drawing"},
    {"drill", hole_heading, "--may-move", "6 in", "how far each way a machine may be moved"},
    {"drill", hole_heading, "--found", "FILE",
     "places where tube was found, each on a line like --at; behind a semicolon the same spot as drawn, if known"},

    {"balance", meters_heading, "--read", "0.73 0.64 - 0.57",
     "flows port by port, - where none was read, in the file's unit or with one: \"... gpm\"; or \"3: 0.2\" of some"},
    {"balance", meters_heading, "--readings", "FILE",
     "a table (CSV): loop or port, flow (gpm), and what you have of supply (F), return (F), front (min), turns, "
     "room (F)"},
    {"balance", meters_heading, "--water", "95 F", "in the loops, where no temperatures were read"},
    {"balance", meters_heading, "--room", "50 F", "air in the shop while it was read"},
    {"balance", meters_heading, "--meter-error", "10 %", "how far the meters may be off"},

    {"gauge", gauge_heading, "--then", "60 psi at 70 F", "the first"},
    {"gauge", gauge_heading, "--now", "53 psi at 20 F", "the one now"},
    {"gauge", gauge_heading, "--after", "16 h", "from the first to the one now"},
    {"gauge", gauge_heading, "--test", "air", "what the tube is filled with: air or water"},
    {"gauge", gauge_heading, "--gauge-error", "1 psi",
     "how far one reading may be off; 2 % of a usual scale when absent"},
    {"gauge", gauge_heading, "--thermometer-error", "2 F", "the same of a temperature; 1 K when absent"},
    {"gauge", gauge_heading, "--altitude", "5,300 ft", "of the place, over the sea"},

    {"check design route balance freeze winter drill cure sheets", out_heading, "--full", "",
     "every figure, not the short answer", true},
    {"check design route balance freeze winter drill gauge cure sheets", out_heading, "--json", "",
     "the whole answer for a program", true},
    {"check design route balance freeze winter drill cure", out_heading, "--out", "DIR",
     "tables as CSV files in DIR: loops, balance; of freeze also power cuts and ways back to work; of winter every "
     "way, "
     "and the best one hour by hour",
     true},
    {"sheets", out_heading, "--out", "DIR", "the pages, and the tables as CSV files, in DIR", true},
    {"route", out_heading, "--better-place", "",
     "look for a place along the walls where a manifold would serve the floor better; it takes a few times as long"},
    {"freeze", out_heading, "--explain", "", "why this setting: the arithmetic of the place that decides", true},
    {"freeze", out_heading, "--quick", "",
     "leave out what nobody can know (soil, air leaks, wet or crushed foam, where the tubes lie, a sensor's error both "
     "ways): no bands, and settings that are the best figures and the sensor's error"},
    {"winter", out_heading, "--quick", "",
     "leave out what nobody can know, hard winters, changes of the shop and the search for better settings: only the "
     "ways themselves"},
    {"winter", out_heading, "--wide", "", "search among 420 settings, not 96; it takes a second or two more"},
    {"sheets", out_heading, "--quick", "", "leave out what nobody can know, and the search for better settings"},
};

std::size_t edits(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t corner = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t kept = corner + (a[i - 1] == b[j - 1] ? 0 : 1);
      corner = row[j];
      row[j] = std::min({kept, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row[b.size()];
}

template <class Words, class Name>
std::string_view nearest(const Words& words, std::string_view typed, Name name) {
  return name(*std::min_element(words.begin(), words.end(), [&](const auto& a, const auto& b) {
    return edits(name(a), typed) < edits(name(b), typed);
  }));
}

}  // namespace

std::span<const Command> commands() { return all_commands; }
std::span<const OptionWords> option_words() { return all_options; }

bool takes(std::string_view command, const OptionWords& option) {
  if (option.commands.empty()) return command != "gauge";
  const std::string listed = " " + std::string(option.commands) + " ";
  return listed.find(" " + std::string(command) + " ") != std::string::npos;
}

std::string in_shell_quotes(std::string_view value) {
  const bool bare = value.empty() || value == "FILE" || value == "DIR" || value.find('"') != std::string_view::npos;
  return bare ? std::string(value) : fmt::format("\"{}\"", value);
}

bool takes_the_day(std::string_view command) { return command == "cure" || command == "sheets"; }

std::vector<ShortOption> short_options(std::string_view command) {
  if (command == "gauge") return {};
  std::vector<ShortOption> all(key_options.begin(), key_options.end());
  if (!takes_the_day(command)) return all;
  for (ShortOption& option : all)
    if (option.name == "--poured") option = {"--poured", "project.poured", Date::example, "the day of the pour"};
  return all;
}

const OptionWords* own_option(std::string_view command, std::string_view name) {
  const auto found = std::find_if(std::begin(all_options), std::end(all_options), [&](const OptionWords& option) {
    return option.name == name && !option.commands.empty() && !option.prints && takes(command, option);
  });
  return found == std::end(all_options) ? nullptr : found;
}

std::string no_command(std::string_view typed) {
  return fmt::format("no command \"{}\"; did you mean \"{}\"?", typed,
                     nearest(all_commands, typed, [](const Command& c) { return c.name; }));
}

std::string no_option(std::string_view command, std::string_view typed, bool prints) {
  std::vector<std::string_view> names;
  if (prints) names.push_back("--help");
  for (const OptionWords& option : all_options)
    if (takes(command, option) && (prints || !option.prints)) names.push_back(option.name);
  for (const ShortOption& option : short_options(command)) names.push_back(option.name);
  return fmt::format("no option {}; did you mean {}?", typed,
                     nearest(names, typed, [](std::string_view name) { return name; }));
}

}  // namespace slabwright
