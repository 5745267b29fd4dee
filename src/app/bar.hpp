// Progress on a terminal.
#pragma once
#include <cstddef>

#include "slabwright/answer.hpp"

namespace slabwright::app {

/// A line on stderr that fills up while work goes on and is gone when the bar is. Shown on a terminal only, never in a
/// pipe or a file.
class Bar {
 public:
  /// Not wanted: nothing is ever shown.
  explicit Bar(bool wanted);
  Bar(const Bar&) = delete;
  Bar& operator=(const Bar&) = delete;
  ~Bar();
  /// What the work tells how far it is; empty where nothing is shown. Not to be called once the bar is gone.
  Progress told();

 private:
  void draw(double share);

  bool shown_;
  std::size_t drawn_ = 0;  ///< characters on the line
};

}  // namespace slabwright::app
