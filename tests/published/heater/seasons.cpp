// A heating season by bins of outdoor temperature: the colder season of EN 14825 and regions IV and V of AHRI 210/240.
// Bin hours as open programs carry them (their sums agree with EU 811/2013, Annex VII: 2465 h); results computed by a
// second program.
#include <array>
#include <cmath>

#include "slabwright/heater.hpp"
#include "support/catch.hpp"
#include "support/published.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

// From -22 to 15 degC.
constexpr std::array<double, 38> colder_h{1,   6,   13,  17,  19,  26,  39,  41,  35,  52,  37,  41,  43,
                                          54,  90,  125, 169, 195, 278, 306, 454, 385, 490, 533, 380, 228,
                                          261, 279, 229, 269, 233, 230, 243, 191, 146, 150, 97,  61};

HeatPump colder_pump(std::optional<double> least_degC, PartLoad part_load) {
  HeatPump pump;
  pump.row = {{-15.0, 6500.0, 2.0}, {-7.0, 7500.0, 2.5}, {2.0, 8500.0, 3.2}, {7.0, 10000.0, 4.0}, {12.0, 11000.0, 4.8}};
  pump.warmer = BeyondRows::straight;
  pump.part_load = part_load;
  if (least_degC) pump.cut_out = CutOut{*least_degC, *least_degC};
  return pump;
}

struct Season {
  double load_Wh = 0.0, pump_Wh = 0.0, compressor_Wh = 0.0;

  double backup_Wh() const { return load_Wh - pump_Wh; }
};

double colder_load_W(double outdoor_degC) { return 12000.0 * (outdoor_degC - 16.0) / (-22.0 - 16.0); }

Season colder_season(const HeatPump& pump) {
  Season season;
  for (std::size_t i = 0; i < colder_h.size(); ++i) {
    const double outdoor = static_cast<double>(i) - 22.0, load = colder_load_W(outdoor);
    const HeatPumpHour hour = heat_pump_hour(pump, {outdoor, 20.0, load}, {});
    season.load_Wh += colder_h[i] * load;
    season.pump_Wh += colder_h[i] * hour.heat_W;
    season.compressor_Wh += colder_h[i] * hour.electric_W;
  }
  return season;
}

double from_degF(double degF) { return (degF - 32.0) / 1.8; }

constexpr double btu_h_W = 1055.05585262 / 3600.0;

// 62 degF down to -23 degF by 5.
struct Region {
  const char* name;
  double design_degF;
  std::array<double, 18> share;
};
constexpr Region region_4{
    "IV", 5.0, {.132, .111, .103, .093, .100, .109, .126, .087, .055, .036, .026, .013, .006, .002, .001, 0, 0, 0}};
constexpr Region region_5{
    "V",
    -10.0,
    {.106, .092, .086, .076, .078, .087, .102, .094, .074, .055, .047, .038, .029, .018, .010, .005, .002, .001}};

// Between 17 and 45 degF the standard's machine gathers frost: another line through 17 and 35 degF.
struct RatedPump {
  HeatPump clean, frosted;
};

HeatPump rated(double low_W, double low_power_W, double warm_degF, double warm_W, double warm_power_W) {
  HeatPump pump;
  pump.row = {{from_degF(17.0), low_W, low_W / low_power_W}, {from_degF(warm_degF), warm_W, warm_W / warm_power_W}};
  pump.between = StraightBetweenRows::power;
  pump.warmer = BeyondRows::straight;
  pump.part_load = {PartLoadLaw::straight, 0.25, 60.0, 3.0 / 3600.0};
  return pump;
}

RatedPump rated_pump() {
  RatedPump pumps{rated(20000.0 * btu_h_W, 2400.0, 47.0, 36000.0 * btu_h_W, 3000.0), {}};
  HeatPump frost = pumps.clean;
  frost.frost = FrostBand{from_degF(17.0) + 0.01, from_degF(45.0), 0.90, 0.90 / 0.985};
  const FullLoad at_35 = full_load(frost, from_degF(35.0));
  pumps.frosted = rated(20000.0 * btu_h_W, 2400.0, 35.0, at_35.capacity_W, at_35.capacity_W / at_35.cop);
  return pumps;
}

// Of the hours of a bin between cut-out and cut-in the standard takes half to run, whatever came before. It counts both
// temperatures themselves to the colder side, so that the limits are set a hair above the bins.
struct Bins {
  double load_Btu_h = 0.0, compressor_W = 0.0, resistance_W = 0.0;

  double hspf() const { return load_Btu_h / (compressor_W + resistance_W); }
};

void add_bin(Bins& bins, const HeatPump& pump, double degF, double load_Btu_h, double share) {
  for (const bool before : {true, false}) {
    const HeatPumpHour hour = heat_pump_hour(pump, {from_degF(degF), 21.0, load_Btu_h * btu_h_W}, {before, before});
    bins.compressor_W += 0.5 * share * hour.electric_W;
    bins.resistance_W += 0.5 * share * (load_Btu_h - hour.heat_W / btu_h_W) / 3.413;
  }
  bins.load_Btu_h += share * load_Btu_h;
}

Bins season_of(const Region& region, std::optional<CutOut> cut_out) {
  RatedPump pumps = rated_pump();
  pumps.clean.cut_out = pumps.frosted.cut_out = cut_out;
  Bins bins;
  for (std::size_t i = 0; i < region.share.size(); ++i) {
    const double degF = 62.0 - 5.0 * static_cast<double>(i);
    const double load = (65.0 - degF) / (65.0 - region.design_degF) * 0.77 * 35000.0;
    add_bin(bins, degF <= 17.0 || degF >= 45.0 ? pumps.clean : pumps.frosted, degF, load, region.share[i]);
  }
  return bins;
}

}  // namespace

