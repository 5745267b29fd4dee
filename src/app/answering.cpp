// check, design, balance and freeze: read, answer, print.
#include <fmt/format.h>

#include <unistd.h>

#include <iostream>

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
  const ReportOptions options{request.file, request.full, repeated(request), request.explain};
  if (!request.out.empty()) {
    if (const std::string problem = write_sheets(request.out, tables_of(tried)); !problem.empty()) {
      std::cerr << problem << '\n';
      return bad_design;
    }
  }
  if (request.json)
    std::cout << json_of(tried);
  else
    std::cout << (written && !request.explain ? text_of_both(*written, tried, options) : text_of(tried, options));
  return exit_code(tried);
}

/// A bar on the terminal while work takes longer than a moment, gone afterwards. Nothing in a pipe or a file.
class Bar {
 public:
  explicit Bar(bool wanted) : shown_(wanted && isatty(STDERR_FILENO) != 0) {}
  Bar(const Bar&) = delete;
  Bar& operator=(const Bar&) = delete;
  ~Bar() {
    if (drawn_) std::cerr << '\r' << std::string(width + words.size() + 2, ' ') << '\r' << std::flush;
  }
  Progress told() {
    if (!shown_) return {};
    return [this](double share) { draw(share); };
  }

 private:
  static constexpr std::size_t width = 40;
  static constexpr std::string_view words = "what nobody can know ";

  void draw(double share) {
    const auto full = static_cast<std::size_t>(share * static_cast<double>(width));
    std::cerr << '\r' << words << '[' << std::string(full, '#') << std::string(width - full, '.') << ']' << std::flush;
    drawn_ = true;
  }

  bool shown_;
  bool drawn_ = false;
};

Wishes wishes_of(const Request& request, Question question) {
  Wishes wishes;
  wishes.question = question;
  wishes.bands = !request.quick;
  return wishes;
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
  Wishes wishes = wishes_of(request, question);
  std::optional<Answer> tried;
  {
    Bar bar(question == Question::freeze);
    wishes.progress = bar.told();
    tried = answer(*read.checked.value, wishes);
    tried->wishes.progress = {};
  }
  std::optional<Answer> written;
  if (!request.file.empty() && !request.overrides.empty() && !request.json) {
    const ReadDesign plain = read_design(text);
    wishes.sensitivities = false;
    wishes.progress = {};
    if (plain.checked) written = answer(*plain.checked.value, wishes);
  }
  return print(request, *tried, written);
}

}  // namespace slabwright::app
