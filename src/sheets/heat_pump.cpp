// The heat-pump fitter's sheet: the load by the weather, what the unit gives, what water would be wanted, and what
// carries the shop while it stands.
#include <algorithm>

#include "sheets/phrases.hpp"
#include "sheets/plots.hpp"

namespace slabwright::sheets {
namespace {

std::string row_key(std::size_t row, const char* member) { return key_of_row("by_outdoor.fitter", row, member); }

/// A figure that may be absent.
Markup maybe(const Source& source, const std::string& key, Kind kind, const char* otherwise = "-") {
  return source.q.has(key) ? quoted(source.q.figure(key, kind)) : prose(otherwise);
}

const SecondSource& second_source(const Source& source) { return source.answer.file.design.second_source; }

bool has_source(const Source& source) { return second_source(source).kind != SecondSourceKind::none; }

/// What the file says of the unit, else blanks for a quote.
Markup unit_section(const Source& source) {
  if (!has_source(source))
    return section("The unit", paragraph("No second source is in the design. The loads below are what one would be "
                                         "chosen by; tell of a unit in the file's second source section (kind, "
                                         "capacity, points, cut-out), and this sheet says what it does."));
  const Quotes& q = source.q;
  const std::string at = "design.second_source.";
  std::vector<Fact> rows;
  rows.push_back({prose("Kind"), prose(second_source(source).kind == SecondSourceKind::heat_pump
                                           ? "air-source, warms the air inside"
                                           : "air-source outdoors, warms the floor's water")});
  rows.push_back(
      {prose("Capacity, rated"), q.has(at + "capacity_W") ? quoted(q.figure(at + "capacity_W", Kind::heat)) : blank()});
  rows.push_back({prose("Cuts out below"),
                  q.has(at + "cut_out_degC") ? quoted(q.figure(at + "cut_out_degC", Kind::degree)) : blank()});
  if (q.has(at + "cut_in_degC"))
    rows.push_back({prose("Starts again at"), quoted(q.figure(at + "cut_in_degC", Kind::degree))});
  if (q.has(at + "least_setting_degC"))
    rows.push_back({prose("Its lowest setting"), quoted(q.figure(at + "least_setting_degC", Kind::degree))});
  Markup points;
  for (std::size_t i = 0; i < q.rows(at + "points"); ++i)
    points += wrap("div", quoted(q.words(key_of_row(at + "points", i))));
  if (!points.html.empty()) rows.push_back({prose("Its maker's table"), points});
  return section("The unit", facts(rows));
}

/// What it gives in one weather: not known, locked out, or so much.
Markup gives_cell(const Source& source, std::size_t row) {
  if (source.answer.by_outdoor->fitter[row].source_locked) return prose("locked out");
  return maybe(source, row_key(row, "source_W"), Kind::heat);
}

Markup load_table(const Source& source) {
  const Quotes& q = source.q;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < source.answer.by_outdoor->fitter.size(); ++i) {
    const bool locked = source.answer.by_outdoor->fitter[i].source_locked;
    std::vector<Markup> cells{quoted(q.figure(row_key(i, "outdoor_degC"), Kind::degree)),
                              quoted(q.figure(row_key(i, "loss_W"), Kind::heat, Lean::loss)),
                              quoted(q.figure(row_key(i, "alone_W"), Kind::heat, Lean::heat))};
    if (has_source(source)) {
      cells.push_back(gives_cell(source, i));
      cells.push_back(locked ? prose("-") : maybe(source, row_key(i, "source_cop_number"), Kind::ratio));
      cells.push_back(locked ? prose("-") : maybe(source, row_key(i, "source_electric_W"), Kind::boiler));
    }
    rows.push_back(std::move(cells));
  }
  std::vector<Head> heads{{"outside"}, {"the shop loses"}, {"a unit that warms the air must give"}};
  if (has_source(source)) heads.insert(heads.end(), {{"this one gives"}, {"COP"}, {"and draws"}});
  return stacking_table(heads, rows);
}

/// Where the unit is enough.
std::vector<Fact> load_facts(const Source& source) {
  const Quotes& q = source.q;
  std::vector<Fact> rows;
  if (q.has("by_outdoor.cross_over_degC"))
    rows.push_back({prose("It carries the shop alone"),
                    say("down to ", q.figure("by_outdoor.cross_over_degC", Kind::degree, Lean::loss),
                        " outside, where that takes ", q.figure("by_outdoor.cross_over_W", Kind::heat, Lean::heat))});
  if (q.has("by_outdoor.idle_above_degC"))
    rows.push_back({prose("No heat is wanted"),
                    say("above ", q.figure("by_outdoor.idle_above_degC", Kind::degree, Lean::loss), " outside")});
  return rows;
}

Markup load_section_of_fitter(const Source& source) {
  if (!source.answer.by_outdoor || source.answer.by_outdoor->fitter.empty())
    return section("The load by the weather", not_known(source, "what the weather asks for"));
  return section("The load by the weather",
                 paragraph("Rooms at their working temperature, doors shut, the weather as if it lasted; nothing added "
                           "for warming up a cold shop.") +
                     load_table(source));
}

Markup buffer_cell(const Source& source, std::size_t row) {
  const std::string key = row_key(row, "unit_buffer_m3");
  if (source.q.has(key) && source.q.number(key) <= 0.0) return prose("none");
  return maybe(source, key, Kind::volume);
}

Markup water_table(const Source& source) {
  const Quotes& q = source.q;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < source.answer.by_outdoor->fitter.size(); ++i)
    rows.push_back({quoted(q.figure(row_key(i, "outdoor_degC"), Kind::degree)),
                    quoted(q.figure(row_key(i, "water_W"), Kind::heat, Lean::heat)),
                    maybe(source, row_key(i, "supply_degC"), Kind::degree),
                    maybe(source, row_key(i, "return_degC"), Kind::degree),
                    maybe(source, row_key(i, "flow_m3_per_s"), Kind::flow),
                    maybe(source, row_key(i, "unit_least_m3_per_s"), Kind::flow), buffer_cell(source, i)});
  return table(
      {{"outside"}, {"the water gives"}, {"supply"}, {"return"}, {"flow"}, {"least flow through it"}, {"least buffer"}},
      rows);
}

