// What slabwright says about itself.
#include <fmt/format.h>

#include <algorithm>

#include "app/options.hpp"

namespace slabwright::app {

std::string front_page() {
  return R"(slabwright works out a heated concrete floor: the tube loops, the water, the
pump and boiler, the lowest setting at which nothing freezes, and what each way
of running it through the winter costs.
It heats slabs; it does not engineer the concrete. Local codes come first.

The three short questions (put your own numbers in):
  How many loops?     slabwright design --size "36 x 30 ft" --spacing "12 in"
  How do I set them?  slabwright balance --tube "1/2 in" --lengths "188 241 ft"
  How low can I go?   slabwright freeze --size "36 x 30 ft" --outdoor "-12 F"

The whole job, in order, from one file that you keep:
  new      make the file                 route    the loops as lines to lay
  check    read it, say what we guess    balance  set the manifold
  design   everything at once            freeze   lowest setting, and why
                                         winter   what each way of running costs
  gauge    is the pressure test leaking? drill    may I drill here?
  cure     when heat may come on         sheets   pages to print, one per reader

Start:  slabwright new my-shop.toml --size "36 x 30 ft" --spacing "12 in"
        (already poured? add --poured 5, the number of loops)
More:   slabwright COMMAND --help
)";
}

namespace {

constexpr std::size_t screen = 80, behind_value = 32, behind_switch = 15;

/// Words over lines of at most `width` characters.
std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  std::vector<std::string> lines;
  while (text.size() > width) {
    const std::size_t space = text.rfind(' ', width);
    if (space == std::string_view::npos) break;
    lines.emplace_back(text.substr(0, space));
    text.remove_prefix(space + 1);
  }
  lines.emplace_back(text);
  return lines;
}

std::string option_lines(const ShownOption& option) {
  std::string text = fmt::format("  {:<12} {}", option.name, in_shell_quotes(option.value));
  const std::size_t meaning_at = option.value.empty() ? behind_switch : behind_value;
  const std::string indent(meaning_at, ' ');
  // What stands too far to the right gets the next line to itself.
  if (text.size() < meaning_at)
    text.resize(meaning_at, ' ');
  else
    text += '\n' + indent;
  bool first = true;
  for (const std::string& line : wrapped(option.meaning, screen - meaning_at)) {
    text += (first ? "" : indent) + line + '\n';
    first = false;
  }
  return text;
}

std::string note_lines(std::string_view note) {
  std::string text;
  while (!note.empty()) {
    const std::size_t end = std::min(note.find('\n'), note.size());
    text += '\n';
    for (const std::string& line : wrapped(note.substr(0, end), screen)) text += line + '\n';
    note.remove_prefix(std::min(end + 1, note.size()));
  }
  return text;
}

}  // namespace

std::string help_page(std::string_view command) {
  std::string page;
  for (const Command& c : commands()) {
    if (c.name == command) page += fmt::format("slabwright {}: {}\n\n", c.name, c.does);
  }
  const auto& [typed, remark] = usage_of(command);
  page += fmt::format("  slabwright {} {}{}{}\n", command, typed, remark.empty() ? "" : "     ", remark);
  std::string heading;
  for (const ShownOption& option : shown_options(command)) {
    if (option.heading.empty()) continue;
    if (option.heading != heading) page += fmt::format("\n{}:\n", option.heading);
    heading = option.heading;
    page += option_lines(option);
  }
  return page + note_lines(note_of(command));
}

}  // namespace slabwright::app
