// Why this setting and no lower: the arithmetic of the place that decides, to be checked with a pocket calculator.
#include <fmt/format.h>

#include <cmath>

#include "report/text_freeze.hpp"
#include "slabwright/units.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::report {
namespace {

/// In the reader's degrees, to a hundredth: enough for what follows to come out to a hundredth or two.
struct Scale {
  System system;
  std::string degree(double degC) const { return plain(system == System::us ? 1.8 * degC + 32.0 : degC); }
  std::string rise(double K) const { return fmt::format("{:.2f}", system == System::us ? 1.8 * K : K); }
  std::string in_brackets(double degC) const { return bracketed(degree(degC)); }
  std::string unit() const { return system == System::us ? "F" : "C"; }
  /// The base moves with the scale's zero: gain x dial + base holds in either.
  double base_shown(const Explained& why) const {
    return system == System::us ? 1.8 * why.base_degC + 32.0 * (1.0 - why.gain_share) : why.base_degC;
  }
  /// A rounded zero has no sign.
  static std::string plain(double shown) { return fmt::format("{:.2f}", std::abs(shown) < 0.005 ? 0.0 : shown); }
  static std::string bracketed(const std::string& text) {
    return text.front() == '-' ? fmt::format("({})", text) : text;
  }
};

const PlaceAtSetting* deciding(const Freeze& freeze) {
  for (const PlaceAtSetting& place : freeze.place)
    if (place.decides && freeze.air && place.name == freeze.air->decides) return &place;
  return nullptr;
}

std::string weights_words(const DriverWeights& weights) {
  return fmt::format("{:.3f} of the room's air, {:.3f} of outdoors, {:.3f} of the deep ground", weights.indoor_share,
                     weights.outdoor_share, weights.ground_share);
}

/// Steady: what it follows, and how far heat in the tubes lifts it.
void add_weights(Page& page, const Reader& reader, const Explained& why) {
  const bool us = reader.system() == System::us;
  if (why.running.tube_m2K_per_W <= 0.0) {
    add_text(page, "What it follows when nothing changes (the three add to 1; heat in the tubes does not reach it):");
    return add_text(page, weights_words(why.idle) + ".", "  ");
  }
  const double lift = in_unit(why.running.tube_m2K_per_W, us ? "R" : "m2K/W", Dimension::insulance);
  add_text(page, "What it follows when nothing changes (the three add to 1):");
  add_text(page, weights_words(why.idle) + ".", "  loop at rest:  ");
  add_text(page,
           weights_words(why.running) + fmt::format("; and {:.3f} {} for each {} of tube heat.", lift, us ? "F" : "K",
                                                    us ? "Btu/h ft2" : "W/m2"),
           "  loop running:  ");
}

/// The same place had the coldest hour lasted. Rooms hang together where there are several; one needs no more words.
void add_had_it_lasted(Page& page, const Reader& reader, const Explained& why, const PlaceAtSetting& place) {
  const Design& design = reader.design();
  if (design.room.size() != 1) return;
  const Freeze& freeze = *reader.answer.freeze;
  const Scale scale{reader.system()};
  add_text(page, fmt::format("Had {} {} lasted, its loop shut, the room at {} {}:", scale.degree(freeze.outdoor_degC),
                             scale.unit(), scale.degree(freeze.air->best_degC), scale.unit()));
  add_text(page,
           fmt::format("{:.3f} x {} + {:.3f} x {} + {:.3f} x {} = {} {}", why.idle.indoor_share,
                       scale.in_brackets(freeze.air->best_degC), why.idle.outdoor_share,
                       scale.in_brackets(freeze.outdoor_degC), why.idle.ground_share,
                       scale.in_brackets(design.climate.mean_degC), scale.degree(place.shut_degC), scale.unit()),
           "  ");
}

/// A sum, a line each, the figures in one column.
void add_line(Page& page, const std::string& what, const std::string& figure) {
  constexpr std::size_t words = 60, figures = 10;
  page.lines.push_back(fmt::format("  {:<{}}{:>{}}", what, words, figure, figures));
}

/// The moment that asks for most, and what it asks of the dial.
void add_moment(Page& page, const Reader& reader, const Explained& why, const PlaceAtSetting& place) {
  const Scale scale{reader.system()};
  add_text(
      page,
      fmt::format(
          "In the snap it asks for most {} after the week before the snap begins, at {} {} outside. It then stands at "
          "gain x dial + base:",
          fmt::format("{:.1f} h", why.after_s / hour_s), scale.degree(why.outdoor_degC), scale.unit()));
  const double base = scale.base_shown(why);
  add_line(page, "gain, of each degree of the dial", fmt::format("{:.4f}", why.gain_share));
  add_line(page, "base, what weather, ground and the days before leave there", scale.plain(base));
  add_line(page,
           fmt::format("it must stay above: freezes at {}, and {} of margin", scale.degree(place.freezes_degC),
                       scale.rise(place.limit_degC - place.freezes_degC)),
           scale.degree(why.limit_degC));
  add_line(page,
           fmt::format("so the dial is asked for ({} - {}) / {:.4f} =", scale.degree(why.limit_degC),
                       scale.bracketed(scale.plain(base)), why.gain_share),
           scale.degree(why.asks_degC));
}

void add_dial(Page& page, const Reader& reader, const Explained& why) {
  const Freeze& freeze = *reader.answer.freeze;
  const Scale scale{reader.system()};
  const double sum_degC = why.asks_degC + why.control_K + why.sensor_error_K;
  add_line(
      page,
      fmt::format("switching on and off within {} adds", reader(Kind::rise, reader.design().frost_hold.deadband_K)),
      "+ " + scale.rise(why.control_K));
  add_line(page, "a sensor that reads too high adds", "+ " + scale.rise(why.sensor_error_K));
  add_line(page, "sum", scale.degree(sum_degC));
  add_line(page, fmt::format("rounded up to a mark of the dial, {}", reader.system() == System::us ? "1 F" : "0.5 C"),
           scale.degree(why.dial_degC));
  if (!reader.answer.bands) return;
  add_line(page, "what covers 95 of 100 draws of what nobody can know",
           scale.degree(reader.answer.bands->air_high_degC));
  add_line(page, "the setting: the higher of both, on a mark", scale.degree(freeze.air->dial_degC));
}

}  // namespace

void add_explained(Page& page, const Reader& reader) {
  const Freeze& freeze = *reader.answer.freeze;
  const PlaceAtSetting* place = deciding(freeze);
  add_blank(page);
  if (freeze.explained.empty() || !place)
    return add_text(page, "No place decides here, so that there is no arithmetic to show.");
  const Explained& why = freeze.explained.front();
  add_text(page, fmt::format("WHY {} AT THE WALL THERMOSTAT. The {} decides; all figures in {}.",
                             reader(Kind::dial, freeze.air->dial_degC), place->name, Scale{reader.system()}.unit()));
  add_blank(page);
  add_weights(page, reader, why);
  add_had_it_lasted(page, reader, why, *place);
  add_blank(page);
  add_moment(page, reader, why, *place);
  add_dial(page, reader, why);
}

}  // namespace slabwright::report
