// Sheets for who pays, wires, fits and looks after: what they say of every layout and of a bare beginning, and the
// golden text of two. SLABWRIGHT_WRITE=1 writes that anew, to be read again by somebody.
#include <cstdlib>
#include <fstream>
#include <map>

#include "page_text.hpp"
#include "report/golden.hpp"
#include "sheets/page.hpp"
#include "slabwright/sheets.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"
#include "support/table.hpp"

using namespace slabwright;

namespace {

constexpr const char* own_pages[] = {"owner.html", "electrician.html", "heat-pump.html", "frost-card.html",
                                     "guesses.html"};

Answer asked(const DesignFile& file, bool whole) {
  Wishes wishes;
  wishes.question = Question::sheets;
  wishes.sensitivities = wishes.bands = whole;
  return answer(file, wishes);
}

std::map<std::string, std::string> texts_of(const Answer& answer) {
  std::map<std::string, std::string> all;
  for (const ReaderSheet& page : reader_sheets(answer)) all[page.sheet.name] = test::page_text(page.sheet.content);
  return all;
}

std::map<std::string, std::string> bare(const test::Keys& keys) {
  return texts_of(asked(test::from_keys(keys), false));
}

bool says(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

void check_page(const std::string& text, const std::string& name) {
  const std::string path = "tests/golden/sheets/" + name + ".txt";
  if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(std::string(SLABWRIGHT_ROOT) + "/" + path) << text;
  CHECK(test::golden_difference(test::read_text(path), text) == "");
}

}  // namespace

TEST_CASE("a page's text has its words and numbers, and no tags, heads of blocks or drawings") {
  CHECK(test::page_text("<head><title>no</title></head><p>a &amp; b</p>\n<tr><td><span class=\"h\">head</span><span>7 "
                        "ft</span></td><td>8</td></tr>\n<svg><text>9</text></svg>") == "a & b\n7 ft  8  \n");
}

TEST_CASE("sheets of a floor alone say what would tell the rest") {
  const auto all = bare({{"slab.size", "36 x 30 ft"}, {"tube.spacing", "12 in"}});
  for (const char* name : own_pages) {
    INFO(name);
    REQUIRE(all.count(name) == 1);
  }
  for (const char* name : {"owner.html", "electrician.html", "heat-pump.html", "frost-card.html"})
    CHECK(says(all.at(name), "give --outdoor"));
  CHECK_FALSE(says(all.at("owner.html"), "wall thermostat"));
}

TEST_CASE("without a second source its sheets say so, and with one they say what it is") {
  const test::Keys shop{{"slab.size", "20 x 16 ft"}, {"climate.outdoor", "0 F"}};
  const auto alone = bare(shop);
  CHECK(says(alone.at("heat-pump.html"), "No second source is in the design"));
  CHECK(says(alone.at("electrician.html"), "None in the design"));
  test::Keys more = shop;
  more.insert(more.end(), {{"second_source.kind", "heat pump"},
                           {"second_source.capacity", "12000 Btu/h"},
                           {"second_source.cut_out", "10 F"}});
  const auto both = bare(more);
  CHECK(says(both.at("heat-pump.html"), "12,000 Btu/h"));
  CHECK(says(both.at("heat-pump.html"), "locked out"));
  CHECK(says(both.at("electrician.html"), "Plate: MCA"));
}

TEST_CASE("the electrician's share of the current is only there where the codes ask for it") {
  const test::Keys shop{{"slab.size", "20 x 16 ft"}, {"climate.outdoor", "0 F"}};
  CHECK(says(bare(shop).at("electrician.html"), "125 %"));
  test::Keys none = shop;
  none.push_back({"codes", "none"});
  const std::string text = bare(none).at("electrician.html");
  CHECK_FALSE(says(text, "125 %"));
  CHECK(says(text, "no allowance"));
}

TEST_CASE("a price turns energy into money on the owner's sheet") {
  const test::Keys shop{{"slab.size", "20 x 16 ft"}, {"climate.outdoor", "0 F"}};
  CHECK(says(bare(shop).at("owner.html"), "No price is known"));
  test::Keys priced = shop;
  priced.insert(priced.end(), {{"electricity.price", "0.20 /kWh"}, {"electricity.currency", "$"}});
  const std::string text = bare(priced).at("owner.html");
  CHECK_FALSE(says(text, "No price is known"));
  CHECK(says(text, "$"));
}

TEST_CASE("where no setting is enough the card by the boiler says so in capitals") {
  const auto all = texts_of(asked(test::layout("cold-door").file, false));
  CHECK(says(all.at("frost-card.html"), "NO SETTING IS SAFE"));
  CHECK(says(all.at("owner.html"), "NO SETTING IS SAFE"));
  CHECK(says(all.at("owner.html"), "No way of running passes"));
}

TEST_CASE("every layout has the sheets, and two of them as they were before", "[whole]") {
  for (const test::Layout& layout : test::layouts()) {
    INFO(layout.name);
    const bool golden = layout.name == "frame-shop" || layout.name == "potting-house";
    const auto all = texts_of(asked(layout.file, golden));
    for (const char* name : own_pages) CHECK(all.count(name) == 1);
    for (const auto& [name, text] : all) {
      INFO(name);
      if (golden) check_page(text, layout.name + "." + name.substr(0, name.rfind('.')));
    }
  }
}
