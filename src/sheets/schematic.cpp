// The piping schematic of an answer.
#include <fmt/format.h>

#include "sheets/drawings.hpp"
#include "sheets/keyed.hpp"

namespace slabwright::sheets {
namespace {

using report::Kind;

class SchemeDrawn {
 public:
  explicit SchemeDrawn(const Answer& answer)
      : answer_(answer), scheme_(*answer.scheme), system_(answer.file.design.units) {
    const std::string& project = answer.file.design.project.name;
    out_.title = {named_or(project, "design.project.name", "Heated floor"), {": piping schematic", ""}};
    out_.units = system_;
    for (std::size_t i = 0; i < scheme_.node.size(); ++i) add_node(i);
    for (std::size_t i = 0; i < scheme_.branch.size(); ++i) add_branch(i);
    for (std::size_t i = 0; i < scheme_.device.size(); ++i) {
      const SchemeDevice& one = scheme_.device[i];
      out_.device.push_back(
          {one.node, one.column_number, element(one.element, key_of_row("scheme.device", i, "element"), {})});
    }
    out_.notes.push_back(
        {{"Valves that isolate, drains, strainers, gauges and what else the local code asks for are by "
          "others, and are not drawn. Nothing that shuts may stand between the heater and its relief "
          "valve.",
          ""}});
    if (answer.point)
      out_.notes.push_back({{"Flows and temperatures are those in the coldest weather planned for.", ""}});
  }

  DrawnScheme result() { return std::move(out_); }

 private:
  KeyedText figure(Kind kind, double value, std::string key) const {
    return {report::figure(kind, value, system_), std::move(key)};
  }

  void add_node(std::size_t i) {
    const SchemeNode& one = scheme_.node[i];
    DrawnMeeting meeting{one.side == SchemeSide::supply, one.column_number, {}};
    if (one.water_degC) {
      const std::string key = key_of_row("scheme.node", i, "water_degC");
      meeting.water =
          joined({{meeting.supply ? "to the floor " : "back ", ""}, degrees_of(*one.water_degC, system_, key)});
    }
    out_.meeting.push_back(std::move(meeting));
  }

  /// Its word, below it its figures, then what is given with it.
  DrawnElement element(const SchemeElement& one, const std::string& key, const std::vector<KeyedWords>& more) const {
    DrawnElement drawn{static_cast<SchematicSymbol>(one.kind), one.by_others, {{{one.word, key + ".word"}}}};
    const auto add = [&](Kind kind, const std::optional<double>& value, const char* member, const char* before) {
      if (value) drawn.words.push_back({{before, ""}, figure(kind, *value, key + member)});
    };
    add(Kind::boiler, one.power_W, ".power_W", "");
    add(Kind::volume, one.volume_m3, ".volume_m3", "");
    const bool filled = one.kind == SchemeKind::fill;
    const bool across = one.kind == SchemeKind::bypass_valve;
    add(across ? Kind::pressure : Kind::gauge, one.opening_Pa, ".opening_Pa", filled ? "to " : "opens at ");
    drawn.words.insert(drawn.words.end(), more.begin(), more.end());
    return drawn;
  }

  /// What the branch's flow is told beside: its pump, else its first symbol but a heater's safety devices.
  std::size_t bears_flow(const SchemeBranch& branch) const {
    for (std::size_t e = 0; e < branch.element.size(); ++e) {
      if (branch.element[e].kind == SchemeKind::pump) return e;
    }
    return 0;
  }

  KeyedWords flow_of(std::size_t i) const {
    const SchemeBranch& one = scheme_.branch[i];
    if (!one.flow_m3_per_s) return {};
    return {figure(Kind::flow, *one.flow_m3_per_s, key_of_row("scheme.branch", i, "flow_m3_per_s"))};
  }

  void add_branch(std::size_t i) {
    const SchemeBranch& one = scheme_.branch[i];
    DrawnBranch drawn{one.from, one.to, one.column_number, one.runs_back, {}, {}, !one.loop_name.empty(), {}};
    if (drawn.loop) add_loop(drawn, i);
    const std::string list = key_of_row("scheme.branch", i, "element");
    const bool pipe = one.column_number == 0 && !drawn.loop && all_pipe(one);
    for (std::size_t e = 0; e < one.element.size(); ++e) {
      std::vector<KeyedWords> more;
      if (!drawn.loop && !pipe && e == bears_flow(one) && one.flow_m3_per_s) more.push_back(flow_of(i));
      if (one.out_degC && one.element[e].kind == SchemeKind::boiler) {
        more.push_back(
            {{"gives ", ""}, degrees_of(*one.out_degC, system_, key_of_row("scheme.branch", i, "out_degC"))});
      }
      drawn.element.push_back(element(one.element[e], key_of_row(list, e), more));
    }
    if (pipe) drawn.words = pipe_words(i);
    if (!drawn.loop && one.column_number != 0 && all_pipe(one)) drawn.words = flow_of(i);
    out_.branch.push_back(std::move(drawn));
  }

  static bool all_pipe(const SchemeBranch& branch) {
    for (const SchemeElement& e : branch.element) {
      if (e.kind != SchemeKind::pipe) return false;
    }
    return true;
  }

  /// "mains 40 ft, 3.2 gpm"; nothing for the short pieces of a bar.
  KeyedWords pipe_words(std::size_t i) const {
    const SchemeBranch& one = scheme_.branch[i];
    KeyedWords words;
    for (std::size_t e = 0; e < one.element.size(); ++e) {
      if (!one.element[e].length_m) continue;
      const std::string key = key_of_row(key_of_row("scheme.branch", i, "element"), e);
      words = {{one.element[e].word, key + ".word"},
               {" ", ""},
               run_of(*one.element[e].length_m, system_, key + ".length_m")};
    }
    if (!words.empty() && one.flow_m3_per_s) words.push_back({", ", ""});
    for (KeyedText& flow : flow_of(i)) words.push_back(std::move(flow));
    return words;
  }

  void add_loop(DrawnBranch& drawn, std::size_t i) const {
    const SchemeBranch& one = scheme_.branch[i];
    drawn.words = {{one.loop_name, key_of_row("scheme.branch", i, "loop_name")}};
    for (KeyedText& flow : flow_of(i)) {
      drawn.words.push_back({", ", ""});
      drawn.words.push_back(std::move(flow));
    }
    const std::vector<Loop>& loops = answer_.loops->loop;
    for (std::size_t k = 0; k < loops.size(); ++k) {
      if (loops[k].name != one.loop_name) continue;
      drawn.words.push_back({", ", ""});
      drawn.words.push_back(run_of(loops[k].length_m, system_, key_of_row("loops.loop", k, "length_m")));
      const std::size_t m = loops[k].manifold;
      const std::vector<Manifold>& manifolds = answer_.file.design.manifold;
      if (m < manifolds.size()) drawn.manifold = named(manifolds[m].name, key_of_row("design.manifold", m, "name"));
    }
  }

  const Answer& answer_;
  const PipingScheme& scheme_;
  System system_;
  DrawnScheme out_;
};

}  // namespace

std::optional<DrawnScheme> drawn_scheme(const Answer& answer) {
  if (!answer.scheme || !answer.loops) return std::nullopt;
  return SchemeDrawn(answer).result();
}

std::optional<Picture> schematic_picture(const Answer& answer) {
  const auto scheme = drawn_scheme(answer);
  if (!scheme) return std::nullopt;
  return draw_schematic(*scheme).picture;
}

}  // namespace slabwright::sheets
