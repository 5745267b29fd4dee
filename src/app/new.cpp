// slabwright new FILE: a short commented design file.
#include <iostream>

#include "app/files.hpp"
#include "app/request.hpp"

namespace slabwright::app {

int run_new(const Request& request) {
  if (request.asked.file.empty()) {
    std::cerr << "new needs a name for the file: slabwright new my-shop.toml --size \"36 x 30 ft\"\n";
    return bad_words;
  }
  const std::string text = new_design_text(request.asked.overrides);
  const ReadDesign read = read_design(text);
  if (!read.checked) {
    std::cerr << problems_text(read_design("", request.asked.overrides), request.asked.file);
    return bad_design;
  }
  if (const std::string problem = write_new_file(request.asked.file, text); !problem.empty()) {
    std::cerr << problem << '\n';
    return bad_design;
  }
  std::cout << request.asked.file << " is written: " << read.checked.value->given.size()
            << " values of yours; open it and put in what you know.\n"
            << "Next:  slabwright design " << request.asked.file << '\n';
  return 0;
}

}  // namespace slabwright::app
