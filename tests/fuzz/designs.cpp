// The changes that the fuzzers make to designs, and the words they are given. To write the words anew:
// SLABWRIGHT_WRITE=1 test_fuzz "*dictionary*"
#include <cstdlib>
#include <fstream>

#include "fuzz/dictionary.hpp"
#include "fuzz/mutated.hpp"
#include "fuzz/targets.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"
#include "support/table.hpp"

using namespace slabwright;

TEST_CASE("the fuzzers' dictionary is what the description says") {
  const std::string words = fuzz::dictionary();
  if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(SLABWRIGHT_ROOT "/tests/fuzz/design.dict") << words;
  CHECK(test::read_text("tests/fuzz/design.dict") == words);
}

TEST_CASE("most changed designs are still designs, and each seed changes alike") {
  int accepted = 0, tried = 0, all = 0;
  for (const test::Layout& layout : test::layouts()) {
    for (std::uint32_t seed = 1; seed <= 40; ++seed, ++all) {
      const std::string changed = fuzz::mutated(layout.text, seed, 100000);
      CHECK(fuzz::mutated(layout.text, seed, 100000) == changed);
      INFO(changed);
      CHECK_NOTHROW(accepted += fuzz::design(changed));
      tried += seed % 10 == 0 && read_design(fuzz::mutated_design(layout.text, seed, 100000)).checked;
    }
  }
  INFO(accepted << " of " << all);
  CHECK(2 * accepted >= all);
  CHECK(tried >= all / 10 - 1);
}

TEST_CASE("two designs crossed have sections of both") {
  const std::string first = "units = \"US\"\n[slab]\nsize = \"36 ft x 30 ft\"\n[tube]\nspacing = \"12 in\"\n";
  const std::string second = "[slab]\nsize = \"9 ft x 9 ft\"\n[climate]\noutdoor = \"-12 F\"\n";
  bool took = false, added = false;
  for (std::uint32_t seed = 0; seed < 40; ++seed) {
    const std::string whole = fuzz::crossed(first, second, seed, 1000);
    took = took || whole.find("9 ft x 9 ft") != std::string::npos;
    added = added || whole.find("[climate]") != std::string::npos;
    CHECK(fuzz::design(whole));
  }
  CHECK(took);
  CHECK(added);
  CHECK(fuzz::crossed(first, second, 1, 20).size() == 20);
}
