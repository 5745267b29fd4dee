// The manual pages, made from the program's own description.
#include <fmt/format.h>

#include "app/options.hpp"

namespace slabwright::app {
namespace {

struct ExitWords {
  int code;
  std::string_view meaning;
};
constexpr ExitWords exit_words[] = {
    {0, "it works, or works with something to mend"},
    {bad_design, "the design file is wrong, or lacks what was asked for; a file could not be read or written"},
    {3, "computed, but a limit fails"},
    {bad_words, "the command line is wrong"},
    {our_fault, "a fault of slabwright's own"},
};

/// Text as roff shows it: no mark of its own at the start of a line, dashes that can be copied.
std::string roff(std::string_view text) {
  std::string shown;
  bool starts = true;
  for (const char c : text) {
    if (starts && (c == '.' || c == '\'')) shown += "\\&";
    if (c == '\\')
      shown += "\\e";
    else if (c == '-')
      shown += "\\-";
    else
      shown += c;
    starts = c == '\n';
  }
  return shown;
}

std::string upper(std::string_view text) {
  std::string all(text);
  for (char& c : all) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  return all;
}

std::string title(std::string_view page) {
  return fmt::format(".TH {} 1 \"\" \"slabwright {}\" \"slabwright\"\n", upper(page), SLABWRIGHT_VERSION);
}

std::string exit_section() {
  std::string text = ".SH EXIT STATUS\n";
  for (const auto& [code, meaning] : exit_words) text += fmt::format(".TP\n.B {}\n{}\n", code, roff(meaning));
  return text;
}

std::string whole_page() {
  std::string text = title("slabwright") + ".SH NAME\nslabwright \\- heated concrete floors for workshops\n" +
                     ".SH SYNOPSIS\n.B slabwright\n.I COMMAND\n[\\fIFILE\\fR] [\\fIoptions\\fR]\n" +
                     ".SH DESCRIPTION\n.nf\n" + roff(front_page()) + ".fi\n.SH COMMANDS\n";
  for (const auto& [name, does] : commands())
    text += fmt::format(".TP\n.BR slabwright\\-{} (1)\n{}\n", name, roff(does));
  text +=
      exit_section() + ".SH FILES\nThe guide, the design file's keys and the physics: share/doc/slabwright/manuals; ";
  return text + "designs to begin with: share/doc/slabwright/layouts.\n";
}

std::string options_section(std::string_view command) {
  std::string text = ".SH OPTIONS\n", heading;
  for (const ShownOption& option : shown_options(command)) {
    if (!option.heading.empty() && option.heading != heading) text += fmt::format(".SS {}\n", roff(option.heading));
    heading = option.heading;
    if (heading.empty()) continue;
    text += fmt::format(".TP\n\\fB{}\\fR {}\n{}\n", roff(option.name), roff(in_shell_quotes(option.value)),
                        roff(option.meaning));
  }
  return text;
}

std::string command_page(const Command& command) {
  const auto& [typed, remark] = usage_of(command.name);
  std::string text = title(fmt::format("slabwright-{}", command.name)) +
                     fmt::format(".SH NAME\nslabwright\\-{} \\- {}\n", command.name, roff(command.does)) +
                     fmt::format(".SH SYNOPSIS\n.B slabwright {}\n{}\n", command.name, roff(typed)) +
                     (remark.empty() ? "" : fmt::format(".SH DESCRIPTION\n{}\n", roff(remark))) +
                     options_section(command.name);
  if (!note_of(command.name).empty()) {
    text += ".SH NOTES\n";
    for (const char c : roff(note_of(command.name))) text += c == '\n' ? std::string("\n.PP\n") : std::string(1, c);
    text += '\n';
  }
  return text + exit_section() + ".SH SEE ALSO\n.BR slabwright (1)\n";
}

}  // namespace

std::string manual_page(std::string_view command) {
  if (command.empty()) return whole_page();
  for (const Command& one : commands()) {
    if (one.name == command) return command_page(one);
  }
  return {};
}

}  // namespace slabwright::app
