#include "slabwright/drawing_words.hpp"

namespace slabwright {
namespace {

/// What no line may be broken in.
struct Unbroken {
  std::string text;
  std::string key;
  std::size_t part = 0;
  bool spaced = false;  ///< a space stands before it
};

void append_key(std::string& keys, const std::string& more) {
  if (!more.empty()) keys += (keys.empty() ? "" : " ") + more;
}

/// Words of a text, each with the text's keys.
void append_words(std::vector<Unbroken>& all, const KeyedText& part, std::size_t number, bool& spaced) {
  std::string word;
  const auto close = [&] {
    if (!word.empty()) all.push_back({word, part.key, number, spaced});
    if (!word.empty()) spaced = false;
    word.clear();
  };
  for (const char c : part.text) {
    if (c != ' ') {
      word += c;
      continue;
    }
    close();
    spaced = true;
  }
  close();
}

/// Parts with a key are one where they fit a line.
std::vector<Unbroken> unbroken(const KeyedWords& parts, double size_m, double width_m) {
  std::vector<Unbroken> all;
  bool spaced = false;
  for (std::size_t k = 0; k < parts.size(); ++k) {
    const KeyedText& part = parts[k];
    if (part.key.empty() || text_size(part.text, size_m, false).width_m > width_m) {
      append_words(all, part, k, spaced);
      continue;
    }
    if (part.text.empty()) continue;
    all.push_back({part.text, part.key, k, spaced});
    spaced = false;
  }
  return all;
}

/// From one space to the next: what follows without a space stays on the line.
std::vector<std::vector<Unbroken>> clusters_of(std::vector<Unbroken> pieces) {
  std::vector<std::vector<Unbroken>> clusters;
  for (Unbroken& one : pieces) {
    if (clusters.empty() || one.spaced) clusters.emplace_back();
    clusters.back().push_back(std::move(one));
  }
  return clusters;
}

}  // namespace

KeyedText joined(const KeyedWords& parts) {
  KeyedText whole;
  for (const KeyedText& part : parts) {
    whole.text += part.text;
    append_key(whole.key, part.key);
  }
  return whole;
}

std::vector<KeyedText> wrapped(const KeyedWords& parts, double size_m, double width_m) {
  std::vector<KeyedText> lines;
  std::size_t last = parts.size();
  for (const auto& cluster : clusters_of(unbroken(parts, size_m, width_m))) {
    std::string word;
    for (const Unbroken& one : cluster) word += one.text;
    const std::string longer = lines.empty() ? word : lines.back().text + " " + word;
    const bool fits = !lines.empty() && text_size(longer, size_m, false).width_m <= width_m;
    if (fits)
      lines.back().text = longer;
    else
      lines.push_back({word, ""});
    if (!fits) last = parts.size();
    for (const Unbroken& one : cluster) {
      // Words of one part that was broken name it once a line.
      if (one.part != last) append_key(lines.back().key, one.key);
      last = one.part;
    }
  }
  return lines;
}

}  // namespace slabwright
