// Pump curves: their points met, no rise let in, their ends said.
#include <cmath>
#include <limits>

#include "networks.hpp"
#include "support/catch.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

PumpPoint point(double m3_per_h, double head_m) { return {m3_per_h / per_hour, head_m}; }

double head(const PumpCurve& curve, double m3_per_h) { return head_at(Pump{curve}, m3_per_h / per_hour).head_m; }

std::string code(const std::vector<Diagnostic>& said) { return said.empty() ? "" : said.front().code; }

PumpCurve random_curve() {
  if (*rc::gen::inRange(0, 2) == 0) return PumpLaw{drawn(1.0, 9.0), drawn(1.0, 6.0) / per_hour, drawn(1.0, 4.0)};
  std::vector<PumpPoint> points{point(0.0, drawn(4.0, 9.0))};
  const int rows = *rc::gen::inRange(2, 7);
  for (int i = 1; i < rows; ++i) {
    const PumpPoint last = points.back();
    points.push_back({last.flow_m3_per_s + drawn(0.2, 1.0) / per_hour, last.head_m * drawn(0.3, 1.0)});
  }
  return *pump_table(points).value;
}

}  // namespace

TEST_CASE("a pump law gives its two heads") {
  const PumpLaw law{6.0, 3.5 / per_hour, 2.0};
  CHECK(head(law, 0.0) == 6.0);
  CHECK(head(law, 3.5) == Approx(0.0).margin(1e-15));
  CHECK(head(law, 1.75) == Approx(4.5));
}

TEST_CASE("a law through three points meets all three") {
  const std::vector<PumpPoint> points{point(0.0, 7.0), point(1.2, 5.5), point(2.9, 1.0)};
  const Checked<PumpLaw> law = pump_law_through(points[0], points[1], points[2]);
  REQUIRE(law);
  for (const PumpPoint& p : points) CHECK(head(*law.value, p.flow_m3_per_s * per_hour) == Approx(p.head_m));
}

TEST_CASE("three points in a straight line make a straight line") {
  const Checked<PumpLaw> law = pump_law_through(point(0.0, 6.0), point(1.0, 4.0), point(2.0, 2.0));
  REQUIRE(law);
  CHECK(law.value->exponent == 1.0);
  CHECK(head(*law.value, 0.5) == Approx(5.0));
}

TEST_CASE("a table is met point by point, and level stretches are let in") {
  const Checked<PumpTable> table = pump_table({point(0.0, 5.0), point(1.0, 5.0), point(2.0, 3.0), point(3.0, 0.0)});
  REQUIRE(table);
  CHECK(head(*table.value, 0.5) == 5.0);
  CHECK(head(*table.value, 2.0) == 3.0);
  CHECK(range_m3_per_s(Pump{*table.value}) == 3.0 / per_hour);
}

TEST_CASE("a curve that rises is refused, with the reason") {
  const Checked<PumpTable> table = pump_table({point(0.0, 5.0), point(1.0, 5.2), point(2.0, 3.0)});
  CHECK_FALSE(table);
  CHECK(code(table.said) == "pump.curve.rising");
  REQUIRE(table.said.front().parts.size() == 4);
  CHECK(std::get<Measured>(table.said.front().parts[2]) == Measured{5.2, Dimension::head});
  CHECK(code(pump_law_through(point(0.0, 5.0), point(1.0, 5.2), point(2.0, 3.0)).said) == "pump.curve.rising");
}

TEST_CASE("what is no curve is refused") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK(code(pump_table({point(0.0, 5.0)}).said) == "pump.curve.short");
  CHECK(code(pump_table({point(1.0, 5.0), point(0.5, 4.0)}).said) == "pump.curve.order");
  CHECK(code(pump_table({point(0.0, 5.0), point(1.0, -1.0)}).said) == "pump.curve.order");
  CHECK(code(pump_table({point(0.0, nan), point(1.0, 1.0)}).said) == "pump.curve.order");
  CHECK(code(pump_table({point(0.0, 0.0), point(1.0, 0.0)}).said) == "pump.curve.no-head");
  CHECK(code(pump_law_through(point(0.1, 5.0), point(1.0, 4.0), point(2.0, 1.0)).said) == "pump.curve.start");
  CHECK(code(pump_law_through(point(0.0, 5.0), point(1.0, 5.0), point(2.0, 1.0)).said) == "pump.curve.level");
  CHECK(code(pump_law_through(point(0.0, 5.0), point(1.0, 2.0), point(2.0, 1.0)).said) == "pump.curve.steep-start");
}

TEST_CASE("a head never rises with the flow, inside its curve or beyond it") {
  CHECK(rc::check("falling", [] {
    const Pump pump{random_curve(), drawn(0.4, 1.2)};
    const double range = range_m3_per_s(pump);
    PumpHead last = head_at(pump, -0.2 * range);
    for (double share = -0.19; share < 1.5; share += 0.01) {
      const PumpHead now = head_at(pump, share * range);
      RC_ASSERT(now.head_m <= last.head_m);
      RC_ASSERT(now.slope_s_per_m2 <= 1e-9);
      last = now;
    }
  }));
}

TEST_CASE("beyond its curve a pump says so") {
  CHECK(rc::check("outside", [] {
    const Pump pump{random_curve(), drawn(0.4, 1.2)};
    const double range = range_m3_per_s(pump);
    RC_ASSERT(!head_at(pump, drawn(0.0, 0.999) * range).outside);
    RC_ASSERT(head_at(pump, drawn(1.001, 2.0) * range).outside);
    RC_ASSERT(head_at(pump, -drawn(0.001, 1.0) * range).outside);
    RC_ASSERT(head_at(pump, -0.0101 * range).head_m >= 2.0 * head_at(pump, 0.0).head_m);
  }));
}

TEST_CASE("speed: flow goes with it, head with its square, power with its cube") {
  CHECK(rc::check("affinity", [] {
    const PumpCurve curve = random_curve();
    const double n = drawn(0.3, 1.5), flow = drawn(0.0, 0.95) * range_m3_per_s(Pump{curve});
    const double full = head_at(Pump{curve}, flow).head_m, slow = head_at(Pump{curve, n}, n * flow).head_m;
    RC_ASSERT(std::abs(slow - n * n * full) <= 1e-12 * (1.0 + full));
    const double power = hydraulic_power_W(flow, full), less = hydraulic_power_W(n * flow, slow);
    RC_ASSERT(std::abs(less - n * n * n * power) <= 1e-12 * (1.0 + power));
  }));
}

TEST_CASE("a pump that stands still or a flow that is no number is a bug") {
  CHECK_THROWS(head_at(Pump{PumpLaw{6.0, 1e-3, 2.0}, 0.0}, 0.0));
  CHECK_THROWS(head_at(Pump{PumpLaw{6.0, 1e-3, 2.0}}, std::numeric_limits<double>::quiet_NaN()));
}
