#include "fuzz/mutated.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "fuzz/all_keys.hpp"

namespace slabwright::fuzz {
namespace {

using Lines = std::vector<std::string>;

/// A key with the section it stands in.
struct Place {
  std::string section;  ///< empty above all sections
  bool doubled = false;
  const Key* key = nullptr;
  Slot slot;
};

/// Every key of a design. The design they point into lives as long as the program.
const std::vector<Place>& places() {
  static Design design = every_key();
  static const std::vector<Place> all = [] {
    std::vector<Place> found;
    walk(record_of(design), [&found](const std::string& path, const Key& key, const Slot& slot) {
      const std::size_t dot = path.find('.'), bracket = path.find('[');
      found.push_back({dot == std::string::npos ? "" : path.substr(0, std::min(dot, bracket)),
                       bracket != std::string::npos, &key, slot});
    });
    return found;
  }();
  return all;
}

class Changes {
 public:
  Changes(std::string_view text, std::uint32_t seed) : draw_(seed) {
    while (!text.empty()) {
      const std::size_t end = std::min(text.find('\n'), text.size());
      lines_.emplace_back(text.substr(0, end));
      text.remove_prefix(std::min(end + 1, text.size()));
    }
  }

  std::string run() {
    for (std::size_t times = 1 + below(2); times > 0; --times) one();
    std::string text;
    for (const std::string& line : lines_) text += line + '\n';
    return text;
  }

 private:
  std::size_t below(std::size_t n) { return n == 0 ? 0 : draw_() % n; }

  template <class T>
  const T& any_of(const std::vector<T>& all) {
    return all[below(all.size())];
  }

  static bool header(const std::string& line) { return !line.empty() && line.front() == '['; }
  static bool entry(const std::string& line) { return !header(line) && line.find(" = ") != std::string::npos; }

  /// "room" of "[[room]]".
  static std::string section_of(const std::string& line) {
    const std::size_t first = line.find_first_not_of('[');
    return first == std::string::npos ? "" : line.substr(first, line.find(']') - first);
  }

  std::string section_at(std::size_t line) const {
    for (std::size_t i = line + 1; i > 0; --i) {
      if (header(lines_[i - 1])) return section_of(lines_[i - 1]);
    }
    return {};
  }

  /// A line of some kind; lines_.size() where there is none.
  std::size_t line_that(bool (*is)(const std::string&)) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (is(lines_[i])) found.push_back(i);
    }
    return found.empty() ? lines_.size() : any_of(found);
  }

  std::size_t end_of_section(std::size_t first) const {
    std::size_t end = first + 1;
    while (end < lines_.size() && !header(lines_[end])) ++end;
    return end;
  }

  void one() {
    switch (below(12)) {
      case 0: return drop_line();
      case 1: return drop_section();
      case 2: return repeat_section();
      case 3: return add_key();
      case 4: return add_section();
      case 5: return ask();
      case 6: return borrow_value();
      case 7:
      case 8: return other_value();
      default: return scale_number();
    }
  }

  void drop_line() {
    if (const std::size_t at = line_that(entry); at < lines_.size())
      lines_.erase(lines_.begin() + static_cast<std::ptrdiff_t>(at));
  }

  void drop_section() {
    const std::size_t at = line_that(header);
    if (at == lines_.size()) return;
    lines_.erase(lines_.begin() + static_cast<std::ptrdiff_t>(at),
                 lines_.begin() + static_cast<std::ptrdiff_t>(end_of_section(at)));
  }

  void repeat_section() {
    const std::size_t at = line_that([](const std::string& line) { return line.compare(0, 2, "[[") == 0; });
    if (at == lines_.size()) return;
    const Lines copy(lines_.begin() + static_cast<std::ptrdiff_t>(at),
                     lines_.begin() + static_cast<std::ptrdiff_t>(end_of_section(at)));
    for (std::size_t times = below(8) == 0 ? 20 : 1; times > 0; --times) {
      for (std::string line : copy) {
        // Two rows of one name are refused.
        if (line.compare(0, 4, "name") == 0) line = fmt::format("name = \"n{}\"", below(100000));
        lines_.push_back(std::move(line));
      }
    }
  }

  void ask() {
    const std::vector<std::string> asked{"# check",  "# design", "# route",  "# balance", "# freeze",
                                         "# winter", "# drill",  "# sheets", "# cure"};
    if (lines_.empty() || lines_.front().compare(0, 2, "# ") != 0) lines_.insert(lines_.begin(), "");
    lines_.front() = any_of(asked);
  }

  std::string limit_of(const Key& key) {
    const double limit = below(2) == 0 ? key.says.least : key.says.most;
    if (!key.unit || std::fabs(limit) > 1e100) return {};
    return write_quantity(limit, key.unit->dimension, below(2) == 0 ? System::us : System::si);
  }

