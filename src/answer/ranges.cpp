// The range of three of a building that nobody has described.
#include <array>

#include "answer/pass.hpp"

namespace slabwright {
namespace {

constexpr std::array<std::string_view, 3> qualities{"tight", "usual", "poor"};

/// One number of the three answers, where all three have it.
template <class Number>
std::optional<Three> three(const std::array<Answer, 3>& answers, Number number) {
  std::array<std::optional<double>, 3> values;
  for (std::size_t i = 0; i < 3; ++i) values[i] = number(answers[i]);
  if (!values[0] || !values[1] || !values[2]) return std::nullopt;
  return Three{*values[0], *values[1], *values[2]};
}

/// Heat loss grows in proportion to the difference of temperature; gains and ground move little beside it.
std::optional<double> fails_below(const Answer& poor, double power_W, double indoor_degC) {
  if (!poor.sizes || !poor.envelope || poor.sizes->boiler.floor_W <= power_W) return std::nullopt;
  const double rise_K = indoor_degC - poor.envelope->outdoor_degC;
  return indoor_degC - rise_K * power_W / poor.sizes->boiler.floor_W;
}

}  // namespace

void add_ranges(Answer& answer, Passing& passing) {
  if (!answer.envelope || answer.file.design.building.described || answer.file.design.building.heat_loss_W) return;
  std::array<Answer, 3> answers;
  for (std::size_t i = 0; i < 3; ++i) {
    const auto file = with_key(answer.file, "building.quality", qualities[i]);
    if (!file) return;
    answers[i] = pass(*file, answer.wishes.question, passing, Reach::no_site);
  }
  answer.loss_W = three(
      answers, [](const Answer& a) { return a.envelope ? std::optional<double>(a.envelope->loss_W) : std::nullopt; });
  answer.boiler_W = three(answers, [](const Answer& a) {
    return a.sizes ? std::optional<double>(a.sizes->boiler.wanted_W) : std::nullopt;
  });
  answer.supply_degC = three(
      answers, [](const Answer& a) { return a.point ? std::optional<double>(a.point->supply_degC) : std::nullopt; });
  answer.slab_dial_degC = three(answers, [](const Answer& a) { return found_dial_degC(a.freeze, &Freeze::slab); });
  answer.air_dial_degC = three(answers, [](const Answer& a) { return found_dial_degC(a.freeze, &Freeze::air); });
  if (answer.sizes) {
    answer.poor_fails_degC =
        fails_below(answers[2], answer.sizes->boiler.power_W, answer.file.design.climate.indoor_degC);
  }
}

}  // namespace slabwright
