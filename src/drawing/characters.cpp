#include "characters.hpp"

namespace slabwright::drawn {

std::size_t character_bytes(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text[0]);
  const std::size_t bytes = lead < 0x80U                    ? 1
                            : lead >= 0xC2U && lead < 0xE0U ? 2
                            : lead >= 0xE0U && lead < 0xF0U ? 3
                            : lead >= 0xF0U && lead < 0xF5U ? 4
                                                            : 0;
  if (bytes == 0 || text.size() < bytes) return 0;
  for (std::size_t k = 1; k < bytes; ++k) {
    if ((static_cast<unsigned char>(text[k]) & 0xC0U) != 0x80U) return 0;
  }
  const auto second = bytes > 1 ? static_cast<unsigned char>(text[1]) : 0U;
  const bool overlong = (lead == 0xE0U && second < 0xA0U) || (lead == 0xF0U && second < 0x90U);
  const bool no_character = (lead == 0xEDU && second >= 0xA0U) || (lead == 0xF4U && second >= 0x90U) ||
                            (lead == 0xEFU && second == 0xBFU && static_cast<unsigned char>(text[2]) >= 0xBEU);
  return overlong || no_character ? 0 : bytes;
}

char32_t code_point(std::string_view character) {
  const auto lead = static_cast<unsigned char>(character[0]);
  if (character.size() == 1) return lead;
  // The lead byte carries the bits below its row of ones and the zero that ends it.
  char32_t code = lead & (0x7FU >> character.size());
  for (std::size_t k = 1; k < character.size(); ++k)
    code = code << 6U | (static_cast<unsigned char>(character[k]) & 0x3FU);
  return code;
}

}  // namespace slabwright::drawn
