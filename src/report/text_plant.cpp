// The plant: every figure of pump, boiler, start, tank and service, and how each loop is freed of air.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "slabwright/units_exact.hpp"

#include "report/text.hpp"

namespace slabwright::report {
namespace {

void row(Table& table, std::string_view about, std::string text) {
  table.rows.push_back({std::string(about), std::move(text)});
}

std::string laminar_words(double share) {
  if (share <= 0.0) return {};
  return share >= 1.0 ? "; all loops laminar" : fmt::format("; {:.0f} % of the loops laminar", 100.0 * share);
}

void add_pump(Table& table, const Reader& reader) {
  const PumpSize& pump = reader.answer.sizes->pump;
  const double runs_Pa = reader.answer.point ? reader.answer.point->pump_Pa : 0.0;
  row(table, "pump tried",
      fmt::format("{}; runs at {} against {}, gives the water {:.1f} W", pump.tried_on,
                  reader(Kind::flow, pump.runs_m3_per_s), against(pump.runs_head_m, runs_Pa, reader.system()),
                  pump.hydraulic_W));
  row(table, "",
      fmt::format("its curve ends at {:.1f} times that flow; all loops' heads added up would be {}, which is not "
                  "what a pump is bought by",
                  1.0 / pump.runs_share, reader(Kind::head, pump.added_head_m)));
  row(table, "pump power",
      fmt::format("{:.0f} W from the wall at {} efficiency, {:.0f} kWh in a winter of {:.0f} h", pump.electric_W,
                  reader(Kind::share, reader.design().pump.efficiency_share), pump.season_J / 3.6e6,
                  reader.design().pump.season_s / hour_s));
  row(table, "suction",
      fmt::format("{} of suction head (NPSH) at its inlet, water at {}", reader(Kind::head, pump.suction_m),
                  reader(Kind::degree, reader.design().boiler.hottest_degC)));
}

/// How its stages run when little heat is taken.
std::string stages_words(const Reader& reader) {
  const BoilerCycle& cycle = reader.answer.sizes->cycle;
  std::string words = fmt::format("{} of {}; in mild weather, {} taken, ", cycle.stages_number,
                                  reader(Kind::boiler, cycle.stage_W), reader(Kind::boiler, cycle.taken_W));
  if (!cycle.on_s) return words + "one stays on for as long as heat is called for";
  words += fmt::format("one runs for {} at a time", minutes_words(*cycle.on_s));
  words += cycle.off_s ? fmt::format(" and rests for {}", minutes_words(*cycle.off_s))
                       : ", then rests until the slab has cooled";
  if (cycle.buffer_m3 > 0.0)
    return words + fmt::format("; {} would be good for it: a buffer tank of {}", minutes_words(cycle.least_on_s),
                               reader(Kind::volume, cycle.buffer_m3));
  return words;
}

void add_boiler(Table& table, const Reader& reader) {
  const BoilerSize& boiler = reader.answer.sizes->boiler;
  row(table, "boiler",
      fmt::format("floor {}, for warming up {}, wanted {}, taken {}", reader(Kind::boiler, boiler.floor_W),
                  reader(Kind::boiler, boiler.pickup_W), reader(Kind::boiler, boiler.wanted_W),
                  reader(Kind::boiler, boiler.power_W)));
  row(table, "boiler flow",
      fmt::format("at least {}, {}", reader(Kind::flow, boiler.least_flow_m3_per_s),
                  boiler.flow_enough ? "which it gets" : "which it does not get"));
  row(table, "stages", stages_words(reader));
  row(table, "cold start", start_words(reader, reader.answer.sizes->start));
  if (boiler.mains_loss_W > 0.0) row(table, "mains", "lose " + reader(Kind::heat, boiler.mains_loss_W) + " outside");
}

void add_water(Table& table, const Reader& reader) {
  const TankSize& tank = reader.answer.sizes->tank;
  row(table, "content",
      fmt::format("{} in all, {} of growth from {} to {}", reader(Kind::volume, tank.fluid_m3),
                  reader(Kind::volume, tank.expansion_m3), reader(Kind::degree, tank.coldest_degC),
                  reader(Kind::degree, tank.hottest_degC)));
  row(table, "pressure",
      fmt::format("the tank's air at {} before it is connected; fill to {} at {}; at the coldest {} stay "
                  "at the tank and {} at the highest pipe; hot at most {}",
                  reader(Kind::gauge, tank.fill_Pa), reader(Kind::gauge, tank.start_Pa),
                  reader(Kind::degree, tank.start_degC), reader(Kind::gauge, tank.fill_Pa),
                  reader(Kind::gauge, tank.top_Pa), reader(Kind::gauge, tank.most_Pa)));
  row(table, "relief",
      fmt::format("opens at {}, rated for {} or more", reader(Kind::gauge, reader.design().pressure.relief_Pa),
                  reader(Kind::heat, tank.relief_W)));
}

void add_supply(Table& table, const Reader& reader) {
  const ElectricSize& electric = reader.answer.sizes->electric;
  if (electric.device_A) {
    row(table, "supply",
        fmt::format("next standard protective device {}, for planning only; the electrician decides",
                    reader(Kind::current, *electric.device_A)));
  }
  if (electric.together_A) {
    std::string words = reader(Kind::current, *electric.together_A) + " with the second source and all else at once";
    if (electric.one_heats_A)
      words += fmt::format(", {} where an interlock lets only one of both heat",
                           reader(Kind::current, *electric.one_heats_A));
    if (electric.main_breaker_A)
      words += fmt::format("; main breaker {}, room beside the rest for {} of {} boiler stages",
                           reader(Kind::current, *electric.main_breaker_A), electric.room_stages_number,
                           electric.stages_number);
    row(table, "together", std::move(words));
  }
  if (electric.free_A) {
    row(table, "service",
        fmt::format("{} free, which {}", reader(Kind::current, *electric.free_A),
                    electric.fits ? "is enough" : "is not enough"));
  }
}

/// One port at a time: what flow, for how long, and what the hose must push.
void add_purge(Page& page, const Reader& reader) {
  const System system = reader.system();
  Table table{{left_column("loop"),
               {"port"},
               in("flow", Kind::flow, system),
               in("never below", Kind::flow, system),
               {"minutes"},
               in("hose pressure", Kind::gauge, system)},
              {},
              0};
  for (const Purge& purge : reader.answer.sizes->purge) {
    table.rows.push_back({purge.loop, fmt::format("{}", purge.port), bare(Kind::flow, purge.flow_m3_per_s, system),
                          bare(Kind::flow, purge.least_m3_per_s, system), fmt::format("{:.1f}", purge.for_s / 60.0),
                          bare(Kind::gauge, purge.loss_Pa, system)});
  }
  add_section(page, "AIR OUT, one loop at a time with all others shut, its water changed twice", table);
  const auto& all = reader.answer.sizes->purge;
  const double most_Pa = reader.answer.sizes->tank.most_Pa;
  if (std::none_of(all.begin(), all.end(), [&](const Purge& purge) { return purge.loss_Pa > most_Pa; })) return;
  page.lines.pop_back();
  add_text(page, "Shut the boiler off from the manifold first: the hose pushes harder than its relief valve holds.",
           "  ");
  add_blank(page);
}

}  // namespace

std::string minutes_words(double s) {
  if (s >= 1.5 * hour_s) return fmt::format("{:.1f} h", s / hour_s);
  return fmt::format("{:.{}f} min", s / minute_s, s < 10.0 * minute_s ? 1 : 0);
}

std::string start_words(const Reader& reader, const StartUp& start) {
  if (start.frozen) return "not at " + reader(Kind::degree, start.water_degC) + ": it freezes in the tubes";
  constexpr double as_usual_share = 0.98;
  const std::string share =
      start.flow_share >= as_usual_share ? "about" : reader(Kind::share, start.flow_share) + " of";
  std::string words = fmt::format("at {} {} moves, {} the usual flow", reader(Kind::degree, start.water_degC),
                                  reader(Kind::flow, start.flow_m3_per_s), share);
  words += laminar_words(start.laminar_share);
  if (!start.until_flow_s) return words + "; the usual flow is not reached";
  if (*start.until_flow_s <= 0.0) return words;
  return words + fmt::format("; the usual flow after {}", minutes_words(*start.until_flow_s));
}

void add_plant_full(Page& page, const Reader& reader) {
  if (!reader.answer.sizes) return;
  Table table{{left_column(""), left_column("")}, {}, 1};
  add_pump(table, reader);
  add_boiler(table, reader);
  add_water(table, reader);
  add_supply(table, reader);
  add_section(page, "PLANT", table);
  add_purge(page, reader);
}

}  // namespace slabwright::report
