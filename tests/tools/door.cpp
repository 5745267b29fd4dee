// The browser's function for scripts that compare builds: a request on each line of the input, an answer and a zero for
// each on the output.
#include <iostream>
#include <string>

#include "slabwright/page.hpp"

int main() {
  for (std::string request; std::getline(std::cin, request);)
    std::cout << slabwright::page_answer(request) << '\0' << std::flush;
}
