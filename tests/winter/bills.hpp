// A shop whose last winter is known, and bills of shops that lose more or less.
#pragma once
#include <cmath>
#include <memory>

#include "freeze/holds.hpp"
#include "slabwright/maths_sampling.hpp"
#include "winter/bill_fit.hpp"

namespace slabwright::test {

/// Supply and heat as straight lines: enough for a boiler that mostly waits for its thermostat.
inline WaterCurve straight_curve() {
  WaterCurve curve;
  curve.room_degC = 16.0;
  for (const double supply_degC : {20.0, 30.0, 40.0, 49.0}) {
    const double heat_W = 300.0 * (supply_degC - curve.room_degC);
    curve.row.push_back({supply_degC, supply_degC - 5.0, 3e-4, 0.85 * heat_W, heat_W});
  }
  return curve;
}

/// The shop of `bare_shop`, its floor at work all winter. Everything in it points to what stands before it.
struct BilledShop {
  Line line;
  WaterCurve water = straight_curve();
  std::unique_ptr<WinterShop> shop;
  YearShop year;
  winter::Season season;
  winter::Machines machines;
  winter::GroundRange range;
  std::unique_ptr<winter::WayCase> way;
  ZoneHistory history;
  winter::BillModel model;

  winter::BillCase bill_case() const { return {range, *way, history}; }
};

inline std::unique_ptr<BilledShop> billed_shop(const Design& design) {
  auto billed = std::make_unique<BilledShop>();
  BilledShop& b = *billed;
  b.line = line_of(design);
  b.shop = std::make_unique<WinterShop>(WinterShop{b.line.design,
                                                   b.line.envelope,
                                                   b.line.floor,
                                                   b.line.places,
                                                   b.line.snap,
                                                   b.water,
                                                   12000.0,
                                                   60.0,
                                                   {},
                                                   {},
                                                   nullptr});
  b.year = *year_shop(b.line.design, b.line.envelope, b.line.floor, b.line.places, coarse_fields());
  b.season = winter::season_of(*b.shop, b.year);
  b.machines = winter::machines_of(*b.shop, b.year, b.season);
  b.range = *winter::ground_range(*b.shop, b.year);
  WayEntry work;
  work.floor = WayFloor::work;
  winter::PlanInputs inputs;
  inputs.work_degC = 16.0;
  b.way = std::make_unique<winter::WayCase>(winter::WayCase{
      b.year, b.season, b.machines, winter::plan_of(work, b.season, inputs), 1.0, false, inputs.work_degC});
  b.history = {{16.0, 7.0, 0.0}, {16.0, -5.0, 0.0}};
  b.model = winter::bill_model(b.bill_case());
  return billed;
}

/// One for all cases: its runs take most of their time.
inline const BilledShop& billed() {
  static const auto shop = billed_shop(bare_shop());
  return *shop;
}

constexpr double other_J = 300.0 * 3.6e6;

/// October to April of a shop, each month by whole runs; `noise`: [month of the season] shares.
inline Bill bill_of(const BilledShop& b, const winter::BillPoint& truth, const winter::MonthsOfUse& noise_share = {},
                    const winter::MonthsOfUse& outdoor_K = {}) {
  const winter::MonthsOfUse heat = winter::heat_use(b.bill_case(), truth, outdoor_K);
  Bill bill;
  bill.other_J = other_J;
  for (const int month : {10, 11, 12, 1, 2, 3, 4}) {
    const auto row = static_cast<std::size_t>(month - 1);
    bill.months.push_back({month, (heat[row] + other_J) * (1.0 + noise_share[row])});
  }
  return bill;
}

inline winter::BillAnswer answer_of(const BilledShop& b, const Bill& bill, const BillErrors& errors = {}) {
  const auto read = winter::read_bill({b.bill_case(), b.model, bill, {}, errors});
  REQUIRE(read);
  return *read.value;
}

/// Evenly spread in the unit box, seeded: the truth of a bill first, then normal draws for its months.
inline double normal_from(double unit, double other_unit) {
  return std::sqrt(-2.0 * std::log(1.0 - unit)) * std::cos(6.283185307179586 * other_unit);
}

}  // namespace slabwright::test
