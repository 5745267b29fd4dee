// Bytes to text: marks at the front, two-byte text, line ends, characters of another encoding.
#include "design/statements.hpp"

namespace slabwright {
namespace {

constexpr std::size_t most_bytes = 1'000'000;

Decoded refused(std::string sentence) { return {{}, {{{}, std::move(sentence)}}, false}; }

void append_utf8(std::string& out, unsigned code) {
  const auto put = [&out](unsigned byte) { out += static_cast<char>(byte); };
  if (code < 0x80) {
    put(code);
  } else if (code < 0x800) {
    put(0xC0 | code >> 6);
    put(0x80 | (code & 0x3F));
  } else if (code < 0x10000) {
    put(0xE0 | code >> 12);
    put(0x80 | (code >> 6 & 0x3F));
    put(0x80 | (code & 0x3F));
  } else {
    put(0xF0 | code >> 18);
    put(0x80 | (code >> 12 & 0x3F));
    put(0x80 | (code >> 6 & 0x3F));
    put(0x80 | (code & 0x3F));
  }
}

unsigned byte_at(std::string_view bytes, std::size_t i) { return static_cast<unsigned char>(bytes[i]); }

enum class Order { little, big };

/// Two-byte text (UTF-16) without its mark; empty where the pairs make no sense.
std::optional<std::string> from_two_bytes(std::string_view bytes, Order order) {
  if (bytes.size() % 2 != 0) return std::nullopt;
  const auto unit = [&](std::size_t i) {
    const unsigned first = byte_at(bytes, i), second = byte_at(bytes, i + 1);
    return order == Order::little ? first | second << 8 : first << 8 | second;
  };
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); i += 2) {
    unsigned code = unit(i);
    if (code >= 0xD800 && code < 0xE000) {
      if (code >= 0xDC00 || i + 4 > bytes.size()) return std::nullopt;
      const unsigned low = unit(i + 2);
      if (low < 0xDC00 || low >= 0xE000) return std::nullopt;
      code = 0x10000 + ((code - 0xD800) << 10) + (low - 0xDC00);
      i += 2;
    }
    if (code == 0) return std::nullopt;
    append_utf8(out, code);
  }
  return out;
}

/// Plain letters in two bytes each have a zero in every second place and nowhere else.
std::optional<Order> looks_two_byte(std::string_view bytes) {
  std::size_t zeros[2] = {0, 0};
  for (std::size_t i = 0; i < bytes.size(); ++i) zeros[i % 2] += bytes[i] == '\0' ? 1 : 0;
  const std::size_t pairs = bytes.size() / 2;
  if (pairs < 2) return std::nullopt;
  if (zeros[0] == 0 && 10 * zeros[1] > 8 * pairs) return Order::little;
  if (zeros[1] == 0 && 10 * zeros[0] > 8 * pairs) return Order::big;
  return std::nullopt;
}

/// Length of the valid UTF-8 character at i, or 0.
std::size_t character_at(std::string_view text, std::size_t i) {
  const unsigned first = byte_at(text, i);
  if (first < 0x80) return 1;
  const std::size_t size = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || i + size > text.size()) return 0;
  for (std::size_t k = 1; k < size; ++k) {
    if ((byte_at(text, i + k) & 0xC0) != 0x80) return 0;
  }
  const unsigned second = byte_at(text, i + 1);
  const bool overlong = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
  const bool beyond = (first == 0xED && second >= 0xA0) || (first == 0xF4 && second >= 0x90);
  return overlong || beyond ? 0 : size;
}

/// Windows-1252, the commonest other encoding: quotes and dashes where Latin-1 has control characters.
unsigned from_one_byte(unsigned byte) {
  switch (byte) {
    case 0x91: return 0x2018;
    case 0x92: return 0x2019;
    case 0x93: return 0x201C;
    case 0x94: return 0x201D;
    case 0x96: return 0x2013;
    case 0x97: return 0x2014;
    default: return byte;
  }
}

/// Plain line ends, and every character valid; the first that was not is said.
Decoded clean(std::string_view text) {
  Decoded decoded;
  int line = 1, column = 1;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t size = character_at(text, i);
    if (size == 0) {
      if (decoded.problem.empty()) {
        decoded.problem.push_back({{line, column, {}}, "a character in another encoding. Save the file as UTF-8."});
      }
      append_utf8(decoded.text, from_one_byte(byte_at(text, i)));
    } else if (text[i] == '\r') {
      if (i + 1 == text.size() || text[i + 1] != '\n') decoded.text += '\n';
    } else {
      decoded.text += text.substr(i, size);
    }
    const bool ends = text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.size() || text[i + 1] != '\n'));
    line += ends ? 1 : 0;
    column = ends ? 1 : column + 1;
    i += size == 0 ? 1 : size;
  }
  return decoded;
}

bool binary(std::string_view text) {
  std::size_t control = 0;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte == 0) return true;
    control += byte < 0x20 && c != '\n' && c != '\r' && c != '\t' && c != '\f' ? 1 : 0;
  }
  return 20 * control > text.size();
}

}  // namespace

Decoded decode(std::string_view bytes) {
  if (bytes.size() > most_bytes) {
    return refused("the file has more than 1000 kB; a design file has less.");
  }
  const std::string_view two = bytes.substr(0, 2);
  std::optional<Order> order;
  if (two == "\xFF\xFE") order = Order::little;
  if (two == "\xFE\xFF") order = Order::big;
  const bool marked = order.has_value();
  if (!order) order = looks_two_byte(bytes);
  if (order) {
    const auto text = from_two_bytes(marked ? bytes.substr(2) : bytes, *order);
    return text ? clean(*text) : refused("this is two-byte text that makes no sense. Save the file as UTF-8.");
  }
  if (bytes.substr(0, 3) == "\xEF\xBB\xBF") bytes.remove_prefix(3);
  if (binary(bytes)) return refused("this is no text file. A design file is plain text, saved as UTF-8.");
  return clean(bytes);
}

}  // namespace slabwright
