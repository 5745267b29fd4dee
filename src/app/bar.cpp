#include "app/bar.hpp"

#include <unistd.h>

#include <algorithm>
#include <iostream>
#include <string>

namespace slabwright::app {

Bar::Bar(bool wanted) : shown_(wanted && isatty(STDERR_FILENO) != 0) {}

Bar::~Bar() {
  if (drawn_ > 0) std::cerr << '\r' << std::string(drawn_, ' ') << '\r' << std::flush;
}

Progress Bar::told() {
  if (!shown_) return {};
  return [this](double share) { draw(share); };
}

void Bar::draw(double share) {
  constexpr std::size_t width = 40;
  const auto full = static_cast<std::size_t>(std::clamp(share, 0.0, 1.0) * static_cast<double>(width));
  const std::string line = "what nobody can know [" + std::string(full, '#') + std::string(width - full, '.') + "]";
  std::cerr << '\r' << line << std::flush;
  drawn_ = line.size();
}

}  // namespace slabwright::app
