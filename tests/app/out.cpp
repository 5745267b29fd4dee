// What --out and `new` leave on the disk; tests/tools/out_folder.py kills runs and fills disks besides.
#include <fstream>
#include <sstream>
#include <string>
#include <thread>

#include "program.hpp"

using namespace slabwright::test;
namespace fs = std::filesystem;

namespace {

const std::string ten_lines = std::string(SLABWRIGHT_ROOT) + "/layouts/ten-lines.toml";

std::string written(const fs::path& path) {
  std::ostringstream text;
  text << std::ifstream(path, std::ios::binary).rdbuf();
  return text.str();
}

void write(const fs::path& path, const std::string& text) { std::ofstream(path) << text; }

}  // namespace

TEST_CASE("a file where --out wants a folder is told before anything is computed") {
  const Folder folder;
  write(folder.path / "taken", "mine\n");
  const Ran ran = run("design " + ten_lines + " --out " + folder.file("taken"));
  CHECK(ran.code == 2);
  CHECK(ran.out == folder.file("taken") + " is a file; --out takes a folder. Nothing was written.\n");
  CHECK(run("design " + ten_lines + " --out " + folder.file("taken/below")).code == 2);
  CHECK(written(folder.path / "taken") == "mine\n");
}

TEST_CASE("a folder where a file should go leaves all as it was") {
  const Folder folder;
  fs::create_directories(folder.path / "out/loops.csv");
  write(folder.path / "out/coils.csv", "older\n");
  const Ran ran = run("design " + ten_lines + " --out " + folder.file("out"));
  CHECK(ran.code == 2);
  CHECK(ran.out.find("is a folder where a file should go") != std::string::npos);
  CHECK(written(folder.path / "out/coils.csv") == "older\n");
  CHECK(std::distance(fs::directory_iterator(folder.path / "out"), {}) == 2);
}

TEST_CASE("what a killed run left is taken away, and nothing else is") {
  const Folder folder;
  fs::create_directories(folder.path / "out");
  write(folder.path / "out/owner.html.slabwright-part", "half");
  write(folder.path / "out/notes.part", "mine\n");
  REQUIRE(run("design " + ten_lines + " --out " + folder.file("out")).code == 0);
  CHECK_FALSE(fs::exists(folder.path / "out/owner.html.slabwright-part"));
  CHECK(written(folder.path / "out/notes.part") == "mine\n");
  CHECK(fs::exists(folder.path / "out/loops.csv"));
}

TEST_CASE("two runs into one folder both end well") {
  const Folder folder;
  Ran first;
  std::thread other([&] { first = run("design " + ten_lines + " --out " + folder.file("out")); });
  const Ran second = run("design " + ten_lines + " --out " + folder.file("out"));
  other.join();
  CHECK(first.code == 0);
  CHECK(second.code == 0);
  for (const auto& entry : fs::directory_iterator(folder.path / "out"))
    CHECK(entry.path().extension() != ".slabwright-part");
}

TEST_CASE("new takes no name that stands for something, be it a link to nothing") {
  const Folder folder;
  fs::create_symlink(folder.path / "nowhere", folder.path / "link.toml");
  const Ran ran = run("new " + folder.file("link.toml") + " --size '36 x 30 ft'");
  CHECK(ran.code == 2);
  CHECK(ran.out == folder.file("link.toml") + " is there already. Choose another name. Nothing was written.\n");
  CHECK(fs::is_symlink(folder.path / "link.toml"));
  CHECK_FALSE(fs::exists(folder.path / "nowhere"));
  CHECK(run("new " + folder.file("no/such/shop.toml") + " --size '36 x 30 ft'").code == 2);
  CHECK(std::distance(fs::directory_iterator(folder.path), {}) == 1);
}

TEST_CASE("what the program tells of itself for other shells and pages than it knows is refused") {
  CHECK(run("--completion tcsh").code == 64);
  CHECK(run("--man desgn").code == 64);
  CHECK(run("--man freeze").out.find(".TH SLABWRIGHT-FREEZE") == 0);
}
