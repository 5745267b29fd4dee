// Nearest by meaning first: a short list of the words people use. Then by spelling.
#include "design/synonyms.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <span>
#include <vector>

#include "slabwright/design.hpp"

namespace slabwright {
namespace {

/// The key itself is ambiguous: neither the nearest spelling nor another section's key is what is meant.
constexpr std::string_view slab_depth =
    "depth of what? thickness is the concrete's; concrete_above_tube runs from its top to the top of the tube.";

struct Section {
  std::string_view word;
  bool list = false;
  Record record;  ///< its keys alone: it describes no design
};

std::string in_brackets(const Section& section) {
  return section.list ? fmt::format("[[{}]]", section.word) : fmt::format("[{}]", section.word);
}

std::vector<Section> sections() {
  Design scratch;  // a list shows what a row is by adding one
  std::vector<Section> all;
  for (const Key& key : record_of(scratch).keys) {
    const Slot slot = key.slot(&scratch);
    if (const auto* record = std::get_if<Record>(&slot)) all.push_back({key.word, false, {record->keys, nullptr}});
    if (const auto* rows = std::get_if<Rows>(&slot)) {
      all.push_back({key.word, true, {rows->add(rows->at).keys, nullptr}});
    }
  }
  return all;
}

std::string list_of(const std::vector<std::string>& words, std::string_view last) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i) {
    all += i == 0 ? "" : i + 1 == words.size() ? fmt::format(" {} ", last) : ", ";
    all += words[i];
  }
  return all;
}

/// The sections that have this key, but for one.
std::vector<std::string> owners_of(std::string_view word, std::string_view but_for) {
  std::vector<std::string> owners;
  for (const Section& section : sections()) {
    if (section.word != but_for && find_key(section.record, word)) owners.push_back(in_brackets(section));
  }
  return owners;
}

/// The keys whose first word this is: footing_depth and footing_width for footing.
std::vector<std::string> begun_by(const Record& record, std::string_view folded) {
  std::vector<std::string> keys;
  for (const Key& key : record.keys) {
    const std::string_view first = key.word.substr(0, key.word.find('_'));
    if (first.size() < key.word.size() && folded_word(first) == folded) keys.emplace_back(key.word);
  }
  return keys;
}

/// The nearest of some words by spelling; null where none is near.
template <class Item>
const Item* nearest_of(std::span<const Item> items, std::string_view word) {
  const Item* nearest = nullptr;
  std::size_t least = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const Item& item : items) {
    const std::size_t apart = letters_apart(item.word, word);
    if (apart >= least) continue;
    least = apart;
    nearest = &item;
  }
  return nearest;
}

}  // namespace

std::string folded_word(std::string_view word) {
  std::string out;
  for (const char c : word) {
    if (c == ' ' || c == '-' || c == '_') continue;
    out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  if (out.size() > 3 && out.back() == 's') out.pop_back();
  return out;
}

std::size_t letters_apart(std::string_view a_word, std::string_view b_word) {
  const std::string a = folded_word(a_word.substr(0, 40)), b = folded_word(b_word.substr(0, 40));
  std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  }
  return d[a.size()][b.size()];
}

SectionMeant section_meant(std::string_view word) {
  const std::string folded = folded_word(word), said = excerpt(word);
  const std::vector<Section> all = sections();
  for (const Section& section : all) {
    if (folded_word(section.word) != folded) continue;
    return {std::string(section.word), fmt::format("no section [{}]; it is written {}.", said, in_brackets(section))};
  }
  for (const SectionWord& known : section_words()) {
    if (folded_word(known.word) != folded) continue;
    return {std::string(known.section), fmt::format("no section [{}]; {}.", said, known.says)};
  }
  if (const Section* nearest = nearest_of<Section>(all, word)) {
    return {std::string(nearest->word), fmt::format("no section [{}]; did you mean {}?", said, in_brackets(*nearest))};
  }
  std::vector<std::string> words;
  for (const Section& section : all) words.emplace_back(section.word);
  return {{}, fmt::format("no section [{}]. The sections are {}.", said, list_of(words, "and"))};
}

bool belongs_elsewhere(std::string_view section, std::string_view word) { return !owners_of(word, section).empty(); }

std::string key_sentence(std::string_view section, std::string_view word) {
  const std::string folded = folded_word(word), said = excerpt(word);
  const std::vector<Section> all = sections();
  const auto own = std::find_if(all.begin(), all.end(), [&](const Section& s) { return s.word == section; });
  const std::string here = section.empty() ? "above the first section" : fmt::format("in [{}]", excerpt(section));
  for (const std::string_view top : {"units", "codes"}) {
    if (section.empty() && letters_apart(top, word) <= 1) return fmt::format("no key {}; did you mean {}?", said, top);
  }
  if ((section == "slab" || section == "tube") && folded == "depth") return std::string(slab_depth);
  for (const KeyWord& known : key_words()) {
    if (known.section != section || folded_word(known.word) != folded) continue;
    return fmt::format("no key {} {}; it is called {}.", said, here, known.key);
  }
  if (const auto owners = owners_of(word, section); !owners.empty() && owners.size() <= 3) {
    return fmt::format("{} belongs in {} (here it is {}).", said, list_of(owners, "or"), here);
  }
  if (own != all.end()) {
    const Key* nearest = nearest_of<Key>(own->record.keys, word);
    if (nearest) return fmt::format("no key {} {}; did you mean {}?", said, here, nearest->word);
    const std::vector<std::string> longer = begun_by(own->record, folded);
    if (!longer.empty()) return fmt::format("no key {} {}; did you mean {}?", said, here, list_of(longer, "or"));
  }
  for (const KeyWord& known : key_words()) {
    if (folded_word(known.word) != folded) continue;
    return fmt::format("no key {} {}; it goes in [{}] as {}.", said, here, known.section, known.key);
  }
  if (own == all.end()) return fmt::format("no key {} {}. A section comes first, such as [slab].", said, here);
  std::vector<std::string> words;
  for (const Key& key : own->record.keys) words.emplace_back(key.word);
  return fmt::format("no key {} {}; it takes {}.", said, here, list_of(words, "and"));
}

}  // namespace slabwright
