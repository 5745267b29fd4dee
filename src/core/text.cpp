// Characters that word processors, keyboards and phones put where a plain one is meant.
#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "slabwright/units.hpp"

namespace slabwright {
namespace {

using Pair = std::pair<std::string_view, std::string_view>;
constexpr std::array<Pair, 22> replacements{{
    {"\u2212", "-"},  {"\u2010", "-"},    {"\u2011", "-"},    {"\u2013", "-"},    {"\u2014", "-"},  // minus and dashes
    {"\u00A0", " "},  {"\u202F", " "},    {"\u2009", " "},    {"\u00B7", " "},  // spaces, raised dot
    {"\u00B0", ""},   {"\u00B2", "2"},    {"\u00B3", "3"},    {"\u00D7", "x"},  // degree, powers, times
    {"\u2032", "'"},  {"\u2033", "\""},   {"\u2018", "'"},    {"\u2019", "'"},    {"\u201C", "\""},  // primes, quotes
    {"\u201D", "\""}, {"\u00BD", " 1/2"}, {"\u00BC", " 1/4"}, {"\u00BE", " 3/4"},                    // fractions
}};

}  // namespace

std::string plain_characters(std::string_view text) {
  const auto plain = [](char c) { return static_cast<unsigned char>(c) < 0x80; };
  if (std::all_of(text.begin(), text.end(), plain)) return std::string(text);
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const Pair* found = nullptr;
    for (const Pair& pair : replacements) {
      if (text.compare(i, pair.first.size(), pair.first) == 0) found = &pair;
    }
    if (found) {
      out += found->second;
      i += found->first.size();
    } else {
      out += text[i++];
    }
  }
  return out;
}

}  // namespace slabwright
