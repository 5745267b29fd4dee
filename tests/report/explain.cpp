// --explain: every line comes out with a pocket calculator, from the figures that are printed.
#include <cmath>
#include <cstdlib>

#include "sample.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

/// The numbers of a line in their order, and half of each one's last digit.
struct Read {
  double value = 0.0, half = 0.0;
};
std::vector<Read> numbers_in(const std::string& line) {
  std::vector<Read> all;
  for (std::size_t at = 0; at < line.size();) {
    const bool digit = line[at] >= '0' && line[at] <= '9';
    if (!digit) {
      ++at;
      continue;
    }
    const std::size_t end = std::min(line.find_first_not_of("0123456789.", at), line.size());
    std::string word = line.substr(at, end - at);
    if (word.back() == '.') word.pop_back();
    const std::size_t point = word.find('.');
    const double decimals = point == std::string::npos ? 0.0 : static_cast<double>(word.size() - point - 1);
    const bool minus = at > 0 && line[at - 1] == '-';
    all.push_back({(minus ? -1.0 : 1.0) * std::strtod(word.c_str(), nullptr), 0.5 * std::pow(10.0, -decimals)});
    at = end;
  }
  return all;
}

std::vector<Read> line_with(const std::string& text, const std::string& words) {
  for (const std::string& line : lines_of(text))
    if (has(line, words)) return numbers_in(line);
  FAIL("no line with " << words);
  return {};
}

/// As many lines as follow the words.
std::vector<Read> next_line(const std::string& text, const std::string& words) {
  const auto lines = lines_of(text);
  for (std::size_t i = 0; i + 1 < lines.size(); ++i)
    if (has(lines[i], words)) return numbers_in(lines[i + 1]);
  FAIL("no line with " << words);
  return {};
}

void check_arithmetic(const std::string& text) {
  const Read gain = line_with(text, "gain, of each degree").back();
  const Read base = line_with(text, "base, what weather").back();
  const auto limit_line = line_with(text, "it must stay above");
  const Read limit = limit_line.back();
  // freezes at, margin, limit
  CHECK(std::abs(limit_line[0].value + limit_line[1].value - limit.value) <= 3 * limit.half);
  const auto asked = line_with(text, "so the dial is asked for");
  REQUIRE(asked.size() == 4);
  CHECK(asked[0].value == limit.value);
  CHECK(asked[1].value == base.value);
  CHECK(asked[2].value == gain.value);
  const double dial = (limit.value - base.value) / gain.value;
  const double slack = (limit.half + base.half + std::abs(dial) * gain.half) / gain.value + asked[3].half;
  CHECK(std::abs(dial - asked[3].value) <= slack);
  CHECK(slack < 0.05);
  const Read control = line_with(text, "switching on and off within").back();
  const Read error = line_with(text, "a sensor that reads too high").back();
  const Read sum = line_with(text, "  sum").back();
  CHECK(std::abs(asked[3].value + control.value + error.value - sum.value) <= 4 * sum.half);
  const auto mark = line_with(text, "rounded up to a mark");
  CHECK(mark.back().value >= sum.value - sum.half);
  CHECK(mark.back().value < sum.value + mark.front().value + sum.half);
}

/// Three weights times three temperatures.
void check_had_it_lasted(const std::string& text) {
  const auto n = next_line(text, "lasted, its loop shut");
  REQUIRE(n.size() == 7);
  const double sum = n[0].value * n[1].value + n[2].value * n[3].value + n[4].value * n[5].value;
  double slack = n[6].half;
  for (const std::size_t i : {0u, 2u, 4u}) slack += n[i].half * std::abs(n[i + 1].value) + n[i].value * n[i + 1].half;
  CHECK(std::abs(sum - n[6].value) <= slack);
  CHECK(std::abs(n[0].value + n[2].value + n[4].value - 1.0) <= n[0].half + n[2].half + n[4].half);
}

Answer explained() {
  Answer answer = sample(Question::freeze);
  Freeze& freeze = *answer.freeze;
  Explained why{{0.62, 0.33, 0.05, 0.0}, {0.71, 0.26, 0.03, 0.05}};
  why.after_s = 34.0 * 3600.0;
  why.outdoor_degC = of_F(-22.0);
  why.gain_share = 0.7321;
  why.base_degC = -3.1234;
  why.limit_degC = 2.0;
  why.asks_degC = (why.limit_degC - why.base_degC) / why.gain_share;
  why.control_K = 0.3;
  why.sensor_error_K = 1.0;
  why.dial_degC = of_F(std::ceil(1.8 * (why.asks_degC + 1.3) + 32.0));
  freeze.explained = {why};
  freeze.air->dial_degC = why.dial_degC;
  freeze.place[0].shut_degC =
      0.62 * freeze.air->best_degC + 0.33 * freeze.outdoor_degC + 0.05 * answer.file.design.climate.mean_degC;
  return answer;
}

ReportOptions asked() {
  ReportOptions options{"harness.toml", false, ""};
  options.explain = true;
  return options;
}

}  // namespace

TEST_CASE("each line of the explanation checks by hand, in either system") {
  Answer answer = explained();
  const std::string us = text_of(answer, asked());
  check_arithmetic(us);
  check_had_it_lasted(us);
  CHECK(has(flat(us), "F AT THE WALL THERMOSTAT. The tube 12 in inside the big door decides"));
  CHECK(has(flat(us), "The tube 12 in inside the big door decides; all figures in F."));
  CHECK(has(flat(us), "loop at rest: 0.620 of the room's air, 0.330 of outdoors, 0.050 of the deep ground."));
  CHECK(has(flat(us), "asks for most 34.0 h after the week before the snap begins, at -22.00 F outside."));
  answer.file.design.units = System::si;
  check_arithmetic(text_of(answer, asked()));
  check_had_it_lasted(text_of(answer, asked()));
}

TEST_CASE("the explanation ends in the dial that is printed") {
  Answer answer = explained();
  answer.bands = Bands{};
  answer.bands->air_high_degC = of_F(50.3);
  answer.freeze->air->dial_degC = of_F(51.0);
  const std::string text = text_of(answer, asked());
  CHECK(line_with(text, "95 of 100 draws").back().value == 50.3);
  CHECK(line_with(text, "the setting: the higher").back().value == 51.0);
}

TEST_CASE("a place that tube heat does not reach needs no second row, and none that decides no arithmetic") {
  Answer answer = explained();
  answer.freeze->explained[0].running = answer.freeze->explained[0].idle;
  const std::string text = text_of(answer, asked());
  CHECK(has(flat(text), "heat in the tubes does not reach it"));
  CHECK_FALSE(has(text, "loop running"));
  answer.freeze->explained.clear();
  CHECK(has(text_of(answer, asked()), "No place decides here"));
}

TEST_CASE("real answers check by hand too") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    Wishes wishes{Question::freeze, false, false};
    const Answer found = answer(one.file, wishes);
    REQUIRE(found.freeze);
    if (found.freeze->explained.empty()) continue;
    const std::string text = text_of(found, asked());
    check_arithmetic(text);
    if (found.file.design.room.size() == 1) check_had_it_lasted(text);
    for (const std::string& line : lines_of(text)) CHECK(line.size() <= 80);
  }
}
