#include "sheets/section.hpp"

#include <algorithm>

namespace slabwright::sheets {
namespace {

using report::Kind;

/// Of size lines above the floor, and from what they measure outdoors.
constexpr double over_floor_m = 0.07, beside_edge_m = 0.12;

KeyedText keyed(const Quote& quote) { return {quote.text, quote.key}; }

class SectionDrawing {
 public:
  SectionDrawing(const Quotes& quotes, std::size_t row)
      : q_(quotes), row_(row), field_(quotes.answer().edge_section.at(row)) {}

  DrawnSection drawn() {
    section_.title = joined({{"The edge in section: ", ""}, words("name")});
    section_.units = q_.system();
    const SectionRaster& raster = field_.raster;
    section_.window = {{raster.in_from_m, -raster.depth_to_m},
                       {raster.in_from_m + static_cast<double>(raster.columns - 1) * raster.cell_m, 0.0}};
    add_materials();
    add_standing();
    add_tubes();
    add_warmth();
    add_air();
    add_sizes();
    add_places();
    add_notes();
    return std::move(section_);
  }

 private:
  std::string key(std::string_view member) const { return key_of_row("edge_section", row_, member); }
  std::string key(std::string_view list, std::size_t row, std::string_view member) const {
    return key_of_row(key(list), row, member);
  }
  KeyedText words(std::string_view member) const { return keyed(q_.words(key(member))); }
  KeyedText figure(std::string_view member, Kind kind) const { return keyed(q_.figure(key(member), kind)); }

  bool at_door() const { return field_.at == "big door"; }
  double outer_m() const { return -(field_.face_m + field_.nose_m); }
  std::string face() const { return at_door() ? "door leaf" : "wall"; }

  static SectionInk ink_of(const SectionPart& part) {
    if (part.material == "concrete") return SectionInk::concrete;
    if (part.material == "foam") return SectionInk::foam;
    return part.material == "ground" ? SectionInk::ground : SectionInk::other;
  }

  /// "foam under the slab, 2 in, R-10"; the slab has a size line, and the ground needs no words.
  KeyedText words_of_part(std::size_t k) const {
    const SectionPart& part = field_.part[k];
    if (part.what == "ground" || part.what == "slab") return {};
    KeyedWords all{keyed(q_.words(key("part", k, "what")))};
    if (part.resistance_m2K_per_W) {
      all.push_back({", ", ""});
      all.push_back(keyed(q_.figure(key("part", k, "thickness_m"), Kind::short_length)));
      all.push_back({", ", ""});
      all.push_back(keyed(q_.figure(key("part", k, "resistance_m2K_per_W"), Kind::insulance)));
    }
    return joined(all);
  }

  void add_materials() {
    for (std::size_t k = 0; k < field_.part.size(); ++k) {
      const SectionPart& part = field_.part[k];
      section_.material.push_back(
          {{{part.in_from_m, -part.depth_to_m}, {part.in_to_m, -part.depth_from_m}}, ink_of(part), words_of_part(k)});
    }
  }

  void add_standing() {
    section_.standing = {field_.face_m + field_.covered_m, at_door(), {face(), ""}};
    if (!field_.covering_m2K_per_W) return;
    section_.covering = joined({{"covering, ", ""}, figure("covering_m2K_per_W", Kind::insulance)});
  }

  void add_tubes() {
    section_.tube_diameter_m = field_.tube_diameter_m;
    for (const SectionTube& tube : field_.tube) section_.tube.push_back({tube.in_m, -field_.tube_depth_m});
  }

  void add_warmth() {
    const SectionRaster& raster = field_.raster;
    const double half_m = 0.5 * raster.cell_m;
    section_.warmth = {{raster.in_from_m - half_m, -raster.depth_to_m - half_m},
                       raster.cell_m,
                       raster.columns,
                       raster.rows,
                       raster.degC,
                       raster.material};
  }

