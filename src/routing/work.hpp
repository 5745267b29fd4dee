// What a search may still do: steps, not seconds, so that the same floor is laid the same way everywhere.
#pragma once

namespace slabwright::routing {

struct Work {
  long steps_left = 0;
};

}  // namespace slabwright::routing
