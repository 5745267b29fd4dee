// For keys.cpp files only: turns &Slab::thickness_m into a Key.
#pragma once
#include <array>
#include <stdexcept>
#include <type_traits>

#include "fields.hpp"
#include "units_table.hpp"

namespace slabwright {

/// "thickness_m" of &Slab::thickness_m, from the compiler's own spelling of the template argument.
template <auto M>
constexpr std::string_view member_name() {
  std::string_view s = __PRETTY_FUNCTION__;
  s = s.substr(s.find("M = ") + 4);
  s = s.substr(0, s.find_first_of(";]"));
  return s.substr(s.rfind(':') + 1);
}

/// The words of an enum in a file, specialised beside each described enum.
template <class E>
struct Choices;

template <class T>
concept Wordable = requires(T& x, const T& y) {
  { read_words(std::string_view{}, x) } -> std::same_as<std::string>;
  { write_words(y, System::us) } -> std::same_as<std::string>;
};

template <class T>
Worded worded(T& x) {
  return {[](void* p, std::string_view text) { return read_words(text, *static_cast<T*>(p)); },
          [](const void* p, System system) { return write_words(*static_cast<const T*>(p), system); },
          [](const void*) { return true; },
          T::takes,
          T::example,
          &x};
}

template <class T>
Worded worded(std::optional<T>& x) {
  using Maybe = std::optional<T>;
  return {[](void* p, std::string_view text) {
            T value{};
            std::string problem = read_words(text, value);
            if (problem.empty()) *static_cast<Maybe*>(p) = value;
            return problem;
          },
          [](const void* p, System system) {
            const auto& maybe = *static_cast<const Maybe*>(p);
            return maybe ? write_words(*maybe, system) : std::string{};
          },
          [](const void* p) { return static_cast<const Maybe*>(p)->has_value(); },
          T::takes,
          T::example,
          &x};
}

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};

/// Answers only: an optional struct that is no text. It is a record without keys where it is absent.
template <class T>
struct IsMaybeRecord : std::false_type {};
template <class T>
struct IsMaybeRecord<std::optional<T>> : std::bool_constant<!Wordable<T> && std::is_class_v<T>> {};

template <class T>
WordedList worded_list(std::vector<T>& x) {
  using List = std::vector<T>;
  return {[](const void* p) { return static_cast<const List*>(p)->size(); },
          [](void* p, std::size_t i) { return worded((*static_cast<List*>(p))[i]); },
          [](void* p) { return worded(static_cast<List*>(p)->emplace_back()); },
          [](void* p) { static_cast<List*>(p)->clear(); },
          T::takes,
          T::example,
          &x};
}

template <class T>
Rows rows_of(std::vector<T>& x) {
  using List = std::vector<T>;
  return {[](const void* p) { return static_cast<const List*>(p)->size(); },
          [](void* p, std::size_t i) { return record_of((*static_cast<List*>(p))[i]); },
          [](void* p) { return record_of(static_cast<List*>(p)->emplace_back()); }, &x};
}

/// Answers only: a row for each month. It takes no more rows, as no file has any.
template <class T, std::size_t N>
Rows rows_of(std::array<T, N>& x) {
  using List = std::array<T, N>;
  return {[](const void*) { return N; }, [](void* p, std::size_t i) { return record_of((*static_cast<List*>(p))[i]); },
          [](void*) -> Record { throw std::logic_error("a list of a fixed length takes no more rows"); }, &x};
}

template <class T, class V>
struct IsArray : std::false_type {};
template <class V, std::size_t N>
struct IsArray<std::array<V, N>, V> : std::true_type {};

template <class E>
Choice choice_of(E& x) {
  return {Choices<E>::names, [](const void* p) { return static_cast<int>(*static_cast<const E*>(p)); },
          [](void* p, int n) { *static_cast<E*>(p) = static_cast<E>(n); }, &x};
}

template <class T>
Slot slot_of(T& x) {
  if constexpr (std::is_same_v<T, double>)
    return Number{&x};
  else if constexpr (std::is_same_v<T, int>)
    return Whole{&x};
  else if constexpr (std::is_same_v<T, bool>)
    return Flag{&x};
  else if constexpr (std::is_same_v<T, std::string>)
    return Text{&x};
  else if constexpr (std::is_same_v<T, std::vector<std::string>>)
    return TextList{&x};
  else if constexpr (std::is_same_v<T, std::size_t>)
    return RowNumber{&x};
  else if constexpr (std::is_same_v<T, std::vector<double>> || IsArray<T, double>::value)
    return Numbers{x};
  else if constexpr (std::is_same_v<T, std::optional<double>>)
    return MaybeNumber{&x};
  else if constexpr (std::is_enum_v<T>)
    return choice_of(x);
  else if constexpr (IsMaybeRecord<T>::value)
    return x ? record_of(*x) : Record{};
  else if constexpr (IsOptional<T>::value || Wordable<T>)
    return worded(x);
  else if constexpr (requires { x.emplace_back(); }) {
    if constexpr (Wordable<typename T::value_type>)
      return worded_list(x);
    else
      return rows_of(x);
  } else if constexpr (requires { rows_of(x); })
    return rows_of(x);
  else
    return record_of(x);
}

template <class T>
struct OwnerOf;
template <class O, class V>
struct OwnerOf<V O::*> {
  using Owner = O;
  using Value = V;
};

/// The row of the units table for a member's name, or -1. Row numbers, not pointers: g++ 12 takes no comparison of
/// pointers into constants for a constant when its sanitizer watches undefined behaviour.
constexpr int unit_row(std::string_view member) {
  int found = -1;
  std::size_t longest = 0;
  for (int i = 0; i < static_cast<int>(std::size(table::rows)); ++i) {
    const std::string_view suffix = table::rows[i].suffix;
    // Only "money" is a whole name; other suffixes begin with a mark that no name begins with.
    if (suffix.size() <= longest || member.size() < suffix.size()) continue;
    if (member.substr(member.size() - suffix.size()) != suffix) continue;
    found = i;
    longest = suffix.size();
  }
  return found;
}

template <auto M>
constexpr Key key(Says says) {
  using Owner = typename OwnerOf<decltype(M)>::Owner;
  using Value = typename OwnerOf<decltype(M)>::Value;
  constexpr std::string_view name = member_name<M>();
  constexpr bool carries = std::is_same_v<Value, double> || std::is_same_v<Value, std::optional<double>> ||
                           std::is_same_v<Value, std::vector<double>> || IsArray<Value, double>::value;
  constexpr int unit = carries ? unit_row(name) : -1;
  static_assert(!carries || unit >= 0, "a double's name must end in its unit");
  const auto slot = [](void* record) { return slot_of(static_cast<Owner*>(record)->*M); };
  if constexpr (unit >= 0) {
    return {name, name.substr(0, name.size() - table::rows[unit].suffix.size()), &table::rows[unit], says, slot};
  } else {
    return {name, name, nullptr, says, slot};
  }
}

namespace check {
struct Named {
  double length_m;
};
static_assert(member_name<&Named::length_m>() == "length_m", "this compiler spells template arguments another way");
}  // namespace check

}  // namespace slabwright
