// A piping schematic put together: pipes, meetings, symbols, words.
#include <algorithm>
#include <cmath>
#include <iterator>

#include "schematic_symbols.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace drawn;
using namespace schematic;

constexpr double pipe_pen_m = 0.35 * mm, bar_pen_m = 1.3 * mm, loop_word_m = 2.3 * mm;

class Drawing {
 public:
  explicit Drawing(const DrawnScheme& scheme) : scheme_(scheme), layout_(layout_of(scheme)) {
    meetings();
    for (std::size_t i = 0; i < scheme.branch.size(); ++i) branch(i);
    for (const DrawnDevice& device : scheme.device) hang(device);
    manifolds();
    head();
    foot();
  }

  SchematicSheet result() {
    SchematicSheet sheet;
    sheet.pitch_m = layout_.pitch_m;
    sheet.left_out = std::move(left_out_);
    const KeyedText title = joined(scheme_.title);
    sheet.picture = {layout_.width_m, layout_.height_m, title.text, "Piping schematic, not to scale", {}};
    sheet.picture.title_key = title.key;
    sheet.picture.layer = {{"pipes", std::move(pipe_), {}},
                           {"meetings", std::move(meeting_), {}},
                           {"device-pipes", std::move(device_pipe_), {}},
                           {"symbols", std::move(symbol_), {}},
                           {"flow", std::move(arrow_), {}},
                           {"words", std::move(word_), {}},
                           {"beside", std::move(beside_), {}}};
    return sheet;
  }

 private:
  double x_of(int column) const { return layout_.column_x_m[static_cast<std::size_t>(column - 1)]; }

  void text(Point left, const KeyedText& words, double size_m, bool bold = false,
            std::vector<SheetShape>* to = nullptr) {
    const TextSize size = text_size(words.text, size_m, bold);
    (to ? *to : word_)
        .push_back(Lettering{
            {left.x_m + 0.5 * size.width_m, left.y_m}, words.text, size_m, dark, bold, false, Align::left, words.key});
  }

  void symbol(const DrawnElement& element, Point at, Point flow, bool small) {
    auto shapes = symbol_at(element, at, flow, small);
    symbol_.insert(symbol_.end(), std::make_move_iterator(shapes.begin()), std::make_move_iterator(shapes.end()));
  }

  void meetings() {
    for (std::size_t m = 0; m < scheme_.meeting.size(); ++m) {
      const Rail& rail = layout_.rail[m];
      const Point a{rail.low_x_m, rail.level_m}, b{rail.high_x_m, rail.level_m};
      if (rail.high_x_m > rail.low_x_m) meeting_.push_back(stroke(a, b, {pipe_pen_m, dark, Dash::solid}));
      const DrawnMeeting& one = scheme_.meeting[m];
      if (!one.water.text.empty())
        text({rail.low_x_m + 0.5 * mm, rail.level_m + (one.supply ? 2.6 : -2.6) * mm}, one.water, word_m);
    }
  }

  void branch(std::size_t row) {
    const DrawnBranch& one = scheme_.branch[row];
    if (one.column_number == 0)
      lane(row);
    else if (one.loop)
      loop(one);
    else
      column(one);
  }

  /// From one side to the other, its elements evenly along it with words at their right.
  void column(const DrawnBranch& one) {
    const double x = x_of(one.column_number);
    const Point from{x, layout_.rail[one.from].level_m}, to{x, layout_.rail[one.to].level_m}, flow = unit(from, to);
    pipe_.push_back(stroke(from, to, {pipe_pen_m, dark, Dash::solid}));
    double way = distance_m(from, to);
    std::vector<const DrawnElement*> shown;
    for (const DrawnElement& element : one.element) {
      // Its words stand beside the end of the column.
      if (element.symbol == SchematicSymbol::mixing_valve)
        way -= symbol_m + word_pitch_m * static_cast<double>(lines_of(element).size());
      if (element.symbol == SchematicSymbol::mixing_valve)
        mixing_port(one, element);
      else if (has_symbol(element))
        shown.push_back(&element);
    }
    for (std::size_t k = 0; k < shown.size(); ++k) {
      const double share = (static_cast<double>(k) + 0.75) / (static_cast<double>(shown.size()) + 0.5);
      const Point at = shifted(from, flow, way * share);
      symbol(*shown[k], at, flow, false);
      words_beside(lines_of(*shown[k]), {at.x_m + beside_m(*shown[k]), at.y_m});
    }
    if (shown.empty() && !one.words.empty())
      words_beside({joined(one.words)}, {x + 1.5 * mm, from.y_m + 0.5 * (to.y_m - from.y_m)});
    flow_arrow(shifted(one.runs_back ? to : from, flow, (one.runs_back ? -3.0 : 3.0) * mm), flow, one.runs_back);
  }

