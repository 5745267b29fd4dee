// How boiler and floor are joined: what runs and mixes between them.
#include <fmt/format.h>

#include "report/text.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::report {
namespace {

// Less than this of the floor's flow is not worth a word.
constexpr double worth_a_word_share = 0.02;
// What a network solver leaves of noise.
constexpr double no_flow_m3_per_s = 1e-8;

std::string gives(const Reader& reader, const PumpState& pump) {
  const Liquid water = liquid(mixture_of(reader.design().fluid), reader.answer.point->supply_degC);
  const double head_m = pump.pressure_Pa / (water.density_kg_per_m3 * gravity_m_per_s2);
  return fmt::format("{} against {}", reader(Kind::flow, pump.flow_m3_per_s, Figure::flow),
                     against(head_m, pump.pressure_Pa, reader.system()));
}

const PumpState* pump_called(const SourceState& source, std::string_view name) {
  for (const PumpState& pump : source.pump) {
    if (pump.name == name) return &pump;
  }
  return nullptr;
}

/// The boiler's own circuit, and what its tees, separator or buffer mix.
void add_own_circuit(Page& page, const Reader& reader) {
  const OperatingPoint& point = *reader.answer.point;
  const SourceState& source = point.source;
  add_row(page, "", "boiler loop",
          fmt::format("{} at {}, back at {}", reader(Kind::flow, source.boiler_m3_per_s, Figure::flow),
                      reader(Kind::degree, source.boiler_degC, Figure::water),
                      reader(Kind::degree, source.boiler_in_degC, Figure::water)));
  if (const PumpState* pump = pump_called(source, "boiler and its pump")) {
    add_row(page, "", "", "a pump of its own that gives " + gives(reader, *pump));
  }
  if (const PumpState* pump = pump_called(source, "injection pump")) {
    add_row(page, "", "injection",
            fmt::format("a pump that gives {}; {} of the floor's water is boiler water", gives(reader, *pump),
                        reader(Kind::share, source.hot_share.value_or(1.0))));
  } else if (source.mixed_in_m3_per_s > worth_a_word_share * point.flow_m3_per_s) {
    add_row(page, "", "",
            fmt::format("the floor draws {} more, its own return: the boiler runs hotter",
                        reader(Kind::flow, source.mixed_in_m3_per_s)));
  } else if (source.straight_back_m3_per_s > worth_a_word_share * point.flow_m3_per_s) {
    add_row(page, "", "",
            reader(Kind::flow, source.straight_back_m3_per_s) + " of it goes straight back to the boiler");
  }
}

void add_mixing(Page& page, const Reader& reader) {
  const SourceState& source = reader.answer.point->source;
  add_row(
      page, "", "mixing",
      fmt::format("{} of boiler water at {} through the valve, {} of the supply; back at {}",
                  reader(Kind::flow, source.boiler_m3_per_s, Figure::flow), reader(Kind::degree, source.boiler_degC),
                  reader(Kind::share, source.hot_share.value_or(1.0), Figure::water),
                  reader(Kind::degree, source.boiler_in_degC, Figure::water)));
}

void add_control(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.balance || !answer.balance->hold_Pa) return;
  const bool constant = reader.design().pump.control == PumpMode::constant_pressure;
  const std::string holds = reader(Kind::pressure, *answer.balance->hold_Pa, Figure::pump);
  add_row(page, "", "",
          constant ? fmt::format("set it to hold {} at all flows", holds)
                   : fmt::format("set it to {} at {}, half of that at none", holds,
                                 reader(Kind::flow, *answer.balance->hold_m3_per_s)));
}

void add_shut(Page& page, const Reader& reader) {
  if (!reader.answer.shut) return;
  const OperatingPoint& shut = *reader.answer.shut;
  std::size_t open = 0;
  for (const LoopState& loop : shut.loop) open += loop.flow_m3_per_s > no_flow_m3_per_s ? 1U : 0U;
  const PumpState& pump = shut.source.pump.front();
  if (pump.flow_m3_per_s < no_flow_m3_per_s) {
    return add_row(page, "", "zones shut",
                   fmt::format("no loop open: the pump presses with {} and moves nothing",
                               reader(Kind::pressure, pump.pressure_Pa, Figure::pump)));
  }
  std::string text = open == 0 ? "no loop open" : fmt::format("{} open", several(open, "loop"));
  text += fmt::format(": the pump gives {}", gives(reader, pump));
  if (reader.design().pump.bypass_opening_Pa)
    text += fmt::format(", of which the bypass passes {}", reader(Kind::flow, shut.source.bypass_m3_per_s));
  add_row(page, "", "zones shut", text);
}

}  // namespace

void add_source(Page& page, const Reader& reader) {
  if (!reader.answer.point) return;
  add_control(page, reader);
  switch (reader.design().boiler.piping) {
    case BoilerPiping::direct: break;
    case BoilerPiping::mixing_valve: add_mixing(page, reader); break;
    case BoilerPiping::tees:
    case BoilerPiping::separator:
    case BoilerPiping::buffer:
    case BoilerPiping::injection: add_own_circuit(page, reader); break;
  }
  add_shut(page, reader);
}

}  // namespace slabwright::report
