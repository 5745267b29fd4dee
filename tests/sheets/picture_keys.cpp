#include "picture_keys.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <nlohmann/json.hpp>
#include <sstream>

#include "slabwright/units.hpp"

namespace slabwright::test {
namespace {

using Json = nlohmann::ordered_json;

/// "plan.door[0].width_m" as a pointer into the JSON.
const Json* find(const Json& whole, const std::string& key) {
  std::string pointer = "/" + key;
  for (char& c : pointer) c = c == '.' || c == '[' ? '/' : c;
  pointer.erase(std::remove(pointer.begin(), pointer.end(), ']'), pointer.end());
  const nlohmann::json_pointer<std::string> at(pointer);
  return whole.contains(at) ? &whole.at(at) : nullptr;
}

bool digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }
bool letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

/// The unit that a member's name ends in.
const Unit* unit_of(const std::string& key) {
  const Unit* best = nullptr;
  for (const Unit& unit : units()) {
    const std::string suffix(unit.suffix);
    if (suffix.empty() || key.size() < suffix.size()) continue;
    if (key.compare(key.size() - suffix.size(), suffix.size(), suffix) != 0) continue;
    if (!best || suffix.size() > best->suffix.size()) best = &unit;
  }
  return best;
}

/// Half of what the last printed digit counts, in SI: of a fraction half of its denominator's part.
double half_digit(const std::string& quantity, Dimension dimension) {
  std::size_t last = quantity.find_last_of("0123456789");
  // The 2 of "m2K/W" counts nothing.
  while (last > 0 && letter(quantity[last - 1])) last = quantity.find_last_of("0123456789", last - 1);
  std::size_t first = last;
  while (first > 0 && (digit(quantity[first - 1]) || quantity[first - 1] == '.')) --first;
  const std::string number = quantity.substr(first, last - first + 1), unit = quantity.substr(last + 1);
  const std::string ahead = quantity[0] == 'R' ? "R-" : "";  // "R-10" has its unit first
  double step = 1.0;
  if (first > 0 && quantity[first - 1] == '/')
    step = 1.0 / std::stod(number);
  else if (const auto point = number.find('.'); point != std::string::npos)
    step = std::pow(10.0, -static_cast<double>(number.size() - point - 1));
  const Reading two = read_quantity(ahead + "2" + unit, dimension), one = read_quantity(ahead + "1" + unit, dimension);
  return 0.5 * step * (two.si - one.si);
}

/// Goes through one text, key by key.
class Reader {
 public:
  Reader(const Json& whole, const Lettering& text, KeyFaults& found) : whole_(whole), text_(text.text), found_(found) {
    std::istringstream keys(text.key);
    for (std::string key; keys >> key;) take(key);
    const bool left = std::any_of(text_.begin() + static_cast<std::ptrdiff_t>(at_), text_.end(), digit);
    if (left && !scale_) say("a digit without a key");
  }

 private:
  void say(const std::string& what) { found_.fault.push_back(what + ": \"" + text_ + "\""); }

  void take(const std::string& key) {
    if (key == scale_mark) {
      scale_ = true;
      return;
    }
    const Json* value = find(whole_, key);
    if (!value) return say("no such key, " + key);
    if (value->is_string())
      take_words(value->get<std::string>(), key);
    else if (value->is_number())
      take_number(value->get<double>(), key);
    else
      say("neither number nor text, " + key);
  }

  void take_words(const std::string& words, const std::string& key) {
    const std::size_t at = text_.find(words, at_);
    // A long text may be broken into lines, each of which is a part of it.
    if (at == std::string::npos && words.find(text_) == std::string::npos) return say("not what " + key + " says");
    pass_to(at == std::string::npos ? text_.size() : at + words.size(), at == std::string::npos ? at_ : at);
  }

  void take_number(double value, const std::string& key) {
    const Unit* unit = unit_of(key);
    std::size_t from = at_;
    while (from < text_.size() && !digit(text_[from])) ++from;
    if (from > at_ && text_[from - 1] == '-') --from;
    if (from > at_ && text_[from] == '-' && text_[from - 1] == 'R') --from;
    for (std::size_t end = text_.size(); end > from; --end) {
      const std::string part = text_.substr(from, end - from);
      const Reading read = unit ? read_quantity(part, unit->dimension) : bare(part);
      if (read.fault != Fault::none) continue;
      const double within = unit ? half_digit(part, unit->dimension) : 0.0;
      // The JSON rounds to six digits.
      if (std::abs(read.si - value) > within * (1.0 + 1e-6) + 1e-5 * std::abs(value))
        say("\"" + part + "\" is not " + std::to_string(value) + ", " + key);
      return pass_to(end, from);
    }
    say("no figure for " + key);
  }

  static Reading bare(const std::string& part) {
    const auto number = read_number(part);
    return number ? Reading{*number, Fault::none, *number, ""} : Reading{0.0, Fault::not_a_number, 0.0, ""};
  }

  /// Nothing with a digit may stand between what was told and what is told next.
  void pass_to(std::size_t end, std::size_t from) {
    const auto begin = text_.begin();
    if (!scale_ &&
        std::any_of(begin + static_cast<std::ptrdiff_t>(at_), begin + static_cast<std::ptrdiff_t>(from), digit))
      say("a digit without a key");
    at_ = end;
    ++found_.keys;
  }

  const Json& whole_;
  std::string text_;
  KeyFaults& found_;
  std::size_t at_ = 0;
  bool scale_ = false;
};

}  // namespace

KeyFaults key_faults(const Picture& picture, const std::string& json) {
  const Json whole = Json::parse(json);
  KeyFaults found;
  for (const Layer& layer : picture.layer) {
    for (const SheetShape& shape : layer.shape) {
      if (const auto* text = std::get_if<Lettering>(&shape)) Reader(whole, *text, found);
    }
  }
  Reader(whole, {{}, picture.title, 0.0, {}, false, false, Align::middle, picture.title_key}, found);
  Reader(whole, {{}, picture.description, 0.0, {}, false, false, Align::middle, picture.description_key}, found);
  return found;
}

}  // namespace slabwright::test
