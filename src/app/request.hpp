// The words of a command line as a request.
#pragma once
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/asking.hpp"

namespace slabwright::app {

/// Exit code where slabwright itself is at fault; the others are answers' and refusals'.
inline constexpr int our_fault = 70;

struct Request {
  std::string command;
  Asked asked;
  std::vector<std::string> words;  ///< the options as typed, for "Next:"
  bool full = false;
  bool json = false;
  bool explain = false;  ///< freeze: why this setting
  bool help = false;
  std::vector<std::string> asked_words;  ///< options of one command alone as typed, not among `words`
  std::string out;
};

/// A request, or a sentence that says what to write instead.
struct Parsed {
  Request request;
  std::string problem;
};
Parsed parse(std::span<const std::string> words);

/// What `slabwright` alone prints, and the help of one command.
std::string front_page();
std::string help_page(std::string_view command);

/// A page for `man`: of one command, or of the whole program where the name is empty. Empty where there is no such
/// command.
std::string manual_page(std::string_view command);

/// What completes a command line in "bash", "zsh" or "fish"; empty for another shell.
std::string completion_script(std::string_view shell);

/// One function for each kind of command; each prints and returns the exit code.
int run_new(const Request& request);
int run_answer(const Request& request);
int run_gauge(const Request& request);

}  // namespace slabwright::app
