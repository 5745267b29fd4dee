// --full: every figure, stage by stage.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/text.hpp"

namespace slabwright::report {
namespace {

/// The word that a choice has in the answer's description.
std::string choice_word(const Record& record, std::string_view member) {
  for (const Key& key : record.keys) {
    if (key.member == member) return write_out(key, key.slot(record.at), System::si);
  }
  return {};
}

// --- Loops and water ---

void add_loops(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.loops) return;
  const System system = reader.system();
  Table table{{left_column("loop"),
               {"port"},
               in("length", Kind::length, system),
               in("leaders", Kind::length, system),
               in("heats", Kind::area, system),
               left_column("length from")},
              {},
              0};
  for (const Loop& loop : answer.loops->loop) {
    double leaders_m = 0.0;
    for (const Stretch& stretch : loop.along) leaders_m += stretch.leader ? stretch.length_m : 0.0;
    table.rows.push_back({loop.name, fmt::format("{}", loop.port), bare(Kind::length, loop.length_m, system),
                          bare(Kind::length, leaders_m, system), bare(Kind::area, loop.patch_m2, system),
                          choice_word(reading(loop), "from")});
  }
  add_section(page, "LOOPS (leaders: the runs from and to the manifold together)", table);
}

void add_water_table(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.point || !answer.loops) return;
  const System system = reader.system();
  Table flows{{left_column("loop"),
               in("flow", Kind::flow, system),
               in("back", Kind::fine_degree, system),
               in("speed", Kind::velocity, system),
               {"Reynolds"},
               left_column("water moves"),
               in("film", Kind::film, system)},
              {},
              0};
  Table heats{{left_column("loop"), in("heat up", Kind::heat, system), in("down", Kind::heat, system),
               in("drop", Kind::pressure, system)},
              {},
              0};
  bool blended = false;
  for (std::size_t i = 0; i < answer.point->loop.size(); ++i) {
    const LoopState& state = answer.point->loop[i];
    const std::string& name = answer.loops->loop[i].name;
    blended = blended || state.regime == Regime::blended;
    flows.rows.push_back(
        {name, bare(Kind::flow, state.flow_m3_per_s, system), bare(Kind::fine_degree, state.return_degC, system),
         bare(Kind::velocity, state.velocity_m_per_s, system), bare(Kind::count, state.reynolds_number, system),
         choice_word(reading(state), "regime") + (state.regime == Regime::blended ? " *" : ""),
         bare(Kind::film, state.film_W_per_m2K, system)});
    heats.rows.push_back({name, bare(Kind::heat, state.up_W, system), bare(Kind::heat, state.down_W, system),
                          bare(Kind::pressure, state.loss_Pa, system)});
  }
  add_section(page, fmt::format("WATER, LOOP BY LOOP, supply {}", reader(Kind::fine_degree, answer.point->supply_degC)),
              flows);
  if (blended) {
    page.lines.pop_back();
    add_text(page, "* neither laminar nor turbulent: its pressure and film are uncertain by about 20 %.", "  ");
    add_blank(page);
  }
  add_section(page, "HEAT AND DROP, LOOP BY LOOP", heats);
}

void add_hardest(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.point || !answer.loops || answer.point->hardest_loop >= answer.loops->loop.size()) return;
  const System system = reader.system();
  Table table{{left_column("part"), in("drop", Kind::pressure, system)}, {}, 0};
  for (const PartLoss& part : answer.point->hardest_part) {
    table.rows.push_back({choice_word(reading(part), "part"), bare(Kind::pressure, part.pressure_Pa, system)});
  }
  table.rows.push_back({"whole round", bare(Kind::pressure, answer.point->pump_Pa, system)});
  add_section(page,
              fmt::format("WHAT THE PUMP OVERCOMES round {}, the hardest loop (it asks for most)",
                          answer.loops->loop[answer.point->hardest_loop].name),
              table);
}

// --- Floor and building ---

void add_floors(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.floor) return;
  const System system = reader.system();
  Table table{{left_column("room"),
               in("heated", Kind::area, system),
               in("asked", Kind::flux, system),
               {"given"},
               in("mean", Kind::fine_degree, system),
               {"over tube"},
               {"limit"}},
              {},
              0};
  for (const RoomFloor& room : answer.floor->room) {
    if (room.heated_m2 <= 0.0) continue;
    table.rows.push_back({room.room, bare(Kind::area, room.heated_m2, system),
                          bare(Kind::flux, room.wanted_W_per_m2, system), bare(Kind::flux, room.given_W_per_m2, system),
                          bare(Kind::fine_degree, room.floor.floor_mean_degC, system),
                          bare(Kind::fine_degree, room.floor.floor_over_tube_degC, system),
                          bare(Kind::fine_degree, room.limit_degC, system)});
  }
  add_section(page, "FLOORS, at nominal water", table);
}

std::string signed_share(const Reader& reader, double share) {
  return fmt::format("{}{}", share < 0.0 ? "-" : "+", reader(Kind::share, std::abs(share)));
}

/// What the standard makes of the ground, beside the field.
void add_ground_opinion(Page& page, const Reader& reader) {
  if (!reader.answer.envelope) return;
  const GroundPath& ground = reader.answer.envelope->ground;
  if (ground.iso13370.plane_W_per_m2K <= 0.0) return;
  add_text(
      page,
      fmt::format("ISO 13370 on the ground below the tubes: {} against our {}, {}. It does not see the bare edge of "
                  "the slab.",
                  reader(Kind::transmittance, ground.iso13370.plane_W_per_m2K),
                  reader(Kind::transmittance, ground.plane_W_per_m2K),
                  signed_share(reader, ground.iso13370.difference_share)),
      "  ");
}