TEST_CASE("12 kW in the colder season of EN 14825") {
  const Source source{"EN 14825, colder season", "12 kW, rows at -15, -7, 2, 7, 12 degC, by a second program",
                      Oracle::derived};
  struct Row {
    const char* name;
    std::optional<double> least_degC;
    const char *compressor, *backup, *on, *net;
  };
  const PartLoad air_to_water{PartLoadLaw::hyperbola, 0.9, 60.0, 3.0 / 3600.0};
  for (const Row& r : {Row{"no cut-out", {}, "10437.366", "1135.836", "2.556", "2.725"},
                       Row{"cut out at -20.5", -20.5, "10412.535", "1175.961", "2.552", "2.728"},
                       Row{"cut out at -15", -15.0, "10029.794", "1881.836", "2.483", "2.761"},
                       Row{"cut out at -10", -10.0, "9375.102", "3272.586", "2.339", "2.806"}}) {
    const Season season = colder_season(colder_pump(r.least_degC, air_to_water));
    const std::string at = std::string(r.name) + ": ";
    CHECK_PUBLISHED(source, at + "heat, kWh", "29577.158", season.load_Wh / 1000.0);
    CHECK_PUBLISHED(source, at + "compressor, kWh", r.compressor, season.compressor_Wh / 1000.0);
    CHECK_PUBLISHED(source, at + "backup, kWh", r.backup, season.backup_Wh() / 1000.0);
    CHECK_PUBLISHED(source, at + "SCOPon", r.on, season.load_Wh / (season.compressor_Wh + season.backup_Wh()));
    CHECK_PUBLISHED(source, at + "SCOPnet", r.net, season.pump_Wh / season.compressor_Wh);
  }
  const Season air = colder_season(colder_pump(-20.5, {PartLoadLaw::straight, 0.25, 60.0, 3.0 / 3600.0}));
  CHECK_PUBLISHED(source, "air to air, cut out at -20.5: compressor, kWh", "10507.533", air.compressor_Wh / 1000.0);
  CHECK_PUBLISHED(source, "air to air, cut out at -20.5: SCOPon", "2.532",
                  air.load_Wh / (air.compressor_Wh + air.backup_Wh()));
  CHECK_PUBLISHED(source, "load at -7 degC, kW", "7.263", colder_load_W(-7.0) / 1000.0);
  CHECK_PUBLISHED(source, "capacity at -8 degC, kW", "7.375",
                  full_load(colder_pump({}, air_to_water), -8.0).capacity_W / 1000.0);
  double hours = 0.0, full_hours = 0.0;
  for (std::size_t i = 0; i < colder_h.size(); ++i) {
    hours += colder_h[i];
    full_hours += colder_h[i] * colder_load_W(static_cast<double>(i) - 22.0) / 12000.0;
  }
  CHECK(hours == 6446.0);  // that the bins are copied whole
  CHECK(full_hours == Approx(2464.76).margin(0.005));
}

TEST_CASE("what frost takes at 35 F by the rating's default") {
  const Source source{"AHRI 210/240",
                      "default at 35 degF from 36000 and 20000 Btu/h (0.9 and 0.6 as open code has them)",
                      Oracle::derived};
  const FullLoad at = full_load(rated_pump().frosted, from_degF(35.0));
  CHECK_PUBLISHED(source, "capacity, Btu/h", "26640", at.capacity_W / btu_h_W);
  CHECK_PUBLISHED(source, "power, W", "2718.6", at.capacity_W / at.cop);
}

TEST_CASE("HSPF of a single-speed heat pump in two regions") {
  const Source source{"AHRI 210/240-2017", "bins of regions IV and V, 36000 Btu/h at 47 degF, by a second program",
                      Oracle::derived};
  struct Row {
    const char* name;
    std::optional<CutOut> cut_out;
    std::array<const char*, 2> hspf, cop;
  };
  const auto limits = [](double out_degF, double in_degF) {
    return CutOut{from_degF(out_degF) + 1e-6, from_degF(in_degF) + 1e-6};
  };
  for (const Row& r : {Row{"no cut-out", {}, {"8.0009", "6.7979"}, {"2.3442", "1.9918"}},
                       Row{"-5 / 0 F", limits(-5.0, 0.0), {"7.9962", "6.7671"}, {"2.3429", "1.9827"}},
                       Row{"5 / 10 F", limits(5.0, 10.0), {"7.8625", "6.4107"}, {"2.3037", "1.8783"}},
                       Row{"17 / 22 F", limits(17.0, 22.0), {"6.4329", "5.0985"}, {"1.8848", "1.4938"}}})
    for (const std::size_t region : {0u, 1u}) {
      const Region& where = region == 0 ? region_4 : region_5;
      const std::string at = std::string(r.name) + ", region " + where.name + ": ";
      const Bins bins = season_of(where, r.cut_out);
      CHECK_PUBLISHED(source, at + "HSPF, Btu/Wh", r.hspf[region], bins.hspf());
      CHECK_PUBLISHED(source, at + "seasonal COP", r.cop[region], bins.hspf() / 3.413);
      if (r.cut_out) continue;
      CHECK_PUBLISHED(source, at + "load, Btu/h", region == 0 ? "10746.3125" : "10654.2333", bins.load_Btu_h);
      CHECK_PUBLISHED(source, at + "compressor, W", region == 0 ? "1185.2742" : "1179.8076", bins.compressor_W);
      CHECK_PUBLISHED(source, at + "resistance, W", region == 0 ? "157.8604" : "387.4753", bins.resistance_W);
    }
}
