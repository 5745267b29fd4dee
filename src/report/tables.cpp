// Loop and balance tables for spreadsheets: units in the heads, a point for decimals, no commas between thousands.
#include <fmt/format.h>

#include "report/number.hpp"
#include "slabwright/report.hpp"

namespace slabwright {
namespace {

using report::Kind;

/// A text in a cell. Quoted where it must be, and never taken for a formula.
std::string text_cell(const std::string& text) {
  const bool formula = !text.empty() && std::string_view("=+-@").find(text.front()) != std::string_view::npos;
  const std::string plain = formula ? "'" + text : text;
  if (plain.find_first_of(",\"\r\n") == std::string::npos) return plain;
  std::string quoted = "\"";
  for (const char c : plain) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

class Csv {
 public:
  explicit Csv(System system) : system_(system) {}

  void head(std::string_view word) { cell(std::string(word)); }
  void head(std::string_view word, Kind kind) { cell(fmt::format("{} ({})", word, report::unit(kind, system_))); }
  void cell(const std::string& text) {
    if (!first_) content_ += ',';
    content_ += text_cell(text);
    first_ = false;
  }
  /// A number, which may begin with a minus.
  void cell(Kind kind, double si) {
    if (!first_) content_ += ',';
    content_ += report::plain(kind, si, system_);
    first_ = false;
  }
  void end_row() {
    content_ += "\n";
    first_ = true;
  }
  std::string content() const { return content_; }

 private:
  System system_;
  std::string content_;
  bool first_ = true;
};

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

}  // namespace

std::vector<Sheet> tables_of(const Answer& answer) {
  std::vector<Sheet> sheets;
  if (answer.loops) sheets.push_back({"loops.csv", loops_csv(answer)});
  if (answer.balance) sheets.push_back({"balance.csv", balance_csv(answer)});
  return sheets;
}

}  // namespace slabwright
