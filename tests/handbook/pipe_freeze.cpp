// Standing water in a pipe: limits, balances and broken contracts.
#include <numbers>
#include <stdexcept>

#include "slabwright/handbook_pipe_freeze.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

const StandingPipe lagged{0.0525, 0.0603, std::nullopt, 0.038, 0.0433, std::nullopt};
const StandingPipe bare{0.0121, 0.0159, 0.375, 0.0, 0.0, 9.4};

}  // namespace

TEST_CASE("water that cannot freeze never does, and water at its freezing point is there already") {
  CHECK_FALSE(time_to_freezing_s(lagged, 5.0, 0.0));
  CHECK_FALSE(time_to_freezing_s(lagged, 5.0, 3.0));
  CHECK_FALSE(time_to_ice_s(lagged, 0.0));
  CHECK(time_to_freezing_s(lagged, 0.0, -5.0).value() == 0.0);
  CHECK(time_to_freezing_s(lagged, -1.0, -5.0).value() == 0.0);
  FreezingWater mixture;
  mixture.freezes_degC = -12.8;
  CHECK_FALSE(time_to_freezing_s(lagged, 5.0, -12.0, mixture));
  CHECK(time_to_freezing_s(lagged, 5.0, -20.0, mixture).value() > time_to_freezing_s(lagged, 5.0, -20.0).value());
}

TEST_CASE("two stretches of cooling are one, and air just below freezing takes long") {
  FreezingWater to_3;
  to_3.freezes_degC = 3.0;
  const double whole = time_to_freezing_s(bare, 8.0, -10.0).value();
  const double first = time_to_freezing_s(bare, 8.0, -10.0, to_3).value();
  CHECK(first + time_to_freezing_s(bare, 3.0, -10.0).value() == Approx(whole).epsilon(1e-12));
  CHECK(time_to_freezing_s(bare, 8.0, -0.01).value() > 4.0 * whole);
  CHECK(time_to_ice_s(bare, -5.0).value() == Approx(2.0 * time_to_ice_s(bare, -10.0).value()).epsilon(1e-12));
}

TEST_CASE("each layer in the way adds, and one far too thin adds nothing") {
  StandingPipe pipe = lagged;
  const double without = standing_pipe_mK_per_W(pipe);
  pipe.film_W_per_m2K = 9.4;
  CHECK(standing_pipe_mK_per_W(pipe) == Approx(without + 1.0 / (std::numbers::pi * 0.1363 * 9.4)).epsilon(1e-12));
  pipe.wall_W_per_mK = 1e9;
  pipe.film_W_per_m2K = 1e9;
  CHECK(standing_pipe_mK_per_W(pipe) == Approx(without).epsilon(1e-6));
}

TEST_CASE("no pipe, and nothing in the way, are bugs") {
  CHECK_THROWS_AS(standing_pipe_mK_per_W({0.02, 0.02, 0.4, 0.0, 0.0, 9.0}), std::logic_error);
  CHECK_THROWS_AS(standing_pipe_mK_per_W({0.0, 0.02, 0.4, 0.0, 0.0, 9.0}), std::logic_error);
  CHECK_THROWS_AS(standing_pipe_mK_per_W({0.02, 0.03, std::nullopt, 0.0, 0.0, std::nullopt}), std::logic_error);
  CHECK_THROWS_AS(standing_pipe_mK_per_W({0.02, 0.03, std::nullopt, 0.01, 0.0, 9.0}), std::logic_error);
  CHECK_THROWS_AS(standing_pipe_mK_per_W({0.02, 0.03, std::nullopt, -0.01, 0.04, 9.0}), std::logic_error);
  CHECK_THROWS_AS(standing_pipe_mK_per_W({0.02, 0.03, 0.0, 0.0, 0.0, 9.0}), std::logic_error);
  CHECK_THROWS_AS(standing_pipe_mK_per_W({0.02, 0.03, 0.4, 0.0, 0.0, 0.0}), std::logic_error);
  FreezingWater nothing;
  nothing.kg_per_m3 = 0.0;
  CHECK_THROWS_AS(time_to_freezing_s(bare, 5.0, -5.0, nothing), std::logic_error);
}
