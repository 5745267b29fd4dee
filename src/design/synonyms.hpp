// Words that people use instead of ours.
#pragma once
#include <span>
#include <string>
#include <string_view>

namespace slabwright {

/// Another word for a section, and what is said of it.
struct SectionWord {
  std::string_view word, section, says;
};
std::span<const SectionWord> section_words();

/// A key's other name, and where it goes.
struct KeyWord {
  std::string_view word, section, key;
};
std::span<const KeyWord> key_words();

/// Lower case, without blanks, hyphens or underscores, without a final s: what two spellings of one word share.
std::string folded_word(std::string_view word);

/// Changes of one letter (a swap of neighbours counts as one) between two words, after folding.
std::size_t letters_apart(std::string_view a, std::string_view b);

/// What is meant by a section that does not exist.
struct SectionMeant {
  std::string section;   ///< the section to read it as; empty where none is meant
  std::string sentence;  ///< "no section [pipe]; tubes go in [tube]."
};
SectionMeant section_meant(std::string_view word);

/// What to write instead of a key that its section does not have.
std::string key_sentence(std::string_view section, std::string_view word);

/// Whether the word is a key of another section than this one.
bool belongs_elsewhere(std::string_view section, std::string_view word);

}  // namespace slabwright