  /// What the key may take, without quotes.
  std::string text_for(const Place& place) {
    const Says& says = place.key->says;
    std::vector<std::string> texts{example_of(*place.key, place.slot, System::us),
                                   example_of(*place.key, place.slot, System::si), limit_of(*place.key)};
    for (const std::string_view text : {says.us, says.si, says.tight, says.poor}) texts.emplace_back(text);
    if (const auto* choice = std::get_if<Choice>(&place.slot)) {
      for (const std::string_view name : choice->names) texts.emplace_back(name);
    }
    if (std::holds_alternative<Flag>(place.slot)) texts.insert(texts.end(), {"true", "false"});
    if (std::holds_alternative<Whole>(place.slot)) texts.push_back(fmt::format("{}", below(12)));
    texts.erase(std::remove(texts.begin(), texts.end(), std::string()), texts.end());
    return texts.empty() ? "" : any_of(texts);
  }

  std::string value_for(const Place& place) {
    const std::string text = text_for(place);
    if (std::holds_alternative<WordedList>(place.slot)) return text.front() == '[' ? text : "[\"" + text + "\"]";
    const bool bare = std::holds_alternative<Flag>(place.slot) || std::holds_alternative<Whole>(place.slot);
    if (bare || text.find('"') != std::string::npos) return text;
    return '"' + text + '"';
  }

  std::string line_for(const Place& place) { return fmt::format("{} = {}", place.key->word, value_for(place)); }

  std::vector<Place> keys_of(const std::string& section) const {
    std::vector<Place> found;
    for (const Place& place : places()) {
      if (place.section == section) found.push_back(place);
    }
    return found;
  }

  void other_value() {
    const std::size_t at = line_that(entry);
    if (at == lines_.size()) return;
    for (const Place& place : keys_of(section_at(at))) {
      if (lines_[at].compare(0, place.key->word.size() + 1, std::string(place.key->word) + ' ') == 0)
        lines_[at] = line_for(place);
    }
  }

  /// The value of another line.
  void borrow_value() {
    const std::size_t into = line_that(entry), from = line_that(entry);
    if (into == lines_.size() || from == lines_.size()) return;
    lines_[into] = lines_[into].substr(0, lines_[into].find(" = ")) + lines_[from].substr(lines_[from].find(" = "));
  }

  void add_key() {
    const std::size_t at = line_that(header);
    if (at == lines_.size()) return add_section();
    const std::vector<Place> keys = keys_of(section_of(lines_[at]));
    if (!keys.empty()) lines_.insert(lines_.begin() + static_cast<std::ptrdiff_t>(at) + 1, line_for(any_of(keys)));
  }

  void add_section() {
    const Place& one = any_of(places());
    if (one.section.empty()) {
      lines_.insert(lines_.begin(), line_for(one));
      return;
    }
    const std::string name = '[' + one.section + ']';
    const auto there = std::find(lines_.begin(), lines_.end(), name);
    if (!one.doubled && there != lines_.end()) {
      lines_.insert(there + 1, line_for(one));
      return;
    }
    lines_.push_back(one.doubled ? '[' + name + ']' : name);
    lines_.push_back(line_for(one));
    for (const Place& place : keys_of(one.section)) {
      if (place.key != one.key && below(2) == 0) lines_.push_back(line_for(place));
    }
  }

  void scale_number() {
    const std::size_t at = line_that(entry);
    if (at == lines_.size()) return;
    std::string& line = lines_[at];
    std::vector<std::size_t> starts;
    const auto digit = [&line](std::size_t i) { return i < line.size() && line[i] >= '0' && line[i] <= '9'; };
    for (std::size_t i = line.find(" = "); i < line.size(); ++i) {
      if (digit(i) && !digit(i - 1) && line[i - 1] != '.') starts.push_back(i);
    }
    if (starts.empty()) return;
    const std::size_t from = any_of(starts);
    std::size_t to = from;
    while (digit(to) || (to < line.size() && line[to] == '.' && digit(to + 1))) ++to;
    const std::vector<double> factors{0.0, 0.01, 0.1, 0.5, 0.9, 0.99, 1.01, 1.1, 1.5, 2.0, 3.0, 10.0, 100.0, 1e4};
    const double number = read_number(line.substr(from, to - from)).value_or(1.0);
    line.replace(from, to - from, fmt::format("{:.6g}", number * any_of(factors)));
  }

  std::mt19937 draw_;
  Lines lines_;
};

}  // namespace

std::string mutated(std::string_view text, std::uint32_t seed, std::size_t most_bytes) {
  std::string changed = Changes(text, seed).run();
  if (changed.size() > most_bytes) changed.resize(most_bytes);
  return changed;
}

}  // namespace slabwright::fuzz
