// Values drawn from what the description says of a key, so that a new key is drawn by itself.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "random/design_text.hpp"
#include "random/draws.hpp"
#include "slabwright/design.hpp"

namespace slabwright::test {

/// A text that the key reads as a rule: near its default, or anywhere between its least and its most. Empty for free
/// text, which names what only a scenario knows.
std::string drawn_value(const Key& key, const Slot& slot, System system, Draws& draws);
/// Several, where the key takes a list.
std::vector<std::string> drawn_list(const WordedList& list, System system, Draws& draws);

/// At its least or its most, or a little beyond; empty where the key has neither.
std::string value_at_limit(const Key& key, System system, Draws& draws);

/// A quantity with three figures, in the unit that the system prints.
std::string typed(double si, Dimension dimension, System system);

/// Gives keys of the sections that the text has, and of sections it has not. Which, and how many, is drawn too.
void fill_by_description(DesignText& text, System system, Draws& draws);

/// Takes out, one after the other, keys that the reader refuses beside the others: what goes with what is the reader's
/// to say, and stands nowhere else.
void take_out_refused(DesignText& text);

/// Breaks a key or two of those given, or sets them to a limit or beyond it.
void nearly_break(DesignText& text, System system, Draws& draws);

}  // namespace slabwright::test
