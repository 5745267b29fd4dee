// Changes to a design file that leave most of it a design: whole lines, keys and values, by the description.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>

namespace slabwright::fuzz {

/// The text with one or two changes, at most `most_bytes` long. The same seed makes the same changes.
std::string mutated(std::string_view text, std::uint32_t seed, std::size_t most_bytes);

/// The same, tried up to a dozen times until the reader takes it, at last on a small design.
std::string mutated_design(std::string_view text, std::uint32_t seed, std::size_t most_bytes);

/// Sections of two designs, in the order of the first.
std::string crossed(std::string_view first, std::string_view second, std::uint32_t seed, std::size_t most_bytes);

}  // namespace slabwright::fuzz
