// The whole answer for programs. Keys are the members' names, so that each number says its unit; a stage that is absent
// has no key.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "report/json.hpp"
#include "report/text.hpp"
#include "slabwright/contract.hpp"
#include "slabwright/units_exact.hpp"
#include "slabwright/winter_keys.hpp"

namespace slabwright {
namespace {

using Json = nlohmann::ordered_json;

Json object_of(const Record& record, System system);

/// Every number with so many digits, the same on every machine.
void round_to(Json& tree, int digits) {
  if (tree.is_number_float()) {
    const double value = tree.get<double>();
    expects(std::isfinite(value), "json: a figure that is not a finite number");
    tree = std::strtod(fmt::format("{:.{}g}", value, digits).c_str(), nullptr);
  } else if (tree.is_structured()) {
    for (Json& item : tree) round_to(item, digits);
  }
}

/// The slot's value; null where it holds none.
struct ValueOf {
  System system;

  Json operator()(const Number& n) const { return *n.at; }
  Json operator()(const MaybeNumber& m) const { return *m.at ? Json(**m.at) : Json(); }
  Json operator()(const Whole& w) const { return *w.at; }
  Json operator()(const Flag& f) const { return *f.at; }
  Json operator()(const Text& t) const { return *t.at; }
  Json operator()(const TextList& l) const { return *l.at; }
  Json operator()(const RowNumber& r) const { return *r.at; }
  Json operator()(const Numbers& numbers) const {
    Json items = Json::array();
    for (const double number : numbers.at) items.push_back(number);
    return items;
  }
  Json operator()(const Choice& c) const { return std::string(c.names[static_cast<std::size_t>(c.get(c.at))]); }
  Json operator()(const Worded& w) const { return w.given(w.at) ? Json(w.write(w.at, system)) : Json(); }
  Json operator()(const WordedList& l) const {
    Json items = Json::array();
    for (std::size_t i = 0; i < l.size(l.at); ++i) items.push_back((*this)(l.item(l.at, i)));
    return items;
  }
  Json operator()(const Record& r) const { return r.keys.empty() ? Json() : object_of(r, system); }
  Json operator()(const Rows& rows) const {
    Json items = Json::array();
    for (std::size_t i = 0; i < rows.size(rows.at); ++i) items.push_back(object_of(rows.row(rows.at, i), system));
    return items;
  }
};

Json object_of(const Record& record, System system) {
  Json object = Json::object();
  for (const Key& key : record.keys) {
    Json value = std::visit(ValueOf{system}, key.slot(record.at));
    if (!value.is_null()) object[std::string(key.member)] = std::move(value);
  }
  return object;
}

std::string_view word_of(Severity severity) {
  constexpr std::string_view words[] = {"note", "warning", "failure", "problem"};
  return words[static_cast<std::size_t>(severity)];
}

std::string_view word_of(VerdictKind kind) {
  constexpr std::string_view words[] = {"works", "mend", "fails"};
  return words[static_cast<std::size_t>(kind)];
}

Json list_of(const std::vector<Diagnostic>& said, System system) {
  Json items = Json::array();
  for (const Diagnostic& d : said) {
    items.push_back({{"severity", word_of(d.severity)},
                     {"code", d.code},
                     {"about", d.about},
                     {"sentence", report::sentence(d, system)}});
  }
  return items;
}

template <class Stage>
void add(Json& whole, std::string_view name, const std::optional<Stage>& stage, System system) {
  if (stage) whole[std::string(name)] = object_of(reading(*stage), system);
}

void add(Json& ranges, std::string_view name, const std::optional<Three>& three) {
  if (!three) return;
  ranges[std::string(name)] = {{"tight", three->tight}, {"usual", three->usual}, {"poor", three->poor}};
}

/// Of a building that is not described; empty where it is.
Json ranges_of(const Answer& answer) {
  Json ranges = Json::object();
  add(ranges, "loss_W", answer.loss_W);
  add(ranges, "boiler_W", answer.boiler_W);
  add(ranges, "supply_degC", answer.supply_degC);
  add(ranges, "slab_dial_degC", answer.slab_dial_degC);
  add(ranges, "air_dial_degC", answer.air_dial_degC);
  if (answer.poor_fails_degC) ranges["poor_fails_degC"] = *answer.poor_fails_degC;
  return ranges;
}

/// The rows of one stage, each by its description.
template <class Row>
void add_rows(Json& whole, std::string_view name, const std::vector<Row>& rows, System system) {
  if (rows.empty()) return;
  Json items = Json::array();
  for (const Row& row : rows) items.push_back(object_of(reading(row), system));
  whole[std::string(name)] = std::move(items);
}

/// The deciding place through the snap at the best figure of the wall thermostat, an hour apart, to a hundredth: for a
/// plot. Absent where no place decides.
Json snap_of(const Freeze& freeze) {
  constexpr double hundredth = 100.0;
  Json series = Json::object();
  if (!freeze.air) return series;
  const auto place = std::find_if(freeze.place.begin(), freeze.place.end(), [&](const PlaceAtSetting& p) {
    return p.name == freeze.air->decides && !p.air.gain_share.empty();
  });
  if (place == freeze.place.end()) return series;
  series["place"] = place->name;
  series["air_degC"] = freeze.air->best_degC;
  series["every_s"] = hour_s;
  Json after = Json::array();
  for (std::size_t i = 0; i < place->air.gain_share.size(); ++i) {
    const double hours = moment_s(i) / hour_s;
    if (std::abs(hours - std::round(hours)) > 1e-9) continue;
    const double degC = place->air.gain_share[i] * freeze.air->best_degC + place->air.base_degC[i];
    after.push_back(std::round(hundredth * degC) / hundredth);
  }
  series["place_degC"] = std::move(after);
  return series;
}

/// What was read, what it says, and the settings that follow.
void add_read(Json& whole, const Answer& answer, System system) {
  if (answer.meters) {
    whole["readings"] = object_of(reading(answer.meters->readings), system);
    constexpr double wide_open_turns = 1e8;
    for (const double turns : answer.meters->turns)
      whole["readings"]["turns"].push_back(turns > wide_open_turns ? Json("open") : Json(turns));
  }
  add(whole, "read_back", answer.read_back, system);
  if (answer.read_back) add(whole["read_back"], "settings", answer.read_back->settings, system);
  add(whole, "fitted", answer.fitted, system);
  if (answer.fitted) add(whole["fitted"], "settings", answer.fitted->settings, system);
}

/// The year in every way, what was searched and what the bill says of it.
void add_ways(Json& whole, const Answer& answer, System system) {
  add(whole, "winter", answer.winter, system);
  if (!answer.winter) return;
  add(whole["winter"], "search", answer.winter->search, system);
  add(whole["winter"], "fit", answer.winter->fit, system);
  add(whole["winter"], "series", answer.winter->series, system);
  if (answer.winter->series) add(whole["winter"]["series"], "week", answer.winter->series->week, system);
}

/// What the key at a path means; empty where there is none.
std::string meaning_of(const Design& design, std::string_view path) {
  const Key* key = key_at(design, path);
  return key ? std::string(key->says.meaning) : std::string();
}

Json sensitivities_of(const Answer& answer) {
  Json items = Json::array();
  for (const Sensitivity& s : answer.sensitivity) {
    Json item = {{"path", s.path},
                 {"guess", s.guess},
                 {"meaning", meaning_of(answer.file.design, s.path)},
                 {"boiler_W", s.boiler_W}};
    if (s.hold_K) item["hold_K"] = *s.hold_K;
    items.push_back(std::move(item));
  }
  return items;
}

Json changes_of(const Answer& answer) {
  Json items = Json::array();
  for (const FreezeChange& c : answer.change) {
    Json item = {{"what", c.what}, {"before_pour", c.before_pour}};
    if (c.slab_dial_degC) item["slab_dial_degC"] = *c.slab_dial_degC;
    item["air_dial_degC"] = c.air_dial_degC;
    items.push_back(std::move(item));
  }
  return items;
}

Json guesses_of(const DesignFile& file) {
  Json items = Json::array();
  for (const Assumption& a : file.assumed)
    items.push_back(
        {{"path", a.path}, {"text", a.text}, {"source", a.source}, {"meaning", meaning_of(file.design, a.path)}});
  return items;
}

/// What the user gave, as a design file would write it.
Json yours_of(const DesignFile& file) {
  Json items = Json::array();
  const Record design = reading(file.design);
  for (const std::string& path : file.given) {
    const auto found = find_path(design, path);
    if (!found) continue;
    items.push_back({{"path", path},
                     {"text", write_out(*found->key, found->slot, file.design.units)},
                     {"meaning", std::string(found->key->says.meaning)}});
  }
  return items;
}

}  // namespace

Json report::tree_of(const Answer& answer, int digits) {
  const System system = answer.file.design.units;
  Json whole = Json::object();
  whole["question"] = report::question_word(answer.wishes.question);
  whole["verdict"] = {{"kind", word_of(answer.verdict.kind)}, {"reasons", list_of(answer.verdict.reasons, system)}};
  whole["lacking"] = answer.lacking;
  whole["design"] = object_of(reading(answer.file.design), system);
  whole["given"] = answer.file.given;
  whole["yours"] = yours_of(answer.file);
  whole["assumed"] = guesses_of(answer.file);
  add(whole, "loops", answer.loops, system);
  add(whole, "cuts", answer.cuts, system);
  add(whole, "materials", answer.materials, system);
  add(whole, "plan", answer.plan, system);
  add(whole, "stakes", answer.stakes, system);
  add(whole, "laid", answer.laid, system);
  if (answer.better) add_rows(whole, "better_place", *answer.better, system);
  add(whole, "drill", answer.drill, system);
  add(whole, "control", answer.control, system);
  add(whole, "drill_bands", answer.drill_bands, system);
  add(whole, "cure", answer.cure, system);
  add(whole, "pressure_test", answer.pressure_test, system);
  add(whole, "envelope", answer.envelope, system);
  add(whole, "floor", answer.floor, system);
  add(whole, "balance", answer.balance, system);
  add_read(whole, answer, system);
  add(whole, "point", answer.point, system);
  add(whole, "shut", answer.shut, system);
  add(whole, "sizes", answer.sizes, system);
  add(whole, "scheme", answer.scheme, system);
  add(whole, "curves", answer.curves, system);
  add(whole, "by_outdoor", answer.by_outdoor, system);
  add(whole, "field", answer.field, system);
  add(whole, "freeze", answer.freeze, system);
  add(whole, "outage", answer.outage, system);
  if (answer.freeze)
    if (Json snap = snap_of(*answer.freeze); !snap.empty()) whole["snap"] = std::move(snap);
  add_rows(whole, "fault", answer.fault, system);
  add_rows(whole, "recovery", answer.recovery, system);
  add_rows(whole, "sensor", answer.sensor, system);
  add(whole, "turn_off", answer.turn_off, system);
  add(whole, "courses", answer.courses, system);
  add_rows(whole, "edge_section", answer.edge_section, system);
  add_ways(whole, answer, system);
  add(whole, "bands", answer.bands, system);
  add(whole, "sums", answer.sums, system);
  if (const Json ranges = ranges_of(answer); !ranges.empty()) whole["ranges"] = ranges;
  whole["sensitivity"] = sensitivities_of(answer);
  whole["change"] = changes_of(answer);
  add_rows(whole, "remedy", answer.remedy, system);
  whole["said"] = list_of(answer.said, system);
  round_to(whole, digits);
  return whole;
}

std::string json_of(const GaugeAnswer& answer) {
  Json whole = Json::object();
  whole["question"] = "gauge";
  whole.update(object_of(reading(answer), System::si));
  round_to(whole, report::usual_digits);
  return whole.dump(2) + "\n";
}

std::string json_of(const Answer& answer, int digits) {
  // What a user's file holds may be no valid text; the answer still is.
  return report::tree_of(answer, digits).dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

}  // namespace slabwright
