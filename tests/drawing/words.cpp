// Sentences in parts: broken into lines, each line with the keys of what stands on it.
#include "slabwright/drawing_words.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

std::string all_of(const std::vector<KeyedText>& lines) {
  std::string all;
  for (const KeyedText& line : lines) all += (all.empty() ? "" : " ") + line.text;
  return all;
}

const KeyedWords sentence{
    {"Tube: ", ""}, {"1/2 in", "size"}, {", ", ""}, {"12 ft 4 1/4 in", "length_m"}, {" long; ends here.", ""}};

}  // namespace

TEST_CASE("parts follow one another as they were written, however wide the line") {
  for (const double width : {0.5, 0.1, 0.05, 0.03, 0.01}) {
    CHECK(all_of(wrapped(sentence, 0.003, width)) == "Tube: 1/2 in, 12 ft 4 1/4 in long; ends here.");
  }
  CHECK(joined(sentence).text == "Tube: 1/2 in, 12 ft 4 1/4 in long; ends here.");
  CHECK(joined(sentence).key == "size length_m");
}

TEST_CASE("a figure stays whole on its line, and its key stands there and nowhere else") {
  const auto lines = wrapped(sentence, 0.003, 0.03);
  REQUIRE(lines.size() >= 2);
  int keyed = 0;
  for (const KeyedText& line : lines) {
    CHECK(text_size(line.text, 0.003, false).width_m <= 0.03);
    CHECK((line.key.find("length_m") != std::string::npos) == (line.text.find("12 ft 4 1/4 in") != std::string::npos));
    CHECK((line.key.find("size") != std::string::npos) == (line.text.find("1/2 in") != std::string::npos));
    keyed += !line.key.empty();
  }
  CHECK(keyed >= 1);
}

TEST_CASE("a text that is longer than a line is broken, and each line names it once") {
  const auto lines = wrapped({{"a sentence of the answer that says a good deal", "said"}}, 0.003, 0.03);
  REQUIRE(lines.size() > 2);
  for (const KeyedText& line : lines) CHECK(line.key == "said");
  CHECK(all_of(lines) == "a sentence of the answer that says a good deal");
}

TEST_CASE("marks that follow without a space stay beside what they follow") {
  for (const KeyedText& line : wrapped({{"so", ""}, {" ", ""}, {"long", "k"}, {".", ""}}, 0.003, 0.008))
    CHECK(line.text != ".");
}
