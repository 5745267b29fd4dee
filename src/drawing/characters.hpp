// Text of users, character by character.
#pragma once
#include <cstddef>
#include <string_view>

namespace slabwright::drawn {

/// How many bytes of well-formed UTF-8 begin here; 0 where they are not. Asks for a byte at least.
std::size_t character_bytes(std::string_view text);

/// The number of a character that is well formed.
char32_t code_point(std::string_view character);

}  // namespace slabwright::drawn
