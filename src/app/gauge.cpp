// gauge: two readings, and what they say.
#include <iostream>

#include "app/request.hpp"

namespace slabwright::app {

int run_gauge(const Request& request) {
  const PreparedGauge prepared = prepare_gauge(request.asked);
  if (prepared.refusal) {
    std::cerr << prepared.refusal->text;
    return prepared.refusal->exit;
  }
  const GaugeAnswer answer = gauge_answer(prepared.asked);
  std::cout << (request.json ? json_of(answer) : text_of(answer, prepared.units));
  return exit_code(answer);
}

}  // namespace slabwright::app
