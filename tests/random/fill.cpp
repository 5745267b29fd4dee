// Keys given by their description, and keys broken.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "random/by_key.hpp"

namespace slabwright::test {
namespace {

/// Where things are and how large: what only fits together, and a scenario gives. A weather file is the disk's.
bool is_of_scenario(const std::string& section, const Key& key, const Slot& slot) {
  static const std::set<std::string> own{"slab.area",      "room.area",       "loop.length",
                                         "manifold.loops", "climate.weather", "slab.exposed_perimeter",
                                         "room.outer_wall"};
  if (own.count(section + "." + std::string(key.word))) return true;
  if (section == "no_tube" || section == "partition" || section == "wall" || section == "edge_part") return true;
  if (const auto* worded = std::get_if<Worded>(&slot))
    return worded->takes == Place::takes || (worded->takes == Size::takes && section != "opening");
  if (const auto* list = std::get_if<WordedList>(&slot))
    return list->takes == Place::takes || list->takes == Gap::takes;
  return std::holds_alternative<TextList>(slot);
}

/// Keys that the reader refuses alone, and the key that each goes with.
const std::map<std::string, std::string>& goes_with() {
  static const std::map<std::string, std::string> all{{"slab.topping_conductivity", "slab.topping"},
                                                      {"slab.topping_above_tube", "slab.topping"},
                                                      {"slab.mat_insulation", "slab.mats"},
                                                      {"climate.minimum_spread", "climate.yearly_minimum"},
                                                      {"climate.return_years", "climate.yearly_minimum"},
                                                      {"fluid.glycol", "fluid.kind"}};
  return all;
}

std::string free_text(const DesignText& text, const Key& key, Draws& draws) {
  const auto named = [&](const std::string& section) {
    const std::vector<std::string> names = text.texts(section, "name");
    return names.empty() ? std::string{} : draws.of(names);
  };
  if (key.word == "room") return named("room");
  if (key.word == "manifold") return named("manifold");
  if (key.word == "currency") return "$";
  return {};
}

struct Filling {
  DesignText& text;
  System system;
  Draws& draws;
  Design scratch{};

  void one(const std::string& section, const std::string& prefix, const Key& key, const Slot& slot) {
    const std::string path = prefix + "." + std::string(key.word);
    const auto base = goes_with().find(path);
    if (text.has(path) || is_of_scenario(section, key, slot)) return;
    if (base != goes_with().end() && !text.has(base->second)) return;
    if (const auto* list = std::get_if<WordedList>(&slot)) return text.set_list(path, drawn_list(*list, system, draws));
    const std::string value =
        std::holds_alternative<Text>(slot) ? free_text(text, key, draws) : drawn_value(key, slot, system, draws);
    if (!value.empty()) text.set(path, value);
  }

  void record(const std::string& section, const std::string& prefix, const Record& of) {
    const double share = draws.by_ratio(0.02, 0.6);
    for (const Key& key : of.keys)
      if (draws.chance(share)) one(section, prefix, key, key.slot(of.at));
  }

  void rows(const std::string& section, const Rows& of) {
    for (std::size_t i = 0; i < text.rows(section); ++i)
      if (draws.chance(0.5)) record(section, fmt::format("{}[{}]", section, i + 1), of.add(of.at));
  }
};

}  // namespace

void fill_by_description(DesignText& text, System system, Draws& draws) {
  Filling filling{text, system, draws};
  const Record all = record_of(filling.scratch);
  for (const Key& section : all.keys) {
    const std::string name(section.word);
    const Slot slot = section.slot(all.at);
    if (const auto* one = std::get_if<Record>(&slot)) {
      if (draws.chance(0.4)) filling.record(name, name, *one);
    } else if (const auto* several = std::get_if<Rows>(&slot)) {
      filling.rows(name, *several);
    }
  }
}

void take_out_refused(DesignText& text) {
  constexpr int most_rounds = 60;
  for (int round = 0; round < most_rounds; ++round) {
    const ReadDesign read = read_design(text.toml());
    const auto& said = read.checked.said;
    const auto refused = std::find_if(said.begin(), said.end(), [&](const Diagnostic& d) {
      return d.severity == Severity::problem && text.has(d.about);
    });
    if (read.checked || refused == said.end()) return;
    text.remove(refused->about);
  }
}

namespace {

/// The key at a path, of whatever row.
const Key* key_of(const std::string& path) {
  static const Design one_row_each = [] {
    Design design;
    for (const Key& section : record_of(design).keys) {
      const Slot slot = section.slot(record_of(design).at);
      if (const auto* rows = std::get_if<Rows>(&slot)) rows->add(rows->at);
    }
    return design;
  }();
  std::string first = path;
  const std::size_t open = path.find('[');
  if (open != std::string::npos) first.replace(open, path.find(']') - open, "[1");
  return key_at(one_row_each, first);
}

}  // namespace

void nearly_break(DesignText& text, System system, Draws& draws) {
  static const std::vector<std::string> broken{"12", "none at all", "1e400 in", "-3 m", "0", "5 furlongs", "1,5 m", ""};
  const int keys = draws.whole(1, 2);
  for (int i = 0; i < keys; ++i) {
    const std::string path = draws.of(text.paths());
    const Key* key = key_of(path);
    const std::string limit = key ? value_at_limit(*key, system, draws) : std::string{};
    if (!limit.empty() && draws.chance(0.7))
      text.set(path, limit);
    else if (draws.chance(0.5))
      text.remove(path);
    else
      text.set(path, draws.of(broken));
  }
}

}  // namespace slabwright::test
