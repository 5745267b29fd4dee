// One value read or written by its description; the sentences say what to write.
#include "slabwright/fields.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace slabwright {
namespace {

System any_system() { return System::si; }

std::string example(const Key& key) {
  if (!key.says.us.empty()) return std::string(key.says.us);
  if (!key.unit) return "...";
  return write_quantity(1.0, key.unit->dimension, any_system());
}

/// A decimal comma mended: "0,30 m" -> "0.30 m".
std::string with_point(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  return text;
}

std::string fault_sentence(const Key& key, std::string_view text, const Reading& reading) {
  const Dimension dimension = key.unit->dimension;
  switch (reading.fault) {
    case Fault::none: return {};
    case Fault::not_a_number:
      return fmt::format("\"{}\" is not a number with a unit. Write {} = \"{}\".", text, key.word, example(key));
    case Fault::no_unit: {
      const Shown us = shown(dimension, System::us), si = shown(dimension, System::si);
      const auto with = [&](std::string_view unit) {
        return unit == "R" ? fmt::format("\"R-{}\"", text) : fmt::format("\"{} {}\"", text, unit);
      };
      return fmt::format("{} {} has no unit. Write {} or {}.", key.word, text, with(us.unit), with(si.unit));
    }
    case Fault::unknown_unit:
      return fmt::format("no unit \"{}\"; units that fit {}: {}.", reading.unit, key.word, units_that_fit(dimension));
    case Fault::wrong_kind:
      return fmt::format("\"{}\" does not fit {}; units that fit: {}.", reading.unit, key.word,
                         units_that_fit(dimension));
    case Fault::decimal_comma: return fmt::format("decimal comma: write \"{}\".", with_point(std::string(text)));
    case Fault::not_finite: return fmt::format("\"{}\" is too large a number.", text);
  }
  return {};
}

std::string range_sentence(const Key& key, double si) {
  const Says& says = key.says;
  if (si >= says.least && si <= says.most) return {};
  const Dimension dimension = key.unit ? key.unit->dimension : Dimension::number;
  const auto both = [&](double value) {
    const Shown us = shown(dimension, System::us), metric = shown(dimension, System::si);
    if (us.unit == metric.unit) return show(value, dimension, System::si);
    return fmt::format("{} ({})", show(value, dimension, System::si), show(value, dimension, System::us));
  };
  if (si < says.least) return fmt::format("{} is too small: at least {}.", key.word, both(says.least));
  return fmt::format("{} is too large: at most {}.", key.word, both(says.most));
}

std::string quantity_into(const Key& key, double& at, std::string_view text) {
  const Reading reading = read_quantity(text, key.unit->dimension);
  if (reading.fault != Fault::none) return fault_sentence(key, text, reading);
  if (std::string problem = range_sentence(key, reading.si); !problem.empty()) return problem;
  at = reading.si;
  return {};
}

std::string whole_into(const Key& key, int& at, std::string_view text) {
  const auto value = read_number(text);
  if (!value || *value != std::floor(*value) || std::abs(*value) > 1e6) {
    return fmt::format("{} takes a whole number, not \"{}\".", key.word, text);
  }
  if (std::string problem = range_sentence(key, *value); !problem.empty()) return problem;
  at = static_cast<int>(*value);
  return {};
}

std::string flag_into(const Key& key, bool& at, std::string_view text) {
  if (text == "true" || text == "yes")
    at = true;
  else if (text == "false" || text == "no")
    at = false;
  else
    return fmt::format("{} takes true or false, not \"{}\".", key.word, text);
  return {};
}

std::string choice_into(const Key& key, const Choice& choice, std::string_view text) {
  std::string all;
  for (std::size_t i = 0; i < choice.names.size(); ++i) {
    if (choice.names[i] == text) {
      choice.set(choice.at, static_cast<int>(i));
      return {};
    }
    all += fmt::format("{}\"{}\"", i ? ", " : "", choice.names[i]);
  }
  return fmt::format("{} is one of {}; \"{}\" is none of them.", key.word, all, text);
}

template <class... F>
struct Overload : F... {
  using F::operator()...;
};
template <class... F>
Overload(F...) -> Overload<F...>;

}  // namespace

const Key* find_key(const Record& record, std::string_view word) {
  for (const Key& key : record.keys) {
    if (key.word == word) return &key;
  }
  return nullptr;
}

std::string read_into(const Key& key, const Slot& slot, std::string_view text) {
  return std::visit(Overload{[&](const Number& n) { return quantity_into(key, *n.at, text); },
                             [&](const MaybeNumber& m) {
                               double value = 0.0;
                               std::string problem = quantity_into(key, value, text);
                               if (problem.empty()) *m.at = value;
                               return problem;
                             },
                             [&](const Whole& w) { return whole_into(key, *w.at, text); },
                             [&](const Flag& f) { return flag_into(key, *f.at, text); },
                             [&](const Text& t) {
                               *t.at = std::string(text);
                               return std::string{};
                             },
                             [&](const Choice& c) { return choice_into(key, c, text); },
                             [&](const Worded& w) { return w.read(w.at, text); },
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
               [&](const auto&) { return std::string{}; }},
      slot);
}

}  // namespace slabwright
