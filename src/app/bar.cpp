#include "app/bar.hpp"

#include <unistd.h>

#include <algorithm>
#include <iostream>
#include <string>

namespace slabwright::app {
namespace {

constexpr std::chrono::seconds patience{1};

}  // namespace

Bar::Bar() : shown_(isatty(STDERR_FILENO) != 0), began_(std::chrono::steady_clock::now()) {}

Bar::~Bar() {
  if (drawn_ > 0) std::cerr << '\r' << std::string(drawn_, ' ') << '\r' << std::flush;
}

Works Bar::told() {
  if (!shown_) return {};
  return [this](std::string_view work, double share) { draw(work, share); };
}

void Bar::draw(std::string_view work, double share) {
  if (std::chrono::steady_clock::now() - began_ < patience) return;
  constexpr std::size_t width = 30;
  const auto full = static_cast<std::size_t>(std::clamp(share, 0.0, 1.0) * static_cast<double>(width));
  const std::string line = std::string(work) + " [" + std::string(full, '#') + std::string(width - full, '.') + "]";
  // What an earlier, longer line left is wiped out.
  const std::size_t left = drawn_ > line.size() ? drawn_ - line.size() : 0;
  std::cerr << '\r' << line << std::string(left, ' ') << std::string(left, '\b') << std::flush;
  drawn_ = line.size();
}

}  // namespace slabwright::app
