#include <exception>
#include <iostream>
#include <string>
#include <vector>

#include "app/request.hpp"

namespace {

using namespace slabwright;

int run(const app::Request& request) {
  if (request.command == "new") return app::run_new(request);
  if (request.command == "check") return app::run_answer(request, Question::check);
  if (request.command == "route") return app::run_answer(request, Question::route);
  if (request.command == "balance") return app::run_answer(request, Question::balance);
  if (request.command == "freeze") return app::run_answer(request, Question::freeze);
  if (request.command == "winter") return app::run_answer(request, Question::winter);
  if (request.command == "drill") return app::run_answer(request, Question::drill);
  if (request.command == "gauge") return app::run_gauge(request);
  if (request.command == "cure") return app::run_answer(request, Question::cure);
  if (request.command == "sheets") return app::run_answer(request, Question::sheets);
  return app::run_answer(request, Question::design);
}

int run(const std::vector<std::string>& words) {
  if (words.empty() || words.front() == "--help" || words.front() == "-h" || words.front() == "help") {
    std::cout << app::front_page();
    return 0;
  }
  if (words.front() == "--version") {
    std::cout << "slabwright 0.1\n";
    return 0;
  }
  const app::Parsed parsed = app::parse(words);
  if (!parsed.problem.empty()) {
    std::cerr << parsed.problem << "\nslabwright alone explains itself; slabwright COMMAND --help lists the options.\n";
    return app::bad_words;
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
    return run(std::vector<std::string>(words + 1, words + count));
  } catch (const std::exception& fault) {
    std::cerr << "slabwright has a fault of its own: " << fault.what()
              << "\nNothing you wrote should do this. Please keep the file that led here.\n";
    return slabwright::app::our_fault;
  }
}
