// Words for months, days and hours, shared by prices and bills.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/handbook_price.hpp"

namespace slabwright {

/// Parts between commas, trimmed; a comma between two digits belongs to a number.
std::vector<std::string> comma_parts(std::string_view text);

/// In small letters.
std::string in_small_letters(std::string_view text);

/// 1 to 12 for a month's name or its first letters, three at least; 0 for anything else.
int month_of(std::string_view word);
std::string_view month_name(int month);

/// What has been said of a price's times.
struct WhenSaid {
  bool hours = false, days = false, months = false;
};

/// Reads "22:00 to 6:00", "monday to friday" or "october to may" into `when`: a sentence that says what to write, or
/// nothing where it read.
std::string read_when(std::string_view part, PriceTimes& when, WhenSaid& said);

/// ", 22:00 to 6:00, monday to friday, october to may" without what is always.
std::string write_when(const PriceTimes& when);

}  // namespace slabwright
