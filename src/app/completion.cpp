// What completes a command line in a shell, made from what the parser knows.
#include <fmt/format.h>

#include <functional>
#include <map>

#include "app/options.hpp"

namespace slabwright::app {
namespace {

bool takes_a_file(std::string_view command) { return usage_of(command).typed.find("FILE") != std::string_view::npos; }

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  return fmt::format("{}", fmt::join(words, between));
}

std::vector<std::string> command_names(bool all) {
  std::vector<std::string> names;
  for (const Command& command : commands())
    if (all || takes_a_file(command.name)) names.emplace_back(command.name);
  return names;
}

/// Every option with a value behind it, once: it takes the same with every command.
std::map<std::string, ShownOption> options_with_values() {
  std::map<std::string, ShownOption> all;
  for (const Command& command : commands()) {
    for (ShownOption& option : shown_options(command.name))
      if (!option.value.empty()) all.emplace(option.name, std::move(option));
  }
  return all;
}

/// The names of options with a value, as a pattern: those that a test picks.
std::string pattern(const std::function<bool(const ShownOption&)>& picks) {
  std::vector<std::string> names;
  for (const auto& [name, option] : options_with_values())
    if (picks(option)) names.push_back(name);
  return joined(names, " | ");
}

std::string bash_values() {
  std::string text = fmt::format(
      "  case $before in\n"
      "    {}) compopt -o filenames 2>/dev/null; mapfile -t COMPREPLY < <(compgen -d -- \"$word\"); return ;;\n"
      "    {}) compopt -o filenames 2>/dev/null; mapfile -t COMPREPLY < <(compgen -f -- \"$word\"); return ;;\n",
      pattern([](const ShownOption& o) { return o.value == "DIR"; }),
      pattern([](const ShownOption& o) { return o.value == "FILE"; }));
  for (const auto& [name, option] : options_with_values()) {
    if (!option.words.empty())
      text += fmt::format("    {}) mapfile -t COMPREPLY < <(compgen -W \"{}\" -- \"$word\"); return ;;\n", name,
                          joined(option.words, " "));
  }
  const std::string others =
      pattern([](const ShownOption& o) { return o.value != "DIR" && o.value != "FILE" && o.words.empty(); });
  return text + fmt::format("    {}) return ;;\n  esac\n", others);
}

std::string bash_script() {
  std::string text = fmt::format(
      "# Completes slabwright in bash; made by: slabwright --completion bash\n"
      "_slabwright() {{\n"
      "  local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}} options=\n"
      "  COMPREPLY=()\n"
      "  # --units=SI comes as three words.\n"
      "  if [ \"$word\" = = ]; then word=; elif [ \"$before\" = = ]; then before=${{COMP_WORDS[COMP_CWORD-2]}}; fi\n"
      "  if [ \"$COMP_CWORD\" -eq 1 ]; then\n"
      "    mapfile -t COMPREPLY < <(compgen -W \"{} --help --version\" -- \"$word\")\n"
      "    return\n"
      "  fi\n",
      joined(command_names(true), " "));
  text += bash_values() + "  case ${COMP_WORDS[1]} in\n";
  for (const Command& command : commands()) {
    std::vector<std::string> names;
    for (const ShownOption& option : shown_options(command.name)) names.push_back(option.name);
    text += fmt::format("    {}) options=\"{}\" ;;\n", command.name, joined(names, " "));
  }
  return text + fmt::format(
                    "  esac\n"
                    "  if [[ $word == -* ]]; then\n"
                    "    mapfile -t COMPREPLY < <(compgen -W \"$options\" -- \"$word\")\n"
                    "    return\n"
                    "  fi\n"
                    "  case ${{COMP_WORDS[1]}} in\n"
                    "    {})\n"
                    "      compopt -o filenames 2>/dev/null\n"
                    "      mapfile -t COMPREPLY < <(compgen -f -X '!*.toml' -- \"$word\"; compgen -d -- \"$word\") ;;\n"
                    "  esac\n"
                    "}}\n"
                    "complete -F _slabwright slabwright\n",
                    joined(command_names(false), " | "));
}

/// Text between single quotes of a shell; what zsh takes for a mark of its own loses that.
std::string quoted(std::string_view text, std::string_view marks = {}) {
  std::string shown = "'";
  for (const char c : text) {
    if (marks.find(c) != std::string_view::npos) shown += '\\';
    shown += c == '\'' ? std::string("'\\''") : std::string(1, c);
  }
  return shown + "'";
}

std::string zsh_option(const ShownOption& option) {
  constexpr std::string_view marks = "[]:\\";
  const auto bare = [&](std::string_view text) {
    const std::string all = quoted(text, marks);
    return all.substr(1, all.size() - 2);
  };
  std::string text = option.name == "--set" ? "'*" : "'";
  text += fmt::format("{}[{}]", option.name, bare(option.meaning));
  if (!option.value.empty()) text += fmt::format(":{}:", bare(option.value));
  if (option.value == "DIR") text += "_files -/";
  if (option.value == "FILE") text += "_files";
  if (!option.words.empty()) text += fmt::format("({})", joined(option.words, " "));
  return text + "'";
}

std::string zsh_script() {
  std::string text =
      "#compdef slabwright\n"
      "# Completes slabwright in zsh; made by: slabwright --completion zsh\n"
      "local -a commands\n"
      "commands=(\n";
  for (const auto& [name, does] : commands()) text += fmt::format("  {}\n", quoted(fmt::format("{}:{}", name, does)));
  text +=
      ")\n"
      "if (( CURRENT == 2 )); then\n"
      "  _describe command commands\n"
      "  return\n"
      "fi\n"
      "local command=$words[2]\n"
      "shift words\n"
      "(( CURRENT-- ))\n"
      "case $command in\n";
  for (const Command& command : commands()) {
    text += fmt::format("  {})\n    _arguments", command.name);
    for (const ShownOption& option : shown_options(command.name))
      text += fmt::format(" \\\n      {}", zsh_option(option));
    if (takes_a_file(command.name)) text += " \\\n      ':design file:_files -g \"*.toml\"'";
    text += " ;;\n";
  }
  return text + "esac\n";
}

std::string fish_option(std::string_view command, const ShownOption& option) {
  std::string takes;
  if (!option.value.empty()) takes = option.value == "FILE" ? " -r -F" : " -x";
  if (option.value == "DIR") takes += " -a '(__fish_complete_directories)'";
  if (!option.words.empty()) takes += fmt::format(" -a '{}'", joined(option.words, " "));
  return fmt::format("complete -c slabwright -n '__fish_seen_subcommand_from {}' -l {}{} -d {}\n", command,
                     option.name.substr(2), takes, quoted(option.meaning, "\\"));
}

std::string fish_script() {
  std::string text =
      "# Completes slabwright in fish; made by: slabwright --completion fish\n"
      "complete -c slabwright -f\n";
  for (const auto& [name, does] : commands())
    text += fmt::format("complete -c slabwright -n __fish_use_subcommand -a {} -d {}\n", name, quoted(does, "\\"));
  text +=
      fmt::format("complete -c slabwright -n '__fish_seen_subcommand_from {}' -a '(__fish_complete_suffix .toml)'\n",
                  joined(command_names(false), " "));
  for (const Command& command : commands()) {
    for (const ShownOption& option : shown_options(command.name)) text += fish_option(command.name, option);
  }
  return text;
}

}  // namespace

std::string completion_script(std::string_view shell) {
  if (shell == "bash") return bash_script();
  if (shell == "zsh") return zsh_script();
  return shell == "fish" ? fish_script() : std::string{};
}

}  // namespace slabwright::app
