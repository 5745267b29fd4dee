// Loops that the user draws, and places for manifolds, from the words of the command line.
#include <fstream>
#include <string>

#include "program.hpp"

using namespace slabwright::test;

namespace {

/// A loop on the left one of four pairs of ports, in a shop of 36 x 30 ft.
const std::string drawn_loop = R"(units = "US"
[slab]
size = "36 x 30 ft"
[[manifold]]
place = "18 ft, 0 ft"
[[loop]]
name = "bench"
path = ["17 ft 5 in, 0 ft", "17 ft 5 in, 2 ft", "2 ft, 2 ft", "2 ft, 20 ft", "12 ft, 20 ft", "12 ft, 19 ft",
        "3 ft, 19 ft", "3 ft, 3 ft", "17 ft 7 in, 3 ft", "17 ft 7 in, 0 ft"]
)";

Ran ran(const std::string& text, const std::string& words) {
  const Folder folder;
  std::ofstream(folder.file("shop.toml")) << text;
  const std::size_t space = words.find(' ');
  const std::string rest = space == std::string::npos ? "" : words.substr(space);
  return run(words.substr(0, space) + " " + folder.file("shop.toml") + rest);
}

bool has(const Ran& ran, const std::string& words) { return ran.out.find(words) != std::string::npos; }

}  // namespace

TEST_CASE("a drawn loop is measured, drawn and drilled round") {
  const Ran route = ran(drawn_loop, "route --full");
  INFO(route.out);
  CHECK(route.code == 0);
  CHECK(has(route, "bench"));
  const Ran drill = ran(drawn_loop, "drill --at '2 ft, 10 ft'");
  INFO(drill.out);
  CHECK(drill.code == 3);
  CHECK(has(drill, "bench"));
}

TEST_CASE("the rest of the floor is laid round a drawn loop") {
  const Ran route = ran(drawn_loop, "route --full --set tube.lay_rest=true");
  INFO(route.out);
  CHECK(route.code == 0);
  CHECK(has(route, "THE LOOPS CAN BE LAID"));
}

TEST_CASE("what a drawn loop breaks fails with its place from two walls") {
  const Ran route = ran(drawn_loop +
                            "[[wall]]\nname = \"yard wall\"\nfrom = \"0 ft, 0 ft\"\nto = \"0 ft, 30 ft\"\n"
                            "[[wall]]\nname = \"door side\"\nfrom = \"0 ft, 0 ft\"\nto = \"36 ft, 0 ft\"\n",
                        "route --set tube.from_walls='30 in'");
  INFO(route.out);
  CHECK(route.code == 3);
  CHECK(has(route, "yard wall,"));
  CHECK(has(route, "door side"));
}

TEST_CASE("another place for a manifold is looked for when it is asked for") {
  const Ran plain = run("route --size '60 x 20 ft' --set manifold[1].place='4 ft, 0 ft'");
  CHECK_FALSE(has(plain, "shorter ways out"));
  const Ran better = run("route --size '60 x 20 ft' --set manifold[1].place='4 ft, 0 ft' --better-place");
  INFO(better.out);
  CHECK(better.code == 0);
  CHECK((has(better, "shorter ways out") || has(better, "no place along the walls")));
}
