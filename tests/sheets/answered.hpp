// Answers for the tests of sheets.
#pragma once
#include "slabwright/answer.hpp"

namespace slabwright::test {

/// Without what only moves the list of guesses that matter most.
inline Answer answered(const DesignFile& file, Question question) {
  Wishes wishes;
  wishes.question = question;
  wishes.sensitivities = false;
  return answer(file, wishes);
}

}  // namespace slabwright::test