  /// The ports of a three-way valve are elements of two branches: it stands where the last of their columns meets the
  /// side, the port of that column towards it, the others and the way out along the side.
  void mixing_port(const DrawnBranch& branch, const DrawnElement& element) {
    int last = 0;
    for (const DrawnBranch& one : scheme_.branch) {
      const bool mixes = std::any_of(one.element.begin(), one.element.end(),
                                     [](const DrawnElement& e) { return e.symbol == SchematicSymbol::mixing_valve; });
      if (mixes && one.to == branch.to) last = std::max(last, one.column_number);
    }
    const bool own = branch.column_number == last;
    const Point at{x_of(last), layout_.rail[branch.to].level_m};
    const double out = scheme_.meeting[branch.to].supply ? 1.0 : -1.0;
    // The others' port and the way out make a whole valve.
    const SchematicSymbol shape = own ? SchematicSymbol::mixing_valve : SchematicSymbol::return_valve;
    symbol({shape, element.by_others, {}}, at, own ? Point{0.0, out} : Point{1.0, 0.0}, false);
    const auto lines = lines_of(element);
    if (own)
      words_beside(lines, {at.x_m + 2.0 * mm,
                           at.y_m - out * (1.1 * symbol_m + 0.5 * word_pitch_m * static_cast<double>(lines.size()))});
    else
      // Above what is written along the way out.
      stack(lines, {at.x_m, at.y_m + out * (0.8 * symbol_m + 1.2 * mm + word_pitch_m)}, out);
  }

  static double beside_m(const DrawnElement& element) {
    const bool wide = element.symbol == SchematicSymbol::boiler;
    return (wide ? 1.8 : 1.15) * symbol_m + 1.2 * mm;
  }

  void words_beside(const std::vector<KeyedText>& lines, Point left_middle) {
    for (std::size_t k = 0; k < lines.size(); ++k) {
      const double y =
          left_middle.y_m + word_pitch_m * (0.5 * static_cast<double>(lines.size() - 1) - static_cast<double>(k));
      text({left_middle.x_m, y}, lines[k], word_m);
    }
  }

  void flow_arrow(Point at, Point flow, bool back) {
    arrow_.push_back(arrow_at(at, back ? Point{-flow.x_m, -flow.y_m} : flow));
  }

  /// Valves at both ends, tube between them, words along it.
  void loop(const DrawnBranch& one) {
    const double x = x_of(one.column_number);
    const Point from{x, layout_.rail[one.from].level_m}, to{x, layout_.rail[one.to].level_m}, flow = unit(from, to);
    pipe_.push_back(stroke(from, to, {pipe_pen_m, dark, Dash::solid}));
    const double way = distance_m(from, to);
    double first = 5.5 * mm;
    for (const DrawnElement& element : one.element) {
      const bool tube = element.symbol == SchematicSymbol::tube, last = element.symbol == SchematicSymbol::return_valve;
      const double along = tube ? 0.5 * way : last ? way - 5.5 * mm : first;
      if (!tube && !last) first += 6.0 * mm;
      if (has_symbol(element)) symbol(element, shifted(from, flow, along), flow, true);
    }
    const KeyedText words = joined(one.words);
    word_.push_back(Lettering{{x + 0.5 * layout_.pitch_m - 0.1 * mm, 0.5 * (from.y_m + to.y_m)},
                              words.text,
                              loop_word_m,
                              dark,
                              false,
                              true,
                              Align::middle,
                              words.key});
    flow_arrow(shifted(to, flow, -10.0 * mm), flow, one.runs_back);
  }

