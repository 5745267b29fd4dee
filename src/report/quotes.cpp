#include "slabwright/report_quotes.hpp"

#include <fmt/format.h>

#include <charconv>
#include <stdexcept>

#include "report/json.hpp"
#include "report/tape.hpp"
#include "report/text_winter.hpp"

namespace slabwright {

struct Quotes::Whole {
  nlohmann::ordered_json tree;

  /// The value at a key, or null where the answer has none.
  const nlohmann::ordered_json* find(std::string_view key) const {
    const nlohmann::ordered_json* at = &tree;
    for (std::size_t from = 0; from < key.size();) {
      const std::size_t end = std::min(key.find_first_of(".[]", from), key.size());
      if (end > from) {
        const std::string word(key.substr(from, end - from));
        if (at->is_array()) {
          std::size_t row = 0;
          std::from_chars(word.data(), word.data() + word.size(), row);
          if (row >= at->size()) return nullptr;
          at = &(*at)[row];
        } else {
          const auto next = at->find(word);
          if (next == at->end()) return nullptr;
          at = &*next;
        }
      }
      from = end + 1;
    }
    return at;
  }

  const nlohmann::ordered_json& at(std::string_view key) const {
    if (const auto* found = find(key)) return *found;
    throw std::logic_error(fmt::format("quotes: the answer has no {}", key));
  }
};

Quotes::Quotes(const Answer& answer)
    : answer_(&answer), whole_(std::make_shared<const Whole>(Whole{report::tree_of(answer)})) {}

bool Quotes::has(std::string_view key) const { return whole_->find(key) != nullptr; }

std::size_t Quotes::rows(std::string_view key) const {
  const auto* found = whole_->find(key);
  return found && found->is_array() ? found->size() : 0;
}

double Quotes::number(std::string_view key) const {
  const auto& value = whole_->at(key);
  if (!value.is_number()) throw std::logic_error(fmt::format("quotes: {} is no number", key));
  return value.get<double>();
}

Quote Quotes::figure(std::string_view key, report::Kind kind) const {
  return {std::string(key), report::figure(kind, number(key), system())};
}

Quote Quotes::figure(std::string_view key, report::Kind kind, report::Figure leaning) const {
  Quote quote = figure(key, kind);
  quote.text = report::marked(quote.text, *answer_, leaning);
  return quote;
}

Quote Quotes::bare(std::string_view key, report::Kind kind) const {
  return {std::string(key), report::bare(kind, number(key), system()), std::string(report::unit(kind, system()))};
}

Quote Quotes::tape(std::string_view key) const { return {std::string(key), report::tape(number(key), system())}; }

Quote Quotes::money(std::string_view key) const {
  const ReportOptions options;
  return {std::string(key), report::money({*answer_, options}, number(key))};
}

Quote Quotes::count(std::string_view key) const { return {std::string(key), fmt::format("{}", rows(key))}; }

Quote Quotes::words(std::string_view key) const {
  const auto& value = whole_->at(key);
  if (!value.is_string()) throw std::logic_error(fmt::format("quotes: {} is no text", key));
  return {std::string(key), value.get<std::string>(), {}, false};
}

std::string key_of_row(std::string_view list, std::size_t row, std::string_view member) {
  return fmt::format("{}[{}]{}{}", list, row, member.empty() ? "" : ".", member);
}

}  // namespace slabwright
