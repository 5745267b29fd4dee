// The whole line over every layout: what must hold of an answer whatever its figures.
#include <cmath>

#include "slabwright/answer.hpp"
#include "support/catch.hpp"
#include "support/identities.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

TEST_CASE("each layout answers, and ends as it should") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Answer found = answer(one.file, {Question::design, false});
    REQUIRE(found.loops);
    REQUIRE(found.envelope);
    REQUIRE(found.floor);
    REQUIRE(found.balance);
    REQUIRE(found.point);
    REQUIRE(found.sizes);
    REQUIRE(found.freeze);
    CHECK(found.point->stop == Stop::converged);
  }
  CHECK(exit_code(answer(layout("cold-door").file, {Question::design, false})) == 3);
  CHECK(exit_code(answer(layout("frame-shop").file, {Question::design, false})) == 0);
  CHECK(exit_code(answer(layout("potting-house").file, {Question::design, false})) == 0);
  CHECK(exit_code(answer(layout("ten-lines").file, {Question::design, false})) == 0);
}

TEST_CASE("each watt, each litre and each metre of tube is found once") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Answer found = answer(one.file, {Question::design, false});
    std::vector<Identity> all = identities_of(found);
    const std::vector<Identity> of_graph = identities_of_graph(found);
    CHECK(of_graph.size() > found.loops->loop.size());
    all.insert(all.end(), of_graph.begin(), of_graph.end());
    for (const Identity& identity : all) {
      INFO(identity.what << ": " << identity.left << " and " << identity.right);
      CHECK(identity.off_share() <= identity.allowed_share);
    }
    CHECK(found.point->down_W > 0.0);
  }
}

TEST_CASE("rooms get the heat they lose, less what is set free in them") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Answer found = answer(one.file, {Question::design, false});
    for (std::size_t i = 0; i < found.envelope->room.size(); ++i) {
      const RoomLoss& room = found.envelope->room[i];
      const double given = found.floor->room[i].given_W_per_m2 * room.floor_m2;
      if (room.heated_floor) CHECK(found.point->room_up_W[i] > 0.999 * std::min(room.wanted_W, given));
    }
  }
}

TEST_CASE("a design written out reads back the same, guesses too") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const ReadDesign back = read_design(write_design(one.file));
    REQUIRE(back.checked);
    CHECK(*back.checked.value == one.file);
  }
}

TEST_CASE("the same question has the same answer") {
  const Answer one = answer(layout("frame-shop").file, {Question::design, true});
  const Answer two = answer(layout("frame-shop").file, {Question::design, true});
  CHECK(one.point->supply_degC == two.point->supply_degC);
  CHECK(one.freeze->slab->best_degC == two.freeze->slab->best_degC);
  REQUIRE(one.sensitivity.size() == two.sensitivity.size());
  for (std::size_t i = 0; i < one.sensitivity.size(); ++i) CHECK(one.sensitivity[i].path == two.sensitivity[i].path);
}

TEST_CASE("a building that nobody has described has ranges, a described one has none") {
  const Answer ten = answer(layout("ten-lines").file, {Question::design, true});
  REQUIRE(ten.loss_W);
  CHECK(ten.loss_W->tight < ten.loss_W->usual);
  CHECK(ten.loss_W->usual < ten.loss_W->poor);
  REQUIRE(ten.supply_degC);
  CHECK(ten.supply_degC->tight < ten.supply_degC->poor);
  CHECK(ten.sensitivity.size() >= 3);
  CHECK_FALSE(answer(layout("frame-shop").file, {Question::design, true}).loss_W);
}

TEST_CASE("foam at the edge and across the slab at the door is worth degrees") {
  const auto shut_degC = [](const DesignFile& file, const std::string& word) {
    const Answer found = answer(file, {Question::design, false});
    for (const PlaceAtSetting& place : found.freeze->place)
      if (place.kind == PlaceKind::tube && place.name.find(word) != std::string::npos) return place.shut_degC;
    throw std::logic_error("no tube at " + word);
  };
  const DesignFile bare = layout("ten-lines").file;
  const DesignFile board = with_key(bare, "edge.insulation", "R-10").value();
  const DesignFile both = with_key(board, "edge.door_strip", "R-10").value();
  CHECK(shut_degC(board, "corners") > shut_degC(bare, "corners") + 3.0);
  CHECK(shut_degC(both, "big door") > shut_degC(board, "big door") + 1.0);
}

TEST_CASE("what is lacking is absent and said") {
  const Answer loops_only = answer(from_keys({{"slab.size", "36 x 30 ft"}}), {Question::design, true});
  CHECK(loops_only.loops);
  CHECK_FALSE(loops_only.envelope);
  CHECK_FALSE(loops_only.freeze);
  CHECK(loops_only.lacking.size() == 1);
  CHECK(exit_code(loops_only) == 0);
  const Answer nothing = answer(from_keys({{"tube.size", "1/2 in"}}), {Question::design, true});
  CHECK(exit_code(nothing) == 2);
}

TEST_CASE("the clock of a power cut runs when the frost hold is asked for, and not otherwise", "[whole]") {
  for (const Layout& one : layouts()) {
    INFO(one.name);
    const Answer frost = answer(one.file, {Question::freeze, false});
    REQUIRE(frost.outage);
    CHECK(frost.outage->row.size() % 3 == 0);
    CHECK_FALSE(frost.outage->floor_cools_air);
    for (const OutageCase& row : frost.outage->row) CHECK(row.outdoor_degC < row.air_dial_degC);
    CHECK_FALSE(answer(one.file, {Question::check, false}).outage);
  }
}
