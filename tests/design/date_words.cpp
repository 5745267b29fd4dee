// The day of the pour, in a file and as an option.
#include "slabwright/design.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::string refused(const std::string& text) {
  Date date;
  return read_words(text, date);
}

}  // namespace

TEST_CASE("a date is read with and without quotes and written as it is read") {
  for (const std::string value : {"\"2028-02-29\"", "2028-02-29", "\" 2028-02-29 \""}) {
    INFO(value);
    const ReadDesign read = read_design("[project]\npoured = " + value + "\n");
    REQUIRE(read.checked);
    const DesignFile& file = *read.checked.value;
    REQUIRE(file.design.project.poured);
    CHECK(file.design.project.poured->on == CivilDate{2028, 2, 29});
    CHECK(has(write_design(file), "poured = \"2028-02-29\""));
    const ReadDesign again = read_design(write_design(file));
    REQUIRE(again.checked);
    CHECK(*again.checked.value == file);
  }
}

TEST_CASE("other forms of a date are refused with what to write") {
  for (const std::string text : {"9/14/2026", "14.9.2026", "2026-9-14", "2026/09/14", "14 September 2026", "tomorrow",
                                 "", "2026-09-14T07:30", "20260914", "5"}) {
    INFO(text);
    CHECK(has(refused(text), "Write year, month and day: \"2026-09-14\"."));
  }
  CHECK(refused("2026-02-30") == "\"2026-02-30\" is no day: February 2026 has 28 days.");
  CHECK(refused("2026-04-31") == "\"2026-04-31\" is no day: April 2026 has 30 days.");
  CHECK(has(refused("2026-00-10"), "no month 0"));
  CHECK(has(refused("2026-09-00"), "September 2026 has 30 days"));
  CHECK(refused("2026-09-14").empty());
}

TEST_CASE("how long the concrete cures is the supplier's word, in days") {
  const ReadDesign read = read_design("[slab]\ncure = \"35 days\"\n");
  REQUIRE(read.checked);
  CHECK(read.checked.value->design.slab.cure_s == 35.0 * 86400.0);
  const ReadDesign silent = read_design("[slab]\n");
  REQUIRE(silent.checked);
  CHECK_FALSE(silent.checked.value->design.slab.cure_s);
  CHECK(silent.checked.value->design.slab.daily_rise_K == Approx(5.0));
}