  void add_air() {
    section_.outdoor_words = joined({{"outdoors ", ""}, figure("outdoor_degC", Kind::degree)});
    section_.room_words = joined({{"room ", ""}, figure("room_degC", Kind::degree)});
    if (field_.near_air_degC)
      section_.near_words = joined({{"air at the foot of the door ", ""}, figure("near_air_degC", Kind::degree)});
  }

  void add_upright(double x_m, double depth_m, const KeyedText& text) {
    section_.size.push_back({{x_m, 0.0}, {x_m, -depth_m}, {outer_m(), 0.0}, {outer_m(), -depth_m}, text});
  }

  void add_sizes() {
    const double depth_m = field_.tube_depth_m;
    if (!field_.tube.empty()) {
      const double x_m = field_.tube[0].in_m;
      section_.size.push_back({{0.0, over_floor_m},
                               {x_m, over_floor_m},
                               {0.0, over_floor_m},
                               {x_m, -depth_m},
                               keyed(q_.figure(key("tube", 0, "in_m"), Kind::short_length))});
    }
    if (field_.tube.size() > 1) {
      const double from_m = field_.tube[0].in_m, to_m = field_.tube[1].in_m;
      section_.size.push_back({{from_m, over_floor_m},
                               {to_m, over_floor_m},
                               {from_m, over_floor_m},
                               {to_m, -depth_m},
                               figure("tube_spacing_m", Kind::short_length)});
      const double above_m = field_.concrete_above_tube_m;
      section_.size.push_back({{to_m, 0.0},
                               {to_m, -above_m},
                               {to_m, 0.0},
                               {to_m, -above_m},
                               joined({figure("concrete_above_tube_m", Kind::short_length), {" above tube", ""}})});
    }
    const double right_m = section_.window.high.x_m - 0.5 * over_floor_m;
    section_.size.push_back({{right_m, 0.0},
                             {right_m, -field_.slab_m},
                             {right_m, 0.0},
                             {right_m, -field_.slab_m},
                             joined({{"slab ", ""}, figure("slab_m", Kind::short_length)})});
    add_depths();
  }

  /// Outdoors: the ground below the floor, then what reaches furthest down of concrete and of foam.
  void add_depths() {
    double x_m = outer_m() - field_.covered_m - beside_edge_m;
    if (field_.floor_above_ground_m > 0.0) {
      add_upright(x_m, field_.floor_above_ground_m,
                  joined({figure("floor_above_ground_m", Kind::short_length), {" above the ground", ""}}));
      x_m -= beside_edge_m;
    }
    for (const char* material : {"concrete", "foam"}) {
      std::optional<std::size_t> deepest;
      for (std::size_t k = 0; k < field_.part.size(); ++k) {
        const SectionPart& part = field_.part[k];
        if (part.material != material || part.in_to_m > field_.tube[0].in_m + field_.slab_m) continue;
        if (part.depth_to_m <= field_.slab_m) continue;
        if (!deepest || part.depth_to_m > field_.part[*deepest].depth_to_m) deepest = k;
      }
      if (!deepest) continue;
      add_upright(x_m, field_.part[*deepest].depth_to_m,
                  keyed(q_.figure(key("part", *deepest, "depth_to_m"), Kind::short_length)));
      x_m -= beside_edge_m;
    }
  }

  static std::string letter(std::size_t k) { return std::string(1, static_cast<char>('A' + k % 26)); }

  void add_places() {
    for (std::size_t k = 0; k < field_.place.size(); ++k) {
      const SectionPlace& place = field_.place[k];
      section_.watched.push_back(
          {{place.in_m, -place.depth_m},
           joined({{letter(k) + " ", ""}, keyed(q_.figure(key("place", k, "temperature_degC"), Kind::degree))})});
    }
  }

