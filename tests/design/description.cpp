// What the description says of every key, held to what it promises.
#include <set>

#include "slabwright/design.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

/// A design with a row in every list, so that a walk meets every key.
Design with_all_rows() {
  Design design;
  for (const Key& key : record_of(design).keys) {
    const Slot slot = key.slot(&design);
    if (const auto* rows = std::get_if<Rows>(&slot)) rows->add(rows->at);
  }
  return design;
}

void must_take(const Key& key, const Slot& slot, std::string_view text, System system) {
  if (text.empty()) return;
  INFO(key.word << " = " << text);
  CHECK(read_into(key, slot, text, system).empty());
}

}  // namespace

TEST_CASE("every key says what it means and every default where it comes from") {
  Design design = with_all_rows();
  std::size_t keys = 0;
  walk(record_of(design), [&](const std::string& path, const Key& key, const Slot&) {
    INFO(path);
    ++keys;
    CHECK(key.says.meaning.size() >= 10);
    CHECK(key.says.meaning.back() == '.');
    if (!key.says.us.empty()) CHECK_FALSE(key.says.source.empty());
    if (key.says.us.empty()) {
      CHECK(key.says.si.empty());
      CHECK(key.says.source.empty());
      CHECK(key.says.tight.empty());
    }
    CHECK(key.says.tight.empty() == key.says.poor.empty());
  });
  CHECK(keys >= 100);
  for (const Key& key : record_of(design).keys) CHECK_FALSE(key.says.meaning.empty());
}

TEST_CASE("defaults and both ends of every guess are values that the key takes") {
  Design design = with_all_rows();
  walk(record_of(design), [&](const std::string&, const Key& key, const Slot& slot) {
    const Says& says = key.says;
    for (const std::string_view text : {says.us, says.tight, says.poor}) must_take(key, slot, text, System::us);
    for (const std::string_view text : {says.si, says.si_tight, says.si_poor}) must_take(key, slot, text, System::si);
  });
}

TEST_CASE("every number lies between limits that the key states") {
  Design design = with_all_rows();
  walk(record_of(design), [&](const std::string& path, const Key& key, const Slot&) {
    if (!key.unit) return;
    INFO(path);
    CHECK(key.says.least > -1e300);
    CHECK(key.says.most < 1e300);
    CHECK(key.says.least < key.says.most);
  });
}

TEST_CASE("an example of every key is a value that it takes") {
  Design design = with_all_rows();
  walk(record_of(design), [&](const std::string&, const Key& key, const Slot& slot) {
    for (const System system : {System::us, System::si}) {
      must_take(key, slot, example_of(key, slot, system), system);
    }
  });
}

TEST_CASE("words are trade words: none is used twice in a section, none is forbidden") {
  Design design = with_all_rows();
  std::set<std::string> paths;
  walk(record_of(design), [&](const std::string& path, const Key& key, const Slot&) {
    CHECK(paths.insert(path).second);
    for (const std::string_view word : {"curve", "pattern", "junction", "pipe", "tank", "panel", "depth_of_tube"}) {
      CHECK(key.word != word);
    }
  });
  for (const Key& key : record_of(design).keys) CHECK(key.word != "pipe");
}

TEST_CASE("a path finds its key") {
  const Design design = with_all_rows();
  CHECK(key_at(design, "slab.thickness")->member == "thickness_m");
  CHECK(key_at(design, "room[1].area")->word == "area");
  CHECK(key_at(design, "opening[1]")->word == "opening");
  CHECK(key_at(design, "room[2].area") == nullptr);
  CHECK(key_at(design, "slab.depth") == nullptr);
}
