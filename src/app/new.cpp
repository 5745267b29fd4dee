// slabwright new FILE: a short commented design file.
#include <filesystem>
#include <iostream>

#include "app/files.hpp"
#include "app/request.hpp"

namespace slabwright::app {

int run_new(const Request& request) {
  if (request.file.empty()) {
    std::cerr << "new needs a name for the file: slabwright new my-shop.toml --size \"36 x 30 ft\"\n";
    return bad_words;
  }
  std::error_code ignored;
  if (std::filesystem::exists(request.file, ignored)) {
    std::cerr << request.file << " is there already; nothing was written. Choose another name.\n";
    return bad_design;
  }
  const std::string text = new_design_text(request.overrides);
  const ReadDesign read = read_design(text);
  if (!read.checked) {
    std::cerr << problems_text(read_design("", request.overrides), request.file);
    return bad_design;
  }
  if (const std::string problem = write_file(request.file, text); !problem.empty()) {
    std::cerr << problem << '\n';
    return bad_design;
  }
  std::cout << request.file << " is written: " << read.checked.value->given.size()
            << " values of yours; open it and put in what you know.\n"
            << "Next:  slabwright design " << request.file << '\n';
  return 0;
}

}  // namespace slabwright::app