void add_opinions(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.floor || answer.floor->opinion.empty()) return;
  add_text(page, "OTHER OPINIONS ON THE SLAB (heat upward for the same water)");
  for (const SectionOpinion& opinion : answer.floor->opinion) {
    const std::string difference = signed_share(reader, opinion.difference_share);
    add_text(page,
             fmt::format("{}: {} against our {}, {}.", opinion.name, reader(Kind::transmittance, opinion.up_W_per_m2K),
                         reader(Kind::transmittance, opinion.first_W_per_m2K), difference),
             "  ");
    if (!opinion.made_for) {
      add_text(page, fmt::format("Not made for this slab: {}.", fmt::join(opinion.why_not, "; ")), "  ");
    }
  }
  add_ground_opinion(page, reader);
  add_blank(page);
}

void add_rooms(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.envelope) return;
  const System system = reader.system();
  Table table{{left_column("room"),
               {"walls"},
               {"roof"},
               {"doors"},
               {"air"},
               {"by area"},
               {"floor"},
               in("loses", Kind::heat, system),
               {"floor gives"}},
              {},
              0};
  const auto per_K = [&](double W_per_K) { return bare(Kind::conductance, W_per_K, system); };
  for (const RoomLoss& room : answer.envelope->room) {
    table.rows.push_back({room.name, per_K(room.walls_W_per_K), per_K(room.roof_W_per_K), per_K(room.openings_W_per_K),
                          per_K(room.air_W_per_K), per_K(room.by_area_W_per_K), per_K(room.unheated_floor_W_per_K),
                          bare(Kind::heat, room.loss_W, system), bare(Kind::heat, room.wanted_W, system)});
  }
  add_section(page, fmt::format("ROOMS, parts in {}", unit(Kind::conductance, system)), table);
}

void add_fans_and_gains(Page& page, const Reader& reader) {
  if (!reader.answer.envelope) return;
  for (const RoomLoss& room : reader.answer.envelope->room) {
    if (room.exhaust_W_per_K > 0.0) {
      add_text(page,
               fmt::format("{}: fans take {} more, of which {} is counted; the rest is warmed elsewhere.", room.name,
                           reader(Kind::conductance, room.exhaust_W_per_K),
                           reader(Kind::conductance, room.exhaust_counted_W_per_K)),
               "  ");
    }
    if (room.gains_W > 0.0) {
      add_text(page, fmt::format("{}: {} of gains is counted on.", room.name, reader(Kind::heat, room.gains_W)), "  ");
    }
  }
}

void add_ground(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.envelope) return;
  const System system = reader.system();
  Table edges{
      {left_column("edge"), in("length", Kind::length, system), in("tube inside", Kind::short_length, system)}, {}, 0};
  for (const EdgeStretch& edge : answer.envelope->edge) {
    edges.rows.push_back(
        {edge.name, bare(Kind::length, edge.length_m, system), bare(Kind::short_length, edge.tube_in_m, system)});
  }
  add_section(page, "EDGES OF THE SLAB", edges);
  const GroundPath& ground = answer.envelope->ground;
  add_text(page,
           fmt::format("GROUND: {} from the tube plane down, {} from the concrete's underside, to {} on the worst "
                       "day; floor area over half its edge is {}.",
                       reader(Kind::transmittance, ground.plane_W_per_m2K),
                       reader(Kind::transmittance, ground.underside_W_per_m2K),
                       reader(Kind::fine_degree, ground.effective_degC), reader(Kind::length, ground.dimension_m)));
  add_blank(page);
}

// --- What it all rests on ---

void add_said(Page& page, const Reader& reader) {
  if (reader.answer.said.empty()) return;
  constexpr std::string_view words[] = {"note", "mend", "fails", "wrong"};
  add_text(page, "ALL THAT WAS SAID");
  for (const Diagnostic& said : reader.answer.said) {
    add_text(page, with_remedy(reader, said), fmt::format("  {:<6}", words[static_cast<std::size_t>(said.severity)]));
  }
  add_blank(page);
}

void add_guesses(Page& page, const Reader& reader) {
  Table table{{left_column("key"), left_column("our guess"), left_column("source")}, {}, 2};
  for (const Assumption& guess : guesses_read(reader.answer))
    table.rows.push_back({guess.path, guess.text, guess.source});
  add_section(page, "OUR GUESSES, to be replaced by what you know", table);
}

}  // namespace

void add_section(Page& page, std::string_view title, const Table& table) {
  if (table.rows.empty()) return;
  add_text(page, title);
  add_table(page, table);
  add_blank(page);
}

Column in(std::string_view word, Kind kind, System system) {
  return {std::string(word), std::string(unit(kind, system))};
}

void add_full(Page& page, const Reader& reader) {
  const Question question = reader.answer.wishes.question;
  if (!page.lines.empty() && !page.lines.back().empty()) add_blank(page);
  if (question == Question::design || question == Question::balance) {
    add_loops(page, reader);
    add_site(page, reader);
    add_water_table(page, reader);
    add_hardest(page, reader);
    add_plant_full(page, reader);
  }
  if (question == Question::design || question == Question::freeze) {
    add_floors(page, reader);
    add_field(page, reader);
    add_opinions(page, reader);
    add_rooms(page, reader);
    add_fans_and_gains(page, reader);
    add_ground(page, reader);
  }
  add_said(page, reader);
  add_guesses(page, reader);
}

}  // namespace slabwright::report
