#include "app/request.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <map>

namespace slabwright::app {
namespace {

constexpr std::array<ShortOption, 17> options{{
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

/// "188 241 262 290 ft" as one override for each loop; the last word or two are the unit.
std::vector<Override> lengths(const std::string& text) {
  std::vector<std::string> numbers;
  std::string unit, word;
  for (const char c : text + " ") {
    if (c != ' ' && c != ',') {
      word += c;
      continue;
    }
    if (word.empty()) continue;
    (read_number(word) ? numbers.emplace_back(word) : (unit += unit.empty() ? word : " " + word));
    word.clear();
  }
  std::vector<Override> all;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    all.push_back({fmt::format("loop[{}].length", i + 1), numbers[i] + (unit.empty() ? "" : " " + unit), "--lengths"});
  }
  if (numbers.empty()) all.push_back({"loop[1].length", text, "--lengths"});
  return all;
}

/// "path=text" of --set.
Override set_one(const std::string& text) {
  const std::size_t equals = text.find('=');
  if (equals == std::string::npos) return {text, "", "--set"};
  return {text.substr(0, equals), text.substr(equals + 1), "--set"};
}

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

struct Flags {
  std::map<std::string, std::string> text;  // option -> value
  std::vector<std::string> sets;
  std::string lengths;
};

/// Options that only one command takes, each with a value behind it, and what to write there.
struct OwnOption {
  std::string_view command, name, example;
};
constexpr OwnOption own_options[] = {
    {"drill", "--at", PlanPlace::example},
    {"drill", "--diameter", "1/2 in"},
    {"drill", "--depth", "3 in"},
    {"drill", "--tolerance", "1 1/2 in"},
    {"drill", "--may-move", "3 in"},
    {"drill", "--found", "found.txt"},
    {"balance", "--readings", "meters.csv"},
    {"balance", "--read", "0.73 0.64 - 0.57"},
    {"balance", "--water", "95 F"},
    {"balance", "--room", "58 F"},
    {"balance", "--meter-error", "10 %"},
    {"cure", "--poured", Date::example},
    {"sheets", "--poured", Date::example},
    {"gauge", "--then", "60 psi at 70 F"},
    {"gauge", "--now", "53 psi at 20 F"},
    {"gauge", "--test", "air"},
    {"gauge", "--gauge-error", "1 psi"},
    {"gauge", "--thermometer-error", "2 F"},
    {"gauge", "--altitude", "5,300 ft"},
    {"gauge", "--after", "16 h"},
};

/// The pressure test asks for nothing of a design.
void declare_gauge(CLI::App& app, Request& request) {
  app.set_help_flag();
  app.add_flag("--help,-h", request.help);
  app.add_flag("--json", request.json);
  for (const auto& [command, name, example] : own_options)
    if (command == "gauge") app.add_option(std::string(name), request.gauge[std::string(name)]);
  app.allow_extras();
}

void declare(CLI::App& app, Request& request, Flags& flags) {
  app.set_help_flag();
  app.add_flag("--help,-h", request.help);
  app.add_flag("--full", request.full);
  app.add_flag("--json", request.json);
  if (request.command == "freeze") app.add_flag("--explain", request.explain);
  if (request.command == "freeze" || request.command == "winter" || request.command == "sheets")
    app.add_flag("--quick", request.quick);
  if (request.command == "winter") app.add_flag("--wide", request.wide);
  if (request.command == "route") app.add_flag("--better-place", request.better_place);
  if (request.command == "drill") {
    app.add_option("--at", request.at);
    app.add_option("--diameter", request.diameter);
    app.add_option("--depth", request.depth);
    app.add_option("--tolerance", request.tolerance);
    app.add_option("--may-move", request.may_move);
    app.add_option("--found", request.found);
  }
  if (request.command == "balance") {
    app.add_option("--readings", request.readings);
    app.add_option("--read", request.read);
    app.add_option("--water", request.water);
    app.add_option("--room", request.room);
    app.add_option("--meter-error", request.meter_error);
  }
  app.add_option("--out", request.out);
  app.add_option("--lengths", flags.lengths);
  app.add_option("--set", flags.sets)->allow_extra_args(false)->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  for (const ShortOption& option : options)
    app.add_option(std::string(option.name), flags.text[std::string(option.name)]);
  app.add_option("file", request.file);
  app.allow_extras();
}

std::string unexpected(const std::string& command, const std::string& word) {
  if (word.rfind("-", 0) == 0) {
    std::vector<std::string_view> names;
    for (const OwnOption& own : own_options)
      if (own.command == command) names.push_back(own.name);
    for (const ShortOption& option : options)
      if (command != "gauge") names.push_back(option.name);
    return fmt::format("no option {}; did you mean {}?", word,
                       nearest(names, word, [](std::string_view name) { return name; }));
  }
  if (command == "gauge")
    return fmt::format("gauge takes no file: the two readings say it all. \"{}\" is one word too many.", word);
  return fmt::format("\"{}\" is one word too many. A value with spaces stands in quotes: --size \"36 x 30 ft\".", word);
}

bool is_own(const std::string& command, const std::string& word) {
  const std::string_view name = std::string_view(word).substr(0, word.find('='));
  return std::any_of(std::begin(own_options), std::end(own_options),
                     [&](const OwnOption& option) { return option.command == command && option.name == name; });
}

/// Quotes with nothing between them are not the same as no option: nobody asks about nowhere.
std::string empty_own_option(const CLI::App& app, const std::string& asked) {
  for (const auto& [command, name, example] : own_options) {
    if (command != asked) continue;
    const CLI::Option* option = app.get_option_no_throw(std::string(name));
    if (!option || option->count() == 0 || !option->results().front().empty()) continue;
    return fmt::format("{0} has nothing between its quotes. Write {0} \"{1}\".", name, example);
  }
  return {};
}

/// A day after --poured where the number of loops is meant.
std::string day_for_loops(const Request& request, const Flags& flags) {
  const auto poured = flags.text.find("--poured");
  const bool by_day = request.command == "cure" || request.command == "sheets";
  Date day;
  if (poured == flags.text.end() || by_day || !read_words(poured->second, day).empty()) return {};
  return fmt::format(
      "--poured takes the number of loops here: --poured 5. The day of the pour goes to cure and sheets, or into the "
      "file: [project] poured = \"{}\".",
      poured->second);
}

/// Options as typed, quoted where they must be, for the next command.
void keep_typed(std::span<const std::string> words, Request& request) {
  bool value_of_own = false;
  for (const std::string& word : words.subspan(1)) {
    const bool own = value_of_own || is_own(request.command, word);
    value_of_own = own && !value_of_own && word.find('=') == std::string::npos;
    if (!own && (word == request.file || word == "--full" || word == "--json" || word == "--explain" ||
                 word == "--better-place"))
      continue;
    const std::string typed = word.find(' ') == std::string::npos ? word : fmt::format("\"{}\"", word);
    (own ? request.asked_words : request.words).push_back(typed);
  }
}

}  // namespace

std::vector<ShortOption> short_options(std::string_view command) {
  std::vector<ShortOption> all(options.begin(), options.end());
  if (command != "cure" && command != "sheets") return all;
  for (ShortOption& option : all)
    if (option.name == "--poured") option = {"--poured", "project.poured", Date::example, "the day of the pour"};
  return all;
}
std::span<const Command> commands() { return all_commands; }

Parsed parse(std::span<const std::string> words) {
  Parsed parsed;
  Request& request = parsed.request;
  request.command = words.front();
  const auto known = std::find_if(all_commands.begin(), all_commands.end(),
                                  [&](const Command& c) { return c.name == request.command; });
  if (known == all_commands.end()) {
    parsed.problem = fmt::format("no command \"{}\"; did you mean \"{}\"?", request.command,
                                 nearest(all_commands, request.command, [](const Command& c) { return c.name; }));
    return parsed;
  }
  CLI::App app;
  Flags flags;
  if (request.command == "gauge")
    declare_gauge(app, request);
  else
    declare(app, request, flags);
  try {
    std::vector<std::string> reversed(words.rbegin(), words.rend() - 1);
    app.parse(reversed);
  } catch (const CLI::ParseError& error) {
    const std::string name = std::string(error.what()).substr(0, std::string(error.what()).find_first_of(": "));
    parsed.problem = fmt::format("{} needs a value after it, in quotes where it has spaces.", name);
    return parsed;
  }
  if (const auto extra = app.remaining(); !extra.empty()) {
    parsed.problem = unexpected(request.command, extra.front());
    return parsed;
  }
  parsed.problem = empty_own_option(app, request.command);
  if (parsed.problem.empty() && !request.readings.empty() && !request.read.empty())
    parsed.problem = "--readings names a file and --read gives the flows themselves: write one of them.";
  const bool beside = !(request.water + request.room + request.meter_error).empty();
  if (parsed.problem.empty() && beside && request.readings.empty() && request.read.empty())
    parsed.problem = "--water, --room and --meter-error go with readings: add --read \"0.73 0.64 - 0.57\".";
  if (parsed.problem.empty()) parsed.problem = day_for_loops(request, flags);
  if (!parsed.problem.empty() || request.command == "gauge") return parsed;
  for (const ShortOption& option : short_options(request.command)) {
    const std::string& text = flags.text[std::string(option.name)];
    if (app.count(std::string(option.name))) {
      request.overrides.push_back({std::string(option.path), text, std::string(option.name)});
    }
  }
  if (app.count("--lengths")) {
    for (Override& one : lengths(flags.lengths)) request.overrides.push_back(std::move(one));
  }
  for (const std::string& text : flags.sets) request.overrides.push_back(set_one(text));
  keep_typed(words, request);
  return parsed;
}

}  // namespace slabwright::app
