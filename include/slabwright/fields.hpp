// What a described struct looks like without its type. The reader, the writer, the list of guesses, the JSON and the
// design-file reference are plain loops over this; nothing else lists keys.
#pragma once
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "units.hpp"

namespace slabwright {

struct Key;

/// Any described struct, seen without its type.
struct Record {
  std::span<const Key> keys;
  void* at = nullptr;
};

struct Number {
  double* at;
};
struct Whole {
  int* at;
};
struct Flag {
  bool* at;
};
struct Text {
  std::string* at;
};
struct TextList {
  std::vector<std::string>* at;
};

/// Answers only: a row of another list, counted from 0.
struct RowNumber {
  std::size_t* at;
};

/// Answers only: several numbers of one unit.
struct Numbers {
  std::span<const double> at;
};

/// An enum counted from 0, by the words that stand for it in a file.
struct Choice {
  std::span<const std::string_view> names;
  int (*get)(const void*);
  void (*set)(void*, int);
  void* at;
};

/// std::optional<double>: absent is a meaning of its own, not a default.
struct MaybeNumber {
  std::optional<double>* at;
};

/// A small struct that is written as one text ("36 ft x 30 ft"). `read` returns a sentence that says what to write,
/// or nothing where it read; `write` gives a text that reads back to the same value.
struct Worded {
  std::string (*read)(void*, std::string_view);
  std::string (*write)(const void*, System);
  bool (*given)(const void*);  ///< false for an empty optional
  std::string_view takes, example;
  void* at;
};

/// A vector of worded values: an outline, the points of a pump curve.
struct WordedList {
  std::size_t (*size)(const void*);
  Worded (*item)(void*, std::size_t);
  Worded (*add)(void*);
  void (*clear)(void*);
  std::string_view takes, example;  ///< of one item
  void* at;
};

/// A vector of a described struct: [[room]].
struct Rows {
  std::size_t (*size)(const void*);
  Record (*row)(void*, std::size_t);
  Record (*add)(void*);
  void* at;
};

using Slot = std::variant<Number, Whole, Flag, Text, TextList, RowNumber, Numbers, Choice, MaybeNumber, Worded,
                          WordedList, Record, Rows>;

/// What a member's name cannot say. Defaults are texts read through the units table, round in the user's own units.
struct Says {
  std::string_view meaning;
  std::string_view us = {};        ///< default of a US file; empty: the key has no default
  std::string_view si = {};        ///< default of an SI file; empty: the same text as `us`
  std::string_view source = {};    ///< where the default comes from: a source, "practice" or "from memory"
  double least = -1e300;           ///< SI
  double most = 1e300;             ///< SI
  std::string_view tight = {};     ///< the careful end of the guess, for ranges and for the list of what matters most
  std::string_view poor = {};      ///< the other end
  std::string_view si_tight = {};  ///< the same ends where an SI file has rounder ones
  std::string_view si_poor = {};
  std::string_view only_for = {};  ///< the one command that reads it; empty: whichever command
};

struct Key {
  std::string_view member;  ///< "thickness_m": the key in the JSON
  std::string_view word;    ///< "thickness": the key in a design file
  const Unit* unit;         ///< from the member's suffix; null where it is not a number
  Says says;
  Slot (*slot)(void* record);
};

// Beside every struct that a file or the JSON shows stands `Record record_of(T&);`, defined in src/<module>/keys.cpp.

/// For walkers that only read; none of them writes through it.
template <class T>
Record reading(const T& x) {
  return record_of(const_cast<T&>(x));
}

/// The key with this word, or null.
const Key* find_key(const Record& record, std::string_view word);

/// Bytes of one value. Nothing that is read here has more, and what splits texts need not be quick at long ones.
inline constexpr std::size_t longest_value = 200;

/// Reads `text` into the slot as the reader would: returns a sentence that says what to write, or nothing. `system`
/// decides which unit such a sentence names first, never how the text is read.
std::string read_into(const Key& key, const Slot& slot, std::string_view text, System system = System::us);

/// The slot's value as a design file would write it, without quotes; empty where nothing is given.
std::string write_out(const Key& key, const Slot& slot, System system);

/// A value that the key may take, as a design file writes it: "12 in", "true", "big door".
std::string example_of(const Key& key, const Slot& slot, System system);

/// A key of a record or of what it holds.
struct Found {
  const Key* key = nullptr;
  Slot slot;
};

/// The key at a path: "slab.thickness", "room[2].area" (rows count from 1), or "room[2]" for the row itself. Empty
/// where the record has no such key or row.
std::optional<Found> find_path(const Record& record, std::string_view path);

/// Calls `visit` for every key that holds a value, sections and existing rows included, in the order of the
/// description.
void walk(const Record& record, const std::function<void(const std::string& path, const Key&, const Slot&)>& visit);

/// Text of a user in a sentence of ours: in plain characters, at most 40 of them.
std::string excerpt(std::string_view text);

}  // namespace slabwright
