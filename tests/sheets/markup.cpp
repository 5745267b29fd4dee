// Pieces of a page: escaped, whole, and without a digit that is no quote.
#include "sheets/markup.hpp"

#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::sheets;

TEST_CASE("words of ours hold no digit and are escaped") {
  CHECK(prose("doors & <gates>").html == "doors &amp; &lt;gates&gt;");
  CHECK_THROWS_WITH(prose("wait 28 days"), "sheets: a figure that is not quoted: wait 28 days");
}

TEST_CASE("a quote carries its key, and its unit where it is printed without") {
  CHECK(quoted({"a.b_m", "3 ft"}).html == "<span class=\"f\" data-key=\"a.b_m\">3 ft</span>");
  CHECK(quoted({"a.b_m", "3", "ft"}).html == "<span class=\"f\" data-key=\"a.b_m\" data-unit=\"ft\">3</span>");
  CHECK(quoted({"room[0].name", "<script>alert(1)</script>", "", false}).html ==
        "<span data-key=\"room[0].name\">&lt;script&gt;alert(1)&lt;/script&gt;</span>");
}

TEST_CASE("sentences are put together from words and quotes") {
  const Quote hours{"outage.lasts_s", "8 h"};
  CHECK(say("It keeps ", hours, ".").html == "It keeps <span class=\"f\" data-key=\"outage.lasts_s\">8 h</span>.");
  CHECK(paragraph("A ", prose("b")).html == "<p>A b</p>\n");
}

TEST_CASE("lists and tables without rows are nothing") {
  CHECK(bullets({}).html.empty());
  CHECK(facts({}).html.empty());
  CHECK(bullets({prose("one")}).html == "<ul>\n<li>one</li>\n</ul>\n");
}

TEST_CASE("a table's heads stand over all pages, with their units") {
  const std::string html =
      table({{"port"}, {"aim", "gpm"}, {"loop", {}, false}}, {{prose("a"), prose("b"), prose("c")}}).html;
  CHECK(html.find("<thead><tr><th class=\"n\">port</th><th class=\"n\">aim<br><small>gpm</small></th><th>loop</th>") !=
        std::string::npos);
  CHECK(html.find("<tr><td class=\"n\">a</td><td class=\"n\">b</td><td>c</td></tr>") != std::string::npos);
}

TEST_CASE("a drawing stands in a page with ids of its own") {
  Picture picture{0.1, 0.05, "Plan", "A plan", {}};
  picture.layer.push_back(
      {"tube", {Lettering{{0.05, 0.02}, "3 ft", 0.004, {}, false, false, Align::middle, "a.b_m"}}, {}});
  const std::string html = figure(picture, "plan", prose("The floor")).html;
  CHECK(html.find("id=\"plan-tube\"") != std::string::npos);
  CHECK(html.find("data-key=\"a.b_m\">3 ft</text>") != std::string::npos);
  CHECK(html.find("min-width:275px") != std::string::npos);  // 11 px for letters of 4 mm on 100 mm
  CHECK(html.find("<?xml") == std::string::npos);
  CHECK(html.find("<figcaption>The floor</figcaption>") != std::string::npos);
}
