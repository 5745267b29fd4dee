// What a browser's script calls.
#include <string>

#include "slabwright/page.hpp"

extern "C" {

/// page_answer() for text that ends in a zero. The text it returns stands until the next call.
const char* slabwright_answer(const char* request);

const char* slabwright_answer(const char* request) {
  static std::string text;
  text = slabwright::page_answer(request);
  return text.c_str();
}
}
