// route: can the loops be laid, how long each comes out, how even they are.
#include <fmt/format.h>

#include <algorithm>

#include "report/tape.hpp"
#include "report/text.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::report {
namespace {

std::string route_verdict(const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.loops) return "NOT ENOUGH IS KNOWN to lay out a floor:";
  if (!answer.loops->drawing) return "THE LOOPS CANNOT BE DRAWN:";
  const std::string loops = several(answer.loops->loop.size(), "loop");
  if (answer.verdict.kind == VerdictKind::fails) return "THE LOOPS CANNOT BE LAID AS DRAWN, because:";
  const std::string good = fmt::format("THE LOOPS CAN BE LAID: {}", loops);
  const std::size_t reasons = answer.verdict.reasons.size();
  if (reasons == 0) return good + ".";
  return fmt::format("{}, with {} to mend:", good, reasons == 1 ? "one thing" : counted(reasons) + " things");
}

double leaders_of(const Loop& loop) {
  double sum_m = 0.0;
  for (const Stretch& s : loop.along) sum_m += s.leader ? s.length_m : 0.0;
  return sum_m;
}

void add_lengths(Page& page, const Reader& reader) {
  const LoopPlan& plan = *reader.answer.loops;
  const LayoutCheck& check = plan.drawing->check;
  const auto [least, most] = std::minmax_element(plan.loop.begin(), plan.loop.end(),
                                                 [](const Loop& a, const Loop& b) { return a.length_m < b.length_m; });
  add_row(page, "Tube", "in all",
          fmt::format("{} of {}", reader(Kind::length, plan.tube_m), reader.design().tube.size.name));
  add_row(page, "", "each loop",
          fmt::format("{}, leaders (runs to the manifold) included; the limit is {}",
                      from_to(Kind::length, least->length_m, most->length_m, reader.system()),
                      reader(Kind::length, plan.limit_m)));
  add_row(page, "", "alike",
          fmt::format("longest and shortest differ by {} of the mean", reader(Kind::share, check.spread_ratio)));
}

void add_lie(Page& page, const Reader& reader) {
  const LayoutCheck& check = reader.answer.loops->drawing->check;
  const double spacing_m = reader.answer.loops->drawing->task.spacing_m;
  add_row(page, "How it lies", "apart",
          fmt::format("{} or more between tubes outside the apron before the manifold, {} within it",
                      reader(Kind::short_length, check.separation_ratio * spacing_m),
                      reader(Kind::short_length, check.apron_separation_m)));
  const bool us = reader.system() == System::us;
  add_row(page, "", "leaders",
          fmt::format("up to {:.1f} {} before the manifold", us ? check.apron_m_per_m2 * foot_m : check.apron_m_per_m2,
                      us ? "ft of tube per ft2" : "m of tube per m2"));
  add_row(page, "", "floor",
          fmt::format("99 % of it lies within {} of a tube, the farthest spot {}",
                      reader(Kind::short_length, check.near_ratio * spacing_m),
                      reader(Kind::short_length, check.farthest_ratio * spacing_m)));
  add_row(
      page, "", "bends",
      fmt::format("{:.0f} right angles in {} of tube",
                  us ? check.bends_per_100ft_ratio : check.bends_per_100ft_ratio / foot_m, us ? "100 ft" : "100 m"));
}

void add_laid_loops(Page& page, const Reader& reader) {
  const System system = reader.system();
  const LoopPlan& plan = *reader.answer.loops;
  const bool several_manifolds = reader.design().manifold.size() > 1;
  const bool crosses =
      std::any_of(plan.loop.begin(), plan.loop.end(), [](const Loop& l) { return !l.crossing.empty(); });
  Table table{{{"port"},
               left_column("loop"),
               {"length", std::string(unit(Kind::length, system))},
               {"leaders", std::string(unit(Kind::length, system))},
               {"bends"}},
              {},
              0};
  if (crosses) table.columns.push_back({"joints"});
  for (const Loop& loop : plan.loop) {
    const std::string manifold = several_manifolds ? fmt::format("{}-", loop.manifold + 1) : "";
    table.rows.push_back({manifold + fmt::format("{}", loop.port), loop.name, bare(Kind::length, loop.length_m, system),
                          bare(Kind::length, leaders_of(loop), system), fmt::format("{:.0f}", loop.bends_number)});
    if (crosses) table.rows.back().push_back(fmt::format("{}", loop.crossing.size()));
  }
  add_table(page, table);
}

/// What stands below the loops: a note or two, the caution, the next command.
constexpr std::size_t below_loops = 6;

/// The table where it fits on the page, else where to find it.
void add_loops_if_room(Page& page, const Reader& reader) {
  Page with = page;
  add_gap(with);
  add_laid_loops(with, reader);
  if (reader.options.full || with.lines.size() + below_loops <= most_lines) {
    page = std::move(with);
  } else {
    add_text(page, "Each loop by itself: add --full, or --out DIR for tables and the plan to print.");
  }
}

/// Where nothing went wrong, but too little is known.
void add_what_drawing_needs(Page& page) {
  add_text(page,
           "A drawing needs the slab's size or outline, an outline for each of several rooms, a place for each of "
           "several manifolds, and loops of which more is known than their lengths or their number.");
}

void add_map(Page& page, const Reader& reader) {
  if (reader.options.map.empty()) return;
  add_gap(page);
  page.lines.insert(page.lines.end(), reader.options.map.begin(), reader.options.map.end());
  add_gap(page);
}

/// Where a manifold would serve better, from two walls.
void add_better(Page& page, const Reader& reader) {
  if (!reader.answer.better) return;
  const Design& design = reader.design();
  const auto walls = walls_told_from(design);
  if (reader.answer.better->empty()) add_row(page, "Manifold", "place", "no place along the walls is clearly better");
  for (const BetterPlace& better : *reader.answer.better) {
    if (!walls) continue;
    const auto from = [&](const PlanWall& wall) {
      return fmt::format("{} from the {}", tape(from_wall_m(wall, {better.x_m, better.y_m}), reader.system()),
                         wall.name);
    };
    const std::string& name = design.manifold[better.manifold].name;
    add_row(page, design.manifold.size() > 1 && !name.empty() ? name : "Manifold", "better",
            fmt::format("at {}, {}: shorter ways out, loops more alike or fewer bends", from(walls->first),
                        from(walls->second)));
  }
}

}  // namespace

void add_route(Page& page, const Reader& reader) {
  const Answer& answer = reader.answer;
  add_first_line(page, reader, "");
  add_text(page, route_verdict(reader));
  add_reasons(page, reader, answer.verdict.reasons, 8);
  if (answer.loops && !answer.loops->drawing && answer.verdict.reasons.empty()) add_what_drawing_needs(page);
  add_lacking(page, reader);
  if (answer.loops && answer.loops->drawing) {
    add_map(page, reader);
    add_better(page, reader);
    add_lengths(page, reader);
    add_lie(page, reader);
    add_loops_if_room(page, reader);
  }
  add_notes(page, reader, "layout.");
  add_end(page, reader, "design");
}

}  // namespace slabwright::report
