// What is said about a text that does not fit its key.
#pragma once
#include <string>
#include <string_view>

#include "slabwright/fields.hpp"

namespace slabwright {

/// The text as it stands in a file, in quotes or bare where it is a number.
std::string fault_sentence(const Key& key, std::string_view text, const Reading& reading, System system);

/// Nothing where the value lies in the key's range.
std::string range_sentence(const Key& key, std::string_view text, double si, System system);

/// A text for a choice that has no such word.
std::string choice_sentence(const Key& key, const Choice& choice, std::string_view text);

}  // namespace slabwright
