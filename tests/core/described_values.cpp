// A described struct read, written and walked without its type.
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "slabwright/key.hpp"
#include "support/catch.hpp"

namespace slabwright {

enum class Colour { red, dark_blue };
template <>
struct Choices<Colour> {
  static constexpr auto names = std::to_array<std::string_view>({"red", "dark blue"});
};

struct Shelf {
  std::string name;
  double width_m = 0.0;
  friend bool operator==(const Shelf&, const Shelf&) = default;
};

struct Cupboard {
  double height_m = 0.0;
  std::optional<double> load_W;
  double share_share = 0.0;
  int doors = 1;
  bool open = false;
  Colour colour = Colour::red;
  std::vector<Shelf> shelf;
  Shelf top;
};

Record record_of(Shelf& x) {
  static constexpr Key keys[] = {key<&Shelf::name>({.meaning = "Its name."}),
                                 key<&Shelf::width_m>({.meaning = "Its width.", .least = 0.1, .most = 2.0})};
  return {keys, &x};
}

Record record_of(Cupboard& x) {
  static constexpr Key keys[] = {
      key<&Cupboard::height_m>({.meaning = "Its height.", .us = "6 ft", .si = "1.8 m", .least = 0.5, .most = 3.0}),
      key<&Cupboard::load_W>({.meaning = "A lamp."}),
      key<&Cupboard::share_share>({.meaning = "How full."}),
      key<&Cupboard::doors>({.meaning = "Doors.", .least = 0.0, .most = 4.0}),
      key<&Cupboard::open>({.meaning = "Without doors."}),
      key<&Cupboard::colour>({.meaning = "Paint."}),
      key<&Cupboard::shelf>({.meaning = "Boards."}),
      key<&Cupboard::top>({.meaning = "The upper board."})};
  return {keys, &x};
}

}  // namespace slabwright

using namespace slabwright;

namespace {

std::string put(Cupboard& cupboard, std::string_view path, std::string_view text, System system = System::us) {
  const auto found = find_path(record_of(cupboard), path);
  REQUIRE(found);
  return read_into(*found->key, found->slot, text, system);
}

std::string out(const Cupboard& cupboard, std::string_view path) {
  const auto found = find_path(reading(cupboard), path);
  REQUIRE(found);
  return write_out(*found->key, found->slot, System::us);
}

}  // namespace

TEST_CASE("a member's name gives the key's word and its unit") {
  Cupboard cupboard;
  const Record record = record_of(cupboard);
  CHECK(record.keys[0].word == "height");
  CHECK(record.keys[0].member == "height_m");
  CHECK(record.keys[0].unit->dimension == Dimension::length);
  CHECK(record.keys[1].unit->dimension == Dimension::power);
  CHECK(record.keys[3].unit == nullptr);
  CHECK(find_key(record, "colour") == &record.keys[5]);
  CHECK(find_key(record, "color") == nullptr);
}

TEST_CASE("each kind of value is read and written") {
  Cupboard cupboard;
  CHECK(put(cupboard, "height", "6 ft").empty());
  CHECK(cupboard.height_m == 6 * 0.3048);
  CHECK(out(cupboard, "load").empty());
  CHECK(put(cupboard, "load", "60 W").empty());
  CHECK(cupboard.load_W == 60.0);
  CHECK(put(cupboard, "doors", "2").empty());
  CHECK(put(cupboard, "open", "yes").empty());
  CHECK(put(cupboard, "colour", "Dark-Blue").empty());
  CHECK(cupboard.colour == Colour::dark_blue);
  CHECK(put(cupboard, "share", "25 %").empty());
  CHECK(cupboard.share_share == 0.25);
  CHECK(put(cupboard, "top.name", "attic").empty());
  CHECK(out(cupboard, "height") == "6 ft");
  CHECK(out(cupboard, "doors") == "2");
  CHECK(out(cupboard, "open") == "true");
  CHECK(out(cupboard, "colour") == "dark blue");
  CHECK(out(cupboard, "top.name") == "attic");
}

