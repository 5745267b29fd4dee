// Last winter's bill: what it fixes, what it cannot tell apart, and bills that nobody can believe.
#include <algorithm>

#include "winter/bills.hpp"

using namespace slabwright;
using namespace slabwright::test;
using namespace slabwright::winter;

namespace {

Checked<BillAnswer> read_said(const Bill& bill) {
  return read_bill({billed().bill_case(), billed().model, bill, {}, {}});
}

/// In the corners of the box a boiler is at its most for weeks, a kink that no surface of second degree follows. What
/// is found of that error goes into the bands; this much of it would make them useless.
constexpr double corner_share = 0.08;

}  // namespace

TEST_CASE("a surface stands for the runs of a bill") {
  const BillModel& model = billed().model;
  CHECK(model.largest_error_share < corner_share);
  for (const int month : {10, 11, 12, 1, 2, 3, 4}) {
    const auto row = static_cast<std::size_t>(month - 1);
    CHECK(heat_in_month(model, {}, month) == Approx(model.designed_J[row]).epsilon(model.largest_error_share));
    CHECK(model.per_outdoor_J_per_K[row] > 0.0);
    CHECK(heat_in_month(model, {1.2, 1.0, 0.0}, month) > heat_in_month(model, {}, month));
    CHECK(heat_in_month(model, {1.0, 1.5, 0.0}, month) > heat_in_month(model, {}, month));
    CHECK(heat_in_month(model, {1.0, 1.0, 1.0}, month) > heat_in_month(model, {}, month));
  }
}

TEST_CASE("the shop on other ground loses the share that was asked for, and keeps its floor") {
  const GroundRange& range = billed().range;
  CHECK(range.less_share < 0.6);
  CHECK(range.more_share > 1.8);
  const auto ground_J = [&](double share) {
    const YearShop shop = shop_at(range, 1.0, share);
    const WayCase& like = *billed().way;
    const WayCase way{shop, like.season, like.machines, like.dials, like.deadband_K, like.reset, like.work_degC};
    const ShopState start = begun(shop, billed().history, since_coldest_s);
    const ShopState years = carried_on(shop, start, run_way(way, start).end, 365.0 * 86400.0);
    CHECK(tubes_m2(shop) == Approx(tubes_m2(range.designed)));
    return run_way(way, years).heat.ground_J;
  };
  const double designed_J = ground_J(1.0);
  // Heated in winter alone: a floor that is left to itself in summer gives up less of its share.
  CHECK(ground_J(1.5) / designed_J == Approx(1.5).epsilon(0.1));
  CHECK(ground_J(0.7) / designed_J == Approx(0.7).epsilon(0.1));
  CHECK(conducts_share(range, 1.0) == Approx(1.0));
  CHECK(conducts_share(range, range.more_share) == Approx(ground_conducts_more));
}

TEST_CASE("a bill without noise of the design itself shows the design") {
  const BillFit fit = answer_of(billed(), bill_of(billed(), {})).fit;
  CHECK(fit.months == 7);
  CHECK(fit.loss_share == Approx(1.0).margin(0.08));
  CHECK(fit.ground_share == Approx(1.0).margin(0.15));
  CHECK(fit.indoor_K == Approx(0.0).margin(0.3));
  CHECK(fit.other_share == Approx(1.0).margin(0.1));
  CHECK(fit.misfit_share < 0.02);
  CHECK(fit.loss_low_share < 1.0);
  CHECK(fit.loss_high_share > 1.0);
}

TEST_CASE("soil and foam that conduct twice as well everywhere are found, though the model has them in patches") {
  Design design = bare_shop();
  design.ground.conductivity_W_per_mK *= 2.0;
  design.insulation.wet_share = 1.0;
  const auto wet = billed_shop(design);
  const BillFit fit = answer_of(billed(), bill_of(*wet, {}), {0.03, 0.0}).fit;
  CHECK(fit.ground_share > 1.2);
  CHECK(conducts_share(billed().range, fit.ground_low_share) < 2.0);
  CHECK(conducts_share(billed().range, fit.ground_high_share) > 2.0);
  CHECK(fit.loss_low_share < 1.0);
  CHECK(fit.loss_high_share > 1.0);
  CHECK(fit.misfit_share < 0.03);
}

