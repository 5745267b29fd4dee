// Loops, pump, valves, fluid, temperatures and pressures.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "design/judge.hpp"
#include "slabwright/tube.hpp"

namespace slabwright {
namespace {

using measured::degree;
using measured::length;

std::string called(const std::string& name, std::string_view section, std::size_t i) {
  return name.empty() ? fmt::format("{} {}", section, i + 1) : fmt::format("{} \"{}\"", section, excerpt(name));
}

void judge_lengths(Judge& judge) {
  const Design& design = judge.design;
  if (!design.tube.longest_loop_m || !judge.sound({"tube.size", "tube.longest_loop"})) return;
  for (std::size_t i = 0; i < design.loop.size(); ++i) {
    const LoopEntry& loop = design.loop[i];
    const std::string path = fmt::format("loop[{}].length", i + 1);
    if (!loop.path.empty()) continue;
    if (!judge.sound({path, fmt::format("loop[{}].leaders", i + 1)})) continue;
    const double leaders_m = loop.leaders && !loop.leaders->included ? 2.0 * loop.leaders->each_way_m : 0.0;
    if (loop.length_m + leaders_m <= *design.tube.longest_loop_m) continue;
    judge.problem(path, "loop.too-long",
                  fmt::format("{} is {{}} long{}; the limit for {} tube is {{}}.", called(loop.name, "loop", i),
                              leaders_m > 0.0 ? " with its leaders" : "", design.tube.size.name),
                  {length(loop.length_m + leaders_m), length(*design.tube.longest_loop_m)});
  }
}

void judge_ports(Judge& judge) {
  const Design& design = judge.design;
  for (std::size_t m = 0; m < design.manifold.size(); ++m) {
    const Manifold& manifold = design.manifold[m];
    const std::string row = fmt::format("manifold[{}]", m + 1);
    for (const auto& [count, word] : {std::pair{manifold.loops_number, "loops"}, {manifold.ports_number, "ports"}}) {
      if (!count || *count == std::floor(*count)) continue;
      judge.problem(row + "." + word, "manifold.part", fmt::format("{} takes a whole number.", word));
    }
    const auto leaves = std::count_if(design.loop.begin(), design.loop.end(), [&](const LoopEntry& loop) {
      return loop.manifold.empty() ? m == 0 : loop.manifold == manifold.name;
    });
    const double given = static_cast<double>(leaves);
    const bool more = design.tube.lay_rest && manifold.loops_number && *manifold.loops_number > given;
    if (manifold.loops_number && leaves > 0 && *manifold.loops_number != given && !more) {
      judge.problem(
          row + ".loops", "manifold.loops",
          fmt::format("loops says {}, and the file has {} [[loop]]: leave loops out.", *manifold.loops_number, leaves));
      continue;
    }
    const double loops = std::max(given, manifold.loops_number.value_or(0.0));
    if (!manifold.ports_number || loops <= *manifold.ports_number) continue;
    judge.problem(row + ".ports", "manifold.ports",
                  fmt::format("{} has {} ports, and {} loops leave it: no port is left for {} of them.",
                              called(manifold.name, "manifold", m), *manifold.ports_number, loops,
                              loops - *manifold.ports_number));
  }
}

void judge_curve(Judge& judge, const std::string& path, const std::vector<PumpCurvePoint>& points) {
  if (!judge.given(path)) return;
  if (points.size() < 2) return judge.problem(path, "pump.points", "a pump's curve takes two points or more.");
  for (std::size_t i = 1; i < points.size(); ++i) {
    const bool falls = points[i].head_m < points[i - 1].head_m;
    const bool grows = points[i].flow_m3_per_s > points[i - 1].flow_m3_per_s;
    if (falls && grows) continue;
    const System units = judge.design.units;
    return judge.problem(path, "pump.rising",
                         fmt::format("the curve rises from \"{}\" to \"{}\": a pump's head falls as its flow grows. "
                                     "Highest head first.",
                                     write_words(points[i - 1], units), write_words(points[i], units)));
  }
}

void judge_pump(Judge& judge) {
  judge_curve(judge, "pump.points", judge.design.pump.points);
  judge_curve(judge, "pump.second_points", judge.design.pump.second_points);
  judge_curve(judge, "boiler.pump_points", judge.design.boiler.pump_points);
}

/// Keys that only mean something beside another.
void judge_piping(Judge& judge) {
  const Design& design = judge.design;
  const BoilerPiping piping = design.boiler.piping;
  const bool own_circuit = piping != BoilerPiping::direct && piping != BoilerPiping::mixing_valve;
  const auto needs = [&](bool has, const char* path, const char* sentence) {
    if (!has && judge.given(path) && judge.sound({"boiler.piping", path}))
      judge.problem(path, "piping.alone", sentence);
  };
  constexpr const char* no_circuit =
      "the boiler has no circuit of its own: write piping = \"closely spaced tees\", \"separator\", \"buffer\" or "
      "\"injection\", or leave this out.";
  needs(own_circuit, "boiler.flow", no_circuit);
  needs(own_circuit, "boiler.pump_points", no_circuit);
  needs(piping == BoilerPiping::buffer, "boiler.buffer",
        "there is no buffer: write piping = \"buffer\", or leave this out.");
  needs(design.pump.bypass_opening_Pa.has_value(), "pump.bypass_coefficient",
        "there is no bypass: write bypass_opening = \"3 psi\", or leave this out.");
  needs(design.pump.pumps > 1, "pump.together", "there is one pump: write pumps = 2, or leave this out.");
  needs(design.pump.pumps > 1, "pump.second_points", "there is one pump: write pumps = 2, or leave this out.");
  needs(design.mains.return_way != ReturnWay::each_its_own, "mains.between",
        "each manifold has mains of its own: write return_way = \"direct\" or \"reverse\", or leave this out.");
}

void judge_valve(Judge& judge) {
  const auto& points = judge.design.valve.points;
  if (!judge.given("valve.points")) return;
  if (points.size() < 2)
    return judge.problem("valve.points", "valve.points", "a valve's table takes two points or more.");
  for (std::size_t i = 1; i < points.size(); ++i) {
    const bool opens = points[i].open_turns > points[i - 1].open_turns;
    if (opens && points[i].coefficient_kv > points[i - 1].coefficient_kv) continue;
    const System units = judge.design.units;
    return judge.problem("valve.points", "valve.falling",
                         fmt::format("the table falls from \"{}\" to \"{}\": a valve opens with its turns. Fewest "
                                     "turns first.",
                                     write_words(points[i - 1], units), write_words(points[i], units)));
  }
}

void judge_stages(Judge& judge) {
  const std::optional<double>& stages = judge.design.boiler.stages_number;
  if (stages && *stages != std::floor(*stages))
    judge.problem("boiler.stages", "boiler.part", "stages takes a whole number.");
}

std::string percent(double share) { return fmt::format("{:.3g} %", 100.0 * share); }

void judge_fluid(Judge& judge) {
  const FluidEntry& fluid = judge.design.fluid;
  if (!judge.sound({"fluid.kind", "fluid.glycol"}) || fluid.glycol.share <= 0.0) return;
  const std::string about = judge.given("fluid.glycol") ? "fluid.glycol" : "fluid.kind";
  const std::string written = write_words(fluid.glycol, judge.design.units);
  if (fluid.kind == FluidKind::water) {
    return judge.problem(about, "fluid.water",
                         fmt::format("kind is water, yet glycol is {}. Write kind = \"propylene glycol\", or leave "
                                     "glycol out.",
                                     written));
  }
  const double share = mixture_of(fluid).glycol_volume_share;
  const std::string in_volume = fluid.glycol.by_mass ? fmt::format(" ({} by volume)", percent(share)) : "";
  if (share < least_glycol_share) {
    judge.problem(
        about, "fluid.weak",
        fmt::format("{} glycol{} is too weak: its inhibitor does not protect and it feeds growth. Write {} or "
                    "more, or use water.",
                    written, in_volume, percent(sound_glycol_share)));
  } else if (share > most_glycol_share) {
    judge.problem(
        about, "fluid.strong",
        fmt::format("{} glycol{} is too much: at most {} by volume.", written, in_volume, percent(most_glycol_share)));
  } else if (share < sound_glycol_share) {
    judge.warning(about, "fluid.weak",
                  fmt::format("{} glycol{} is on the weak side: {} or more keeps its inhibitor at work", written,
                              in_volume, percent(sound_glycol_share)));
  }
}

void judge_service(Judge& judge) {
  if (judge.design.service.phases == 2) judge.problem("service.phases", "service.phases", "phases is 1 or 3, not 2.");
  const Pressure& pressure = judge.design.pressure;
  if (pressure.fill_Pa < pressure.relief_Pa || !judge.sound({"pressure.fill", "pressure.relief"})) return;
  judge.problem(judge.given("pressure.fill") ? "pressure.fill" : "pressure.relief", "pressure.order",
                "fill {} is not below relief {}: the relief valve would stand open.",
                {Measured{pressure.fill_Pa, Dimension::pressure}, Measured{pressure.relief_Pa, Dimension::pressure}});
}

void judge_water(Judge& judge) {
  const Design& design = judge.design;
  if (design.boiler.hottest_degC > design.climate.indoor_degC) return;
  if (!judge.sound({"boiler.hottest", "climate.indoor"})) return;
  judge.problem("boiler.hottest", "boiler.hottest", "the hottest water, {}, is no warmer than indoors, {}.",
                {degree(design.boiler.hottest_degC), degree(design.climate.indoor_degC)});
}

void judge_indoor(Judge& judge, const std::string& path, double indoor_degC) {
  const double outdoor_degC = *judge.design.climate.outdoor_degC;
  if (outdoor_degC < indoor_degC || !judge.sound({path})) return;
  judge.problem(judge.given(path) ? path : "climate.outdoor", "climate.crossed",
                "outdoor is warmer than indoor: {} outside, {} inside.", {degree(outdoor_degC), degree(indoor_degC)});
}

/// Tube is laid round loops only where it is known where they lie.
void judge_rest(Judge& judge) {
  const Design& design = judge.design;
  if (!design.tube.lay_rest || !judge.sound({"tube.lay_rest"})) return;
  if (design.loop.empty()) {
    judge.problem("tube.lay_rest", "loops.no-rest",
                  "all floor is laid where no loop is listed: remove lay_rest, or list the loops that stay, each with "
                  "its path.");
  }
  for (std::size_t i = 0; i < design.loop.size(); ++i) {
    const std::string row = fmt::format("loop[{}]", i + 1);
    if (judge.given(row + ".path") || !judge.given(row + ".length") || !judge.sound({row + ".path"})) continue;
    judge.problem(row + ".length", "loops.rest-unknown",
                  fmt::format("nobody knows where {} lies, so the rest of the floor cannot be laid round it: write its "
                              "path in place of length, or remove lay_rest.",
                              called(design.loop[i].name, "loop", i)));
  }
  for (std::size_t m = 0; m < design.manifold.size() && !design.loop.empty(); ++m) {
    const std::string row = fmt::format("manifold[{}]", m + 1);
    if (judge.given(row + ".place") || !judge.sound({row + ".place"})) continue;
    judge.problem(judge.given(row + ".name") ? row + ".name" : "tube.lay_rest", "loops.rest-no-place",
                  fmt::format("to lay the rest of the floor, {} takes a place: place = \"{}\".",
                              called(design.manifold[m].name, "manifold", m), Place::example));
  }
}

}  // namespace

void judge_loops(Judge& judge) {
  judge_lengths(judge);
  judge_rest(judge);
  judge_ports(judge);
  judge_stages(judge);
}

void judge_plant(Judge& judge) {
  judge_pump(judge);
  judge_piping(judge);
  judge_valve(judge);
  judge_fluid(judge);
  judge_service(judge);
  judge_water(judge);
}

void judge_site(Judge& judge) {
  const Design& design = judge.design;
  const Climate& climate = design.climate;
  if (climate.outdoor_degC && judge.sound({"climate.outdoor"})) {
    judge_indoor(judge, "climate.indoor", climate.indoor_degC);
    for (std::size_t i = 0; i < design.room.size(); ++i) {
      if (design.room[i].indoor_degC)
        judge_indoor(judge, fmt::format("room[{}].indoor", i + 1), *design.room[i].indoor_degC);
    }
    if (judge.given("climate.coldest") && *climate.coldest_degC > *climate.outdoor_degC) {
      judge.problem("climate.coldest", "climate.coldest",
                    "coldest {} is warmer than outdoor {}: the coldest hour in 20 years is the colder one.",
                    {degree(*climate.coldest_degC), degree(*climate.outdoor_degC)});
    }
  }
  const auto big = [](const Opening& opening) { return opening.kind == OpeningKind::big_door; };
  if (!design.building.big_door && std::any_of(design.opening.begin(), design.opening.end(), big)) {
    judge.problem("building.big_door", "building.big-door",
                  "big_door is false, yet an opening is a big door: remove one.");
  }
}

}  // namespace slabwright
