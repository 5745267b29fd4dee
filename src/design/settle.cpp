// The guesses that complete a design. All of them come from the description, but for a few that follow from other keys.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <stdexcept>

#include "design/draft.hpp"
#include "design/edge_sizes.hpp"
#include "slabwright/handbook_extremes.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

constexpr std::string_view hose_bib_toward_outdoor = "50 %";
constexpr std::string_view practice = "practice";
/// Cement screed, and half an inch of rubber or a loaded pallet.
constexpr double screed_W_per_mK = 1.2, mat_m2K_per_W = 0.15;

/// Round in the user's own units: neither is the other one converted.
struct UsSi {
  std::string_view us, si;
  std::string_view in(System system) const { return system == System::us ? us : si; }
};
constexpr UsSi big_door{"12 ft x 10 ft", "3.6 m x 3 m"};
constexpr UsSi door{"3 ft x 7 ft", "0.9 m x 2.1 m"};
constexpr UsSi window{"3 ft x 4 ft", "0.9 m x 1.2 m"};
constexpr UsSi glycol{"30 %", "30 %"};
constexpr UsSi band{"4 ft", "1.2 m"};
constexpr UsSi cut_in_above{"5 F", "3 K"};

class Settler {
 public:
  Settler(Design& design, const std::vector<std::string>& given, const std::vector<Assumption>& known)
      : design_(design), given_(given.begin(), given.end()), known_(known) {}

  std::vector<Assumption> run() {
    forget();
    // In the order of the description: units and quality stand before the keys whose defaults they pick.
    add_rows();
    walk(record_of(design_), [this](const std::string& path, const Key& key, const Slot& slot) {
      if (!given_.count(path)) fill_default(path, key, slot);
    });
    add_floor();
    add_climate();
    add_tube();
    add_plan();
    add_edge();
    add_second_source();
    design_.building.described = described();
    in_order();
    return std::move(assumed_);
  }

 private:
  bool has(const std::string& path) const { return given_.count(path) > 0; }

  /// Whether any key of a row is the user's.
  bool has_any(const std::string& prefix) const {
    const auto at = given_.lower_bound(prefix);
    return at != given_.end() && at->compare(0, prefix.size(), prefix) == 0;
  }

  void assume(std::string path, std::string text, std::string source = std::string(practice)) {
    assumed_.push_back({std::move(path), std::move(text), std::move(source)});
  }

  std::string written(double si, Dimension dimension) const { return write_quantity(si, dimension, design_.units); }

  /// Values that no default fills and that a former settling left.
  void forget() {
    walk(record_of(design_), [this](const std::string& path, const Key&, const Slot& slot) {
      const auto* maybe = std::get_if<MaybeNumber>(&slot);
      if (maybe && !has(path)) maybe->at->reset();
    });
  }

  void add_rows() {
    if (design_.room.empty()) {
      Room room;
      room.name = "shop";
      room.size = design_.slab.size;
      room.area_m2 = design_.slab.area_m2;
      room.outline = design_.slab.outline;
      design_.room.push_back(room);
      assumed_rows_.insert("room[1].");
      assume("room[1]", "the whole slab");
    }
    const auto big = [](const Opening& o) { return o.kind == OpeningKind::big_door; };
    if (design_.building.big_door && std::none_of(design_.opening.begin(), design_.opening.end(), big)) {
      Opening opening;
      opening.name = "big door";
      read_words(big_door.in(design_.units), opening.size);
      design_.opening.push_back(opening);
      const std::string row = fmt::format("opening[{}]", design_.opening.size());
      assumed_rows_.insert(row + ".");
      assumed_door_ = true;
      assume(row, fmt::format("big door {}", big_door.in(design_.units)));
    }
    if (design_.manifold.empty()) {
      design_.manifold.emplace_back().name = "manifold";
      assumed_rows_.insert("manifold[1].");
      assume("manifold[1]", "one");
    }
  }

  bool in_assumed_row(const std::string& path) const {
    return assumed_rows_.count(path.substr(0, path.find('.') + 1)) > 0;
  }

  /// How far outdoors a hose bib stands: it ends there, and half of it is inside.
  bool is_hose_bibs(const std::string& path) const {
    if (path.compare(0, 6, "watch[") != 0 || path.substr(path.find('.')) != ".toward_outdoor") return false;
    return design_.watch[static_cast<std::size_t>(std::stoul(path.substr(6))) - 1].kind == WatchKind::hose_bib;
  }

