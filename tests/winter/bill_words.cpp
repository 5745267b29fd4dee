// What the winter says of a bill, and what of it goes back into a design file.
#include "winter/bill_words.hpp"
#include "support/layouts.hpp"
#include "winter/bills.hpp"

using namespace slabwright;
using namespace slabwright::test;
using namespace slabwright::winter;

namespace {

bool speaks_of(const std::vector<std::string>& lines, const std::string& word) {
  for (const std::string& line : lines)
    if (line.find(word) != std::string::npos) return true;
  return false;
}

Checked<Winter> winter_with(const Bill& bill, bool last_winter) {
  Design design = bare_shop();
  design.bill = bill;
  WayEntry work;
  work.name = "warm all winter";
  work.floor = WayFloor::work;
  work.last_winter = last_winter;
  design.way = {work};
  const BilledShop& b = billed();
  return winter_of(
      {design, b.line.envelope, b.line.floor, b.line.places, b.line.snap, b.water, 12000.0, 60.0, {}, {}, nullptr},
      coarse_fields());
}

std::vector<std::string> implied(double share, double half_band, double ground_share) {
  BillFit fit;
  fit.loss_share = share;
  fit.loss_low_share = share - half_band, fit.loss_high_share = share + half_band;
  fit.ground_share = ground_share;
  fit.ground_low_share = ground_share - half_band, fit.ground_high_share = ground_share + half_band;
  return implied_words(fit, bare_shop());
}

}  // namespace

TEST_CASE("a winter has a fit where a bill and the way of it are known") {
  const Bill bill = bill_of(billed(), {1.4, 1.0, 0.0});
  const auto winter = winter_with(bill, true);
  REQUIRE(winter);
  REQUIRE(winter.value->fit);
  const BillFit& fit = *winter.value->fit;
  CHECK(fit.loss_low_share < 1.4);
  CHECK(fit.loss_high_share > 1.4);
  CHECK(speaks_of(fit.ridge, "fits as well"));
  CHECK(speaks_of(fit.ridge, " K cooler"));
  CHECK_FALSE(fit.implies.empty());
  CHECK_FALSE(winter_with(bill, false).value->fit);
  CHECK_FALSE(winter_with({}, true).value->fit);
  Bill few = bill;
  few.months.resize(2);
  const auto without = winter_with(few, true);
  CHECK_FALSE(without.value->fit);
  CHECK(has_code(without.said, "bill.few-months"));
}

TEST_CASE("hints stand only where the band leaves no doubt") {
  CHECK(speaks_of(implied(1.0, 0.2, 1.5), "Wet or missing foam"));
  CHECK_FALSE(speaks_of(implied(1.0, 0.6, 1.5), "foam"));
  CHECK(speaks_of(implied(1.5, 0.2, 1.0), "door that does not close"));
  CHECK_FALSE(speaks_of(implied(1.2, 0.1, 1.0), "hint"));
  CHECK(speaks_of(implied(0.6, 0.2, 1.0), "better than said"));
  CHECK(speaks_of(implied(1.0, 0.2, 1.0), "Nothing that the design"));
}

TEST_CASE("the lines to paste read back as the loss that was fitted") {
  BillFit fit;
  fit.loss_share = 1.4;
  fit.ground_share = 1.6, fit.ground_low_share = 1.2, fit.ground_high_share = 2.0;
  std::string text = "units = \"SI\"\n";
  for (const std::string& line : lines_to_paste(fit, *billed().shop, billed().range)) text += line + "\n";
  const ReadDesign read = read_design(text);
  REQUIRE(read.checked);
  const Design& design = read.checked.value->design;
  const RoomLoss& room = billed().line.envelope.room.front();
  constexpr double two_digits = 0.05;  // half a unit of the second digit
  REQUIRE(design.building.heat_loss_W);
  CHECK(*design.building.heat_loss_W == Approx(1.4 * room.loss_W).epsilon(two_digits));
  const double conducts = conducts_share(billed().range, fit.ground_share);
  CHECK(conducts > 1.6);
  CHECK(design.ground.conductivity_W_per_mK == Approx(2.0 * conducts).epsilon(two_digits));
  CHECK(design.insulation.under.resistance_m2K_per_W == Approx(1.8 / conducts).epsilon(two_digits));
  fit.ground_low_share = 0.8;  // it may be the design's
  CHECK_FALSE(speaks_of(lines_to_paste(fit, *billed().shop, billed().range), "conductivity"));
}