Markup water_section(const Source& source) {
  if (!source.answer.by_outdoor || source.answer.by_outdoor->fitter.empty()) return {};
  const Quotes& q = source.q;
  std::vector<Fact> rows;
  rows.push_back({prose("In the loops"),
                  source.answer.by_outdoor->glycol_share > 0.0
                      ? say(q.figure("by_outdoor.glycol_share", Kind::share), " of glycol by volume, freezes at ",
                            q.figure("by_outdoor.freezes_degC", Kind::degree))
                      : say("water, freezes at ", q.figure("by_outdoor.freezes_degC", Kind::degree))});
  if (q.has("by_outdoor.unit_glycol_share"))
    rows.push_back({prose("A unit outdoors wants"), say(q.figure("by_outdoor.unit_glycol_share", Kind::share),
                                                        " glycol by volume, or a heat exchanger indoors")});
  rows.push_back({prose("The buffer is for"),
                  say("runs of ", q.figure("by_outdoor.unit_least_on_s", Kind::minutes), " while its water warms by ",
                      q.figure("by_outdoor.unit_differential_K", Kind::rise),
                      ", of a unit as large as the file's; its maker's own figures win")});
  return section("Where the unit heats the floor's water", water_table(source) + facts(rows));
}

/// The first way in which the second source has something to do.
std::optional<std::size_t> way_by_source(const Source& source) {
  if (!source.answer.winter) return std::nullopt;
  const auto& ways = source.answer.winter->way;
  const auto found = std::find_if(ways.begin(), ways.end(), [](const WayResult& way) {
    return way.way.second_source != WaySource::off &&
           way.source.ran_s + way.source.locked_s + way.source.cold_start_s > 0.0;
  });
  return found == ways.end() ? std::nullopt : std::optional<std::size_t>(found - ways.begin());
}

Markup what_carries(const Source& source) {
  if (!source.answer.sizes) return {};
  const Quotes& q = source.q;
  return say("the boiler of ", q.figure("sizes.boiler.power_W", Kind::boiler, Lean::boiler), " alone; the floor takes ",
             q.figure("sizes.boiler.floor_W", Kind::boiler, Lean::heat), " of it at ",
             q.figure("envelope.outdoor_degC", Kind::degree));
}

Markup standing_section(const Source& source) {
  if (!has_source(source)) return {};
  const auto way = way_by_source(source);
  std::vector<Fact> rows;
  if (way) {
    const Quotes& q = source.q;
    const SourceWinter& hours = source.answer.winter->way[*way].source;
    const auto at = [&](const char* member) { return key_of_row("winter.way", *way, member); };
    rows.push_back({prose("Way of running"), quoted(q.words(at("way.name")))});
    rows.push_back({prose("It runs"), say(q.figure(at("source.ran_s"), Kind::hours), " in a winter")});
    rows.push_back({prose("Too cold for it outdoors"),
                    hours.locked_s > 0.0 ? say(q.figure(at("source.locked_s"), Kind::hours), ", the longest ",
                                               q.figure(at("source.longest_locked_s"), Kind::hours), " at one stretch")
                                         : prose("never in this weather")});
    if (hours.cold_start_s > 0.0)
      rows.push_back(
          {prose("Room too cold for it to start"), quoted(q.figure(at("source.cold_start_s"), Kind::hours))});
    rows.push_back({prose("Too cold at work meanwhile"),
                    hours.short_s > 0.0 ? quoted(q.figure(at("source.short_s"), Kind::hours)) : prose("never")});
  }
  if (const Markup carries = what_carries(source); !carries.html.empty())
    rows.push_back({prose("What carries then"), carries});
  if (rows.empty()) return section("While it stands", not_known(source, "how often it stands"));
  return section("While it stands", facts(rows) + remarks(source, {"plant.second-source", "winter.no-source",
                                                                   "winter.water-source", "winter.fight"}));
}

Markup fitter_list(const Source& source) {
  return facts(load_facts(source)) +
         section("To settle on the site",
                 bullets({say("Plate (the electrician needs it too): ", blank()),
                          prose("Place: above the drifts, out of the wind; meltwater drains where nobody walks."),
                          prose("Water lines outdoors freeze in a power cut before anything else: glycol, or valves "
                                "that drain them."),
                          prose("What tells the boiler that the unit stands.")}));
}

}  // namespace

std::optional<SheetBody> heat_pump_sheet(const Source& source) {
  if (!source.answer.loops) return std::nullopt;
  return SheetBody{wrap("div",
                        pair(unit_section(source), standing_section(source)) + load_section_of_fitter(source) +
                            water_section(source) + pair(fitter_list(source), plot_figures(source.q, {"heat"})),
                        "tight")};
}

}  // namespace slabwright::sheets