TEST_CASE("what takes each other's place has the sign that physics wants") {
  const BillAnswer answer = answer_of(billed(), bill_of(billed(), {}));
  const BillKnown& known = answer.known;
  const std::vector<BillPair>& ridge = answer.ridge;
  REQUIRE_FALSE(ridge.empty());
  for (const BillPair& pair : ridge) {
    CHECK(pair.one_errors > 0.0);
    CHECK(pair.other_errors < 0.0);
    CHECK(pair.squares <= 1.0);
  }
  // All four add to the bill: between no two of them may the covariance be above 0 without a third.
  CHECK(known.covariance[air_loss][indoor_warmth] < 0.0);
  const std::vector<double> mix = answer.least_known;
  CHECK(*std::min_element(mix.begin(), mix.end()) < 0.0);
}

TEST_CASE("a pair on the ridge fits by whole runs too") {
  const BillAnswer answer = answer_of(billed(), bill_of(billed(), {}));
  const BillKnown& known = answer.known;
  const BillPair pair = answer.ridge.front();
  std::vector<double> z = known.likeliest;
  z[pair.one] += pair.one_errors;
  z[pair.other] += pair.other_errors;
  const BillPriors priors;
  const BillPoint there{std::exp(priors.loss_share * z[air_loss]), std::exp(priors.ground_share * z[ground_loss]),
                        priors.indoor_K * z[indoor_warmth]};
  const MonthsOfUse heat = heat_use(billed().bill_case(), there);
  const double other = other_J * std::exp(priors.other_share * z[other_use]);
  double off_J = 0.0, all_J = 0.0;
  for (const BillMonth& month : bill_of(billed(), {}).months) {
    off_J += std::abs(heat[static_cast<std::size_t>(month.month - 1)] + other - month.use_J);
    all_J += month.use_J;
  }
  CHECK(off_J / all_J < 0.03);  // no more than the reading's error
}

TEST_CASE("more months never widen the band on the mean") {
  double last = 1e9;
  for (const std::size_t months : {std::size_t{3}, std::size_t{5}, std::size_t{7}}) {
    double width = 0.0;
    for (const double loss : {0.8, 1.0, 1.3}) {
      Bill bill = bill_of(billed(), {loss, 1.0, 0.0});
      bill.months.resize(months);
      const BillFit fit = answer_of(billed(), bill).fit;
      width += std::log(fit.loss_high_share / fit.loss_low_share) / 3.0;
    }

    CHECK(width < last);
    last = width;
  }
}

TEST_CASE("a summer's months tell what is not heat") {
  Bill bill = bill_of(billed(), {});
  const BillFit without = answer_of(billed(), bill).fit;
  bill.months.push_back({6, other_J});
  bill.months.push_back({7, other_J});
  const BillFit with = answer_of(billed(), bill).fit;
  CHECK(with.months == 9);
  CHECK(with.other_high_share - with.other_low_share < 0.5 * (without.other_high_share - without.other_low_share));
}

TEST_CASE("bills that say nothing, contradict themselves, or cannot be") {
  const auto code_of = [](const Bill& bill) {
    const auto read = read_said(bill);
    return read.said.empty() ? std::string() : read.said.front().code;
  };
  Bill few = bill_of(billed(), {});
  few.months.resize(2);
  CHECK(code_of(few) == "bill.few-months");
  Bill summer = bill_of(billed(), {});
  summer.months.push_back({7, 2.0 * summer.months[3].use_J});
  CHECK(code_of(summer) == "bill.summer");
  CHECK(read_said(summer));
  Bill low = bill_of(billed(), {}), high = low, mixed = low;
  for (BillMonth& month : low.months) month.use_J = 1.05 * other_J;
  for (BillMonth& month : high.months) month.use_J *= 5.0;
  CHECK(code_of(low) == "bill.too-low");
  CHECK_FALSE(read_said(low));
  CHECK(code_of(high) == "bill.too-high");
  mixed.months[3].use_J *= 0.5;
  CHECK(code_of(mixed) == "bill.months-disagree");
  CHECK(code_of(bill_of(billed(), {})).empty());
}
