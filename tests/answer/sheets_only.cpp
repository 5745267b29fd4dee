// What is worked out for sheets alone: there where sheets are asked for, nowhere else, and in agreement with the rest.
#include <cmath>

#include "slabwright/answer.hpp"
#include "slabwright/report.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

Answer asked(const std::string& name, Question question) {
  Wishes wishes;
  wishes.question = question;
  wishes.bands = false;
  wishes.sensitivities = false;
  return answer(layout(name).file, wishes);
}

}  // namespace

TEST_CASE("curves, weather, courses, series and sums are worked out for sheets alone") {
  for (const Question question : {Question::design, Question::freeze, Question::winter}) {
    const Answer other = asked("ten-lines", question);
    CHECK_FALSE(other.curves);
    CHECK_FALSE(other.by_outdoor);
    CHECK_FALSE(other.courses);
    CHECK_FALSE(other.sums);
    if (other.winter) CHECK_FALSE(other.winter->series);
  }
}

TEST_CASE("what sheets draw agrees with what they tell") {
  const Answer found = asked("frame-shop", Question::sheets);
  REQUIRE((found.curves && found.by_outdoor && found.courses && found.sums && found.winter && found.winter->series));
  const double settled_share = 2e-5;
  CHECK(found.curves->runs.system_Pa == Approx(found.point->pump_Pa).epsilon(settled_share));
  CHECK(found.curves->runs.pump_head_m == Approx(found.sizes->pump.runs_head_m).epsilon(settled_share));
  CHECK(found.curves->duty.head_m == Approx(found.sizes->pump.head_m));
  CHECK(found.by_outdoor->boiler_W == found.sizes->boiler.power_W);
  CHECK(found.by_outdoor->fitter.front().supply_degC == found.point->supply_degC);
  CHECK(found.courses->recovery.size() == found.recovery.size());
  CHECK(found.courses->setting.front().air_dial_degC == found.freeze->air->dial_degC);
  const WinterSeries& series = *found.winter->series;
  CHECK(series.air_lowest_degC >= found.freeze->air->dial_degC);
  // As it is, with a board and with foam, each without and with the second source, at three settings.
  REQUIRE(series.owner.size() == 18);
  CHECK(series.owner.front().air_degC == found.freeze->air->dial_degC);
  CHECK(series.owner[2].air_degC == found.file.design.climate.indoor_degC);
  for (std::size_t i = 0; i < 6; ++i) {
    CHECK(series.owner[i + 6].use_J < series.owner[i].use_J);
    CHECK(series.owner[i + 12].use_J < series.owner[i].use_J);
    if (i % 3 > 0) CHECK(series.owner[i].use_J > series.owner[i - 1].use_J);
    if (i >= 3) CHECK(series.owner[i].use_J < series.owner[i - 3].use_J);
  }
}

TEST_CASE("sums are those of the answer they are of") {
  const Answer found = asked("frame-shop", Question::sheets);
  const AnswerSums& sums = found.sums.value();
  int loops = 0;
  double tube_m = 0.0, flow_m3_per_s = 0.0, both_m = 0.0;
  for (const ManifoldSum& one : sums.manifold) {
    loops += one.loops;
    tube_m += one.tube_m;
    flow_m3_per_s += one.flow_m3_per_s;
    CHECK(one.ports == one.loops + one.spare);
  }
  for (const LoopSum& one : sums.loop) {
    both_m += one.leader_m + one.heating_m;
    CHECK(one.leader_m > 0.0);
    CHECK(one.drop_K > 0.0);
  }
  CHECK(loops == static_cast<int>(found.loops->loop.size()));
  CHECK(tube_m == Approx(found.loops->tube_m));
  CHECK(both_m == Approx(found.loops->tube_m));
  CHECK(flow_m3_per_s == Approx(found.point->flow_m3_per_s));
  CHECK(sums.wanted_W * (1.0 + sums.more_share.value()) == Approx(found.point->up_W));
  REQUIRE(sums.way.size() == found.winter->way.size());
  for (std::size_t i = 0; i < sums.way.size(); ++i) {
    const WayResult& way = found.winter->way[i];
    CHECK(sums.way[i].way == way.way.name);
    CHECK(sums.way[i].boiler_J + sums.way[i].source_J + sums.way[i].pump_J == Approx(way.use_J));
    CHECK(sums.way[i].saved_J.has_value() == !way.way.last_winter);
    CHECK(sums.way[i].nearest == way.place.front().name);
  }
}
