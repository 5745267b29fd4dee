// Nearest by meaning first: a short list of the words people use. Then by spelling.
#include "design/synonyms.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <span>
#include <vector>

#include "slabwright/design.hpp"

namespace slabwright {
namespace {

struct SectionWord {
  std::string_view word, section, says;
};
constexpr std::string_view tubes = "tubes go in [tube]", concrete = "the concrete goes in [slab]";
constexpr std::string_view foam = "foam under the slab goes in [insulation], foam at its edge in [edge]";
constexpr std::string_view walls = "walls, roof and leaks go in [building]";
constexpr std::string_view openings = "doors and windows go in [[opening]], one for each";
constexpr std::string_view weather = "the weather goes in [climate]", warms = "what warms the water goes in [boiler]";
constexpr std::string_view air_heat = "what warms the air goes in [second_source]";
constexpr std::string_view mixture = "water or glycol goes in [fluid]", loops = "a loop goes in [[loop]]";
constexpr std::string_view supply = "the electric supply goes in [service]";
constexpr std::string_view no_price = "no price is read: the answer counts kWh";
constexpr std::string_view no_tube = "where no tube may lie goes in [[no_tube]], one for each area";
constexpr std::string_view joints = "joints of the concrete go in [[joint]]",
                           inner = "walls inside go in [[partition]]";
constexpr std::string_view holes = "holes to be drilled go in [[anchor]]";
constexpr SectionWord section_words[] = {
    {"pipe", "tube", tubes},
    {"piping", "tube", tubes},
    {"tubing", "tube", tubes},
    {"hose", "tube", tubes},
    {"pex", "tube", tubes},
    {"floor", "slab", concrete},
    {"concrete", "slab", concrete},
    {"panel", "slab", concrete},
    {"foam", "insulation", foam},
    {"underslab", "insulation", foam},
    {"perimeter", "edge", "foam at the edge goes in [edge]"},
    {"heatpump", "second_source", air_heat},
    {"minisplit", "second_source", air_heat},
    {"unitheater", "second_source", air_heat},
    {"heater", "boiler", warms},
    {"furnace", "boiler", warms},
    {"waterheater", "boiler", warms},
    {"source", "boiler", warms},
    {"heatsource", "boiler", warms},
    {"tank", "boiler", warms},
    {"rate", "", no_price},
    {"price", "", no_price},
    {"tariff", "", no_price},
    {"electricity", "", no_price},
    {"cost", "", no_price},
    {"weather", "climate", weather},
    {"temperature", "climate", "temperatures go in [climate]"},
    {"outdoor", "climate", "outdoor is a key of [climate]"},
    {"indoor", "climate", "indoor is a key of [climate]"},
    {"setpoint", "climate", "the temperature wanted goes in [climate] as indoor"},
    {"thermostat", "climate", "the temperature wanted goes in [climate] as indoor"},
    {"soil", "ground", "the soil goes in [ground]"},
    {"earth", "ground", "the soil goes in [ground]"},
    {"roof", "building", walls},
    {"ceiling", "building", walls},
    {"house", "building", walls},
    {"shell", "building", walls},
    {"door", "opening", openings},
    {"bigdoor", "opening", openings},
    {"garagedoor", "opening", openings},
    {"window", "opening", openings},
    {"fan", "exhaust", "a fan goes in [[exhaust]]"},
    {"ventilation", "exhaust", "a fan goes in [[exhaust]]"},
    {"zone", "room", "a room goes in [[room]]"},
    {"circuit", "loop", loops},
    {"coil", "loop", loops},
    {"header", "manifold", "the manifold goes in [[manifold]]"},
    {"distributor", "manifold", "the manifold goes in [[manifold]]"},
    {"collector", "manifold", "the manifold goes in [[manifold]]"},
    {"glycol", "fluid", mixture},
    {"antifreeze", "fluid", mixture},
    {"water", "fluid", mixture},
    {"circulator", "pump", "what moves the water goes in [pump]"},
    {"power", "service", supply},
    {"electric", "service", supply},
    {"breaker", "service", supply},
    {"freeze", "frost_hold", "margins over freezing go in [frost_hold]"},
    {"frost", "frost_hold", "margins over freezing go in [frost_hold]"},
    {"hold", "frost_hold", "margins over freezing go in [frost_hold]"},
    {"margin", "frost_hold", "margins over freezing go in [frost_hold]"},
    {"shop", "project", "the shop's name goes in [project]"},
    {"general", "project", "the shop's name goes in [project]"},
    {"expansion", "pressure", "fill and relief go in [pressure]"},
    {"relief", "pressure", "fill and relief go in [pressure]"},
    {"main", "mains", "pipes between boiler and manifold go in [mains]"},
    {"supply", "mains", "pipes between boiler and manifold go in [mains]"},
    {"sensor", "watch", "a place that must not freeze goes in [[watch]]"},
    {"machine", "gains", "heat from machines goes in [[gains]]"},
    {"load", "gains", "heat from machines goes in [[gains]]"},
    {"covering", "", "what lies on the concrete is written in [slab] as covering"},
    {"keepout", "no_tube", no_tube},
    {"keepoff", "no_tube", no_tube},
    {"obstacle", "no_tube", no_tube},
    {"column", "no_tube", no_tube},
    {"post", "no_tube", no_tube},
    {"drain", "no_tube", no_tube},
    {"pad", "no_tube", no_tube},
    {"pit", "no_tube", no_tube},
    {"innerwall", "partition", inner},
    {"interiorwall", "partition", inner},
    {"divider", "partition", inner},
    {"controljoint", "joint", joints},
    {"expansionjoint", "joint", joints},
    {"sawcut", "joint", joints},
    {"bolt", "anchor", holes},
    {"hole", "anchor", holes},
};

/// A key's other name, and where it goes.
struct KeyWord {
  std::string_view word, section, key;
};
constexpr KeyWord key_words[] = {
    {"name", "project", "name"},
    {"size", "slab", "size"},
    {"pitch", "tube", "spacing"},
    {"oncenter", "tube", "spacing"},
    {"oc", "tube", "spacing"},
    {"centers", "tube", "spacing"},
    {"gap", "tube", "spacing"},
    {"distance", "tube", "spacing"},
    {"diameter", "tube", "size"},
    {"pipe", "tube", "size"},
    {"type", "tube", "size"},
    {"tube", "tube", "size"},
    {"lead", "tube", "leader"},
    {"max", "tube", "longest_loop"},
    {"maxlength", "tube", "longest_loop"},
    {"limit", "tube", "longest_loop"},
    {"fromedge", "tube", "from_walls"},
    {"fromdoor", "tube", "from_doors"},
    {"length", "slab", "size"},
    {"screed", "slab", "topping"},
    {"pallets", "slab", "mats"},
    {"frostwall", "edge", "stem_wall"},
    {"foundation", "edge", "stem_wall"},
    {"skirt", "edge", "insulation"},
    {"thermalbreak", "edge", "door_strip"},
    {"threshold", "edge", "door_strip"},
    {"width", "slab", "size"},
    {"dimension", "slab", "size"},
    {"square_feet", "slab", "area"},
    {"sqft", "slab", "area"},
    {"floor_area", "slab", "area"},
    {"shape", "slab", "outline"},
    {"corners", "slab", "outline"},
    {"polygon", "slab", "outline"},
    {"height", "slab", "thickness"},
    {"perimeter", "slab", "exposed_perimeter"},
    {"rvalue", "insulation", "under"},
    {"r", "insulation", "under"},
    {"foam", "insulation", "under"},
    {"thickness", "insulation", "under"},
    {"slab", "insulation", "under"},
    {"rvalue", "edge", "insulation"},
    {"r", "edge", "insulation"},
    {"foam", "edge", "insulation"},
    {"board", "edge", "insulation"},
    {"thickness", "edge", "insulation"},
    {"door", "edge", "door_strip"},
    {"rvalue", "opening", "insulation"},
    {"r", "opening", "insulation"},
    {"type", "opening", "kind"},
    {"designtemperature", "climate", "outdoor"},
    {"designtemp", "climate", "outdoor"},
    {"outside", "climate", "outdoor"},
    {"winter", "climate", "outdoor"},
    {"design", "climate", "outdoor"},
    {"minimum", "climate", "coldest"},
    {"recordlow", "climate", "coldest"},
    {"inside", "climate", "indoor"},
    {"setpoint", "climate", "indoor"},
    {"thermostat", "climate", "indoor"},
    {"roomtemperature", "climate", "indoor"},
    {"elevation", "climate", "altitude"},
    {"setpoint", "room", "indoor"},
    {"temperature", "room", "indoor"},
    {"temperature", "climate", "indoor"},
    {"ceiling", "building", "height"},
    {"ceilingheight", "building", "height"},
    {"wall", "building", "wall_insulation"},
    {"roof", "building", "roof_insulation"},
    {"ceilinginsulation", "building", "roof_insulation"},
    {"door", "building", "door_insulation"},
    {"ach", "building", "air_changes"},
    {"leak", "building", "air_changes"},
    {"infiltration", "building", "air_changes"},
    {"heatloss", "building", "heat_loss"},
    {"tightness", "building", "quality"},
    {"kw", "boiler", "power"},
    {"watt", "boiler", "power"},
    {"output", "boiler", "power"},
    {"capacity", "boiler", "power"},
    {"size", "boiler", "power"},
    {"type", "boiler", "kind"},
    {"mixing", "boiler", "piping"},
    {"maxtemperature", "boiler", "hottest"},
    {"kv", "boiler", "coefficient"},
    {"cv", "boiler", "coefficient"},
    {"kv", "valve", "coefficient"},
    {"cv", "valve", "coefficient"},
    {"kvs", "valve", "coefficient"},
    {"curve", "pump", "points"},
    {"head", "pump", "points"},
    {"gpm", "pump", "flow"},
    {"deltat", "pump", "drop"},
    {"percent", "fluid", "glycol"},
    {"concentration", "fluid", "glycol"},
    {"share", "fluid", "glycol"},
    {"type", "fluid", "kind"},
    {"volt", "service", "voltage"},
    {"amp", "service", "current"},
    {"ampere", "service", "current"},
    {"breaker", "service", "current"},
    {"windspeed", "climate", "wind"},
    {"cutoff", "second_source", "cut_out"},
    {"lockout", "second_source", "cut_out"},
    {"type", "second_source", "kind"},
    {"cfm", "exhaust", "flow"},
    {"makeupair", "exhaust", "makeup"},
    {"diameter", "mains", "inside_diameter"},
    {"size", "mains", "inside_diameter"},
    {"count", "manifold", "loops"},
    {"title", "project", "name"},
};

/// The key itself is ambiguous: neither the nearest spelling nor another section's key is what is meant.
constexpr std::string_view slab_depth =
    "depth of what? thickness is the concrete's; concrete_above_tube runs from its top to the top of the tube.";

struct Section {
  std::string_view word;
  bool list = false;
  Record record;  ///< its keys alone: it describes no design
};

std::string in_brackets(const Section& section) {
  return section.list ? fmt::format("[[{}]]", section.word) : fmt::format("[{}]", section.word);
}

std::vector<Section> sections() {
  Design scratch;  // a list shows what a row is by adding one
  std::vector<Section> all;
  for (const Key& key : record_of(scratch).keys) {
    const Slot slot = key.slot(&scratch);
    if (const auto* record = std::get_if<Record>(&slot)) all.push_back({key.word, false, {record->keys, nullptr}});
    if (const auto* rows = std::get_if<Rows>(&slot)) {
      all.push_back({key.word, true, {rows->add(rows->at).keys, nullptr}});
    }
  }
  return all;
}

std::string list_of(const std::vector<std::string>& words, std::string_view last) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i) {
    all += i == 0 ? "" : i + 1 == words.size() ? fmt::format(" {} ", last) : ", ";
    all += words[i];
  }
  return all;
}