  /// Only a big door is opened by guess, and only a window lets the sun in.
  std::string_view by_opening_kind(const std::string& path) const {
    if (path.compare(0, 8, "opening[") != 0) return {};
    const std::string_view word = std::string_view(path).substr(path.find('.'));
    const OpeningKind kind = design_.opening[static_cast<std::size_t>(std::stoul(path.substr(8))) - 1].kind;
    if (word == ".opened" && kind != OpeningKind::big_door) return "0";
    if (word == ".sun" && kind != OpeningKind::window) return "0 %";
    return {};
  }

  /// The text that stands for an absent key; empty where being absent is a meaning of its own.
  std::string_view default_text(const std::string& path, const Says& says) const {
    const bool si = design_.units == System::si;
    const auto own = [&](std::string_view us_text, std::string_view si_text) {
      return si && !si_text.empty() ? si_text : us_text;
    };
    const bool building = path.compare(0, 9, "building.") == 0;
    if (building && !says.poor.empty() && design_.building.quality == Quality::tight)
      return own(says.tight, says.si_tight);
    if (building && !says.poor.empty() && design_.building.quality == Quality::poor)
      return own(says.poor, says.si_poor);
    if (path == "fluid.glycol" && design_.fluid.kind != FluidKind::water) return glycol.in(design_.units);
    if (is_hose_bibs(path)) return hose_bib_toward_outdoor;
    if (const std::string_view by_kind = by_opening_kind(path); !by_kind.empty()) return by_kind;
    if (path == "second_source.defrost" && has("second_source.points")) return "in table";
    if (path == "fluid.kind" && has("fluid.glycol") && design_.fluid.glycol.share > 0.0) return "propylene glycol";
    return own(says.us, says.si);
  }

  const Assumption* known_at(std::string_view path) const {
    const auto found =
        std::find_if(known_.begin(), known_.end(), [&](const Assumption& known) { return known.path == path; });
    return found == known_.end() ? nullptr : &*found;
  }

  void read_default(const std::string& path, const Key& key, const Slot& slot, std::string_view text) const {
    const std::string problem = read_into(key, slot, text, design_.units);
    if (!problem.empty()) throw std::logic_error("a default that does not read: " + path);
  }

  bool has_minima() const { return has("climate.yearly_minimum") && has("climate.minimum_spread"); }

  /// Keys that nothing asks for in this design.
  bool unused(std::string_view path) const {
    if (path == "climate.return_years") return !has_minima() || has("climate.coldest");
    if (path == "climate.snap_days") return !design_.climate.snap.empty();
    if (path.substr(0, 14) == "second_source." && path != "second_source.kind")
      return design_.second_source.kind == SecondSourceKind::none;
    if (path == "bill.other") return design_.bill.months.empty();
    return path.substr(0, 8) == "opening[" && unused_of_opening(path);
  }

  bool unused_of_opening(std::string_view path) const {
    const Opening& opening = design_.opening[static_cast<std::size_t>(std::stoul(std::string(path.substr(8)))) - 1];
    const std::string_view word = path.substr(path.find('.'));
    if (word == ".open") return opening.opened_number <= 0.0;
    return !by_opening_kind(std::string(path)).empty();
  }

  void fill_default(const std::string& path, const Key& key, const Slot& slot) {
    if (path == "units") return assume(path, write_out(key, slot, design_.units), std::string(key.says.source));
    if (const Assumption* known = known_at(path); known && path != "climate.coldest") {
      read_default(path, key, slot, known->text);
      return assumed_.push_back(*known);
    }
    const std::string_view text = default_text(path, key.says);
    if (text.empty()) return fill_opening(path, slot);
    read_default(path, key, slot, text);
    // The door that is there by guess stands in the list once, as a row.
    if (in_assumed_row(path) || (path == "building.big_door" && assumed_door_) || unused(path)) return;
    assume(path, std::string(text), std::string(key.says.source));
  }

  void fill_opening(const std::string& path, const Slot& slot) {
    if (path.compare(0, 8, "opening[") != 0 || path.substr(path.find('.')) != ".size" || in_assumed_row(path)) return;
    const auto& worded = std::get<Worded>(slot);
    const std::size_t row = static_cast<std::size_t>(std::stoul(path.substr(8))) - 1;
    const OpeningKind kind = design_.opening[row].kind;
    const UsSi& size = kind == OpeningKind::big_door ? big_door : kind == OpeningKind::door ? door : window;
    worded.read(worded.at, size.in(design_.units));
    assume(path, std::string(size.in(design_.units)));
  }

