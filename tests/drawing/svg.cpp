// The text of a drawing: well formed, whole by itself, the same every time.
#include "floors.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

Picture picture_of(std::vector<SheetShape> shapes) {
  Picture picture;
  picture.width_m = 0.1;
  picture.height_m = 0.05;
  picture.title = "A & B <\"'>";
  picture.layer.push_back({"one", std::move(shapes), {}});
  return picture;
}

constexpr Pen pen{0.001, {0, 0, 0}, Dash::solid};

}  // namespace

TEST_CASE("user text is escaped, and what XML forbids does not get through") {
  const std::string svg = svg_of(
      picture_of({Lettering{{0.05, 0.02}, "<b>&\"'\x01\x7f\xff \xC3\xBC \xED\xA0\x80 \xEF\xBF\xBF", 0.003, {}}}));
  CHECK(floors::xml_fault(svg) == "");
  CHECK(svg.find("&lt;b&gt;&amp;&quot;&#39;  ? \xC3\xBC ??? ???") != std::string::npos);
  CHECK(svg.find("<title>A &amp; B &lt;&quot;&#39;&gt;</title>") != std::string::npos);
  for (const char c : svg) CHECK((static_cast<unsigned char>(c) >= 32 || c == '\n'));
}

TEST_CASE("paper is measured in millimetres from its upper left corner") {
  const std::string svg = svg_of(picture_of({Trace{{line({0.0, 0.0}, {0.01, 0.0123456})}, pen}}));
  CHECK(svg.find("width=\"100mm\" height=\"50mm\" viewBox=\"0 0 100 50\"") != std::string::npos);
  CHECK(svg.find("M0 50 L10 37.65") != std::string::npos);
}

TEST_CASE("no number is a negative zero") {
  const std::string svg = svg_of(picture_of({Disc{{-1.0e-9, 0.05}, 0.001, std::nullopt, pen}}));
  CHECK(svg.find("\"-0\"") == std::string::npos);
  CHECK(svg.find("cx=\"0\" cy=\"0\"") != std::string::npos);
}

TEST_CASE("an arc that turns left on the floor turns against the clock on paper") {
  // Sweep flag 0 draws against the clock where y runs downwards (SVG 1.1, 8.3.8).
  const std::string left =
      svg_of(picture_of({Trace{{arc({0.02, 0.01}, {0.01, 0.02}, {0.01, 0.01}, Side::left)}, pen}}));
  CHECK(left.find("M20 40 A10 10 0 0 0 10 30") != std::string::npos);
  const std::string right =
      svg_of(picture_of({Trace{{arc({0.01, 0.02}, {0.02, 0.01}, {0.01, 0.01}, Side::right)}, pen}}));
  CHECK(right.find("M10 30 A10 10 0 0 1 20 40") != std::string::npos);
  const std::string large =
      svg_of(picture_of({Trace{{arc({0.02, 0.01}, {0.01, 0.0}, {0.01, 0.01}, Side::left)}, pen}}));
  CHECK(large.find("A10 10 0 1 0 10 50") != std::string::npos);
}

TEST_CASE("a drawing needs nothing from elsewhere") {
  const std::string svg = svg_of(draw_plan(floors::hall(4, 40, 30)).picture);
  CHECK(floors::xml_fault(svg) == "");
  for (const char* word : {"<script", "<image", "href", "@font-face", "<style", "nan", "inf"}) {
    INFO(word);
    CHECK(svg.find(word) == std::string::npos);
  }
  CHECK(floors::count(svg, "http") == 1);  // the name of the format
}

TEST_CASE("every pattern and clip that is used is defined once") {
  const std::string svg = svg_of(draw_plan(floors::hall(7, 60, 30)).picture);
  for (std::size_t at = svg.find("url(#"); at != std::string::npos; at = svg.find("url(#", at + 1)) {
    const std::string name = svg.substr(at + 5, svg.find(')', at) - at - 5);
    INFO(name);
    CHECK(floors::count(svg, "id=\"" + name + "\"") == 1);
  }
}

TEST_CASE("text is wrapped at spaces and none of it is lost") {
  const std::string text = "a rather long sentence with averyveryverylongwordinit and an end";
  std::string joined;
  for (const std::string& one : wrapped(text, 0.003, 0.03)) {
    joined += (joined.empty() ? "" : " ") + one;
    if (one.find(' ') != std::string::npos) CHECK(text_size(one, 0.003, false).width_m <= 0.03);
  }
  CHECK(joined == text);
}
