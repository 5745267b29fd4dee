// The words of a command line as a request.
#pragma once
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/answer.hpp"

namespace slabwright::app {

/// Exit codes; 0 works, 3 a limit fails.
inline constexpr int bad_design = 2, bad_words = 64, our_fault = 70;

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

/// A command by its name and what it answers.
struct Command {
  std::string_view name;
  std::string_view does;
};
std::span<const Command> commands();

struct Request {
  std::string command;
  std::string file;  ///< empty where options alone say everything
  std::vector<Override> overrides;
  std::vector<std::string> words;  ///< the options as typed, for "Next:"
  bool full = false;
  bool json = false;
  bool explain = false;       ///< freeze: why this setting
  bool quick = false;         ///< freeze and winter: without what nobody can know
  bool wide = false;          ///< winter: a search over more settings
  bool better_place = false;  ///< route: look for one
  bool help = false;
  std::string at, diameter, depth, tolerance, may_move;  ///< drill: as typed; empty where not given
  std::string readings, read;                            ///< balance: a file of readings, or flows as typed
  std::string water, room, meter_error;                  ///< balance: what is known beside them, as typed
  std::string found;                                     ///< drill: a file of places where tube was found
  std::vector<std::string> asked_words;                  ///< options of one command alone as typed, not among `words`
  std::map<std::string, std::string> gauge;              ///< gauge: its options as typed
  std::string out;
};

/// A request, or a sentence that says what to write instead.
struct Parsed {
  Request request;
  std::string problem;
};
Parsed parse(std::span<const std::string> words);

/// What `drill` asks beside the design's anchors, or a sentence that says what to write instead.
struct AskedHole {
  DrillAsked asked;
  std::string problem;
};
AskedHole asked_hole(const Request& request);

/// What `slabwright` alone prints, and the help of one command.
std::string front_page();
std::string help_page(std::string_view command);

/// One function for each kind of command; each prints and returns the exit code.
int run_new(const Request& request);
int run_answer(const Request& request, Question question);
int run_gauge(const Request& request);

}  // namespace slabwright::app
