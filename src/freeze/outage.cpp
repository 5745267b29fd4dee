// The clock of a power cut: settings against weather.
#include <algorithm>
#include <cmath>

#include "freeze/shop.hpp"
#include "slabwright/building_time.hpp"

namespace slabwright {
namespace {

using namespace freeze;

/// Rises below this have no shares that mean anything.
constexpr double least_rise_K = 0.1;

/// The heated rooms as one, with everything that its heat goes into, and each room without fans and gains.
struct Zone {
  SlabHold held, idle;
  std::vector<std::optional<SlabHold>> idle_room;
  double heated_m2 = 0.0;
};

Zone zone_of(const Shop& shop, const Envelope& envelope) {
  Zone zone;
  double loss_W_per_K = 0.0, fans_W_per_K = 0.0, gains_W = 0.0;
  for (std::size_t row = 0; row < shop.hold.size(); ++row) {
    zone.idle_room.push_back(shop.hold[row]);
    if (!shop.hold[row]) continue;
    const RoomLoss& room = envelope.room[row];
    zone.idle_room[row]->loss_W_per_m2K -= room.exhaust_counted_W_per_K / shop.heated_m2[row];
    zone.idle_room[row]->gains_W_per_m2 = 0.0;
    zone.heated_m2 += shop.heated_m2[row];
    loss_W_per_K += room.total_W_per_K;
    fans_W_per_K += room.exhaust_counted_W_per_K;
    gains_W += room.gains_W;
  }
  const Section section = shop.hold[shop.first]->section;
  zone.held = {section, loss_W_per_K / zone.heated_m2, gains_W / zone.heated_m2};
  zone.idle = {section, (loss_W_per_K - fans_W_per_K) / zone.heated_m2, 0.0};
  return zone;
}

/// The shop as its wall thermostat holds it, in the room where that hangs; over one slab of one temperature.
PowerCut cut_at(const Shop& shop, const Zone& zone, const CoolingBuilding& building, double air_degC,
                double outdoor_degC) {
  PowerCut cut;
  const double slab_degC = held_at(*shop.hold[shop.first], air_degC, outdoor_degC).sensor_degC;
  cut.air_degC = room_held_by(zone.held, slab_degC, outdoor_degC).room_degC;
  cut.outdoor_degC = outdoor_degC;
  cut.ground_degC = shop.ground_degC;
  const double rise_K = room_held_by(zone.idle, slab_degC, outdoor_degC).room_degC - outdoor_degC;
  for (const auto& room : zone.idle_room) {
    const double own_K = room ? room_held_by(*room, slab_degC, outdoor_degC).room_degC - outdoor_degC : rise_K;
    cut.room_rise_share.push_back(rise_K > least_rise_K ? own_K / rise_K : 1.0);
  }
  const double up_W_per_m2 = zone.held.loss_W_per_m2K * (cut.air_degC - outdoor_degC) - zone.held.gains_W_per_m2;
  cut.tube_W_per_m2 = tube_heat_that_gives(building, cut, zone.heated_m2 * up_W_per_m2);
  return cut;
}

bool sooner(const OutagePlace& a, const OutagePlace& b) {
  if (a.lasts_s.has_value() != b.lasts_s.has_value()) return a.lasts_s.has_value();
  return a.lasts_s && *a.lasts_s < *b.lasts_s;
}

/// The first, or nothing where none freezes.
OutagePlace soonest(const std::vector<OutagePlace>& sorted) {
  return sorted.empty() || !sorted.front().lasts_s ? OutagePlace{} : sorted.front();
}

/// One building, one cut.
struct CutRun {
  std::vector<OutagePlace> place, pumped;  ///< in the order in which they are watched
  bool floor_cools_air = false;
};

CutRun run_of(const HeldShop& held, const Shop& shop, const CoolingBuilding& building, const PowerCut& cut) {
  const std::vector<CoolingRow> rows = cool_down(building, cut);
  CutRun run;
  run.floor_cools_air = std::any_of(rows.begin() + 1, rows.end(), [](const CoolingRow& row) { return row.up_W < 0.0; });
  for (const WatchedPlace& place : held.watched.place) {
    if (!place.decides || !shop.hold[place.room]) continue;
    run.place.push_back({place.name, freezes_after_s(place, building, cut, rows)});
    run.pumped.push_back({place.name, freezes_after_s(place, building, cut, rows, PumpInCut::runs)});
  }
  return run;
}

std::vector<double> settings_degC(const Design& design, double dial_degC) {
  const double step_K = design.units == System::us ? 6.0 / 1.8 : 3.0;
  std::vector<double> settings{dial_degC};
  for (const double steps : {1.0, 2.0}) {
    const double next_degC = std::min(dial_degC + steps * step_K, design.climate.indoor_degC);
    if (next_degC > settings.back() + 0.1 * step_K) settings.push_back(next_degC);
  }
  return settings;
}

/// The coldest month on a mark of 10 F or 5 K, so much milder than what is planned for as to be worth a row.
std::vector<double> outdoors_degC(const Design& design) {
  const Climate& climate = design.climate;
  const bool us = design.units == System::us;
  const double month_degC = climate.mean_degC - climate.half_swing_K;
  const double mild_degC =
      us ? (10.0 * std::floor((1.8 * month_degC + 32.0) / 10.0) - 32.0) / 1.8 : 5.0 * std::floor(month_degC / 5.0);
  std::vector<double> outdoors{*climate.coldest_degC};
  for (const double degC : {climate.outdoor_degC.value_or(*climate.coldest_degC), mild_degC})
    if (degC > outdoors.back() + 1.0) outdoors.push_back(degC);
  std::reverse(outdoors.begin(), outdoors.end());
  return outdoors;
}

/// The clock with everything that does not change from case to case.
class Clock {
 public:
  Clock(const HeldShop& held, const Shop& shop, CoolingBuilding building, EdgeFields& fields)
      : held_(held), shop_(shop), zone_(zone_of(shop, held.envelope)), up_(std::move(building)), fields_(fields) {}

