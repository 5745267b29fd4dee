// check, design, route, balance, freeze and drill: read, answer, print.
#include <fmt/format.h>

#include <iostream>

#include "app/bar.hpp"
#include "app/bring.hpp"
#include "app/files.hpp"
#include "app/request.hpp"
#include "slabwright/sheets.hpp"

namespace slabwright::app {
namespace {

std::string repeated(const std::vector<std::string>& all) {
  std::string words;
  for (const std::string& word : all) words += (words.empty() ? "" : " ") + word;
  return words;
}

int print(const Request& request, const Answer& tried, const std::optional<Answer>& written) {
  ReportOptions options{
      request.file,
      request.full,
      repeated(request.words),
      request.explain,
      repeated(request.asked_words),
      tried.wishes.question == Question::route ? floor_in_letters(tried) : std::vector<std::string>{}};
  if (!request.out.empty()) {
    std::vector<Sheet> all = tables_of(tried);
    for (Sheet& sheet : sheets_of(tried)) all.push_back(std::move(sheet));
    if (tried.wishes.question == Question::sheets) {
      for (ReaderSheet& page : reader_sheets(tried)) {
        options.sheets.push_back({page.sheet.name, page.reader});
        all.push_back(std::move(page.sheet));
      }
    }
    if (const std::string problem = write_sheets(request.out, all); !problem.empty()) {
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
std::optional<Answer> as_written(const Request& request, Wishes wishes, const std::string& text) {
  if (request.file.empty() || request.overrides.empty() || request.json || request.explain) return std::nullopt;
  if (wishes.question == Question::drill || wishes.question == Question::sheets || wishes.question == Question::cure ||
      !request.readings.empty() || !request.read.empty())
    return std::nullopt;
  const ReadDesign plain = read_design(text);
  if (!plain.checked) return std::nullopt;
  const BroughtFiles beside = bring(plain, request.file);
  if (!beside.problem.empty()) return std::nullopt;
  wishes.sensitivities = false;
  wishes.better_place = false;
  return answer(*plain.checked.value, wishes, beside.brought);
}

}  // namespace

int run_answer(const Request& request, Question question) {
  if (request.file.empty() && request.overrides.empty()) {
    std::cerr << request.command << " needs a design file or options:\n  slabwright " << request.command
              << " my-shop.toml\n  slabwright " << request.command << " --size \"36 x 30 ft\" --outdoor \"-12 F\"\n";
    return bad_words;
  }
  if (question == Question::sheets && request.out.empty() && !request.json) {
    std::cerr << "sheets needs a folder to write them into: slabwright sheets " << request.file << " --out cards\n";
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
  BroughtFiles beside = bring(read, request.file);
  BroughtFiles meters = bring_meters(request, read.units);
  beside.problem += meters.problem;
  if (!beside.problem.empty()) {
    std::cerr << beside.problem;
    return bad_design;
  }
  beside.brought.meters = std::move(meters.brought.meters);
  Wishes wishes;
  wishes.question = question;
  wishes.bands = !request.quick;
  wishes.wide = request.wide;
  wishes.better_place = request.better_place;
  if (question == Question::drill) {
    AskedHole hole = asked_hole(request);
    if (!hole.problem.empty()) {
      std::cerr << hole.problem << '\n';
      return bad_words;
    }
    wishes.drill = std::move(hole.asked);
  }
  std::optional<Bar> bar(std::in_place);
  wishes.progress = bar->told();
  const std::optional<Answer> written = as_written(request, wishes, text);
  const Answer tried = answer(*read.checked.value, wishes, beside.brought);
  bar.reset();
  if (beside.brought.meters) {
    if (const std::string problems = meter_problems(request, *beside.brought.meters, tried); !problems.empty()) {
      std::cerr << problems;
      return bad_design;
    }
  }
  return print(request, tried, written);
}

}  // namespace slabwright::app
