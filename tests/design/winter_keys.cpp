// Guesses of the winter's keys, and which keys the winter alone reads.
#include "design/support.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

std::string_view only_for(const DesignFile& file, std::string_view path) {
  const Key* key = key_at(file.design, path);
  return key ? key->says.only_for : "no such key";
}

}  // namespace

TEST_CASE("a big door is opened by guess, a door and a window are not, and sun comes in through a window") {
  const DesignFile file = must_read(
      "units = \"SI\"\n[[opening]]\nkind = \"big door\"\n[[opening]]\nkind = \"door\"\n[[opening]]\nkind = \"window\"\n"
      "[[opening]]\nkind = \"door\"\nopened = 12\nsun = \"20 %\"");
  const auto& openings = file.design.opening;
  CHECK(openings[0].opened_number == 4.0);
  CHECK(openings[1].opened_number == 0.0);
  CHECK(openings[2].opened_number == 0.0);
  CHECK(openings[3].opened_number == 12.0);
  CHECK(openings[0].open_s == 300.0);
  CHECK(openings[0].sun_share == 0.0);
  CHECK(openings[2].sun_share == 0.5);
  CHECK(openings[3].sun_share == 0.2);
  CHECK(guess(file, "opening[1].opened") == "4");
  CHECK(guess(file, "opening[2].opened") == "-");
  CHECK(guess(file, "opening[2].open") == "-");
  CHECK(guess(file, "opening[3].sun") == "50 %");
  CHECK(guess(file, "opening[4].open") == "5 min");
}

TEST_CASE("a second source starts again a little above its cut-out") {
  const std::string pump = "[second_source]\nkind = \"heat pump\"\ncut_out = ";
  const DesignFile us = must_read("units = \"US\"\n" + pump + "\"-13 F\""),
                   si = must_read("units = \"SI\"\n" + pump + "\"-25 C\"");
  CHECK(*us.design.second_source.cut_in_degC == Approx((-8.0 - 32.0) / 1.8));
  CHECK(*si.design.second_source.cut_in_degC == -22.0);
  CHECK(guess(us, "second_source.cut_in") == "-8 F");
  CHECK(guess(must_read("units = \"US\"\n" + pump + "\"-13 F\"\ncut_in = \"-10 F\""), "second_source.cut_in") == "-");
  CHECK_FALSE(must_read("[second_source]\nkind = \"heat pump\"").design.second_source.cut_in_degC);
  CHECK(*with_key(us, "second_source.cut_out", "-3 F")->design.second_source.cut_in_degC == Approx((2.0 - 32.0) / 1.8));
}

TEST_CASE("what a second source would have is no guess where there is none") {
  const DesignFile none = must_read("units = \"US\""), pump = must_read("[second_source]\nkind = \"heat pump\"");
  for (const std::string_view word : {"drain_pan", "defrost", "gradient"}) {
    INFO(word);
    CHECK(guess(none, "second_source." + std::string(word)) == "-");
    CHECK(guess(pump, "second_source." + std::string(word)) != "-");
  }
  const DesignFile table =
      must_read("[second_source]\nkind = \"heat pump\"\npoints = [\"-15 C: 5 kW, COP 1.9\", \"8 C: 8.5 kW, COP 3.5\"]");
  CHECK(table.design.second_source.defrost == Defrost::in_table);
  CHECK(pump.design.second_source.defrost == Defrost::on_demand);
}

TEST_CASE("a table that gets worse as it gets warmer is read, and warned of") {
  const ReadDesign read = read_design(
      "[second_source]\nkind = \"heat pump\"\npoints = [\"-15 C: 5 kW, COP 1.9\", \"8 C: 4.5 kW, COP 3.5\"]");
  REQUIRE(read.checked);
  REQUIRE(read.checked.said.size() == 1);
  CHECK(read.checked.said[0].severity == Severity::warning);
  CHECK(read.checked.said[0].code == "second-source.falling");
}

TEST_CASE("work begins at seven until the file says otherwise") {
  const DesignFile file = must_read("units = \"US\"");
  CHECK(file.design.work.hours == ClockSpan{7 * 3600.0, 17 * 3600.0});
  CHECK(file.design.work.days == WorkDays::monday_to_friday);
  CHECK(must_read("[work]\nhours = \"5:30 to 14:00\"").design.work.hours.from_s == 5.5 * 3600.0);
}

TEST_CASE("a way is what its keys say, the rest as usual") {
  const DesignFile file = must_read(
      "[second_source]\nkind = \"heat pump\"\n[[way]]\nname = \"charged\"\nfloor = \"setpoint\"\nsensor = \"slab\"\n"
      "setpoint = \"55 F\"\ncharge = \"22:00 to 6:00\"\ncharge_to = \"77 F\"\nsecond_source = \"always\"\n"
      "source_rest = \"50 F\"\nearly_start = false\n[[way]]\n");
  const WayEntry &charged = file.design.way[0], &plain = file.design.way[1];
  CHECK(charged.floor == WayFloor::setpoint);
  CHECK(charged.charge == ClockSpan{22 * 3600.0, 6 * 3600.0});
  CHECK(*charged.charge_to_degC == Approx(25.0));
  CHECK(*charged.source_rest_degC == Approx(10.0));
  CHECK_FALSE(charged.early_start);
  CHECK(plain.floor == WayFloor::frost_hold);
  CHECK(plain.second_source == WaySource::off);
  CHECK(plain.early_start);
  CHECK_FALSE(plain.charge);
  CHECK(must_read(write_design(file)) == file);
}

TEST_CASE("keys that the winter alone reads say so") {
  const DesignFile file =
      must_read("[[way]]\n[[vehicle]]\nmass = \"2 kg\"\n[[opening]]\n[[exhaust]]\nflow = \"9 cfm\"");
  for (const std::string_view path :
       {"way[1].floor", "vehicle[1].mass", "electricity.price", "bill.months", "work.days", "work.people",
        "opening[1].opened", "opening[1].sun", "exhaust[1].hours", "building.mass", "climate.latitude",
        "second_source.points", "second_source.gradient"})
    CHECK(only_for(file, path) == "winter");
  for (const std::string_view path : {"work.hours", "second_source.cut_out", "opening[1].size", "exhaust[1].flow"})
    CHECK(only_for(file, path) == "");
}
