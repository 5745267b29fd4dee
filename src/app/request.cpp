// The words of a command line as a request, and the options that its parser knows.
#include "app/request.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <map>

#include "app/options.hpp"

namespace slabwright::app {
namespace {

/// What the parser writes into.
struct Declared {
  TypedOptions typed;
  std::map<std::string, bool> switches;
};

/// Said of an option as the help shows it.
void describe(CLI::Option& option, std::string_view heading, std::string_view value, std::string_view meaning) {
  option.description(std::string(meaning))->group(std::string(heading));
  if (!value.empty()) option.type_name(std::string(value));
}

void declare_one(CLI::App& app, const OptionWords& words, Declared& into) {
  const std::string name(words.name);
  CLI::Option* option = words.value.empty() ? app.add_flag(name, into.switches[name])
                        : name == "--set"   ? app.add_option(name, into.typed.set)
                                            : app.add_option(name, into.typed.text[name]);
  describe(*option, words.heading, words.value, words.meaning);
}

/// Help and the file go into the request.
void declare(CLI::App& app, Request& request, Declared& into) {
  app.set_help_flag();
  app.add_flag("--help,-h", request.help, "says what the command takes")->group("");
  for (const ShortOption& option : short_options(request.command)) {
    const std::string name(option.name);
    describe(*app.add_option(name, into.typed.text[name]), key_heading, option.example, option.meaning);
  }
  for (const OptionWords& words : option_words())
    if (takes(request.command, words)) declare_one(app, words, into);
  if (CLI::Option* set = app.get_option_no_throw("--set"))
    set->allow_extra_args(false)->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  if (request.command != "gauge") app.add_option("file", request.asked.file);
  app.allow_extras();
}

/// What becomes of the answer goes into the request; what was declared and not typed goes out again.
TypedOptions sorted(const CLI::App& app, Declared declared, Request& request) {
  TypedOptions typed = std::move(declared.typed);
  for (const OptionWords& words : option_words()) {
    const std::string name(words.name);
    if (!words.prints && declared.switches[name]) typed.flag.insert(name);
  }
  request.full = declared.switches["--full"];
  request.json = declared.switches["--json"];
  request.explain = declared.switches["--explain"];
  request.out = typed.text["--out"];
  typed.text.erase("--out");
  for (auto at = typed.text.begin(); at != typed.text.end();)
    at = app.count(at->first) > 0 ? std::next(at) : typed.text.erase(at);
  return typed;
}

/// "--help" too, which the parser itself says nothing of where it stands under no heading.
std::string name_of(const CLI::Option& option) { return "--" + option.get_lnames().front(); }

std::string unexpected(const std::string& command, const std::string& word) {
  if (word.rfind("-", 0) == 0) return no_option(command, word, true);
  if (command == "gauge")
    return fmt::format("gauge takes no file: the two readings say it all. \"{}\" is one word too many.", word);
  return fmt::format("\"{}\" is one word too many. A value with spaces stands in quotes: --size \"36 x 30 ft\".", word);
}

/// Options with a value that are about the question, not about the shop. The day of the pour is a key of the design,
/// but other commands would take the word for a number of loops.
bool is_own(const std::string& command, const std::string& word) {
  const std::string_view name = std::string_view(word).substr(0, word.find('='));
  const OptionWords* own = own_option(command, name);
  return (own && !own->value.empty()) || (takes_the_day(command) && name == "--poured");
}

/// Switches shape this one answer, or how it is printed. The next command may not take them.
bool is_switch(const std::string& word) {
  return std::any_of(option_words().begin(), option_words().end(),
                     [&](const OptionWords& option) { return option.value.empty() && option.name == word; });
}

/// Options as typed, quoted where they must be, for the next command.
void keep_typed(std::span<const std::string> words, Request& request) {
  bool value_of_own = false, value_of_out = false;
  for (const std::string& word : words.subspan(1)) {
    const bool out = !value_of_own && (value_of_out || word == "--out" || word.rfind("--out=", 0) == 0);
    value_of_out = out && !value_of_out && word == "--out";
    const bool own = value_of_own || is_own(request.command, word);
    value_of_own = own && !value_of_own && word.find('=') == std::string::npos;
    if (out || (!own && (word == request.asked.file || is_switch(word)))) continue;
    const std::string typed = word.find(' ') == std::string::npos ? word : fmt::format("\"{}\"", word);
    (own ? request.asked_words : request.words).push_back(typed);
  }
}

/// The parser's complaint in our words; it names the option.
std::string misread(const CLI::ParseError& error) {
  const std::string said = error.what();
  const std::size_t at = std::min(said.find("--"), said.size());
  const std::string name = said.substr(at, said.find_first_of(":, ", at) - at);
  if (said.find("At Most") != std::string::npos)
    return fmt::format("{} stands there more than once. Write it once.", name);
  if (error.get_name() == "ConversionError") return fmt::format("{} is a switch: nothing stands behind it.", name);
  return fmt::format("{} needs a value after it, in quotes where it has spaces.", name);
}

}  // namespace

Parsed parse(std::span<const std::string> words) {
  Parsed parsed;
  Request& request = parsed.request;
  request.command = words.front();
  if (std::none_of(commands().begin(), commands().end(), [&](const Command& c) { return c.name == request.command; })) {
    parsed.problem = no_command(request.command);
    return parsed;
  }
  CLI::App app;
  Declared declared;
  declare(app, request, declared);
  try {
    std::vector<std::string> reversed(words.rbegin(), words.rend() - 1);
    app.parse(reversed);
  } catch (const CLI::ParseError& error) {
    parsed.problem = misread(error);
    return parsed;
  }
  if (const auto extra = app.remaining(); !extra.empty()) {
    parsed.problem = unexpected(request.command, extra.front());
    return parsed;
  }
  const TypedOptions typed = sorted(app, std::move(declared), request);
  AskedInWords asked = asked_in_words(request.command, request.asked.file, typed);
  parsed.problem = std::move(asked.problem);
  request.asked = std::move(asked.asked);
  if (parsed.problem.empty() && request.command != "gauge") keep_typed(words, request);
  return parsed;
}

std::vector<ShownOption> shown_options(std::string_view command) {
  Request request;
  request.command = std::string(command);
  CLI::App app;
  Declared declared;
  declare(app, request, declared);
  DesignFile file;
  const Record keys = record_of(file.design);
  std::vector<ShownOption> shown;
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_positional()) continue;
    ShownOption one{option->get_group(), name_of(*option), {}, option->get_description(), {}};
    if (option->get_items_expected_max() > 0) one.value = option->get_type_name();
    for (const ShortOption& key : short_options(command)) {
      const std::optional<Found> found = key.name == one.name ? find_path(keys, key.path) : std::nullopt;
      if (const auto* choice = found ? std::get_if<Choice>(&found->slot) : nullptr)
        one.words.assign(choice->names.begin(), choice->names.end());
    }
    shown.push_back(std::move(one));
  }
  return shown;
}

}  // namespace slabwright::app
