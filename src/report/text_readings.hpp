// The two answers to readings: causes, and lengths.
#pragma once
#include "report/text.hpp"

namespace slabwright::report {

/// More ports than this are for --full.
inline constexpr std::size_t most_ports = 14;

/// Lengths fitted to readings, from the verdict on.
void add_fitted(Page& page, const Reader& reader);
/// What was said of the readings beside the verdict, and limits that fail.
void add_said_of_readings(Page& page, const Reader& reader);

}  // namespace slabwright::report
