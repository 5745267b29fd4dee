// The program run as a person runs it, and a folder to run it in.
#pragma once
#include <sys/wait.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>

#include "support/catch.hpp"

namespace slabwright::test {

struct Ran {
  int code = -1;
  std::string out;  ///< stdout and stderr together
};

inline Ran run(const std::string& words, const std::string& redirect = "2>&1") {
  const std::string line = std::string(SLABWRIGHT_PROGRAM) + " " + words + " " + redirect;
  Ran ran;
  FILE* pipe = popen(line.c_str(), "r");
  REQUIRE(pipe != nullptr);
  char piece[4096];
  while (const std::size_t got = std::fread(piece, 1, sizeof piece, pipe)) ran.out.append(piece, got);
  const int status = pclose(pipe);
  ran.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return ran;
}

/// A folder of its own for each test, gone afterwards. The system picks the name: several test programs may run at
/// once.
struct Folder {
  std::filesystem::path path;
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "slabwright-test-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path = name;
  }
  ~Folder() { std::filesystem::remove_all(path); }
  std::string file(const std::string& name) const { return (path / name).string(); }
};

}  // namespace slabwright::test