  void add_notes() {
    KeyedWords weather{{"Steady, as if the coldest weather lasted for ever: ", ""},
                       figure("outdoor_degC", Kind::degree),
                       {" outdoors, the wall thermostat on ", ""},
                       keyed(q_.figure("freeze.air.dial_degC", Kind::dial)),
                       {" and the room at ", ""},
                       figure("room_degC", Kind::degree),
                       {" because its sensor may read too high, deep ground at ", ""},
                       figure("ground_degC", Kind::degree),
                       {", the pump running. Ground is colder here than any cold snap leaves it, and the tubes give "
                        "heat without a rest.",
                        ""}};
    section_.note.push_back(std::move(weather));
    for (std::size_t k = 0; k < field_.place.size(); ++k) section_.note.push_back(note_of_place(k));
    section_.note.push_back(note_of_freezing());
    section_.note.push_back({{"Lines join places of one temperature. The tubes' heat is spread evenly in their plane: "
                              "close to a tube it is warmer than the lines say. Within the slab they may be off by ",
                              ""},
                             figure("error_K", Kind::rise),
                             {", and by more at its outer corners.", ""}});
    section_.note.push_back(
        {{"Tube stands at the file's distances; where it was laid otherwise, measure there. "
          "Computed from the file and our guesses, not measured. This engineers no concrete.",
          ""}});
  }

  /// With what the frost hold says of it.
  KeyedWords note_of_place(std::size_t k) const {
    KeyedWords note{{letter(k) + ", ", ""},
                    keyed(q_.words(key("place", k, "name"))),
                    {": ", ""},
                    keyed(q_.figure(key("place", k, "temperature_degC"), Kind::degree)),
                    {" here", ""}};
    const auto& places = q_.answer().freeze->place;
    const auto at = std::find_if(places.begin(), places.end(),
                                 [&](const PlaceAtSetting& one) { return one.name == field_.place[k].name; });
    const auto of_freeze = [&](std::string_view member) {
      const auto row = static_cast<std::size_t>(at - places.begin());
      return keyed(q_.figure(key_of_row("freeze.place", row, member), Kind::degree));
    };
    if (at != places.end() && at->decides) {
      note.push_back({"; through the cold snap at the lowest setting no colder than ", ""});
      note.push_back(of_freeze("coldest_degC"));
      note.push_back({", and it must stay above ", ""});
      note.push_back(of_freeze("limit_degC"));
    } else if (at != places.end() && at->ice_below_degC) {
      note.push_back({"; with no heat from the tubes it freezes below ", ""});
      note.push_back(of_freeze("ice_below_degC"));
      note.push_back({" outdoors", ""});
    }
    note.push_back({".", ""});
    return note;
  }

  KeyedWords note_of_freezing() const {
    if (!field_.freezing_in_m) return {{"No part of the slab is below the freezing point of water.", ""}};
    if (*field_.freezing_in_m <= 0.0)
      return {{"Inside the " + face() + " no part of the slab is below the freezing point of water.", ""}};
    return {{"The slab is below the freezing point of water up to ", ""},
            figure("freezing_in_m", Kind::short_length),
            {" inside the inner face of the " + face() + ".", ""}};
  }

  const Quotes& q_;
  std::size_t row_;
  const SectionField& field_;
  DrawnSection section_;
};

std::optional<SectionSheet> section_at(const Quotes& quotes, std::string_view at) {
  const auto& all = quotes.answer().edge_section;
  for (std::size_t row = 0; row < all.size(); ++row) {
    if (all[row].at == at) return draw_section(drawn_section(quotes, row));
  }
  return std::nullopt;
}

}  // namespace

DrawnSection drawn_section(const Quotes& quotes, std::size_t row) { return SectionDrawing(quotes, row).drawn(); }

std::optional<SectionSheet> section_at_edge(const Quotes& quotes) { return section_at(quotes, "wall"); }

std::optional<SectionSheet> section_at_door(const Quotes& quotes) { return section_at(quotes, "big door"); }

}  // namespace slabwright::sheets
