// manuals/design-file.md is what the descriptions say. To write it anew: SLABWRIGHT_WRITE=1 test_design "*reference
// page*"
#include <cstdlib>
#include <fstream>

#include "slabwright/design.hpp"
#include "support/catch.hpp"
#include "support/table.hpp"

using namespace slabwright;

TEST_CASE("the reference page is what the descriptions say") {
  const std::string page = design_reference();
  if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(SLABWRIGHT_ROOT "/manuals/design-file.md") << page;
  CHECK(test::read_text("manuals/design-file.md") == page);
}

TEST_CASE("the reference page has every section, key and default") {
  const std::string page = design_reference();
  Design design;
  for (const Key& key : record_of(design).keys) {
    const Slot slot = key.slot(&design);
    if (const auto* rows = std::get_if<Rows>(&slot)) {
      rows->add(rows->at);
      CHECK(page.find("## [[" + std::string(key.word) + "]]") != std::string::npos);
    }
    if (std::holds_alternative<Record>(slot))
      CHECK(page.find("## [" + std::string(key.word) + "]") != std::string::npos);
  }
  walk(record_of(design), [&](const std::string& path, const Key& key, const Slot&) {
    INFO(path);
    CHECK(page.find("| `" + std::string(key.word) + "` | " + std::string(key.says.meaning)) != std::string::npos);
    if (!key.says.us.empty()) CHECK(page.find("`" + std::string(key.says.us) + "`") != std::string::npos);
  });
}
