// What `balance` says, from answers made by hand.
#include "sample.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

std::string text(const Answer& answer, bool full = false) { return text_of(answer, {"harness.toml", full, ""}); }

void check_part(const std::string& all, const std::string& part) { CHECK_THAT(all, Catch::Matchers::Contains(part)); }

/// `ports` loops, each to be turned down.
Answer manifold_of(int ports) {
  Answer answer = sample(Question::balance);
  const PortSetting port = answer.balance->port[0];
  const Loop loop = answer.loops->loop[0];
  const LoopState state = answer.point->loop[0];
  answer.balance->port.clear();
  answer.balance->move.clear();
  answer.loops->loop.clear();
  answer.point->loop.clear();
  for (int i = 1; i <= ports; ++i) {
    answer.balance->port.push_back(port);
    answer.balance->port.back().port = i;
    answer.loops->loop.push_back(loop);
    answer.point->loop.push_back(state);
    answer.balance->move.push_back({port.loop, i, port.after_m3_per_s, port.set_turns,
                                    std::vector<double>(static_cast<std::size_t>(ports), port.after_m3_per_s)});
  }
  answer.balance->hardest = static_cast<std::size_t>(ports - 1);
  return answer;
}

}  // namespace

TEST_CASE("moves come first, with what the other meters should then read") {
  const std::string all = text(sample(Question::balance));
  const auto lines = lines_of(all);
  CHECK(lines[0] == "HARNESS SHOP   setting the manifold   2 loops, 1/2 in tube   (harness.toml)");
  CHECK(lines[2] == "ONE MOVE. Open every port fully, then:");
  CHECK(lines[3] == "  1  turn PORT 1 down until its meter shows 0.62 (2.25 turns from shut)");
  CHECK(lines[4] == "       the others should then read 2: 0.73");
  check_part(flat(all),
             "Stop there. Every loop is inside its range. Leave port 2 open: its loop is the hardest, the one "
             "that asks the pump for most.");
}

TEST_CASE("the manifold stands in a table with its totals") {
  const std::string all = flat(text(sample(Question::balance)));
  check_part(all, "port goes to ft all open aim good enough after turns");
  check_part(all, "1 bench 241 0.78 0.61 0.54 to 0.70 0.62 2.25");
  check_part(all, "2 big door, east 290 0.60 0.74 0.66 to 0.85 0.73 open");
  check_part(all, "total, gpm ~ 1.38 1.35 1.35");
  CHECK_FALSE(has(all, "uthority"));
  const std::string full = flat(text(sample(Question::balance), true));
  check_part(full, "0.62 2.25 8");
  check_part(full, "valve authority, the share of");
}

TEST_CASE("what it means to leave it, and how far to go") {
  Answer answer = sample(Question::balance);
  check_part(flat(text(answer)), "Left untouched, bench gets 28 % too much, and no loop is further off.");
  check_part(flat(text(answer)), "\"Good enough\" costs a loop at most 3 % of its heat.");
  check_part(flat(text(answer)), "readings are for one set to 1.35 gpm against 8.0 ft of head");
  answer.balance->untouched_worst_share = -0.12;
  check_part(flat(text(answer)), "bench gets 12 % too little");
  answer.balance->untouched_worst_share = 4.57;
  check_part(flat(text(answer)), "bench gets 5.6 times its aim");
}

TEST_CASE("where all open is good enough nobody is sent to turn anything") {
  Answer answer = sample(Question::balance);
  for (PortSetting& port : answer.balance->port) port.open_m3_per_s = port.aim_m3_per_s;
  answer.balance->open_is_enough = true;
  const std::string all = text(answer);
  CHECK(lines_of(all)[2] == "NOTHING NEED BE TURNED. Open every port fully and leave it so.");
  CHECK_FALSE(has(all, "turn PORT"));
}

TEST_CASE("a loop that stays outside its range is marked") {
  Answer answer = sample(Question::balance);
  answer.balance->port[0].within = false;
  check_part(flat(text(answer)), "0.62 ! 2.25");
  check_part(flat(text(answer)), "Not every loop comes inside its range.");
}

TEST_CASE("a manifold of many ports still fits a screen, and --full leaves nothing out") {
  for (const int ports : {3, 7, 12, 16, 40}) {
    INFO(ports);
    const Answer answer = manifold_of(ports);
    CHECK(lines_of(text(answer)).size() <= 45);
    const std::string full = text(answer, true);
    check_part(full, "turn PORT " + std::to_string(ports) + " down");
    for (const std::string& line : lines_of(full)) CHECK(line.size() <= 80);
  }
  check_part(text(manifold_of(40)), "more: add --full");
}

TEST_CASE("with several manifolds a port says whose it is") {
  Answer answer = sample(Question::balance);
  answer.file.design.manifold.resize(2);
  answer.file.design.manifold[0].name = "north";
  answer.file.design.manifold[1].name = "south";
  answer.loops->loop[1].manifold = 1;
  answer.balance->port[1].port = 1;
  const std::string all = flat(text(answer));
  check_part(all, "Manifolds: 1 north, 2 south.");
  check_part(all, "turn PORT 1-1 down");
  check_part(all, "read 2-1: 0.73");
  check_part(all, "Leave port 2-1 open");
}

TEST_CASE("lengths alone: the aims share by length, and nothing speaks of heat") {
  Answer answer = sample(Question::balance);
  answer.file = from_keys({{"tube.size", "1/2 in"}, {"loop[1].length", "241 ft"}, {"loop[2].length", "290 ft"}});
  answer.envelope.reset();
  answer.floor.reset();
  answer.point.reset();
  answer.sizes.reset();
  answer.freeze.reset();
  answer.sensitivity.clear();
  answer.change.clear();
  const std::string all = flat(text_of(answer, {"", false, "--lengths \"241 290 ft\""}));
  check_part(all, "\"Good enough\" is 10 % under to 15 % over the aim.");
  check_part(all, "The aims share the flow by length");
  check_part(all, "against 8.0 ft of head");
  check_part(all, "Next: slabwright design --lengths \"241 290 ft\"");
}

TEST_CASE("no loops, nothing to balance") {
  Answer answer;
  answer.wishes.question = Question::balance;
  answer.file = from_keys({{"slab.size", "36 x 30 ft"}});
  answer.lacking = {"for loops: give --size \"36 x 30 ft\", or --lengths"};
  check_part(text(answer), "NOTHING TO BALANCE YET.\nfor loops: give --size");
}
