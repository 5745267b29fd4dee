// Progress on a terminal.
#pragma once
#include <chrono>
#include <cstddef>
#include <string_view>

#include "slabwright/answer.hpp"

namespace slabwright::app {

/// A line on stderr that fills up while work goes on and is gone when the bar is. Shown on a terminal only, never in a
/// pipe or a file, and not before work has gone on for a second.
class Bar {
 public:
  Bar();
  Bar(const Bar&) = delete;
  Bar& operator=(const Bar&) = delete;
  ~Bar();
  /// What the work tells how far it is; empty where nothing is shown. Not to be called once the bar is gone.
  Works told();

 private:
  void draw(std::string_view work, double share);

  bool shown_;
  std::chrono::steady_clock::time_point began_;
  std::size_t drawn_ = 0;  ///< characters on the line
};

}  // namespace slabwright::app
