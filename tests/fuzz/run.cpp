// The whole run on any accepted design: one question, every face of its answer. It ends, and in finite numbers: the
// faces throw at any other. The first line may ask for the question, as "# winter"; else the text's own digest does.
#include <cstdint>

#include "fuzz/targets.hpp"
#include "slabwright/sheets.hpp"

namespace slabwright::fuzz {
namespace {

constexpr std::pair<std::string_view, Question> questions[] = {
    {"# check", Question::check},     {"# design", Question::design}, {"# route", Question::route},
    {"# balance", Question::balance}, {"# freeze", Question::freeze}, {"# winter", Question::winter},
    {"# drill", Question::drill},     {"# sheets", Question::sheets}, {"# cure", Question::cure}};

Question question_of(std::string_view text) {
  const std::string_view line = text.substr(0, text.find('\n'));
  for (const auto& [words, question] : questions) {
    if (line == words) return question;
  }
  std::uint32_t digest = 2166136261u;
  for (const char c : text) digest = (digest ^ static_cast<unsigned char>(c)) * 16777619u;
  return questions[digest % std::size(questions)].second;
}

/// Whatever would be printed or written, and no figure in it that is not a number.
void check_faces(const Answer& found, bool says_nan, bool says_inf) {
  ReportOptions options;
  options.file_name = "shop.toml";
  must(!text_of(found, options).empty(), "an answer without a word");
  options.full = true;
  std::vector<Sheet> pages{{"text", text_of(found, options)}, {"json", json_of(found)}};
  for (Sheet& sheet : tables_of(found)) pages.push_back(std::move(sheet));
  for (Sheet& sheet : sheets_of(found)) pages.push_back(std::move(sheet));
  if (found.wishes.question == Question::sheets) {
    for (ReaderSheet& page : reader_sheets(found)) pages.push_back(std::move(page.sheet));
  }
  for (const Sheet& page : pages) {
    must(!page.content.empty(), page.name + " is empty");
    const auto holds = [&page](std::string_view word) { return page.content.find(word) != std::string::npos; };
    must(says_nan || !(holds("-nan") || holds(" nan") || holds("\"nan")), page.name + " holds what is no number");
    must(says_inf || !(holds("-inf") || holds(" inf ") || holds("\"inf\"")), page.name + " holds what is endless");
    must(!holds("\": null"), page.name + " holds null");
  }
}

}  // namespace

bool run(std::string_view bytes) {
  const ReadDesign read = read_design(bytes);
  if (!read.checked) return false;
  Wishes wishes;
  wishes.question = question_of(bytes);
  wishes.bands = false;
  // The list of guesses that matter asks the same code some forty times: now and then is often enough.
  wishes.sensitivities = bytes.size() % 8 == 0;
  const Answer found = answer(*read.checked.value, wishes);
  const int code = exit_code(found);
  must(code == 0 || code == 2 || code == 3, "an exit code that nobody knows");
  // A name may hold the very words.
  check_faces(found, bytes.find("nan") != bytes.npos, bytes.find("inf") != bytes.npos);
  return true;
}

}  // namespace slabwright::fuzz