/// The sections that have this key, but for one.
std::vector<std::string> owners_of(std::string_view word, std::string_view but_for) {
  std::vector<std::string> owners;
  for (const Section& section : sections()) {
    if (section.word != but_for && find_key(section.record, word)) owners.push_back(in_brackets(section));
  }
  return owners;
}

/// The keys whose first word this is: footing_depth and footing_width for footing.
std::vector<std::string> begun_by(const Record& record, std::string_view folded) {
  std::vector<std::string> keys;
  for (const Key& key : record.keys) {
    const std::string_view first = key.word.substr(0, key.word.find('_'));
    if (first.size() < key.word.size() && folded_word(first) == folded) keys.emplace_back(key.word);
  }
  return keys;
}

/// The nearest of some words by spelling; null where none is near.
template <class Item>
const Item* nearest_of(std::span<const Item> items, std::string_view word) {
  const Item* nearest = nullptr;
  std::size_t least = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const Item& item : items) {
    const std::size_t apart = letters_apart(item.word, word);
    if (apart >= least) continue;
    least = apart;
    nearest = &item;
  }
  return nearest;
}

}  // namespace

std::string folded_word(std::string_view word) {
  std::string out;
  for (const char c : word) {
    if (c == ' ' || c == '-' || c == '_') continue;
    out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  if (out.size() > 3 && out.back() == 's') out.pop_back();
  return out;
}

std::size_t letters_apart(std::string_view a_word, std::string_view b_word) {
  const std::string a = folded_word(a_word.substr(0, 40)), b = folded_word(b_word.substr(0, 40));
  std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  }
  return d[a.size()][b.size()];
}

