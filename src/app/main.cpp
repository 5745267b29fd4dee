#include <exception>
#include <iostream>
#include <string>
#include <vector>

#include "app/request.hpp"

namespace {

using namespace slabwright;

int run(const app::Request& request) {
  if (request.command == "new") return app::run_new(request);
  if (request.command == "gauge") return app::run_gauge(request);
  return app::run_answer(request);
}

/// What the installation is made from.
int show(const std::string& text, const std::string& takes) {
  if (text.empty()) {
    std::cerr << "this takes " << takes << " behind it.\n";
    return bad_words;
  }
  std::cout << text;
  return 0;
}

int run(const std::vector<std::string>& words) {
  if (words.empty() || words.front() == "--help" || words.front() == "-h" || words.front() == "help") {
    std::cout << app::front_page();
    return 0;
  }
  if (words.front() == "--version") {
    std::cout << "slabwright " SLABWRIGHT_VERSION "\n";
    return 0;
  }
  if (words.front() == "--man")
    return show(app::manual_page(words.size() > 1 ? words[1] : ""), "a command, or nothing");
  if (words.front() == "--completion")
    return show(app::completion_script(words.size() > 1 ? words[1] : ""), "bash, zsh or fish");
  const app::Parsed parsed = app::parse(words);
  if (!parsed.problem.empty()) {
    std::cerr << parsed.problem << "\nslabwright alone explains itself; slabwright COMMAND --help lists the options.\n";
    return bad_words;
  }
  if (parsed.request.help) {
    std::cout << app::help_page(parsed.request.command);
    return 0;
  }
  return run(parsed.request);
}

}  // namespace

int main(int count, char* words[]) {
  try {
    const int code = run(std::vector<std::string>(words + 1, words + count));
    // An answer cut short by a full disk must not look like a whole one.
    if (std::cout.flush()) return code;
    std::cerr << "The answer could not be printed whole: the place it goes to is full or shut.\n";
    return slabwright::bad_design;
  } catch (const std::exception& fault) {
    std::cerr << "slabwright has a fault of its own: " << fault.what()
              << "\nNothing you wrote should do this. Please keep the file that led here.\n";
    return slabwright::app::our_fault;
  }
}
