// Changes that make one design out of two, and those that the reader takes.
#include <algorithm>
#include <random>
#include <vector>

#include "fuzz/mutated.hpp"
#include "slabwright/design.hpp"

namespace slabwright::fuzz {
namespace {

/// What is changed where the text given is no design and does not become one.
constexpr std::string_view small_design =
    "units = \"US\"\n[slab]\nsize = \"36 ft x 30 ft\"\nthickness = \"5 in\"\n[tube]\nsize = \"1/2 in\"\n"
    "spacing = \"12 in\"\n[climate]\noutdoor = \"-12 F\"\nindoor = \"60 F\"\n[[manifold]]\nplace = \"0 ft, 10 ft\"\n";

/// A text cut before each of its headers.
std::vector<std::string> sections_of(std::string_view text) {
  std::vector<std::string> found(1);
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size() - 1) + 1;
    if (text[at] == '[') found.emplace_back();
    found.back() += text.substr(at, end - at);
    at = end;
  }
  return found;
}

}  // namespace

std::string mutated_design(std::string_view text, std::uint32_t seed, std::size_t most_bytes) {
  std::string changed;
  std::mt19937 draw(seed);
  for (int tries = 0; tries < 12; ++tries) {
    changed = mutated(tries < 6 ? text : small_design, static_cast<std::uint32_t>(draw()), most_bytes);
    if (read_design(changed).checked) break;
  }
  return changed;
}

std::string crossed(std::string_view first, std::string_view second, std::uint32_t seed, std::size_t most_bytes) {
  std::mt19937 draw(seed);
  std::vector<std::string> own = sections_of(first);
  for (const std::string& other : sections_of(second)) {
    if (draw() % 3 != 0 || other.empty() || other.front() != '[') continue;
    const std::string header = other.substr(0, other.find('\n'));
    const auto same = std::find_if(own.begin(), own.end(), [&header](const std::string& section) {
      return section.compare(0, header.size(), header) == 0;
    });
    if (same != own.end() && (header.compare(0, 2, "[[") != 0 || draw() % 2 == 0))
      *same = other;
    else
      own.push_back(other);
  }
  std::string whole;
  for (const std::string& section : own) {
    if (!whole.empty() && whole.back() != '\n') whole += '\n';
    whole += section;
  }
  if (whole.size() > most_bytes) whole.resize(most_bytes);
  return whole;
}

}  // namespace slabwright::fuzz
