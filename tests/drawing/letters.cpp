// The floor in letters.
#include <algorithm>

#include "floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (std::size_t k = 0; k + 1 < lines.size(); ++k) text += lines[k] + "\n";
  return text;
}

}  // namespace

TEST_CASE("the map fits a terminal and is plain") {
  for (const auto& [loops, w, d] :
       {std::tuple{3U, 36.0, 30.0}, {30U, 200.0, 110.0}, {4U, 20.0, 90.0}, {60U, 300.0, 40.0}}) {
    const auto lines = letter_map(floors::hall(loops, w, d));
    CHECK(lines.size() <= 22);
    for (const std::string& line : lines) {
      CHECK(line.size() <= 78);
      CHECK(std::all_of(line.begin(), line.end(), [](char c) { return c >= ' ' && c <= '~'; }));
    }
  }
}

TEST_CASE("each loop has its letter where its patch lies, doors and manifold stand outside") {
  const auto lines = letter_map(floors::hall(3, 36, 30));
  const std::string map = joined(lines);
  for (const char c : {'a', 'b', 'c', '#', '=', 'M'}) {
    INFO(c);
    CHECK(map.find(c) != std::string::npos);
  }
  CHECK(map.find('d') == std::string::npos);
  CHECK(lines.front().find('=') != std::string::npos);
  CHECK(lines[lines.size() - 2].find('M') != std::string::npos);
  const std::string& middle = lines[lines.size() / 2];
  CHECK(middle.find('a') < middle.find('b'));
  CHECK(middle.find('b') < middle.find('c'));
  CHECK(lines.back() == "a..c loops 1 to 3   # no tube   = door   M manifold   . no tube near");
}

TEST_CASE("what lies outside the floor is blank, floor without tube a point") {
  DrawnFloor floor;
  floor.spacing_m = 0.3;
  floor.floor.outline = {{0, 0}, {20, 0}, {20, 5}, {10, 5}, {10, 10}, {0, 10}};
  floor.loop = {{{"1", ""}, 0, {"1", ""}, {line({1.0, 1.0}, {3.0, 1.0})}}};
  const auto lines = letter_map(floor);
  CHECK(lines.front().size() < 60);
  CHECK(lines.front().find('.') != std::string::npos);
  CHECK(joined(lines).find('a') != std::string::npos);
  CHECK(lines.back().substr(0, 8) == "a loop 1");
}

TEST_CASE("letters begin anew after the last, and the map says so") {
  const auto lines = letter_map(floors::hall(60, 300, 40));
  CHECK(lines[lines.size() - 2].find("then a.. again") != std::string::npos);
  // The manifold's letter is no loop's.
  CHECK(floors::count(joined(lines), "M") == 1);
}
