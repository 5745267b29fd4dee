// Options as typed, put in order.
#include <fmt/format.h>

#include <algorithm>

#include "slabwright/asking.hpp"

namespace slabwright {
namespace {

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

/// What was typed for an option; null where it was not.
const std::string* typed_text(const TypedOptions& typed, std::string_view name) {
  const auto found = typed.text.find(std::string(name));
  return found == typed.text.end() ? nullptr : &found->second;
}

/// Quotes with nothing between them are not the same as no option: nobody asks about nowhere.
std::string empty_own_option(std::string_view command, const TypedOptions& typed) {
  const auto nothing_in = [](std::string_view name, std::string_view example) {
    return fmt::format("{0} has nothing between its quotes. Write {0} {1}.", name, in_shell_quotes(example));
  };
  for (const auto& [name, text] : typed.text) {
    const OptionWords* option = text.empty() ? own_option(command, name) : nullptr;
    if (option) return nothing_in(name, option->value);
    if (text.empty() && name == "--poured" && takes_the_day(command)) return nothing_in(name, Date::example);
  }
  return {};
}

/// A day after --poured where the number of loops is meant.
std::string day_for_loops(std::string_view command, const TypedOptions& typed) {
  const std::string* poured = typed_text(typed, "--poured");
  Date day;
  if (!poured || takes_the_day(command) || !read_words(*poured, day).empty()) return {};
  return fmt::format(
      "--poured takes the number of loops here: --poured 5. The day of the pour goes to cure and sheets, or into the "
      "file: [project] poured = \"{}\".",
      *poured);
}

std::string fault_of_readings(const TypedOptions& typed) {
  const bool table = typed_text(typed, "--readings"), flows = typed_text(typed, "--read");
  if (table && flows) return "--readings names a file and --read gives the flows themselves: write one of them.";
  const bool beside = typed_text(typed, "--water") || typed_text(typed, "--room") || typed_text(typed, "--meter-error");
  if (beside && !table && !flows)
    return "--water, --room and --meter-error go with readings: add --read \"0.73 0.64 - 0.57\".";
  return {};
}

/// Names that the command does not take.
std::string unknown_option(std::string_view command, const TypedOptions& typed) {
  const auto own = [&](const std::string& name, bool with_value) {
    const OptionWords* option = own_option(command, name);
    return option && option->value.empty() != with_value;
  };
  const std::vector<ShortOption> keys = short_options(command);
  for (const auto& one : typed.text) {
    const std::string& name = one.first;
    const bool is_key = std::any_of(keys.begin(), keys.end(), [&](const ShortOption& key) { return key.name == name; });
    if (!is_key && !own(name, true) && !(name == "--lengths" && command != "gauge"))
      return no_option(command, name, false);
  }
  for (const std::string& name : typed.flag)
    if (!own(name, false)) return no_option(command, name, false);
  return command == "gauge" && !typed.set.empty() ? no_option(command, "--set", false) : std::string{};
}

std::string fault_of(std::string_view command, const TypedOptions& typed) {
  for (const std::string& fault : {unknown_option(command, typed), empty_own_option(command, typed),
                                   fault_of_readings(typed), day_for_loops(command, typed)})
    if (!fault.empty()) return fault;
  return {};
}

}  // namespace

const std::string& own_text(const Asked& asked, const std::string& name) {
  static const std::string none;
  const auto found = asked.own.find(name);
  return found == asked.own.end() ? none : found->second;
}

AskedInWords asked_in_words(std::string_view command, std::string_view file, const TypedOptions& typed) {
  AskedInWords words;
  const auto known =
      std::any_of(commands().begin(), commands().end(), [&](const Command& one) { return one.name == command; });
  words.problem = known ? fault_of(command, typed) : no_command(command);
  if (!words.problem.empty()) return words;
  Asked& asked = words.asked;
  asked.command = command;
  asked.file = file;
  asked.flag = typed.flag;
  for (const auto& [name, text] : typed.text)
    if (own_option(command, name)) asked.own[name] = text;
  for (const ShortOption& option : short_options(command)) {
    if (const std::string* text = typed_text(typed, option.name))
      asked.overrides.push_back({std::string(option.path), *text, std::string(option.name)});
  }
  if (const std::string* text = typed_text(typed, "--lengths"))
    for (Override& one : lengths(*text)) asked.overrides.push_back(std::move(one));
  for (const std::string& text : typed.set) asked.overrides.push_back(set_one(text));
  return words;
}

}  // namespace slabwright
