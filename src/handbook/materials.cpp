#include <string>

#include "slabwright/handbook_materials.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

/// Conductivity of a board with this R (h ft2 degF / Btu) per inch.
constexpr double per_inch(double R) { return inch_m / (0.176110184 * R); }

constexpr Material concrete_rows[] = {
    {"concrete", 1.75, 2300, 880, "practice", {"normal concrete", "structural concrete"}},
    {"cement screed", 1.2, 2000, 840, "practice", {"screed", "sand cement screed"}},
};

constexpr Material insulation_rows[] = {
    {"XPS",
     per_inch(5.0),
     30,
     1450,
     "practice: R-5 per inch; European declared values about 0.034",
     {"extruded polystyrene", "XPS foam", "extruded foam"}},
    {"EPS",
     per_inch(4.0),
     20,
     1450,
     "practice: R-4 per inch",
     {"expanded polystyrene", "EPS foam", "EPS type II", "bead board"}},
    {"EPS type I", per_inch(3.6), 15, 1450, "from memory: ASTM C578", {"EPS 1"}},
    {"EPS type VIII", per_inch(3.8), 18, 1450, "from memory: ASTM C578", {"EPS 8"}},
    {"EPS type IX", per_inch(4.2), 29, 1450, "from memory: ASTM C578", {"EPS 9"}},
    {"graphite EPS", 0.032, 20, 1450, "practice", {"grey EPS", "gray EPS"}},
    {"buried XPS",
     per_inch(4.5),
     30,
     1450,
     "frost-protected shallow foundation design value, long term below grade",
     {"XPS below grade"}},
    {"buried EPS type II",
     per_inch(2.4),
     20,
     1450,
     "frost-protected shallow foundation design value, long term below grade",
     {"buried EPS", "EPS below grade"}},
    {"buried EPS type IX",
     per_inch(3.2),
     29,
     1450,
     "frost-protected shallow foundation design value, long term below grade",
     {}},
    {"PIR",
     per_inch(5.7),
     32,
     1400,
     "practice: aged, dry, above ground only",
     {"polyiso", "polyisocyanurate", "PUR", "polyurethane board"}},
    {"spray foam", per_inch(6.0), 32, 1400, "practice: closed cell", {"closed cell foam", "closed cell spray foam"}},
    {"open cell foam", per_inch(3.6), 8, 1400, "practice", {"open cell spray foam"}},
    {"glass wool", per_inch(3.2), 12, 840, "practice", {"fiberglass", "fibreglass", "glass fiber", "fiberglass batt"}},
    {"mineral wool", per_inch(4.0), 60, 840, "practice", {"rock wool", "stone wool"}},
    {"cellulose", per_inch(3.5), 50, 1600, "practice", {"cellulose fill", "blown cellulose"}},
    {"cellular glass", 0.041, 120, 840, "practice", {"foam glass", "foamed glass"}},
    {"wood fibre board", 0.045, 160, 2100, "practice", {"wood fiber board", "wood fibre", "wood fiber"}},
};

constexpr Material tube_rows[] = {
    {"PE-X metric", 0.35, 0, 0, "EN 1264-2 Annex D", {}},
    {"PE-X US", 0.38, 0, 0, "ASHRAE panel chapter: 0.22 Btu/h ft degF", {}},
    {"PE-RT", 0.35, 0, 0, "EN 1264-2 Annex D", {}},
    {"PB", 0.22, 0, 0, "EN 1264-2 Annex D", {}},
    {"PP", 0.22, 0, 0, "EN 1264-2 Annex D", {}},
    {"multilayer", 0.43, 0, 0, "maker-neutral data sheet, apparent value", {}},
    {"steel", 52, 0, 0, "EN 1264-2 Annex D", {}},
    {"copper", 390, 0, 0, "EN 1264-2 Annex D", {}},
};

constexpr Soil soil_rows[] = {
    {"clay or silt", 1.5, 3.0e6, 2.2, "ISO 13370 (conductivity and heat from memory)"},
    {"sand or gravel", 2.0, 2.0e6, 3.2, "ISO 13370, also when the ground is not known"},
    {"rock", 3.5, 2.0e6, 4.2, "ISO 13370 (conductivity and heat from memory)"},
};

constexpr Covering covering_rows[] = {
    {"bare", 0.0, "practice"},
    {"paint", 0.0, "practice"},
    {"epoxy", 0.0, "practice"},
    {"ceramic tile", 0.01, "practice"},
    {"stone", 0.01, "practice"},
    {"vinyl", 0.02, "practice"},
    {"linoleum", 0.02, "practice"},
    {"rubber mat", 0.06, "practice"},
    {"laminate", 0.06, "practice"},
    {"wood", 0.10, "practice"},
    {"plywood", 0.16, "practice: 3/4 in"},
    {"carpet", 0.15, "practice"},
    {"carpet and pad", 0.25, "from memory: ASHRAE Fundamentals"},
};

/// Letters and digits alone, small: how two people who mean the same write the same.
std::string plain(std::string_view words) {
  std::string kept;
  for (const char c : words) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) kept += c;
    if (c >= 'A' && c <= 'Z') kept += static_cast<char>(c - 'A' + 'a');
  }
  return kept;
}

template <class Row>
const Row* find_named(std::span<const Row> rows, std::string_view name) {
  const std::string wanted = plain(name);
  if (wanted.empty()) return nullptr;
  for (const Row& row : rows) {
    if (plain(row.name) == wanted) return &row;
    if constexpr (requires { row.also; })
      for (const std::string_view other : row.also)
        if (plain(other) == wanted) return &row;
  }
  return nullptr;
}

}  // namespace

std::span<const Material> concretes() { return concrete_rows; }
std::span<const Material> insulations() { return insulation_rows; }
std::span<const Material> tube_materials() { return tube_rows; }
std::span<const Soil> soils() { return soil_rows; }
std::span<const Covering> coverings() { return covering_rows; }

const Material* find_insulation(std::string_view name) { return find_named(insulations(), name); }
const Soil* find_soil(std::string_view name) { return find_named(soils(), name); }
const Covering* find_covering(std::string_view name) { return find_named(coverings(), name); }

}  // namespace slabwright
