#include "freeze/words.hpp"

#include <fmt/format.h>

namespace slabwright::freeze {
namespace {

/// What practice leaves a slab sensor at, 40 F, in the belief that it keeps a shop from freezing.
constexpr double usual_slab_degC = 40.0 / 9.0;
/// Monthly mean inside below which a shallow frost-protected footing is no longer under a heated building (IRC
/// R403.3), 64 F.
constexpr double heated_building_degC = (64.0 - 32.0) / 1.8;
/// And below which it is no longer semi-heated: 41 F, from memory.
constexpr double semi_heated_building_degC = 5.0;

using measured::degree;

/// "; everything else" or the like, and what is enough for it at either sensor.
std::string enough(std::string_view whom, const Freeze& freeze, System system) {
  const std::string wall = shown_degC(freeze.air->dial_degC, system);
  if (!freeze.slab) return fmt::format("{} {} on the wall is enough.", whom, wall);
  return fmt::format("{} {} at the slab sensor, or {} on the wall, is enough.", whom,
                     shown_degC(freeze.slab->dial_degC, system), wall);
}

bool kept_by_none(const PlaceAtSetting& place) { return place.decides && !place.asks_air_degC; }

std::string what_else(const Design& design, PlaceKind kind) {
  switch (kind) {
    case PlaceKind::tube:
      return design.fluid.kind == FluidKind::water ? "shut that loop off and drain it, or fill with glycol"
                                                   : "shut that loop off and drain it, or fill with more glycol";
    case PlaceKind::floor_line: return "keep the floor dry there";
    case PlaceKind::slab_corner:
    case PlaceKind::soil: return "insulate the edge";
    case PlaceKind::outdoor_line:
      return design.fluid.kind == FluidKind::water ? "fill with glycol, or drain it before the cold"
                                                   : "fill with more glycol, or drain it before the cold";
    case PlaceKind::wall_pipe: return "drain it, or move it to the warm side of the wall";
    case PlaceKind::room_air:
    case PlaceKind::room_pipe:
    case PlaceKind::drain_trap: return "drain it, or give the room more heat than the floor's";
  }
  return "drain it";
}

Diagnostic failure(std::string code, std::string sentence) {
  return {Severity::failure, std::move(code), "frost_hold", "{}", {std::move(sentence)}};
}

Diagnostic about_two_dials(const Freeze& freeze) {
  return {Severity::note,
          "freeze.two-dials",
          "frost_hold",
          "a slab sensor has to stand at {} all winter, for the coldest hour is when the room takes most heat out of "
          "the floor; a wall thermostat at {} follows the weather by itself",
          {degree(freeze.slab->dial_degC), degree(freeze.air->dial_degC)}};
}

std::optional<Diagnostic> about_lasting(const Freeze& freeze) {
  if (!freeze.lasting_air_dial_degC) return std::nullopt;
  return Diagnostic{
      Severity::note,
      "freeze.lasting",
      "climate.coldest",
      "if {} lasted for weeks, with the pump kept running: wall thermostat {}, slab sensor {}",
      {degree(freeze.outdoor_degC), degree(*freeze.lasting_air_dial_degC), degree(*freeze.lasting_slab_dial_degC)}};
}

std::optional<Diagnostic> about_shut(const Freeze& freeze) {
  if (!freeze.shut_air_dial_degC)
    return Diagnostic{Severity::note,
                      "freeze.shut",
                      "frost_hold",
                      "a loop at the edge that is shut or full of air freezes there in weeks of {}, whatever the "
                      "setting: open every port for the winter",
                      {degree(freeze.outdoor_degC)}};
  return Diagnostic{
      Severity::note,
      "freeze.shut",
      "frost_hold",
      "with a loop shut or full of air, in weeks of {}: wall thermostat {}, slab sensor {}",
      {degree(freeze.outdoor_degC), degree(*freeze.shut_air_dial_degC), degree(*freeze.shut_slab_dial_degC)}};
}

Diagnostic about_corners() {
  return {
      Severity::note,
      "freeze.corners",
      "edge",
      "tubes at the corners of the floor are an estimate from the edges that meet there, on the cold side; round them "
      "off there and keep them further in",
      {}};
}

/// The advice that is heard most, tried on this shop.
std::optional<Diagnostic> about_usual_slab(const Freeze& freeze, const Shop& shop) {
  if (!freeze.slab || freeze.slab->best_degC <= usual_slab_degC) return std::nullopt;
  const double air_degC = coldest_air_degC(shop, usual_slab_degC);
  if (air_degC >= 0.0) return std::nullopt;
  return Diagnostic{Severity::note,
                    "freeze.usual-slab-setting",
                    "frost_hold",
                    "a slab sensor at {} would leave the air at {} in the coldest hour: refused",
                    {degree(usual_slab_degC), degree(air_degC)}};
}

std::optional<Diagnostic> about_footing(const Freeze& freeze) {
  const double dial_degC = freeze.air->dial_degC;
  if (dial_degC >= heated_building_degC) return std::nullopt;
  const bool semi = dial_degC >= semi_heated_building_degC;
  return Diagnostic{
      Severity::note,
      "freeze.footing",
      "frost_hold",
      std::string("for a shallow frost-protected footing a shop kept at {} counts as ") +
          (semi ? "semi-heated ({} to {}, from memory)" : "unheated (below {}, from memory; heated is {})") +
          ": ask whoever designed it before you lower the heat",
      {degree(dial_degC), degree(semi_heated_building_degC), degree(heated_building_degC)}};
}

std::optional<Diagnostic> about_boiler(const Freeze& freeze, double boiler_W) {
  if (freeze.hold_W <= boiler_W) return std::nullopt;
  Diagnostic small{
      Severity::failure,
      "freeze.boiler-too-small",
      "boiler.power",
      std::string("holding the ") + (freeze.slab ? "slab" : "room") +
          " at {} takes {} at {} outside; the boiler gives {}",
      {degree((freeze.slab ? *freeze.slab : *freeze.air).dial_degC), Measured{freeze.hold_W, Dimension::power},
       degree(freeze.outdoor_degC), Measured{boiler_W, Dimension::power}}};
  if (freeze.boiler_keeps_to_degC) {
    small.sentence += ", enough down to {} outside";
    small.parts.push_back(degree(*freeze.boiler_keeps_to_degC));
  }
  return small;
}

void add(std::vector<Diagnostic>& said, std::optional<Diagnostic> more) {
  if (more) said.push_back(std::move(*more));
}

}  // namespace

std::string shown_degC(double degC, System system) { return show(degC, Dimension::degree, system); }

std::string why_no_setting(const Design& design, const Freeze& freeze) {
  const System system = design.units;
  std::vector<std::string> sentences;
  for (const PlaceAtSetting& place : freeze.place) {
    if (!kept_by_none(place)) continue;
    sentences.push_back(
        fmt::format("The {} falls below {} however the floor is set up to the working temperature, {}: "
                    "{}.",
                    place.name, shown_degC(place.limit_degC, system), shown_degC(design.climate.indoor_degC, system),
                    what_else(design, place.kind)));
  }
  if (!freeze.beyond_boiler.empty())
    sentences.push_back(
        fmt::format("The {} gets too cold in the snap however high the dial stands: the boiler gives all "
                    "it can, and that is not enough.",
                    freeze.beyond_boiler));
  if (freeze.air) {
    sentences.push_back(enough(freeze.beyond_boiler.empty() ? "Everywhere else" : "With heat enough,", freeze, system));
  }
  return fmt::format("{}", fmt::join(sentences, " "));
}

std::string why_not_called(const Design& design, const Freeze& freeze) {
  std::vector<std::string> sentences;
  for (const UnknownPlace& place : freeze.unknown) {
    sentences.push_back(fmt::format("The {}: {}.", place.name, place.why));
  }
  if (freeze.air) {
    sentences.push_back(enough("For everything else", freeze, design.units));
  }
  if (sentences.empty()) sentences.push_back("No place was found that could freeze first.");
  return fmt::format("{}", fmt::join(sentences, " "));
}

std::vector<Diagnostic> remarks(const Freeze& freeze, const Shop& shop, std::optional<double> boiler_W) {
  std::vector<Diagnostic> said;
  if (freeze.verdict == FreezeVerdict::no_setting) {
    said.push_back(failure("freeze.no-setting", "no setting is safe. " + freeze.reason));
  } else if (freeze.verdict == FreezeVerdict::cannot_be_called) {
    said.push_back(failure("freeze.cannot-be-called", "it cannot be called safe. " + freeze.reason));
  }
  if (!freeze.air) return said;
  if (boiler_W) add(said, about_boiler(freeze, *boiler_W));
  add(said, about_lasting(freeze));
  add(said, about_shut(freeze));
  if (freeze.slab) said.push_back(about_two_dials(freeze));
  said.push_back(about_corners());
  add(said, about_usual_slab(freeze, shop));
  add(said, about_footing(freeze));
  return said;
}

}  // namespace slabwright::freeze