TEST_CASE("a sentence says what to write, in the reader's units first, and the value stays") {
  Cupboard cupboard;
  cupboard.height_m = 1.0;
  CHECK(put(cupboard, "height", "6") == "height 6 has no unit. Write \"6 ft\" or \"1.8 m\".");
  CHECK(put(cupboard, "height", "2", System::si) == "height 2 has no unit. Write \"2 m\" or \"6.6 ft\".");
  CHECK(put(cupboard, "height", "1 ft") == "height 1 ft is too small: at least 1.64 ft (0.5 m).");
  CHECK(put(cupboard, "height", "4 m", System::si) == "height 4 m is too large: at most 3 m (9.8 ft).");
  CHECK(put(cupboard, "height", "0,9 m") == "decimal comma: write \"0.9 m\".");
  CHECK(put(cupboard, "height", "6 psi") == "\"psi\" does not fit height. Units that fit: in, ft, mm, cm, m, yd.");
  CHECK(put(cupboard, "height", "6 hands") ==
        "\"hands\" is no unit known here. Units that fit height: in, ft, mm, cm, m, yd.");
  CHECK(put(cupboard, "height", "tall") == "\"tall\" is not a number with a unit. Write height = \"6 ft\".");
  CHECK(put(cupboard, "height", "1e999 m") == "1e999 m is too large a number.");
  CHECK(put(cupboard, "doors", "1.5") == "doors takes a whole number, not \"1.5\".");
  CHECK(put(cupboard, "doors", "9") == "doors 9 is too large: at most 4.");
  CHECK(put(cupboard, "open", "maybe") == "open is true or false, not \"maybe\".");
  CHECK(put(cupboard, "colour", "blue") == "colour is \"red\" or \"dark blue\", not \"blue\".");
  CHECK(put(cupboard, "top.name", std::string(81, 'x')) == "name is too long: at most 80 letters.");
  CHECK(put(cupboard, "top.name", "two\nlines") == "name is one line of plain text.");
  CHECK(put(cupboard, "height", std::string(201, '1')) == "height is too long a text for a value.");
  CHECK(put(cupboard, "top", "x") == "top does not take one text.");
  CHECK(cupboard.height_m == 1.0);
  CHECK(cupboard.doors == 1);
}

TEST_CASE("paths count rows from one and lead nowhere else") {
  Cupboard cupboard;
  cupboard.shelf.resize(2);
  CHECK(put(cupboard, "shelf[2].width", "20 in").empty());
  CHECK(cupboard.shelf[1].width_m == 20 * 0.0254);
  const Record record = record_of(cupboard);
  CHECK(find_path(record, "shelf[1]"));
  CHECK(find_path(record, "shelf"));
  for (const char* path :
       {"shelf[0].width", "shelf[3].width", "shelf[3]", "shelf.width", "top[1].name", "shelf[x].width", "shelf[].width",
        "shelf[99999999999].width", "height.width", "", ".", "top.", "nothing"}) {
    INFO(path);
    CHECK_FALSE(find_path(record, path));
  }
}

TEST_CASE("a walk meets every value once, in the order of the description") {
  Cupboard cupboard;
  cupboard.shelf.resize(2);
  std::string all;
  walk(reading(cupboard), [&](const std::string& path, const Key&, const Slot&) { all += path + " "; });
  CHECK(all ==
        "height load share doors open colour shelf[1].name shelf[1].width shelf[2].name shelf[2].width top.name "
        "top.width ");
}

TEST_CASE("text of a user in a sentence is short, plain and whole") {
  CHECK(excerpt("12 in") == "12 in");
  CHECK(excerpt("a\x1b[31mb\n") == "a?[31mb?");
  CHECK(excerpt(std::string(1000, 'x')) == std::string(37, 'x') + "...");
  // 19 of them fit whole with room for the dots; none is cut in two.
  const std::string cut = excerpt(std::string(35, 'x') + "ääääää");
  CHECK(cut == std::string(35, 'x') + "ä...");
}
