// Commands and options, each told once: what is asked, the parser, the help, the manual pages and the shells'
// completion read them here.
#pragma once
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace slabwright {

/// A command by its name and what it answers.
struct Command {
  std::string_view name;
  std::string_view does;
};
std::span<const Command> commands();
/// A sentence with the nearest command.
std::string no_command(std::string_view typed);

/// An option that sets a key of the design file.
struct ShortOption {
  std::string_view name;     ///< "--spacing"
  std::string_view path;     ///< "tube.spacing"
  std::string_view example;  ///< "12 in"
  std::string_view meaning;
};
/// As a command takes them: the calendar and the sheets want the day of the pour, the others how many loops were
/// poured.
std::vector<ShortOption> short_options(std::string_view command);
/// Whether --poured is the day of the pour.
bool takes_the_day(std::string_view command);
/// Over the options that are keys of the design file.
inline constexpr std::string_view key_heading = "Options that stand for keys of the file";

/// Any other option.
struct OptionWords {
  /// Names of the commands that take it, a space between; empty for all but `gauge`, which takes no design.
  std::string_view commands;
  std::string_view heading;
  std::string_view name;     ///< "--at"
  std::string_view value;    ///< an example of what stands behind it; empty for a switch
  std::string_view meaning;  ///< as the help says it, on one line
  bool prints = false;       ///< what becomes of the answer, not what is asked
};
std::span<const OptionWords> option_words();
/// Whether a command takes an option.
bool takes(std::string_view command, const OptionWords& option);
/// The option of this name that asks something of its own ("--at", "--quick"); null where a command has none.
const OptionWords* own_option(std::string_view command, std::string_view name);
/// A sentence with the nearest option; `prints`: where those that print are options too.
std::string no_option(std::string_view command, std::string_view typed, bool prints);

/// An example as a person types it: in quotes, but for the name of a file or a folder.
std::string in_shell_quotes(std::string_view value);

}  // namespace slabwright
