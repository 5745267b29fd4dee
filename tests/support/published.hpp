// A published value checked is a row of manuals/validation.md, and there is no other way to get one.
#pragma once
#include <string>
#include <string_view>

#include "support/catch.hpp"

namespace slabwright::test {

/// How the figure came to us. A value from memory is no oracle, so it has no word of its own here.
enum class Oracle {
  published,       ///< a number printed by its source and seen
  reference_code,  ///< the output of an independent general-purpose program
  derived          ///< our own algebra or a second method
};

struct Source {
  std::string title;  ///< "IAPWS R12-08(2008)"
  std::string place;  ///< "Table 4"
  Oracle oracle = Oracle::published;
};

/// The tolerance when half a unit of the last printed digit is not meant; `why` is printed in the table.
struct Within {
  double absolute = 0.0;
  double relative = 0.0;
  std::string_view why = {};
};

/// Compares, leaves a row whether it holds or not, and returns whether it holds.
/// `printed` is the value as the source prints it. Without `within`, half a unit in its last digit is allowed.
bool agrees(const Source& source, std::string_view what, std::string_view printed, double ours, Within within = {});

}  // namespace slabwright::test

#define CHECK_PUBLISHED(...) CHECK(::slabwright::test::agrees(__VA_ARGS__))
