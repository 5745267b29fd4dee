// Tables for spreadsheets: units in the heads, a point for decimals, no commas between thousands.
#include <fmt/format.h>

#include "report/csv.hpp"
#include "slabwright/report.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright {
namespace {

using report::Csv;
using report::Kind;

double leaders_m(const Loop& loop) {
  double sum_m = 0.0;
  for (const Stretch& stretch : loop.along) sum_m += stretch.leader ? stretch.length_m : 0.0;
  return sum_m;
}

std::string manifold_of(const Answer& answer, std::size_t loop) {
  return answer.file.design.manifold[answer.loops->loop[loop].manifold].name;
}

std::string_view word_of(Regime regime) {
  constexpr std::string_view words[] = {"laminar", "blended", "turbulent"};
  return words[static_cast<std::size_t>(regime)];
}

std::string loops_csv(const Answer& answer) {
  Csv csv(answer.file.design.units);
  for (const std::string_view word : {"loop", "manifold", "port"}) csv.head(word);
  csv.head("length", Kind::length);
  csv.head("leaders", Kind::length);
  csv.head("heats", Kind::area);
  if (answer.point) {
    csv.head("flow", Kind::flow);
    csv.head("drop", Kind::pressure);
    csv.head("supply", Kind::fine_degree);
    csv.head("return", Kind::fine_degree);
    csv.head("heat up", Kind::heat);
    csv.head("heat down", Kind::heat);
    csv.head("velocity", Kind::velocity);
    csv.head("Reynolds number");
    csv.head("water moves");
  }
  csv.end_row();
  for (std::size_t i = 0; i < answer.loops->loop.size(); ++i) {
    const Loop& loop = answer.loops->loop[i];
    csv.cell(loop.name);
    csv.cell(manifold_of(answer, i));
    csv.cell(Kind::count, loop.port);
    csv.cell(Kind::length, loop.length_m);
    csv.cell(Kind::length, leaders_m(loop));
    csv.cell(Kind::area, loop.patch_m2);
    if (answer.point) {
      const LoopState& state = answer.point->loop[i];
      csv.cell(Kind::flow, state.flow_m3_per_s);
      csv.cell(Kind::pressure, state.loss_Pa);
      csv.cell(Kind::fine_degree, answer.point->supply_degC);
      csv.cell(Kind::fine_degree, state.return_degC);
      csv.cell(Kind::heat, state.up_W);
      csv.cell(Kind::heat, state.down_W);
      csv.cell(Kind::velocity, state.velocity_m_per_s);
      csv.cell(Kind::count, state.reynolds_number);
      csv.cell(std::string(word_of(state.regime)));
    }
    csv.end_row();
  }
  return csv.content();
}

std::string balance_csv(const Answer& answer) {
  Csv csv(answer.file.design.units);
  for (const std::string_view word : {"port", "manifold", "loop"}) csv.head(word);
  csv.head("length", Kind::length);
  for (const std::string_view word : {"all open", "aim", "good enough from", "good enough to", "after"}) {
    csv.head(word, Kind::flow);
  }
  csv.head("turns from shut");
  csv.head("left open");
  csv.head("valve", Kind::valve);
  csv.head("valve authority", Kind::share);
  csv.head("good enough");
  csv.end_row();
  for (std::size_t i = 0; i < answer.balance->port.size(); ++i) {
    const PortSetting& port = answer.balance->port[i];
    csv.cell(Kind::count, port.port);
    csv.cell(answer.loops ? manifold_of(answer, i) : "");
    csv.cell(port.loop);
    csv.cell(Kind::length, port.length_m);
    for (const double flow :
         {port.open_m3_per_s, port.aim_m3_per_s, port.least_m3_per_s, port.most_m3_per_s, port.after_m3_per_s}) {
      csv.cell(Kind::flow, flow);
    }
    csv.cell(Kind::turns, port.set_turns);
    csv.cell(port.open ? "yes" : "no");
    csv.cell(Kind::valve, port.exact_kv);
    csv.cell(Kind::share, port.authority_share);
    csv.cell(port.within ? "yes" : "no");
    csv.end_row();
  }
  return csv.content();
}

/// Hours for a plot: to a tenth, empty where nothing freezes while the clock runs.
std::string hours_cell(std::optional<double> lasts_s) {
  return lasts_s ? fmt::format("{:.1f}", *lasts_s / hour_s) : "";
}

/// A row for each weather and setting.
std::string outage_csv(const Answer& answer) {
  Csv csv(answer.file.design.units);
  csv.head("outside", Kind::fine_degree);
  csv.head("wall thermostat", Kind::fine_degree);
  for (const std::string_view word : {"no power", "pump alone", "pump and one element"}) {
    csv.head(fmt::format("{} (h)", word));
    csv.head(fmt::format("first to freeze, {}", word));
  }
  csv.end_row();
  const bool element = answer.outage->stage_W > 0.0;
  for (const OutageCase& one : answer.outage->row) {
    csv.cell(Kind::fine_degree, one.outdoor_degC);
    csv.cell(Kind::fine_degree, one.air_dial_degC);
    csv.cell(hours_cell(one.lasts_s));
    csv.cell(one.first);
    csv.cell(hours_cell(one.pump_lasts_s));
    csv.cell(one.pump_first);
    csv.cell(element ? hours_cell(one.stage_lasts_s) : "");
    csv.cell(element ? one.stage_first : "no boiler");
    csv.end_row();
  }
  return csv.content();
}

std::string recovery_csv(const Answer& answer) {
  Csv csv(answer.file.design.units);
  for (const std::string_view word : {"outside", "from", "to"}) csv.head(word, Kind::fine_degree);
  for (const std::string_view word : {"takes (h)", "starts (h after midnight)", "boiler (kWh)", "second source (kWh)"})
    csv.head(word);
  for (const std::string_view word : {"floor", "feels like"}) csv.head(word, Kind::fine_degree);
  csv.end_row();
  for (const Recovery& one : answer.recovery) {
    for (const double degC : {one.outdoor_degC, one.from_air_degC, one.to_air_degC}) csv.cell(Kind::fine_degree, degC);
    csv.cell(hours_cell(one.takes_s));
    csv.number(one.starts_at_s ? fmt::format("{:.1f}", *one.starts_at_s / hour_s) : "");
    for (const double joule : {one.boiler_J, one.source_J}) csv.cell(fmt::format("{:.1f}", joule / 3.6e6));
    for (const double degC : {one.floor_degC, one.operative_degC}) csv.cell(Kind::fine_degree, degC);
    csv.end_row();
  }
  return csv.content();
}

}  // namespace

std::vector<Sheet> tables_of(const Answer& answer) {
  std::vector<Sheet> sheets;
  if (answer.loops) sheets.push_back({"loops.csv", loops_csv(answer)});
  for (Sheet& sheet : report::site_tables_of(answer)) sheets.push_back(std::move(sheet));
  if (answer.balance) sheets.push_back({"balance.csv", balance_csv(answer)});
  if (answer.outage) sheets.push_back({"outage.csv", outage_csv(answer)});
  if (!answer.recovery.empty()) sheets.push_back({"recovery.csv", recovery_csv(answer)});
  for (Sheet& sheet : report::winter_tables_of(answer)) sheets.push_back(std::move(sheet));
  return sheets;
}

}  // namespace slabwright
