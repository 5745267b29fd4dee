// The electrician's sheet: what the floor wants of the service, and what is left to a licensed person.
#include "sheets/phrases.hpp"

namespace slabwright::sheets {
namespace {

const ElectricSize& electric_of(const Source& source) { return source.answer.sizes->electric; }

Markup demand_words(const Source& source) {
  const Quotes& q = source.q;
  if (!electric_of(source).demand_A)
    return prose("no allowance for hours of load is added here: the code family of the file names none");
  return say(q.figure("sizes.electric.demand_A", Kind::current, Lean::power), " or more, which is ",
             q.figure("sizes.electric.demand_share", Kind::share), " of it (codes: ", q.words("design.codes"),
             "; a load that runs for hours)");
}

Markup boiler_words_of(const Source& source) {
  const BoilerSize& boiler = source.answer.sizes->boiler;
  return say(source.q.figure("sizes.electric.power_W", Kind::boiler, Lean::boiler),
             boiler.kind == BoilerKind::tank_heater ? ", tank heater"
             : boiler.kind == BoilerKind::none      ? ", electric, to come later: leave room for it"
                                                    : ", electric",
             boiler.from_file ? ", chosen by the owner" : ", to be bought");
}

Markup load_section(const Source& source) {
  const Quotes& q = source.q;
  const ElectricSize& electric = electric_of(source);
  std::vector<Fact> rows;
  rows.push_back({prose("Boiler"), boiler_words_of(source)});
  rows.push_back({prose("Elements and stages"), say(q.figure("sizes.cycle.stages_number", Kind::count), " of ",
                                                    q.figure("sizes.cycle.stage_W", Kind::boiler),
                                                    ", switched one after "
                                                    "the other")});
  rows.push_back({prose("Supply"), say(q.figure("sizes.electric.voltage_V", Kind::voltage),
                                       electric.phases == 3 ? " between phases, three phases" : ", one phase")});
  rows.push_back({prose("Current"), say(q.figure("sizes.electric.current_A", Kind::current, Lean::power),
                                        electric.phases == 3 ? " on each phase" : "")});
  rows.push_back({prose("Wire and breaker for"), demand_words(source)});
  if (electric.device_A)
    rows.push_back({prose("Next standard device"),
                    say(q.figure("sizes.electric.device_A", Kind::current), ", for planning only")});
  if (q.has("sizes.pump.electric_W"))
    rows.push_back({prose("Circulating pump"), say(q.figure("sizes.pump.electric_W", Kind::watts, Lean::pump),
                                                   " as it runs, on a circuit that a generator can carry")});
  return section("The load", facts(rows));
}

Markup free_words(const Source& source) {
  return say(source.q.figure("sizes.electric.free_A", Kind::current),
             electric_of(source).fits ? ", which is enough" : ", which is NOT enough");
}

/// Boiler and second source never together.
Markup interlock_words(const Source& source) {
  if (!electric_of(source).one_heats_A) return blank();
  return say(source.q.figure("sizes.electric.one_heats_A", Kind::current),
             ": boiler and second source never heat together");
}

Markup service_section(const Source& source) {
  const Quotes& q = source.q;
  const ElectricSize& electric = electric_of(source);
  std::vector<Fact> rows;
  rows.push_back({prose("Free for the boiler"), electric.free_A ? free_words(source) : blank()});
  rows.push_back({prose("Main breaker"), electric.main_breaker_A
                                             ? quoted(q.figure("sizes.electric.main_breaker_A", Kind::current))
                                             : blank()});
  rows.push_back({prose("Everything at once"),
                  electric.together_A ? quoted(q.figure("sizes.electric.together_A", Kind::current)) : blank()});
  if (source.answer.file.design.second_source.kind != SecondSourceKind::none)
    rows.push_back({prose("With an interlock"), interlock_words(source)});
  if (electric.main_breaker_A)
    rows.push_back(
        {prose("Room beside the rest"), say(q.figure("sizes.electric.room_stages_number", Kind::count), " of ",
                                            q.figure("sizes.electric.stages_number", Kind::count), " boiler stages")});
  Markup text = facts(rows);
  if (!electric.together_A)
    text += paragraph("Blank: the file's service section does not tell of it (current, main breaker, other loads).");
  return section("The service", text + remarks(source, {"plant.voltage", "plant.service", "plant.no-boiler-step"}));
}

Markup source_section(const Source& source) {
  const SecondSource& second = source.answer.file.design.second_source;
  if (second.kind == SecondSourceKind::none)
    return section("Second source", paragraph("None in the design. If a heat pump may come later, leave space for its "
                                              "breaker and a route to its place."));
  std::vector<Fact> rows;
  rows.push_back({prose("What"), prose(second.kind == SecondSourceKind::heat_pump
                                           ? "air-source heat pump that warms the air inside"
                                           : "heat pump outdoors that warms the floor's water")});
  if (second.current_A)
    rows.push_back(
        {prose("The most it takes"), quoted(source.q.figure("design.second_source.current_A", Kind::current))});
  rows.push_back({prose("Pan and crankcase"),
                  quoted(source.q.figure("design.second_source.drain_pan_W", Kind::watts)) + prose(" of heaters")});
  for (const char* plate : {"Plate: volts, phases", "Plate: MCA", "Plate: MOP", "Disconnect in sight"})
    rows.push_back({prose(plate), blank()});
  return section("Second source", facts(rows));
}

std::vector<Markup> wire_row(const char* what, const Markup& where) { return {prose(what), where, tick()}; }

bool zone_valves(const Source& source) {
  for (const Room& room : source.answer.file.design.room)
    if (room.own_loops || room.shut) return true;
  return false;
}

Markup wires_section(const Source& source) {
  const Quotes& q = source.q;
  const Answer& answer = source.answer;
  const bool placed = answer.freeze && answer.freeze->air;
  std::vector<std::vector<Markup>> rows;
  rows.push_back(wire_row("wall thermostat", placed ? quoted(q.words("freeze.air_sensor"))
                                                    : prose("on an inside wall, out of sun and draught")));
  rows.push_back(wire_row("slab sensor", placed ? say(q.words("freeze.slab_sensor"),
                                                      "; in a sleeve, so that it can be "
                                                      "drawn out")
                                                : prose("in a sleeve in the concrete, midway between two tubes")));
  rows.push_back(wire_row("boiler: call for heat", prose("from whichever thermostat holds the floor")));
  rows.push_back(wire_row("pump", prose("runs with the boiler, and by itself below an outdoor temperature to choose")));
  if (zone_valves(source)) rows.push_back(wire_row("zone valves", prose("one for each room with loops of its own")));
  if (answer.file.design.boiler.piping == BoilerPiping::mixing_valve)
    rows.push_back(wire_row("mixing valve and its sensor", prose("on the supply to the manifold")));
  rows.push_back(wire_row("high limit", prose("on the supply, opens the boiler's circuit")));
  rows.push_back(wire_row("outdoor sensor", prose("on the north side, out of sun")));
  if (answer.file.design.second_source.kind != SecondSourceKind::none)
    rows.push_back(wire_row("second source", prose("its own thermostat; a contact that tells the boiler when it is "
                                                   "locked out or stands")));
  rows.push_back(wire_row("frost alarm", prose("on a battery, so that it outlives a power cut; rings or "
                                               "writes to somebody")));
  rows.push_back(wire_row("generator inlet", prose("pump and controls through a transfer switch, nothing "
                                                   "fed back")));
  return section("Low voltage and controls",
                 table({{"what", "", false}, {"where", "", false}, {"done", "", false}}, rows));
}

Markup left_section() {
  return section(
      "Left to the licensed electrician",
      bullets(
          {prose("wire size, kind and route, with corrections for heat and bundling"),
           prose("breakers, and whether elements must be split over circuits of their own"),
           prose("the disconnect, in sight of the boiler, and the one of the second source"),
           prose("earthing and bonding of boiler, pipes and the steel in the slab; protection against earth faults"),
           prose("the service as a whole, permit and inspection")}) +
          caution_about(Caution::electricity) +
          caution(prose("Isolate and prove dead before a cover is off: the floor may be wet.")));
}

}  // namespace

std::optional<SheetBody> electrician_sheet(const Source& source) {
  if (!source.answer.loops) return std::nullopt;
  Markup body = source.answer.sizes
                    ? pair(load_section(source), service_section(source) + source_section(source))
                    : pair(section("The load", not_known(source, "how much the boiler takes")), source_section(source));
  body += wires_section(source) + left_section();
  return SheetBody{wrap("div", body, "tight")};
}

}  // namespace slabwright::sheets
