// The first file of a beginner.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "design/draft.hpp"
#include "design/toml_text.hpp"

namespace slabwright {
namespace {

struct FirstKey {
  std::string_view path, remark;
};
constexpr std::array<FirstKey, 6> first_keys{{
    {"slab.size", "inside the walls"},
    {"slab.thickness", "of concrete"},
    {"tube.size", "trade size"},
    {"tube.spacing", "from tube to tube"},
    {"climate.outdoor", "the coldest weather to plan for"},
    {"climate.indoor", "wanted inside while you work"},
}};

/// What narrows an answer most, and is not known at the first sitting.
struct Later {
  std::string_view section, us, si, remark;
};
constexpr std::array<Later, 3> later_keys{{
    {"[building]", "wall_insulation = \"R-19\"", "wall_insulation = \"3.3 m2K/W\"", "and roof_insulation, air_changes"},
    {"[[opening]]", "size = \"12 ft x 10 ft\"", "size = \"3.6 m x 3 m\"", "the big door, width x height"},
    {"[edge]", "door_strip = \"R-10\"", "door_strip = \"1.8 m2K/W\"", "foam across the slab under the big door"},
}};

constexpr std::size_t remark_column = 34;

std::string with_remark(std::string line, std::string_view remark) {
  if (remark.empty()) return line + '\n';
  line.resize(std::max(line.size() + 2, remark_column), ' ');
  return fmt::format("{}# {}\n", line, remark);
}

class Beginning {
 public:
  explicit Beginning(const std::vector<Override>& options) : options_(options) {
    design_.units = typed_units({}, options).value_or(System::us);
    for (const Override& option : options) {
      if (option.path == "units") design_.units = option.text == "SI" ? System::si : System::us;
    }
  }

  std::string run() {
    std::string text =
        "# A design file for slabwright. Each value is a text with its unit; a # begins a\n"
        "# remark. Take a # away in front of a key to make the value yours.\n";
    text += with_remark(fmt::format("units = \"{}\"", design_.units == System::us ? "US" : "SI"), "what is printed");
    for (const Override& option : options_) {
      if (option.path == "codes") text += fmt::format("codes = {}\n", in_quotes(option.text));
    }
    for (const Key& key : record_of(design_).keys) text += section(key);
    return text + later();
  }

 private:
  const Override* option_for(std::string_view path) const {
    const Override* last = nullptr;
    for (const Override& option : options_) {
      if (option.path == path) last = &option;
    }
    return last;
  }

  std::string written(const Key& key, const Slot& slot, std::string_view text) const {
    return fmt::format("{} = {}", key.word, stands_bare(key, slot) ? std::string(text) : in_quotes(text));
  }

  /// One key of a section: an option's, or as a remark one that a first design should have.
  std::string line_of(const std::string& path, const Key& key, const Slot& slot) const {
    const auto first =
        std::find_if(first_keys.begin(), first_keys.end(), [&](const FirstKey& f) { return f.path == path; });
    const std::string_view remark = first == first_keys.end() ? std::string_view{} : first->remark;
    if (const Override* option = option_for(path)) return with_remark(written(key, slot, option->text), remark);
    const auto rivals = rivals_of(path);
    const bool known = std::any_of(rivals.begin(), rivals.end(), [&](const std::string& r) { return option_for(r); });
    if (first == first_keys.end() || known) return {};
    return with_remark("# " + written(key, slot, example(path, key, slot)), remark);
  }

  std::string example(const std::string& path, const Key& key, const Slot& slot) const {
    const bool si = design_.units == System::si;
    if (path == "slab.size") return si ? "11 m x 9 m" : "36 ft x 30 ft";
    if (path == "climate.outdoor") return si ? "-24 C" : "-12 F";
    return example_of(key, slot, design_.units);
  }

  std::string keys_of(const Record& record, const std::string& prefix) const {
    std::string keys;
    for (const Key& key : record.keys) keys += line_of(prefix + std::string(key.word), key, key.slot(record.at));
    return keys;
  }

  std::string section(const Key& key) {
    const Slot slot = key.slot(&design_);
    std::string text;
    if (const auto* record = std::get_if<Record>(&slot)) {
      const std::string keys = keys_of(*record, fmt::format("{}.", key.word));
      if (!keys.empty()) text = fmt::format("\n[{}]\n{}", key.word, keys);
    }
    if (const auto* rows = std::get_if<Rows>(&slot)) {
      for (std::size_t i = 1; has_row(key.word, i); ++i) {
        const std::string keys = keys_of(rows->add(rows->at), fmt::format("{}[{}].", key.word, i));
        text += fmt::format("\n[[{}]]\n{}", key.word, keys);
      }
    }
    if (!text.empty()) used_.insert(std::string(key.word));
    return text;
  }

  bool has_row(std::string_view word, std::size_t i) const {
    const std::string prefix = fmt::format("{}[{}].", word, i);
    return std::any_of(options_.begin(), options_.end(),
                       [&](const Override& o) { return o.path.compare(0, prefix.size(), prefix) == 0; });
  }

  std::string later() const {
    std::string text;
    for (const Later& key : later_keys) {
      const std::string_view name = key.section.substr(key.section.find_first_not_of('['));
      if (used_.count(std::string(name.substr(0, name.find(']'))))) continue;
      if (text.empty()) text = "\n# What narrows the answer most, once you know it:\n";
      const std::string_view line = design_.units == System::us ? key.us : key.si;
      text += fmt::format("# {}\n{}", key.section, with_remark(fmt::format("# {}", line), key.remark));
    }
    return text;
  }

  const std::vector<Override>& options_;
  Design design_;
  std::set<std::string> used_;
};

}  // namespace

std::string new_design_text(const std::vector<Override>& options) { return Beginning(options).run(); }

}  // namespace slabwright