  /// A floor whose rooms are known, or a room that takes what the others leave.
  void add_floor() {
    const FloorShape slab = floor_shape(design_.slab);
    double rooms_m2 = 0.0;
    std::vector<std::size_t> unsized;
    for (std::size_t i = 0; i < design_.room.size(); ++i) {
      const double area_m2 = floor_shape(design_.room[i]).area_m2;
      rooms_m2 += area_m2;
      if (area_m2 <= 0.0) unsized.push_back(i);
    }
    if (slab.area_m2 <= 0.0 && unsized.empty()) {
      design_.slab.area_m2 = rooms_m2;
      assume("slab.area", show(rooms_m2, Dimension::area, design_.units), "the rooms added up");
    }
    if (slab.area_m2 > rooms_m2 && unsized.size() == 1 && !in_assumed_row(fmt::format("room[{}].", unsized[0] + 1))) {
      design_.room[unsized[0]].area_m2 = slab.area_m2 - rooms_m2;
      assume(fmt::format("room[{}].area", unsized[0] + 1),
             show(slab.area_m2 - rooms_m2, Dimension::area, design_.units), "what the other rooms leave of the slab");
    }
    const FloorShape floor = floor_shape(design_.slab);
    if (floor.area_m2 <= 0.0 || design_.slab.exposed_perimeter_m) return;
    design_.slab.exposed_perimeter_m = floor.perimeter_m;
    assume("slab.exposed_perimeter", show(floor.perimeter_m, Dimension::length, design_.units),
           floor.shape_known ? "all of the edge" : "all of the edge, as of a square");
  }

  void add_climate() {
    Climate& climate = design_.climate;
    if (climate.coldest_degC) return;
    if (has_minima()) {
      climate.coldest_degC =
          n_year_minimum_degC(*climate.yearly_minimum_degC, *climate.minimum_spread_K, climate.return_years);
      return assume("climate.coldest", show(*climate.coldest_degC, Dimension::degree, design_.units),
                    fmt::format("{}-year minimum", climate.return_years));
    }
    if (!climate.outdoor_degC) return;
    const bool us = design_.units == System::us;
    const double below_K = us ? from_unit(12.0, "F", Dimension::rise) : 7.0;
    climate.coldest_degC = *climate.outdoor_degC - below_K;
    if (const Assumption* known = known_at("climate.coldest")) {
      const double lowest_degC = read_quantity(known->text, Dimension::degree).si;
      if (lowest_degC < *climate.coldest_degC) {
        climate.coldest_degC = lowest_degC;
        return assumed_.push_back(*known);
      }
    }
    assume("climate.coldest", show(*climate.coldest_degC, Dimension::degree, design_.units),
           us ? "12 F below outdoor; practice" : "7 K below outdoor; practice");
  }

  void add_tube() {
    const TubeSize* size = find_tube(design_.tube.size.name);
    if (!size) return;
    Slab& slab = design_.slab;
    if (slab.topping_m && !slab.topping_conductivity_W_per_mK) {
      slab.topping_conductivity_W_per_mK = screed_W_per_mK;
      assume("slab.topping_conductivity", written(screed_W_per_mK, Dimension::conductivity), std::string(practice));
    }
    if (slab.mats_share && !slab.mat_insulation) {
      slab.mat_insulation = Insulation{mat_m2K_per_W};
      assume("slab.mat_insulation", write_words(*slab.mat_insulation, design_.units), std::string(practice));
    }
    if (!slab.concrete_above_tube_m && !slab.topping_above_tube_m) {
      slab.concrete_above_tube_m = std::max(0.0, 0.5 * (slab.thickness_m - size->outside_diameter_m));
      const bool us = design_.units == System::us;
      assume("slab.concrete_above_tube",
             show_as(*slab.concrete_above_tube_m, Dimension::length, us ? "in" : "mm", us ? 2 : 0),
             "tube at mid-depth");
    }
    if (!design_.tube.longest_loop_m) {
      design_.tube.longest_loop_m = size->longest_loop_m;
      assume("tube.longest_loop", written(size->longest_loop_m, Dimension::length),
             size->metric ? std::string(practice) : "CSA B214-12 Table 1");
    }
  }

  /// Where the manifold stands, and how wide bands of closer tube are.
  void add_plan() {
    for (std::size_t i = 0; i < design_.wall.size(); ++i) {
      add_band(fmt::format("wall[{}].band_width", i + 1), design_.wall[i].tube_spacing_m, design_.wall[i].band_width_m);
    }
    for (std::size_t i = 0; i < design_.opening.size(); ++i) {
      Opening& opening = design_.opening[i];
      add_band(fmt::format("opening[{}].band_width", i + 1), opening.tube_spacing_m, opening.band_width_m);
    }
    if (has("manifold[1].place")) return;
    design_.manifold.front().place.reset();
    const bool drawable =
        design_.manifold.size() == 1 && !design_.manifold.front().loops_number && design_.loop.empty();
    const auto middle = drawable ? middle_of_longest_wall() : std::nullopt;
    if (!middle) return;
    design_.manifold.front().place = PlanPlace{*middle, {}, {}, 0.0, 0.0};
    assume("manifold[1].place", write_words(*middle, design_.units), "practice: the middle of the longest wall");
  }

