// The pump speed that wastes least.
#include <fmt/format.h>

#include "report/text_speed.hpp"

namespace slabwright::report {

void add_least_speed(Page& page, const Reader& reader) {
  constexpr double worth_saying_share = 0.02;
  const Balance& balance = *reader.answer.balance;
  if (balance.speed_saves_share < worth_saying_share) return;
  add_text(page,
           fmt::format("Slowest speed at which every loop can still be set to its target: {} of full. It spares {} "
                       "of the work at full speed; a pump with steps takes the next above.",
                       reader(Kind::share, balance.least_speed_share), reader(Kind::share, balance.speed_saves_share)));
}

}  // namespace slabwright::report
