// Pages of every layout: each stands by itself, and what must change with an input does.
#include <map>

#include "slabwright/sheets.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;

namespace {

Answer answered(const DesignFile& file) {
  Wishes wishes;
  wishes.question = Question::sheets;
  wishes.sensitivities = false;
  wishes.bands = false;
  return answer(file, wishes);
}

std::map<std::string, std::string> pages(const DesignFile& file) {
  std::map<std::string, std::string> all;
  for (const ReaderSheet& page : reader_sheets(answered(file))) all[page.sheet.name] = page.sheet.content;
  return all;
}

}  // namespace

TEST_CASE("every layout has its pages, whole and without anything of elsewhere", "[whole]") {
  for (const test::Layout& layout : test::layouts()) {
    INFO(layout.name);
    const auto all = pages(layout.file);
    CHECK(all.count("index.html") == 1);
    CHECK(all.count("owner.html") == 1);
    for (const auto& [name, html] : all) {
      INFO(name);
      CHECK(html.compare(0, 15, "<!DOCTYPE html>") == 0);
      CHECK(html.size() < 400'000);
      CHECK(html.find("<script") == std::string::npos);
      CHECK(html.find("http://") == html.find("http://www.w3.org"));  // a name space, no address
      CHECK(html.find("src=") == std::string::npos);
      if (name != "index.html") CHECK(all.at("index.html").find("href=\"" + name + "\"") != std::string::npos);
    }
  }
}

TEST_CASE("names that look like markup come out as text") {
  auto file = test::from_keys({{"slab.size", "20 x 16 ft"},
                               {"project.name", "<script>alert('x')</script>"},
                               {"climate.outdoor", "0 F"},
                               {"manifold[1].name", "\"><img onerror=x>"}});
  for (const auto& [name, html] : pages(file)) {
    INFO(name);
    CHECK(html.find("<script") == std::string::npos);
    CHECK(html.find("<img") == std::string::npos);
  }
}

TEST_CASE("a drilling guide says that it holds only for tube laid by our drawing", "[whole]") {
  const std::string words = "holds only where tube was laid by this drawing", note = "Only for tube that was laid by";
  const test::Keys floor{{"slab.size", "20 x 16 ft"}, {"climate.outdoor", "0 F"}, {"manifold[1].place", "10 ft, 0 ft"}};
  const std::string drawn = pages(test::from_keys(floor)).at("drilling.html");
  CHECK(drawn.find(words) != std::string::npos);
  CHECK(drawn.find(note) != std::string::npos);
  // Where the user's own paths stand, the drawing is what was measured.
  test::Keys measured = floor;
  measured.push_back({"loop[1].path", "9 ft, 0 ft; 9 ft, 2 ft; 1 ft, 2 ft; 1 ft, 15 ft; 11 ft, 15 ft; 11 ft, 0 ft"});
  const std::string own = pages(test::from_keys(measured)).at("drilling.html");
  CHECK(own.find(words) == std::string::npos);
  CHECK(own.find(note) == std::string::npos);
}