  void add_band(const std::string& path, const std::optional<double>& spacing_m, std::optional<double>& width_m) {
    if (!spacing_m || has(path)) return;
    width_m = read_quantity(band.in(design_.units), Dimension::length).si;
    assume(path, std::string(band.in(design_.units)));
  }

  /// Of the walls without a big door, where there are any.
  std::optional<Place> middle_of_longest_wall() const {
    const std::vector<Place> form = floor_shape(design_.slab).outline;
    const std::vector<PlanOpening> openings = openings_on_plan(design_);
    std::optional<Place> best;
    double longest_m = 0.0;
    for (std::size_t i = 0; i < form.size(); ++i) {
      const Point a{form[i].x_m, form[i].y_m}, b{form[(i + 1) % form.size()].x_m, form[(i + 1) % form.size()].y_m};
      const bool has_door = std::any_of(openings.begin(), openings.end(), [&](const PlanOpening& o) {
        return design_.opening[o.opening].kind == OpeningKind::big_door && distance_to_edge_m(o.from, a, b) < 1e-6 &&
               distance_to_edge_m(o.to, a, b) < 1e-6;
      });
      const double length_m = distance_m(a, b) * (has_door ? 1e-3 : 1.0);
      if (length_m <= longest_m * (1.0 + 1e-9)) continue;
      longest_m = length_m;
      best = Place{0.5 * (a.x_m + b.x_m), 0.5 * (a.y_m + b.y_m)};
    }
    return best;
  }

  /// Sizes of boards, walls and aprons that are there.
  void add_edge() {
    const Record edge = record_of(design_.edge);
    for (const EdgeSize& size : edge_sizes) {
      const std::string path = fmt::format("edge.{}", size.word);
      const Key &of = *find_key(edge, size.of), &own = *find_key(edge, size.word);
      const std::string there = write_out(of, of.slot(edge.at), design_.units);
      const std::string_view text = UsSi{size.us, size.si}.in(design_.units);
      if (there.empty() || there == "none" || text.empty() || has(path)) continue;
      read_into(own, own.slot(edge.at), text, design_.units);
      assume(path, std::string(text));
    }
  }

  void add_second_source() {
    SecondSource& source = design_.second_source;
    if (!source.cut_out_degC || source.cut_in_degC) return;
    const double above_K = read_quantity(cut_in_above.in(design_.units), Dimension::rise).si;
    source.cut_in_degC = *source.cut_out_degC + above_K;
    assume("second_source.cut_in", show(*source.cut_in_degC, Dimension::degree, design_.units),
           fmt::format("{} above cut_out; practice", cut_in_above.in(design_.units)));
  }

  /// What a user said of walls, roof, leaks and openings. A strip under a door or a tube near it says nothing of the
  /// building's own heat loss, nor does its quality: that only picks between three guesses.
  bool described() const {
    for (const std::string_view key :
         {"wall_insulation", "roof_insulation", "door_insulation", "height", "air_changes", "heat_loss"}) {
      if (has(fmt::format("building.{}", key))) return true;
    }
    return std::any_of(given_.begin(), given_.end(), [](const std::string& path) {
      const std::string_view word = std::string_view(path).substr(path.find('.') + 1);
      if (path.compare(0, 5, "room[") == 0) return word == "outer_wall" || word == "height";
      return path.compare(0, 8, "opening[") == 0 && (word == "size" || word == "insulation");
    });
  }

  /// By the description, rows before their keys.
  void in_order() {
    std::map<std::string, std::size_t> place;
    std::size_t next = 0;
    walk(record_of(design_), [&](const std::string& path, const Key&, const Slot&) {
      if (const std::size_t dot = path.find('.'); dot != std::string::npos) place.emplace(path.substr(0, dot), next++);
      place.emplace(path, next++);
    });
    std::stable_sort(assumed_.begin(), assumed_.end(),
                     [&](const Assumption& a, const Assumption& b) { return place.at(a.path) < place.at(b.path); });
  }

  Design& design_;
  std::set<std::string> given_;
  const std::vector<Assumption>& known_;
  std::set<std::string> assumed_rows_;
  bool assumed_door_ = false;
  std::vector<Assumption> assumed_;
};

}  // namespace

std::vector<Assumption> settle(Design& design, const std::vector<std::string>& given,
                               const std::vector<Assumption>& known) {
  return Settler(design, given, known).run();
}

}  // namespace slabwright
