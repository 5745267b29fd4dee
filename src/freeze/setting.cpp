// From what each place asks for to the two dials.
#include <algorithm>
#include <cmath>

#include "freeze/shop.hpp"
#include "freeze/words.hpp"

namespace slabwright {
namespace {

using namespace freeze;

/// Dials show whole degrees F, or half degrees C.
double rounded_up_degC(double degC, System system) {
  constexpr double rounding = 1e-6;  // what stands on a mark stays there
  if (system == System::si) return std::ceil(2.0 * degC - rounding) / 2.0;
  return (std::ceil(1.8 * degC + 32.0 - rounding) - 32.0) / 1.8;
}

double dial_degC(const Design& design, double setting_degC) {
  return rounded_up_degC(setting_degC + design.frost_hold.sensor_error_K, design.units);
}

/// Each place over a slab held at one temperature.
PlaceAtSetting at_setting(const WatchedPlace& place, const Shop& shop, double slab_degC) {
  const HeldRoom room = room_held_by(*shop.hold[place.room], slab_degC, shop.outdoor_degC);
  PlaceAtSetting row;
  row.name = place.name;
  row.kind = place.kind;
  row.decides = place.decides;
  row.coldest_degC = temperature_of(place, room, shop, Tubes::idle);
  row.running_degC = temperature_of(place, room, shop, Tubes::running);
  row.limit_degC = place.limit_degC;
  row.freezes_degC = place.freezes_degC;
  row.spare_K = row.coldest_degC - row.freezes_degC;
  row.asks_slab_degC = asked_slab_degC(place, shop, Tubes::idle);
  if (row.asks_slab_degC) row.asks_air_degC = air_degC(shop, shop.first, *row.asks_slab_degC);
  if (!place.decides) row.ice_below_degC = freezes_below_degC(place, shop, slab_degC);
  return row;
}

/// What no setting keeps comes first, then what asks for most; what only is reported stands at the end.
bool before(const PlaceAtSetting& a, const PlaceAtSetting& b) {
  if (a.decides != b.decides) return a.decides;
  if (a.asks_slab_degC.has_value() != b.asks_slab_degC.has_value()) return !a.asks_slab_degC.has_value();
  return a.asks_slab_degC && *a.asks_slab_degC > *b.asks_slab_degC;
}

std::vector<PlaceAtSetting> all_at_setting(const WatchedPlaces& places, const Shop& shop, double slab_degC) {
  std::vector<PlaceAtSetting> rows;
  for (const WatchedPlace& place : places.place) rows.push_back(at_setting(place, shop, slab_degC));
  std::stable_sort(rows.begin(), rows.end(), before);
  return rows;
}

/// The most that any place asks for, of those that a setting keeps.
struct Asked {
  std::optional<double> slab_degC;
  std::string by;
  bool by_all = true;  ///< false: there is a place that no setting keeps
};
Asked most_asked(const WatchedPlaces& places, const Shop& shop, Tubes tubes) {
  Asked most;
  for (const WatchedPlace& place : places.place) {
    if (!place.decides) continue;
    const auto slab_degC = asked_slab_degC(place, shop, tubes);
    if (!slab_degC)
      most.by_all = false;
    else if (!most.slab_degC || *slab_degC > *most.slab_degC) {
      most.slab_degC = slab_degC;
      most.by = place.name;
    }
  }
  return most;
}

FreezeVerdict verdict_of(const Asked& asked, const WatchedPlaces& places) {
  if (!asked.by_all) return FreezeVerdict::no_setting;
  return places.unknown.empty() && asked.slab_degC ? FreezeVerdict::found : FreezeVerdict::cannot_be_called;
}

void set_dials(Freeze& freeze, const Design& design, const Shop& shop, double slab_degC) {
  freeze.slab_degC = slab_degC;
  freeze.air_degC = air_degC(shop, shop.first, slab_degC);
  freeze.slab_dial_degC = dial_degC(design, freeze.slab_degC);
  freeze.air_dial_degC = dial_degC(design, freeze.air_degC);
}

void set_pump_kept(Freeze& freeze, const Design& design, const Shop& shop, double slab_degC) {
  // The film of heat going up lets a little less cold in; should it ever let more in, idle loops are enough.
  if (freeze.verdict != FreezeVerdict::no_setting) slab_degC = std::min(slab_degC, freeze.slab_degC);
  freeze.pump_kept_slab_dial_degC = dial_degC(design, slab_degC);
  freeze.pump_kept_air_dial_degC = dial_degC(design, air_degC(shop, shop.first, slab_degC));
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

/// Places of rooms that carry no tube after all are unknown like the others.
WatchedPlaces in_heated_rooms(const WatchedPlaces& places, const Shop& shop, const Design& design) {
  WatchedPlaces sorted{{}, places.unknown};
  for (const WatchedPlace& place : places.place) {
    if (shop.hold[place.room])
      sorted.place.push_back(place);
    else
      sorted.unknown.push_back({place.name, "no tube lies in the floor of the " + design.room[place.room].name});
  }
  return sorted;
}

/// Nothing at all could be computed.
Checked<Freeze> nothing_known(const Design& design, const WatchedPlaces& places) {
  Freeze freeze;
  freeze.outdoor_degC = *design.climate.coldest_degC;
  freeze.unknown = places.unknown;
  freeze.unknown.push_back({"whole shop", "no tube lies in any floor"});
  freeze.reason = why_not_called(design, freeze);
  std::vector<Diagnostic> said = remarks(freeze, {}, std::nullopt);
  return {std::move(freeze), std::move(said)};
}

}  // namespace

Checked<Freeze> lowest_setting(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                               const WatchedPlaces& watched, std::optional<double> boiler_W) {
  if (!design.climate.coldest_degC) return no_outdoor();
  const auto found = shop_of(design, envelope, floor);
  if (!found) return nothing_known(design, watched);
  const Shop& shop = *found;
  const WatchedPlaces places = in_heated_rooms(watched, shop, design);
  const Asked asked = most_asked(places, shop, Tubes::idle), running = most_asked(places, shop, Tubes::running);
  Freeze freeze;
  freeze.verdict = verdict_of(asked, places);
  freeze.decides = asked.by;
  freeze.outdoor_degC = shop.outdoor_degC;
  freeze.unknown = places.unknown;
  set_sensors(freeze, design, shop);
  if (asked.slab_degC) {
    set_dials(freeze, design, shop, *asked.slab_degC);
    freeze.hold_W = hold_W(shop, freeze.slab_dial_degC, shop.outdoor_degC);
    if (boiler_W) freeze.boiler_keeps_to_degC = boiler_keeps_to_degC(shop, freeze.slab_dial_degC, *boiler_W);
  }
  if (running.slab_degC) set_pump_kept(freeze, design, shop, *running.slab_degC);
  freeze.place = all_at_setting(places, shop, asked.slab_degC.value_or(shop.warmest_slab_degC));
  if (freeze.verdict == FreezeVerdict::no_setting) freeze.reason = why_no_setting(design, freeze, running.by_all);
  if (freeze.verdict == FreezeVerdict::cannot_be_called) freeze.reason = why_not_called(design, freeze);
  std::vector<Diagnostic> said = remarks(freeze, shop, boiler_W);
  return {std::move(freeze), std::move(said)};
}

Judged judge_slab_setting(const Design& design, const Envelope& envelope, const FloorPlan& floor,
                          const WatchedPlaces& watched, double slab_degC) {
  const auto found = shop_of(design, envelope, floor);
  if (!found) return {false, "No tube lies in any floor.", {}, 0.0};
  const Shop& shop = *found;
  const WatchedPlaces places = in_heated_rooms(watched, shop, design);
  const double true_degC = slab_degC - design.frost_hold.sensor_error_K;
  Judged judged;
  judged.place = all_at_setting(places, shop, true_degC);
  judged.room_degC = coldest_air_degC(shop, true_degC);
  judged.holds = places.unknown.empty();
  if (!judged.holds) judged.reason = places.unknown.front().name + ": " + places.unknown.front().why + ".";
  for (const PlaceAtSetting& place : judged.place) {
    if (!place.decides || place.coldest_degC >= place.limit_degC) continue;
    judged.holds = false;
    judged.reason = why_refused(design, place, slab_degC);
    break;
  }
  return judged;
}

}  // namespace slabwright
