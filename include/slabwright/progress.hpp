// How far long work is. Whoever asked for it shows that, or does not: nothing below the app knows a clock.
#pragma once
#include <cstddef>
#include <functional>
#include <string_view>

namespace slabwright {

/// Told how much of one piece of work is done: 0 to 1, never less than before, and 1 at its end. Empty: nobody asks.
using Progress = std::function<void(double)>;

/// For a part of the work, whose 0 to 1 is `from` to `to` of the whole. Empty where `whole` is.
Progress part_of(const Progress& whole, double from, double to);

/// For the part `row` of `parts` alike.
Progress part_of(const Progress& whole, std::size_t row, std::size_t parts);

/// For the try `row` (from 0) of tries that end nobody knows when: each takes half of what is left of the whole.
Progress try_of(const Progress& whole, int row);

void tell(const Progress& progress, double share);

/// Told of pieces of work one after the other, each by its name in words for people, "laying tube". Empty: nobody asks.
using Works = std::function<void(std::string_view work, double share)>;

/// For one of them. Empty where `works` is.
Progress work_of(const Works& works, std::string_view name);

}  // namespace slabwright
