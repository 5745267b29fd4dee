#include <algorithm>
#include <string_view>

#include "characters.hpp"
#include "slabwright/drawing.hpp"

namespace slabwright {
std::string escaped(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t bytes = drawn::character_bytes(text.substr(at));
    const std::string_view one = text.substr(at, std::max<std::size_t>(bytes, 1));
    at += one.size();
    if (bytes == 0)
      out += '?';
    else if (one == "<")
      out += "&lt;";
    else if (one == ">")
      out += "&gt;";
    else if (one == "&")
      out += "&amp;";
    else if (one == "\"")
      out += "&quot;";
    else if (one == "'")
      out += "&#39;";
    else if (bytes == 1 && (static_cast<unsigned char>(one[0]) < 0x20U || one[0] == 0x7F))
      out += ' ';
    else
      out += one;
  }
  return out;
}

}  // namespace slabwright
