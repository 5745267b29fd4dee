// Everything that ever broke a target of the fuzzers, and what they begin with.
#include <algorithm>
#include <filesystem>
#include <vector>

#include "fuzz/targets.hpp"
#include "support/catch.hpp"
#include "support/table.hpp"

using namespace slabwright;
using fuzz::Target;

namespace {

/// Files of a folder below the project's, in order; none where there is no such folder.
std::vector<std::string> files_of(const std::string& folder, const std::string& ending) {
  const std::filesystem::path path = std::string(SLABWRIGHT_ROOT) + "/" + folder;
  std::vector<std::string> found;
  if (!std::filesystem::exists(path)) return found;
  for (const auto& entry : std::filesystem::directory_iterator(path)) {
    const std::string name = entry.path().filename().string();
    if (name.size() >= ending.size() && name.compare(name.size() - ending.size(), ending.size(), ending) == 0)
      found.push_back(folder + "/" + name);
  }
  std::sort(found.begin(), found.end());
  return found;
}

/// How many of the files the target accepts. What it throws fails the test, with the file's name beside it.
int replayed(const Target& target, const std::vector<std::string>& files) {
  int accepted = 0;
  for (const std::string& file : files) {
    INFO(target.name << ": " << file);
    bool taken = false;
    CHECK_NOTHROW(taken = target.one(test::read_text(file)));
    accepted += taken;
  }
  return accepted;
}

const Target& target_of(std::string_view name) {
  const auto* found = std::find_if(std::begin(fuzz::all_targets), std::end(fuzz::all_targets),
                                   [name](const Target& target) { return target.name == name; });
  REQUIRE(found != std::end(fuzz::all_targets));
  return *found;
}

}  // namespace

TEST_CASE("what once broke a target of the fuzzers breaks it no more") {
  for (const Target& target : fuzz::all_targets)
    replayed(target, files_of("tests/fuzz/found/" + std::string(target.name), ""));
}

TEST_CASE("the folders of finds are those of targets") {
  const std::filesystem::path found = SLABWRIGHT_ROOT "/tests/fuzz/found";
  for (const auto& entry : std::filesystem::directory_iterator(found)) {
    const std::string name = entry.path().filename().string();
    if (entry.is_directory()) CHECK_NOTHROW(target_of(name));
  }
}

TEST_CASE("layouts and hostile files go through the design reader's target") {
  const std::vector<std::string> layouts = files_of("layouts", ".toml");
  CHECK(replayed(target_of("design"), layouts) == static_cast<int>(layouts.size()));
  CHECK(replayed(target_of("design"), files_of("tests/hostile", ".toml")) == 0);
}

TEST_CASE("readings go through the meters' target") {
  CHECK(replayed(target_of("meters"), files_of("tests/hostile", ".csv")) >= 0);
  CHECK(target_of("meters").one("loop, flow (gpm)\n1, 0.6\n2, 0.5\n3, 0.5\n4, 0.4\n"));
  CHECK(target_of("meters").one("-0.6 0.5 0.5 0.4"));
  CHECK_FALSE(target_of("meters").one("loop, flow (gpm)\n1, 0.6\n9, 0.5\n"));
}

TEST_CASE("edits of a weather file do what they say") {
  const Target& weather = target_of("weather");
  for (const char* accepted : {"e", "t", "l", "e9,6 99.9\n", "t9,31 -9900\n", "e9+30,9 999999\n"}) {
    INFO(accepted);
    CHECK(weather.one(accepted));
  }
  for (const char* refused : {"", "r", "e100-", "e9,6 warm\n", "e9 \n", "rLOCATION,\n"}) {
    INFO(refused);
    CHECK_FALSE(weather.one(refused));
  }
}

TEST_CASE("the units' target takes what a key takes") {
  for (const char* taken : {"12 in", "R-10", "5'-6\"", "36 ft x 30 ft", "0.142 /kWh", "7:00 to 16:30"}) {
    INFO(taken);
    CHECK(target_of("units").one(taken));
  }
}