SectionMeant section_meant(std::string_view word) {
  const std::string folded = folded_word(word), said = excerpt(word);
  const std::vector<Section> all = sections();
  for (const Section& section : all) {
    if (folded_word(section.word) != folded) continue;
    return {std::string(section.word), fmt::format("no section [{}]; it is written {}.", said, in_brackets(section))};
  }
  for (const SectionWord& known : section_words) {
    if (folded_word(known.word) != folded) continue;
    return {std::string(known.section), fmt::format("no section [{}]; {}.", said, known.says)};
  }
  if (const Section* nearest = nearest_of<Section>(all, word)) {
    return {std::string(nearest->word), fmt::format("no section [{}]; did you mean {}?", said, in_brackets(*nearest))};
  }
  std::vector<std::string> words;
  for (const Section& section : all) words.emplace_back(section.word);
  return {{}, fmt::format("no section [{}]. The sections are {}.", said, list_of(words, "and"))};
}

bool belongs_elsewhere(std::string_view section, std::string_view word) { return !owners_of(word, section).empty(); }

std::string key_sentence(std::string_view section, std::string_view word) {
  const std::string folded = folded_word(word), said = excerpt(word);
  const std::vector<Section> all = sections();
  const auto own = std::find_if(all.begin(), all.end(), [&](const Section& s) { return s.word == section; });
  const std::string here = section.empty() ? "above the first section" : fmt::format("in [{}]", excerpt(section));
  for (const std::string_view top : {"units", "codes"}) {
    if (section.empty() && letters_apart(top, word) <= 1) return fmt::format("no key {}; did you mean {}?", said, top);
  }
  if ((section == "slab" || section == "tube") && folded == "depth") return std::string(slab_depth);
  for (const KeyWord& known : key_words) {
    if (known.section != section || folded_word(known.word) != folded) continue;
    return fmt::format("no key {} {}; it is called {}.", said, here, known.key);
  }
  if (const auto owners = owners_of(word, section); !owners.empty() && owners.size() <= 3) {
    return fmt::format("{} belongs in {} (here it is {}).", said, list_of(owners, "or"), here);
  }
  if (own != all.end()) {
    const Key* nearest = nearest_of<Key>(own->record.keys, word);
    if (nearest) return fmt::format("no key {} {}; did you mean {}?", said, here, nearest->word);
    const std::vector<std::string> longer = begun_by(own->record, folded);
    if (!longer.empty()) return fmt::format("no key {} {}; did you mean {}?", said, here, list_of(longer, "or"));
  }
  for (const KeyWord& known : key_words) {
    if (folded_word(known.word) != folded) continue;
    return fmt::format("no key {} {}; it goes in [{}] as {}.", said, here, known.section, known.key);
  }
  if (own == all.end()) return fmt::format("no key {} {}. A section comes first, such as [slab].", said, here);
  std::vector<std::string> words;
  for (const Key& key : own->record.keys) words.emplace_back(key.word);
  return fmt::format("no key {} {}; it takes {}.", said, here, list_of(words, "and"));
}

}  // namespace slabwright
