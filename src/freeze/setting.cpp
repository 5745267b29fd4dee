// From what each place asks for to the two dials.
#include <algorithm>
#include <cmath>

#include "slabwright/units_exact.hpp"

#include "freeze/held_zone.hpp"
#include "freeze/words.hpp"

namespace slabwright {
namespace {

using namespace freeze;

double dial_degC(const Design& design, double setting_degC) {
  return dial_mark_degC(setting_degC + design.frost_hold.sensor_error_K, design.units);
}

/// What each place asks of one dial, and how far that dial may go.
struct Asked {
  std::vector<std::optional<double>> by_place;
  double most_degC = 0.0;
};

/// The most that any deciding place asks for, of those that a setting keeps.
struct Most {
  std::optional<double> degC;
  std::string by;
  bool by_all = true;  ///< false: there is a place that no setting keeps
};
Most most_of(const Asked& asked, const WatchedPlaces& places) {
  Most most;
  for (std::size_t i = 0; i < places.place.size(); ++i) {
    if (!places.place[i].decides) continue;
    if (!asked.by_place[i])
      most.by_all = false;
    else if (!most.degC || *asked.by_place[i] > *most.degC) {
      most.degC = asked.by_place[i];
      most.by = places.place[i].name;
    }
  }
  return most;
}

Asked asked_of(const std::vector<PlaceCurve>& curves, const WatchedPlaces& places, double most_degC) {
  Asked asked{{}, most_degC};
  for (std::size_t i = 0; i < places.place.size(); ++i) {
    const auto degC = asked_dial_degC(curves[i], places.place[i].limit_degC);
    asked.by_place.push_back(degC && *degC <= most_degC ? degC : std::nullopt);
  }
  return asked;
}

/// The coldest hour as if it lasted: what the slab sensor would have to read.
Asked asked_lasting(const WatchedPlaces& places, const Shop& shop, Tubes tubes) {
  Asked asked{{}, shop.warmest_slab_degC};
  for (const WatchedPlace& place : places.place) asked.by_place.push_back(asked_slab_degC(place, shop, tubes));
  return asked;
}

/// The slab that keeps every place then, absent where none does.
std::optional<double> lasting_slab_degC(const WatchedPlaces& places, const Shop& shop, Tubes tubes) {
  const Most most = most_of(asked_lasting(places, shop, tubes), places);
  return most.by_all ? most.degC : std::nullopt;
}

void set_lasting(Freeze& freeze, const Design& design, const WatchedPlaces& places, const Shop& shop) {
  if (const auto slab_degC = lasting_slab_degC(places, shop, Tubes::running)) {
    freeze.lasting_slab_dial_degC = dial_degC(design, *slab_degC);
    freeze.lasting_air_dial_degC = dial_degC(design, air_degC(shop, shop.first, *slab_degC));
  }
  if (const auto slab_degC = lasting_slab_degC(places, shop, Tubes::idle)) {
    freeze.shut_slab_dial_degC = dial_degC(design, *slab_degC);
    freeze.shut_air_dial_degC = dial_degC(design, air_degC(shop, shop.first, *slab_degC));
  }
}

/// Everything that a setting is found from.
struct Search {
  const Design& design;
  const Shop& shop;
  const WatchedPlaces& places;
  const Zone& zone;
  SnapCase snap;
  SnapCurves curves;
  double most_W_per_m2 = 0.0;  ///< of tube heat while a thermostat calls
};

/// The place that a real thermostat leaves shortest of its limit, in kelvin of the dial.
struct Short {
  double asked_K = 0.0;
  std::size_t place = 0;
};
Short shortest_of(const Search& search, const RealControl& control) {
  const std::vector<ZoneRow> rows = controlled_snap(search.zone, search.snap, control);
  const auto& curves = control.kind == DialKind::air ? search.curves.air : search.curves.slab;
  Short most;
  for (std::size_t i = 0; i < search.places.place.size(); ++i) {
    const WatchedPlace& place = search.places.place[i];
    const double gain = *std::min_element(curves[i].gain_share.begin(), curves[i].gain_share.end());
    if (!place.decides || gain < least_gain_share) continue;
    for (const ZoneRow& row : rows) {
      const double asked_K = (place.limit_degC - row.place_degC[i]) / gain;
      if (asked_K > most.asked_K) most = {asked_K, i};
    }
  }
  return most;
}

/// What on and off in a deadband add to a setting; absent where no setting does, because the boiler gives all it can.
struct Controlled {
  std::optional<double> added_K;
  std::string short_place;  ///< otherwise
};
Controlled controlled(const Search& search, DialKind kind, double setting_degC, double most_degC) {
  constexpr int rounds = 10;
  constexpr double enough_K = 0.05, nearly_K = 0.5;
  double added_K = 0.0;
  Short last;
  for (int round = 0; round < rounds; ++round) {
    last =
        shortest_of(search, {kind, setting_degC + added_K, search.design.frost_hold.deadband_K, search.most_W_per_m2});
    if (last.asked_K < enough_K) return {added_K, ""};
    if (setting_degC + added_K >= most_degC) break;
    added_K = std::min(added_K + last.asked_K, most_degC - setting_degC);
  }
  // What switching scatters by may stay; what a boiler lacks does not shrink.
  if (setting_degC + added_K < most_degC && last.asked_K < nearly_K) return {added_K + last.asked_K, ""};
  return {std::nullopt, search.places.place[last.place].name};
}

/// Where no boiler is known: what holds the working temperature, and half of it again.
double usual_boiler_W(const Shop& shop, double working_degC) {
  const double slab_degC = held_at(*shop.hold[shop.first], working_degC, shop.outdoor_degC).sensor_degC;
  return 1.5 * hold_W(shop, slab_degC, shop.outdoor_degC);
}

/// Each place at the settings that were found.
std::vector<PlaceAtSetting> all_at_setting(const Search& search, const Asked& air, const Asked& slab,
                                           const Freeze& freeze) {
  std::vector<PlaceAtSetting> rows;
  const double air_degC = freeze.air ? freeze.air->best_degC : 0.0;
  const HeldRoom first = held_at(*search.shop.hold[search.shop.first], air_degC, search.shop.outdoor_degC);
  for (std::size_t i = 0; i < search.places.place.size(); ++i) {
    const WatchedPlace& place = search.places.place[i];
    const HeldRoom room = room_held_by(*search.shop.hold[place.room], first.sensor_degC, search.shop.outdoor_degC);
    PlaceAtSetting row;
    row.name = place.name;
    row.kind = place.kind;
    row.decides = place.decides;
    row.shut_degC = temperature_of(place, room, search.shop, Tubes::idle);
    row.coldest_degC = row.shut_degC;
    if (place.decides) {
      row.air = search.curves.air[i];
      row.slab = search.curves.slab[i];
      row.coldest_degC = coldest_degC(row.air, air_degC);
    }
    row.limit_degC = place.limit_degC;
    row.freezes_degC = place.freezes_degC;
    row.spare_K = row.coldest_degC - row.freezes_degC;
    row.asks_air_degC = air.by_place[i];
    row.asks_slab_degC = slab.by_place[i];
    if (!place.decides) row.ice_below_degC = freezes_below_degC(place, search.shop, first.sensor_degC);
    rows.push_back(std::move(row));
  }
  std::stable_sort(rows.begin(), rows.end(), [](const PlaceAtSetting& a, const PlaceAtSetting& b) {
    if (a.decides != b.decides) return a.decides;
    if (a.asks_air_degC.has_value() != b.asks_air_degC.has_value()) return !a.asks_air_degC.has_value();
    return a.asks_air_degC && *a.asks_air_degC > *b.asks_air_degC;
  });
  return rows;
}

std::vector<Explained> explained_by(const Search& search, const Freeze& freeze) {
  for (std::size_t i = 0; i < search.places.place.size(); ++i) {
    const WatchedPlace& place = search.places.place[i];
    if (!place.decides || !freeze.air || place.name != freeze.air->decides) continue;
    const PlaceCurve& curve = search.curves.air[i];
    const std::size_t moment = asking_moment(curve, place.limit_degC);
    Explained explained{place.idle, place.running, 0.0, 0.0, curve.gain_share[moment], curve.base_degC[moment]};
    explained.after_s = moment_s(moment);
    explained.outdoor_degC = search.snap.hourly_degC[std::min(static_cast<std::size_t>(explained.after_s / hour_s),
                                                              search.snap.hourly_degC.size() - 1)];
    explained.limit_degC = place.limit_degC;
    explained.asks_degC = (place.limit_degC - explained.base_degC) / explained.gain_share;
    explained.control_K = freeze.air->control_K;
    explained.sensor_error_K = search.design.frost_hold.sensor_error_K;
    return {explained};
  }
  return {};
}

void set_sensors(Freeze& freeze, const Design& design, const Shop& shop) {
  const std::string& room = design.room[shop.first].name;
  const bool several = design.room.size() > 1 && !room.empty();
  const std::string where = several ? ", in the " + room : "";
  const std::string height = design.units == System::us ? "5 ft" : "1.5 m";
  freeze.slab_sensor = "in the concrete at tube depth, midway between two tubes" + where;
  freeze.air_sensor = "on an inside wall, " + height + " up" + where;
}

Checked<Freeze> no_outdoor() {
  return {std::nullopt,
          {{Severity::note,
            "freeze.no-outdoor",
            "climate.coldest",
            "the frost hold needs the coldest hour outdoors: give climate.outdoor or climate.coldest",
            {}}}};
}

/// Nothing at all could be computed.
Checked<Freeze> nothing_known(const Design& design, const WatchedPlaces& places) {
  Freeze freeze;
  freeze.outdoor_degC = *design.climate.coldest_degC;
  freeze.unknown = places.unknown;
  freeze.unknown.push_back({"whole shop", "no tube lies in any floor that has an edge outdoors"});
  freeze.reason = why_not_called(design, freeze);
  std::vector<Diagnostic> said = remarks(freeze, {}, std::nullopt);
  return {std::move(freeze), std::move(said)};
}

DialSetting setting_of(const Most& most, const Controlled& real) {
  const double control_K = real.added_K.value_or(0.0);
  return {most.by, *most.degC + control_K, control_K};
}

/// The settings, where the places that have one leave any.
void set_settings(Freeze& freeze, const Search& search, const Asked& air, const Asked& slab) {
  const Most by_air = most_of(air, search.places), by_slab = most_of(slab, search.places);
  bool kept = by_air.by_all;
  if (by_air.degC) {
    const Controlled real = controlled(search, DialKind::air, *by_air.degC, air.most_degC);
    if (!real.added_K) freeze.beyond_boiler = real.short_place;
    kept = kept && real.added_K;
    freeze.air = setting_of(by_air, real);
  }
  if (by_slab.degC)
    freeze.slab = setting_of(by_slab, controlled(search, DialKind::slab, *by_slab.degC, slab.most_degC));
  const bool known = search.places.unknown.empty() && by_air.degC;
  freeze.verdict = !kept ? FreezeVerdict::no_setting : known ? FreezeVerdict::found : FreezeVerdict::cannot_be_called;
  // A slab that may not be warm enough for every place has no setting, where the wall thermostat has one.
  if (freeze.verdict == FreezeVerdict::found && !by_slab.by_all) freeze.slab.reset();
}

}  // namespace

Checked<Freeze> lowest_setting(const HeldShop& held, EdgeFields& fields, std::optional<double> boiler_W) {
  const Design& design = held.design;
  if (!design.climate.coldest_degC) return no_outdoor();
  const auto found = held_zone(held, fields);
  if (!found) return nothing_known(design, held.watched);
  const Shop* shop = &found->shop;
  const Zone* zone = &found->zone;
  const WatchedPlaces& places = found->places;

  Search search{design, *shop, places, *zone, snap_case(design, held.snap, shop->first), {}, 0.0};
  search.curves = snap_curves(*zone, search.snap);
  const double working_degC = indoor_of(design, design.room[shop->first]);
  const Asked air = asked_of(search.curves.air, places, working_degC);
  const Asked slab = asked_of(search.curves.slab, places, shop->warmest_slab_degC);
  search.most_W_per_m2 = boiler_W.value_or(usual_boiler_W(*shop, working_degC)) / tubes_m2(*zone);

  Freeze freeze;
  freeze.outdoor_degC = held.snap.coldest_degC;
  freeze.tried = held.snap.how;
  freeze.snap_hourly_degC = held.snap.hourly_degC;
  freeze.unknown = places.unknown;
  set_sensors(freeze, design, *shop);
  set_settings(freeze, search, air, slab);
  set_lasting(freeze, design, places, *shop);
  freeze.place = all_at_setting(search, air, slab, freeze);
  freeze.explained = explained_by(search, freeze);
  return with_dials(held, std::move(freeze), {}, boiler_W);
}

Checked<Freeze> with_dials(const HeldShop& held, Freeze freeze, const LeastDials& least,
                           std::optional<double> boiler_W) {
  const Design& design = held.design;
  const auto shop = shop_of(design, held.envelope, held.floor);
  if (!shop) return {std::nullopt, {}};
  const double error_K = design.frost_hold.sensor_error_K;
  const auto set_dial = [&](DialSetting& setting, double least_degC) {
    setting.wanted_degC = std::max(setting.best_degC + error_K, least_degC);
    setting.dial_degC = dial_mark_degC(setting.wanted_degC, design.units);
  };
  if (freeze.air) set_dial(*freeze.air, least.air_degC);
  if (freeze.slab) set_dial(*freeze.slab, least.slab_degC);
  // No water of this boiler, or of any that a floor may have, brings a sensor to more.
  constexpr double hottest_floor_water_degC = 60.0;  // practice
  const double water_degC = std::min(design.boiler.hottest_degC, hottest_floor_water_degC);
  if (freeze.slab && freeze.slab->wanted_degC >= water_degC) freeze.slab.reset();
  if (freeze.air) {
    const double slab_degC =
        freeze.slab ? freeze.slab->dial_degC
                    : held_at(*shop->hold[shop->first], freeze.air->dial_degC, shop->outdoor_degC).sensor_degC;
    freeze.hold_W = hold_W(*shop, slab_degC, shop->outdoor_degC);
    if (boiler_W) freeze.boiler_keeps_to_degC = boiler_keeps_to_degC(*shop, slab_degC, *boiler_W);
  }
  for (Explained& explained : freeze.explained)
    explained.dial_degC = dial_mark_degC(freeze.air->best_degC + error_K, design.units);
  if (freeze.verdict == FreezeVerdict::no_setting) freeze.reason = why_no_setting(design, freeze);
  if (freeze.verdict == FreezeVerdict::cannot_be_called) freeze.reason = why_not_called(design, freeze);
  std::vector<Diagnostic> said = remarks(freeze, *shop, boiler_W);
  return {std::move(freeze), std::move(said)};
}

std::optional<double> found_dial_degC(const std::optional<Freeze>& freeze, std::optional<DialSetting> Freeze::*dial) {
  if (!freeze || freeze->verdict != FreezeVerdict::found) return std::nullopt;
  const std::optional<DialSetting>& setting = (*freeze).*dial;
  return setting ? std::optional<double>(setting->dial_degC) : std::nullopt;
}

std::optional<double> lasting_slab_degC(const HeldShop& held) {
  const auto shop = held.design.climate.coldest_degC ? shop_of(held.design, held.envelope, held.floor) : std::nullopt;
  if (!shop) return std::nullopt;
  return lasting_slab_degC(in_heated_rooms(held.watched, *shop, held.design), *shop, Tubes::running);
}

}  // namespace slabwright
