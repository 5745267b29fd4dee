// One value read or written by its description.
#include "slabwright/fields.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "core/sentences.hpp"

namespace slabwright {
namespace {

std::string quantity_into(const Key& key, double& at, std::string_view text, System system) {
  const Reading reading = read_quantity(text, key.unit->dimension);
  if (reading.fault != Fault::none) return fault_sentence(key, text, reading, system);
  if (std::string problem = range_sentence(key, text, reading.si, system); !problem.empty()) return problem;
  at = reading.si;
  return {};
}

std::string whole_into(const Key& key, int& at, std::string_view text, System system) {
  const auto value = read_number(text);
  if (!value || *value != std::floor(*value) || std::abs(*value) > 1e6) {
    return fmt::format("{} takes a whole number, not \"{}\".", key.word, excerpt(text));
  }
  if (std::string problem = range_sentence(key, text, *value, system); !problem.empty()) return problem;
  at = static_cast<int>(*value);
  return {};
}

std::string flag_into(const Key& key, bool& at, std::string_view text) {
  const bool yes = text == "true" || text == "yes";
  if (!yes && text != "false" && text != "no") {
    return fmt::format("{} is true or false, not \"{}\".", key.word, excerpt(text));
  }
  at = yes;
  return {};
}

/// A name stands in tables and on sheets: one line, not too long.
std::string text_into(const Key& key, std::string& at, std::string_view text) {
  constexpr std::size_t most_bytes = 80;
  if (text.size() > most_bytes) return fmt::format("{} is too long: at most {} letters.", key.word, most_bytes);
  const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; };
  if (std::any_of(text.begin(), text.end(), control)) return fmt::format("{} is one line of plain text.", key.word);
  at = std::string(text);
  return {};
}

/// Capitals, hyphens and underscores do not make another word.
std::string folded(std::string_view text) {
  std::string out;
  for (const char c : text) {
    out += c == '-' || c == '_' ? ' ' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return out;
}

std::string choice_into(const Key& key, const Choice& choice, std::string_view text) {
  const std::string wanted = folded(text);
  for (std::size_t i = 0; i < choice.names.size(); ++i) {
    if (folded(choice.names[i]) != wanted) continue;
    choice.set(choice.at, static_cast<int>(i));
    return {};
  }
  return choice_sentence(key, choice, text);
}

/// "0 ft, 0 ft; 40 ft, 0 ft; ...", for a list that comes as one text.
std::string list_into(const WordedList& list, std::string_view text) {
  list.clear(list.at);
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(';'), text.size());
    const Worded item = list.add(list.at);
    if (std::string problem = item.read(item.at, text.substr(0, end)); !problem.empty()) return problem;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return {};
}

std::string list_out(const WordedList& list, System system) {
  std::string all;
  for (std::size_t i = 0; i < list.size(list.at); ++i) {
    const Worded item = list.item(list.at, i);
    all += (i ? "; " : "") + item.write(item.at, system);
  }
  return all;
}

template <class... F>
struct Overload : F... {
  using F::operator()...;
};
template <class... F>
Overload(F...) -> Overload<F...>;

}  // namespace

std::string read_into(const Key& key, const Slot& slot, std::string_view text, System system) {
  const bool list = std::holds_alternative<WordedList>(slot);
  if (!list && text.size() > longest_value) return fmt::format("{} is too long a text for a value.", key.word);
  return std::visit(Overload{[&](const Number& n) { return quantity_into(key, *n.at, text, system); },
                             [&](const MaybeNumber& m) {
                               double value = 0.0;
                               std::string problem = quantity_into(key, value, text, system);
                               if (problem.empty()) *m.at = value;
                               return problem;
                             },
                             [&](const Whole& w) { return whole_into(key, *w.at, text, system); },
                             [&](const Flag& f) { return flag_into(key, *f.at, text); },
                             [&](const Text& t) { return text_into(key, *t.at, text); },
                             [&](const Choice& c) { return choice_into(key, c, text); },
                             [&](const Worded& w) { return w.read(w.at, text); },
                             [&](const WordedList& l) { return list_into(l, text); },
                             [&](const auto&) { return fmt::format("{} does not take one text.", key.word); }},
                    slot);
}

std::string write_out(const Key& key, const Slot& slot, System system) {
  return std::visit(
      Overload{[&](const Number& n) { return write_quantity(*n.at, key.unit->dimension, system); },
               [&](const MaybeNumber& m) {
                 return *m.at ? write_quantity(**m.at, key.unit->dimension, system) : std::string{};
               },
               [&](const Whole& w) { return fmt::format("{}", *w.at); },
               [&](const Flag& f) { return std::string(*f.at ? "true" : "false"); },
               [&](const Text& t) { return *t.at; },
               [&](const Choice& c) { return std::string(c.names[static_cast<std::size_t>(c.get(c.at))]); },
               [&](const Worded& w) { return w.given(w.at) ? w.write(w.at, system) : std::string{}; },
               [&](const WordedList& l) { return list_out(l, system); }, [&](const auto&) { return std::string{}; }},
      slot);
}

}  // namespace slabwright
