// Every command that answers from a design: read, answer, print.
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
      request.asked.file,
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
  const Asked& asked = request.asked;
  if (asked.file.empty() || asked.overrides.empty() || request.json || request.explain) return std::nullopt;
  if (wishes.question == Question::drill || wishes.question == Question::sheets || wishes.question == Question::cure ||
      !own_text(asked, "--readings").empty() || !own_text(asked, "--read").empty())
    return std::nullopt;
  const ReadDesign plain = read_design(text);
  if (!plain.checked) return std::nullopt;
  Brought beside;
  if (bring_weather(plain, asked, from_disk(asked.file), beside)) return std::nullopt;
  wishes.sensitivities = false;
  wishes.better_place = false;
  return answer(*plain.checked.value, wishes, beside);
}

int refuse(const Refusal& refusal) {
  std::cerr << refusal.text;
  return refusal.exit;
}

/// An exit code where the command line cannot lead to an answer; the reason is told.
std::optional<int> refused(const Request& request) {
  if (const std::optional<Refusal> nothing = nothing_asked(request.asked)) return refuse(*nothing);
  if (request.command == "sheets" && request.out.empty() && !request.json) {
    std::cerr << "sheets needs a folder to write them into: slabwright sheets " << request.asked.file
              << " --out cards\n";
    return bad_words;
  }
  const std::string problem = folder_problem(request.out);
  if (problem.empty()) return std::nullopt;
  std::cerr << problem << '\n';
  return bad_design;
}

}  // namespace

int run_answer(const Request& request) {
  if (const std::optional<int> code = refused(request)) return *code;
  const Asked& asked = request.asked;
  std::string text;
  if (!asked.file.empty()) {
    FileText file = read_design_file(asked.file);
    if (!file.problem.empty()) {
      std::cerr << file.problem << '\n';
      return bad_design;
    }
    text = std::move(file.text);
  }
  Prepared prepared = prepare(asked, text, from_disk(asked.file));
  if (prepared.refusal) return refuse(*prepared.refusal);
  std::optional<Bar> bar(std::in_place);
  prepared.wishes.progress = bar->told();
  const std::optional<Answer> written = as_written(request, prepared.wishes, text);
  const Answer tried = answer(*prepared.read.checked.value, prepared.wishes, prepared.brought);
  bar.reset();
  if (const std::optional<Refusal> odd = refused_readings(asked, prepared.brought, tried)) return refuse(*odd);
  return print(request, tried, written);
}

}  // namespace slabwright::app