  /// Along a side, or out to a track and back.
  void lane(std::size_t row) {
    const DrawnBranch& one = scheme_.branch[row];
    const Lane& lane = layout_.lane[row];
    const double level = layout_.rail[one.from].level_m;
    const bool bar = std::all_of(one.element.begin(), one.element.end(),
                                 [](const DrawnElement& e) { return e.symbol == SchematicSymbol::bar; });
    const Pen pen{bar && lane.straight ? bar_pen_m : pipe_pen_m, dark, Dash::solid};
    std::vector<Point> corners{{lane.from_x_m, level}, {lane.to_x_m, level}};
    if (!lane.straight)
      corners = {
          {lane.from_x_m, level}, {lane.from_x_m, lane.level_m}, {lane.to_x_m, lane.level_m}, {lane.to_x_m, level}};
    Path path;
    for (std::size_t k = 1; k < corners.size(); ++k) path.push_back(line(corners[k - 1], corners[k]));
    pipe_.push_back(Trace{path, pen});
    if (bar) return;
    const bool leftward = layout_.rail[one.from].low_x_m > layout_.rail[one.to].low_x_m;
    const Point flow{leftward ? -1.0 : 1.0, 0.0};
    double x = lane.words_x_m + 1.5 * mm;
    const double out = scheme_.meeting[one.from].supply ? 1.0 : -1.0;
    if (!one.words.empty()) {
      const KeyedText words = joined(one.words);
      text({x, lane.level_m + out * 2.4 * mm}, words, word_m);
      x += text_size(words.text, word_m, false).width_m + 2.5 * mm;
    }
    for (const DrawnElement& element : one.element) x = along_lane(element, {x, lane.level_m}, flow, out);
    flow_arrow({lane.to_x_m - 2.5 * mm, lane.level_m}, flow, one.runs_back);
  }

  /// A symbol on the pipe with its words outside; where the next one may begin.
  double along_lane(const DrawnElement& element, Point from, Point flow, double out) {
    if (!has_symbol(element)) return from.x_m;
    const auto lines = lines_of(element);
    double wide = 2.0 * symbol_m;
    for (const KeyedText& one : lines) wide = std::max(wide, text_size(one.text, word_m, false).width_m);
    const Point at{from.x_m + 0.5 * wide, from.y_m};
    symbol(element, at, flow, false);
    stack(lines, {at.x_m, at.y_m + out * (1.1 * symbol_m + 1.4 * mm)}, out);
    return from.x_m + wide + 3.0 * mm;
  }

  /// Lines about a middle, from the nearest outward; read from above downwards.
  void stack(const std::vector<KeyedText>& lines, Point nearest, double out) {
    for (std::size_t k = 0; k < lines.size(); ++k) {
      const std::size_t row = out > 0.0 ? lines.size() - 1 - k : k;
      const double y = nearest.y_m + out * word_pitch_m * (static_cast<double>(k) + 0.3);
      word_.push_back(
          Lettering{{nearest.x_m, y}, lines[row].text, word_m, dark, false, false, Align::middle, lines[row].key});
    }
  }

  void hang(const DrawnDevice& device) {
    const bool supply = scheme_.meeting[device.meeting].supply;
    const double x = x_of(device.column_number), level = layout_.rail[device.meeting].level_m,
                 out = supply ? 1.0 : -1.0;
    const Point at{x, level + out * 8.0 * mm};
    device_pipe_.push_back(
        stroke({x, level}, at, {pipe_pen_m, dark, device.element.by_others ? Dash::dashes : Dash::solid}));
    // What is filled in flows to the pipe.
    symbol(device.element, at, {0.0, -out}, false);
    stack(lines_of(device.element, device_words_m), {x, at.y_m + out * (1.1 * symbol_m + 1.2 * mm)}, out);
  }

  /// Each name once, over the loops that hang on it.
  void manifolds() {
    const DrawnBranch* last = nullptr;
    std::vector<const DrawnBranch*> loops;
    for (const DrawnBranch& one : scheme_.branch) {
      if (one.loop) loops.push_back(&one);
    }
    std::stable_sort(loops.begin(), loops.end(),
                     [](const DrawnBranch* a, const DrawnBranch* b) { return a->column_number < b->column_number; });
    for (const DrawnBranch* one : loops) {
      const bool next = !last || last->manifold.text != one->manifold.text;
      last = one;
      if (next && !one->manifold.text.empty())
        text({x_of(one->column_number) + 1.2 * mm, layout_.supply_m + 3.0 * mm}, one->manifold, 2.8 * mm, true);
    }
  }

  void head() {
    const double left = 8.0 * mm, y = layout_.height_m - 8.0 * mm - 2.5 * mm;
    text({left, y}, joined(scheme_.title), title_m, true, &beside_);
    text({left, y - 6.0 * mm},
         {"Not to scale. Supply side above, return side below; from the source at the left outward.", ""}, word_m,
         false, &beside_);
  }

  struct KeySample {
    DrawnElement element;
    const char* words;
  };

