// check, design, balance and freeze: read, answer, print.
#include <fmt/format.h>

#include <iostream>

#include "app/bring.hpp"
#include "app/files.hpp"
#include "app/request.hpp"

namespace slabwright::app {
namespace {

std::string repeated(const Request& request) {
  std::string words;
  for (const std::string& word : request.words) words += (words.empty() ? "" : " ") + word;
  return words;
}

int print(const Request& request, const Answer& tried, const std::optional<Answer>& written) {
  const ReportOptions options{request.file, request.full, repeated(request)};
  if (!request.out.empty()) {
    if (const std::string problem = write_sheets(request.out, tables_of(tried)); !problem.empty()) {
      std::cerr << problem << '\n';
      return bad_design;
    }
  }
  if (request.json)
    std::cout << json_of(tried);
  else
    std::cout << (written ? text_of_both(*written, tried, options) : text_of(tried, options));
  return exit_code(tried);
}

/// What the file alone says, where options were tried on it; nothing where it cannot be answered.
std::optional<Answer> as_written(const Request& request, Question question, const std::string& text) {
  if (request.file.empty() || request.overrides.empty() || request.json) return std::nullopt;
  const ReadDesign plain = read_design(text);
  if (!plain.checked) return std::nullopt;
  const BroughtFiles beside = bring(plain, request.file);
  if (!beside.problem.empty()) return std::nullopt;
  return answer(*plain.checked.value, {question, false}, beside.brought);
}

}  // namespace

int run_answer(const Request& request, Question question) {
  if (request.file.empty() && request.overrides.empty()) {
    std::cerr << request.command << " needs a design file or options:\n  slabwright " << request.command
              << " my-shop.toml\n  slabwright " << request.command << " --size \"36 x 30 ft\" --outdoor \"-12 F\"\n";
    return bad_words;
  }
  std::string text;
  if (!request.file.empty()) {
    FileText file = read_file(request.file);
    if (!file.problem.empty()) {
      std::cerr << file.problem << '\n';
      return bad_design;
    }
    text = std::move(file.text);
  }
  const ReadDesign read = read_design(text, request.overrides);
  if (!read.checked) {
    std::cerr << problems_text(read, request.file.empty() ? "command line" : request.file);
    return bad_design;
  }
  const BroughtFiles beside = bring(read, request.file);
  if (!beside.problem.empty()) {
    std::cerr << beside.problem;
    return bad_design;
  }
  const Answer tried = answer(*read.checked.value, {question, true}, beside.brought);
  return print(request, tried, as_written(request, question, text));
}

}  // namespace slabwright::app