  OutageCase at(double outdoor_degC, double dial_degC) {
    const double true_degC = dial_degC - held_.design.frost_hold.sensor_error_K;
    CutRun run = worst_of_films(std::max(true_degC, outdoor_degC), outdoor_degC);
    std::stable_sort(run.place.begin(), run.place.end(), sooner);
    std::stable_sort(run.pumped.begin(), run.pumped.end(), sooner);
    const OutagePlace first = soonest(run.place), pumped = soonest(run.pumped);
    return {outdoor_degC, dial_degC, first.name, first.lasts_s, std::move(run.place), pumped.name, pumped.lasts_s};
  }
  bool floor_cools_air() const { return floor_cools_air_; }

 private:
  CutRun worst_of_films(double air_degC, double outdoor_degC) {
    CutRun run = run_of(held_, shop_, up_, cut_at(shop_, zone_, up_, air_degC, outdoor_degC));
    if (!run.floor_cools_air) return run;
    floor_cools_air_ = true;
    if (!down_) down_ = cooling_building(held_.design, held_.envelope, fields_, FloorHeat::down);
    const CutRun other = run_of(held_, shop_, *down_, cut_at(shop_, zone_, *down_, air_degC, outdoor_degC));
    for (std::size_t i = 0; i < run.place.size(); ++i) {
      run.place[i] = std::min(run.place[i], other.place[i], sooner);
      run.pumped[i] = std::min(run.pumped[i], other.pumped[i], sooner);
    }
    return run;
  }

  const HeldShop& held_;
  const Shop& shop_;
  Zone zone_;
  CoolingBuilding up_;
  std::optional<CoolingBuilding> down_;  ///< only made where it is needed
  EdgeFields& fields_;
  bool floor_cools_air_ = false;
};

}  // namespace

std::optional<Outage> outage_clock(const HeldShop& held, const Freeze& freeze, EdgeFields& fields) {
  if (freeze.decides.empty() || !held.design.climate.coldest_degC) return std::nullopt;
  const auto shop = shop_of(held.design, held.envelope, held.floor);
  if (!shop) return std::nullopt;
  auto building = cooling_building(held.design, held.envelope, fields);
  if (!building) return std::nullopt;
  Clock clock(held, *shop, std::move(*building), fields);
  Outage outage;
  outage.longest_s = CoolingOptions{}.longest_s;
  for (const double outdoor_degC : outdoors_degC(held.design))
    for (const double dial_degC : settings_degC(held.design, freeze.air_dial_degC))
      outage.row.push_back(clock.at(outdoor_degC, dial_degC));
  outage.floor_cools_air = clock.floor_cools_air();
  return outage;
}

}  // namespace slabwright
