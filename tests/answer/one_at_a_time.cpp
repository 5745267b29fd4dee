// Every input of a layout is moved a little, one at a time. The table of expected signs stands in moves/<layout>.csv;
// it was read line by line against physics before it was kept. An input that moves nothing is a fault: either no stage
// reads it, or the layout should not carry it. SLABWRIGHT_WRITE=1 writes the table anew, to be read again.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <set>

#include "answer/nudge.hpp"
#include "answer/pass.hpp"
#include "support/catch.hpp"
#include "support/layouts.hpp"
#include "support/table.hpp"

using namespace slabwright;
using namespace slabwright::test;

namespace {

struct Output {
  std::string name;
  std::function<double(const Answer&)> of;
};

/// 0 where no setting is enough.
double asked_degC(const std::optional<DialSetting>& setting) {
  return setting ? setting->best_degC - setting->control_K : 0.0;
}

/// What is compared with a limit rather than sized.
double limits(const Answer& a) {
  double ports = 0.0;
  for (const Manifold& m : a.file.design.manifold) ports += m.ports_number.value_or(0.0);
  return a.loops->limit_m + a.sizes->boiler.least_flow_m3_per_s + a.point->source.hot_share.value_or(0.0) +
         a.sizes->electric.demand_A.value_or(0.0) + a.sizes->electric.free_A.value_or(0.0) +
         a.sizes->tank.most_Pa / 1e5 + a.envelope->exhaust_W / 1e3 + ports;
}

/// What runs between boiler and floor, with all zones open and with those shut that are.
double joined(const Answer& a) {
  const SourceState& source = a.point->source;
  double sum = source.boiler_degC + 1e5 * source.boiler_m3_per_s + 1e5 * source.bypass_m3_per_s +
               a.balance->hold_Pa.value_or(0.0) / 1e3;
  for (const PumpState& pump : source.pump) sum += pump.pressure_Pa / 1e3;
  if (a.shut) sum += a.shut->source.pump.front().pressure_Pa / 1e3 + 1e5 * a.shut->source.bypass_m3_per_s;
  return sum;
}

std::string all_said(const Answer& a) {
  std::string all;
  for (const Diagnostic& d : a.said) all += say(d, System::si) + "\n";
  return all;
}

const std::vector<Output>& outputs() {
  static const std::vector<Output> all{
      {"tube", [](const Answer& a) { return a.loops->tube_m; }},
      {"loss", [](const Answer& a) { return a.envelope->loss_W; }},
      {"supply", [](const Answer& a) { return a.point->supply_degC; }},
      {"boiler", [](const Answer& a) { return a.sizes->boiler.wanted_W; }},
      {"flow", [](const Answer& a) { return a.sizes->pump.flow_m3_per_s; }},
      {"duty", [](const Answer& a) { return a.sizes->pump.head_m; }},
      {"settings",
       [](const Answer& a) {
         double sum = 0.0;
         for (const PortSetting& p : a.balance->port) sum += p.exact_turns;
         return sum;
       }},
      {"current", [](const Answer& a) { return a.sizes->electric.current_A; }},
      {"tank", [](const Answer& a) { return a.sizes->tank.tank_m3; }},
      // What switching on and off adds scatters by hundredths: it is left out.
      {"slab setting", [](const Answer& a) { return asked_degC(a.freeze->slab); }},
      {"air setting", [](const Answer& a) { return asked_degC(a.freeze->air); }},
      {"asked",
       [](const Answer& a) {
         double sum = 0.0;
         for (const PlaceAtSetting& p : a.freeze->place)
           sum += p.asks_air_degC.value_or(0.0) + p.asks_slab_degC.value_or(0.0);
         return sum;
       }},
      {"shut",
       [](const Answer& a) {
         double sum = a.freeze->shut_slab_dial_degC.value_or(0.0);
         for (const PlaceAtSetting& p : a.freeze->place) sum += p.asks_air_degC ? 0.0 : p.shut_degC;
         return sum + (a.freeze->air ? a.freeze->air->wanted_degC - a.freeze->air->best_degC : 0.0);
       }},
      {"joined", joined},
      {"limits", limits},
      {"winter of pump", [](const Answer& a) { return a.sizes->pump.season_J; }},
      {"cold flow", [](const Answer& a) { return a.sizes->start.flow_m3_per_s; }},
      {"stage on", [](const Answer& a) { return a.sizes->cycle.on_s.value_or(0.0); }},
      {"filled to", [](const Answer& a) { return a.sizes->tank.start_Pa; }},
      {"highest pipe", [](const Answer& a) { return a.sizes->tank.top_Pa; }},
      {"all at once", [](const Answer& a) { return a.sizes->electric.together_A.value_or(0.0); }},
      {"meters", [](const Answer& a) { return a.balance->meter_most_m3_per_s; }},
  };
  return all;
}

/// Ten times what the supply temperature is settled to, so that two compilers see one table.
constexpr double same_share = 1e-5;

/// Keys whose change only shows elsewhere, each with the reason.
const std::set<std::string>& passed_over() {
  static const std::set<std::string> all{
      "units",             // changes what is printed and which defaults stand, never a result
      "building.quality",  // only where the building is not described; the range of three is tested for itself
      "fluid.glycol",      // a share without a glycol is refused by the reader
      "opening[2].kind",   // beside an insulation of their own a door and a window lose the same
      "opening[3].kind",
      "valve.shape"};  // needs no sign: another curve, tested with the valves
  return all;
}

/// What is drilled later moves nothing before; the drilling guide is tested for itself.
bool is_drilled(const std::string& path) { return path.compare(0, 7, "anchor[") == 0; }

/// What moves where tube lies, and nothing else.
bool is_drawn(const std::string& path) {
  for (const std::string_view section : {"wall[", "partition[", "no_tube[", "joint[", "border["}) {
    if (path.compare(0, section.size(), section) == 0) return true;
  }
  const std::string word = path.substr(path.find('.') + 1);
  return word == "place" || word == "facing" || word == "port_pitch" || word == "fit" || word == "balance_by" ||
         word == "own_loops" || word == "runs" || word == "lay_rest";
}

/// The sign of all tube drawn, and whether anything else is said, with nothing worked out but the drawing.
std::string signs_of_drawing(const DesignFile& before, const DesignFile& after, Passing& passing) {
  const Answer base = pass(before, Question::route, passing), moved = pass(after, Question::route, passing);
  std::string signs(outputs().size() * 2, ',');
  for (std::size_t i = 0; i < outputs().size(); ++i) signs[2 * i + 1] = '0';
  signs[1] = base.loops && moved.loops ? sign(base.loops->tube_m, moved.loops->tube_m, same_share) : '!';
  return signs + (all_said(base) == all_said(moved) ? ",0" : ",*");
}

std::vector<std::string> table_of(const Layout& one) {
  // Signs do not ask for fine cells, and most inputs leave most edges as they were.
  Passing passing{EdgeFields(coarse_edges()), nullptr}, drawing;
  passing.draws = false;
  const Answer base = pass(one.file, Question::design, passing);
  std::vector<std::string> lines;
  Design design = one.file.design;
  walk(record_of(design), [&](const std::string& path, const Key& key, const Slot& slot) {
    const std::string text = nudged(key, slot, design.units);
    // What only the calendar reads is moved in cure_one_at_a_time.cpp.
    if (key.says.only_for == "cure") return;
    if (text.empty() || is_of_winter(path, key) || passed_over().count(path) || is_drilled(path)) return;
    const auto moved = with_key(one.file, path, text);
    if (!moved) return;
    // Rows of one section are read alike: one of each is laid anew.
    if (is_drawn(path) && path.find("[1]") == std::string::npos && path.find('[') != std::string::npos) return;
    if (is_drawn(path)) return lines.push_back(path + "," + text + signs_of_drawing(one.file, *moved, drawing));
    const Answer after = pass(*moved, Question::design, passing);
    std::string signs;
    const bool whole = after.loops && after.envelope && after.point && after.sizes && after.freeze && after.balance;
    for (const Output& output : outputs()) {
      signs += fmt::format(",{}", whole ? sign(output.of(base), output.of(after), same_share) : '!');
    }
    signs += all_said(base) == all_said(after) ? ",0" : ",*";
    lines.push_back(path + "," + text + signs);
  });
  return lines;
}

}  // namespace

TEST_CASE("every input moves what physics says it moves", "[whole]") {
  for (const Layout& one : layouts()) {
    const std::string& name = one.name;
    std::string page =
        "# expected sign of each output when one input of layouts/" + name + ".toml is moved as written\n";
    page += "path,moved to";
    for (const Output& output : outputs()) page += "," + output.name;
    page += ",said\n";
    const std::vector<std::string>& given = one.file.given;
    for (const std::string& line : table_of(one)) {
      page += line + "\n";
      // Guesses stand in the table too, but only what the layout itself says must move something.
      if (std::count(given.begin(), given.end(), line.substr(0, line.find(','))) == 0) continue;
      const std::string signs = line.substr(line.size() - 2 * (outputs().size() + 1));
      INFO(line);
      CHECK(signs.find_first_not_of(",0") != std::string::npos);
    }
    const std::string file = "tests/answer/moves/" + name + ".csv";
    if (std::getenv("SLABWRIGHT_WRITE")) std::ofstream(std::string(SLABWRIGHT_ROOT) + "/" + file) << page;
    CHECK(page == read_text(file));
  }
}