  /// What loops have without words beside it, and what dashes mean.
  std::vector<KeySample> samples() const {
    std::vector<KeySample> all;
    const auto has = [&](SchematicSymbol symbol) {
      return std::any_of(scheme_.branch.begin(), scheme_.branch.end(), [&](const DrawnBranch& one) {
        return one.loop && std::any_of(one.element.begin(), one.element.end(),
                                       [&](const DrawnElement& e) { return e.symbol == symbol; });
      });
    };
    const auto add = [&](SchematicSymbol symbol, const char* words) {
      if (has(symbol)) all.push_back({{symbol, false, {}}, words});
    };
    add(SchematicSymbol::balancing_valve, "balancing valve with its flow meter");
    add(SchematicSymbol::zone_valve, "zone valve, shut in this design");
    add(SchematicSymbol::tube, "tube in the floor");
    add(SchematicSymbol::return_valve, "return valve");
    return all;
  }

  void foot() {
    double x = 8.0 * mm, y = layout_.bottom_m - 6.0 * mm;
    const double right = layout_.width_m - 8.0 * mm;
    beside_.push_back(stroke({x, y + 4.5 * mm}, {right, y + 4.5 * mm}, {0.2 * mm, grey, Dash::solid}));
    const auto entry = [&](const std::vector<SheetShape>& sample, const KeyedText& words) {
      const double wide = 12.0 * mm + text_size(words.text, word_m, false).width_m + 5.0 * mm;
      if (x + wide > right) {
        x = 8.0 * mm;
        y -= 5.0 * mm;
      }
      const Onto onto{{x + 5.0 * mm, y}, 1.0};
      for (SheetShape shape : sample) beside_.push_back(moved(std::move(shape), onto));
      text({x + 12.0 * mm, y}, words, word_m, false, &beside_);
      x += wide;
    };
    for (const KeySample& one : samples()) {
      const double half = one.element.symbol == SchematicSymbol::tube ? 6.0 * mm : 4.0 * mm;
      auto shapes = symbol_at(one.element, {0.0, 0.0}, {1.0, 0.0}, true);
      shapes.insert(shapes.begin(), stroke({-half, 0}, {half, 0}, {pipe_pen_m, dark, Dash::solid}));
      entry(shapes, {one.words, ""});
    }
    entry({stroke({-4 * mm, 0}, {4 * mm, 0}, {bar_pen_m, dark, Dash::solid})}, {"manifold bar", ""});
    entry({stroke({-4 * mm, 0}, {4 * mm, 0}, {pipe_pen_m, dark, Dash::solid}), arrow_at({0, 0}, {1, 0})},
          {"pipe, and the way water moves", ""});
    entry({Area{{ring_of(box_about({}, 7.0 * mm, 3.4 * mm))}, std::nullopt, {0.3 * mm, dark, Dash::dashes}}},
          {"dashed: not of this design; by others, as the local code asks", ""});
    notes(y - 5.5 * mm);
  }

  static SheetShape moved(SheetShape shape, const Onto& onto) {
    if (auto* trace = std::get_if<Trace>(&shape)) trace->path = onto(trace->path);
    if (auto* area = std::get_if<Area>(&shape)) {
      for (Polygon& ring : area->ring) ring = onto(ring);
    }
    if (auto* disc = std::get_if<Disc>(&shape)) disc->centre = onto(disc->centre);
    return shape;
  }

  void notes(double y) {
    for (const KeyedWords& note : scheme_.notes) {
      const auto lines = wrapped(note, word_m, layout_.width_m - 16.0 * mm);
      if (y - word_pitch_m * static_cast<double>(lines.size() - 1) < 8.0 * mm) {
        left_out_.push_back(joined(note));
        continue;
      }
      for (const KeyedText& one : lines) {
        text({8.0 * mm, y}, one, word_m, false, &beside_);
        y -= word_pitch_m;
      }
    }
  }

  const DrawnScheme& scheme_;
  Layout layout_;
  std::vector<SheetShape> pipe_, meeting_, device_pipe_, symbol_, arrow_, word_, beside_;
  std::vector<KeyedText> left_out_;
};

}  // namespace

SchematicSheet draw_schematic(const DrawnScheme& scheme) {
  for (const DrawnBranch& one : scheme.branch)
    expects(one.from < scheme.meeting.size() && one.to < scheme.meeting.size(), "draw_schematic: a branch to nowhere");
  for (const DrawnDevice& one : scheme.device)
    expects(one.meeting < scheme.meeting.size(), "draw_schematic: a device on nothing");
  return Drawing(scheme).result();
}

}  // namespace slabwright
