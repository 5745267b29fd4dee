// What stands beside the floor: title, scale, north, key, list of loops, notes.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "plan_sheet.hpp"
#include "slabwright/units_exact.hpp"

namespace slabwright::drawn {
namespace {

constexpr double row_m = 3.5 * mm, sample_m = 13.0 * mm;

Lettering left_text(Point left, const KeyedText& text, double size_m, bool bold = false) {
  const TextSize size = text_size(text.text, size_m, bold);
  return {{left.x_m + 0.5 * size.width_m, left.y_m}, text.text, size_m, dark, bold, false, Align::left, text.key};
}

Lettering right_text(Point right, const KeyedText& text, double size_m) {
  const TextSize size = text_size(text.text, size_m, false);
  return {{right.x_m - 0.5 * size.width_m, right.y_m}, text.text, size_m, dark, false, false, Align::right, text.key};
}

SheetShape moved(SheetShape shape, Point by) {
  const Onto onto{by, 1.0};
  if (auto* trace = std::get_if<Trace>(&shape)) trace->path = onto(trace->path);
  if (auto* area = std::get_if<Area>(&shape)) {
    for (Polygon& ring : area->ring) ring = onto(ring);
  }
  if (auto* disc = std::get_if<Disc>(&shape)) disc->centre = onto(disc->centre);
  if (auto* text = std::get_if<Lettering>(&shape)) text->middle = onto(text->middle);
  return shape;
}

/// Writes down the column from its top.
class Writer {
 public:
  explicit Writer(const Box& box) : box_(box), y_(box.high.y_m) {}

  double left() const { return box_.low.x_m; }
  double width() const { return box_.high.x_m - box_.low.x_m; }
  double room() const { return y_ - box_.low.y_m; }
  double y() const { return y_; }
  void down(double by_m) { y_ -= by_m; }
  void put(SheetShape shape) { shapes_.push_back(std::move(shape)); }
  void paragraph(const KeyedWords& text, double size_m, double indent_m, bool bold = false) {
    // Bold letters are wider than the lines are broken for.
    for (const KeyedText& one : wrapped(text, size_m, (width() - indent_m) / (bold ? 1.27 : 1.0))) {
      down(1.45 * size_m);
      put(left_text({left() + indent_m, y_ + 0.5 * size_m}, one, size_m, bold));
    }
  }
  void rule() {
    down(1.6 * mm);
    put(stroke({left(), y_}, {left() + width(), y_}, {0.2 * mm, grey, Dash::solid}));
    down(0.8 * mm);
  }
  std::vector<SheetShape> shapes_;

 private:
  Box box_;
  double y_;
};

KeyedWords scale_words(const DrawnFloor& plan, const Frame& frame) {
  const auto mark = [](std::string text) { return KeyedText{std::move(text), scale_mark}; };
  KeyedWords words{{"scale ", ""}, mark(fmt::format("1:{}", frame.denominator))};
  const auto equals = [&](std::string paper, std::string floor) {
    for (const KeyedText& part : {KeyedText{" (", ""}, mark(std::move(paper)), KeyedText{" = ", ""},
                                  mark(std::move(floor)), KeyedText{")", ""}})
      words.push_back(part);
  };
  static constexpr std::array<std::pair<int, const char*>, 8> inches{
      {{12, "1"}, {16, "3/4"}, {24, "1/2"}, {32, "3/8"}, {48, "1/4"}, {64, "3/16"}, {96, "1/8"}, {192, "1/16"}}};
  if (plan.units == System::us) {
    const auto found =
        std::find_if(inches.begin(), inches.end(), [&](const auto& one) { return one.first == frame.denominator; });
    if (found != inches.end())
      equals(fmt::format("{} in", found->second), "1 ft");
    else if (frame.denominator % 12 == 0)
      equals("1 in", fmt::format("{} ft", frame.denominator / 12));
  }
  words.push_back({" where printed full size on ", ""});
  const std::size_t by = frame.paper.find(" x ");
  words.push_back(mark(frame.paper.substr(0, by)));
  if (by != std::string::npos) words.push_back({" x ", ""}), words.push_back(mark(frame.paper.substr(by + 3)));
  words.push_back({" paper", ""});
  return words;
}

/// Four fields of a round length, as long as fits.
void scale_bar(Writer& writer, const DrawnFloor& plan, const Frame& frame) {
  const bool us = plan.units == System::us;
  const std::vector<double> fields = us ? std::vector<double>{0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 25.0, 50.0, 100.0}
                                        : std::vector<double>{0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0, 25.0};
  const double unit_m = us ? foot_m : 1.0;
  double number = fields[0];
  for (const double one : fields) {
    if (4.0 * one * unit_m * frame.onto.ratio <= writer.width() - 8.0 * mm) number = one;
  }
  writer.down(4.0 * mm);
  const double step = number * unit_m * frame.onto.ratio, x = writer.left() + 3.0 * mm;
  for (int k = 0; k < 4; ++k) {
    const Box box{{x + k * step, writer.y()}, {x + (k + 1) * step, writer.y() + 1.6 * mm}};
    writer.put(
        Area{{ring_of(box)}, Fill{k % 2 == 0 ? dark : white, Pattern::plain, dark}, {0.2 * mm, dark, Dash::solid}});
  }
  const std::string unit_words = us ? "ft" : "m";
  for (const int k : {0, 2, 4}) {
    const std::string value = fmt::format("{:g}", k * number);
    const Lettering text{{x + k * step, writer.y() - 2.0 * mm},
                         k == 4 ? value + " " + unit_words : value,
                         small_text_m,
                         dark,
                         false,
                         false,
                         Align::middle,
                         scale_mark};
    writer.put(text);
  }
  writer.down(4.0 * mm);
}

void north(Writer& writer, const DrawnFloor& plan) {
  const double radius = 5.0 * mm;
  writer.down(2.0 * radius + 6.5 * mm);
  const Point centre{writer.left() + radius + 4.5 * mm, writer.y() + radius + 3.0 * mm};
  writer.put(Disc{centre, radius, std::nullopt, {0.2 * mm, dark, plan.north ? Dash::solid : Dash::dashes}});
  const Point words{writer.left() + 2.0 * radius + 11.0 * mm, centre.y_m};
  if (!plan.north) {
    writer.put(left_text(words, {"north: mark it by hand", ""}, text_m));
    return;
  }
  const Point up = unit({}, *plan.north), side = across(up);
  const Point tip = shifted(centre, up, radius), tail = shifted(centre, up, -radius);
  const Polygon left{tip, shifted(tail, side, 0.45 * radius), shifted(centre, up, -0.55 * radius)};
  const Polygon right{tip, shifted(tail, side, -0.45 * radius), shifted(centre, up, -0.55 * radius)};
  writer.put(Area{{left}, Fill{dark, Pattern::plain, dark}, {0.2 * mm, dark, Dash::solid}});
  writer.put(Area{{right}, Fill{white, Pattern::plain, dark}, {0.2 * mm, dark, Dash::solid}});
  writer.put(Lettering{shifted(centre, up, radius + 2.2 * mm), "N", 3.2 * mm, dark, true, false, Align::middle});
  writer.put(left_text(words, {plan.north_words, ""}, text_m));
}

void key(Writer& writer, const std::vector<KeyLine>& lines_of_key) {
  for (const KeyLine& one : lines_of_key) {
    const auto lines = wrapped(one.words, small_text_m, writer.width() - sample_m - 1.0 * mm);
    const double height = std::max(5.4 * mm, 3.0 * mm * static_cast<double>(lines.size()) + 1.2 * mm);
    writer.down(height);
    const double middle = writer.y() + 0.5 * height;
    for (const SheetShape& shape : one.sample)
      writer.put(moved(shape, {writer.left() + 0.5 * (sample_m - 1.0 * mm), middle}));
    for (std::size_t k = 0; k < lines.size(); ++k) {
      const double y = middle + 3.0 * mm * (0.5 * static_cast<double>(lines.size() - 1) - static_cast<double>(k));
      writer.put(left_text({writer.left() + sample_m, y}, lines[k], small_text_m));
    }
  }
}

/// Loops of each manifold: number, port, length; in two columns. False where there is no room.
bool loop_list(Writer& writer, const DrawnFloor& plan) {
  std::vector<std::vector<const DrawnLoop*>> of(std::max<std::size_t>(plan.manifold.size(), 1));
  for (const DrawnLoop& loop : plan.loop) of[std::min(loop.manifold, of.size() - 1)].push_back(&loop);
  double needed = 0.0;
  for (const auto& loops : of) needed += row_m * (static_cast<double>((loops.size() + 1) / 2) + 1.3);
  if (needed > writer.room()) return false;
  for (std::size_t m = 0; m < of.size(); ++m) {
    if (of[m].empty()) continue;
    const KeyedText name = m < plan.manifold.size() ? plan.manifold[m].name : KeyedText{};
    writer.paragraph({name, {name.text.empty() ? "loop, port, length" : ": loop, port, length", ""}}, small_text_m,
                     0.0);
    const std::size_t rows = (of[m].size() + 1) / 2;
    for (std::size_t k = 0; k < of[m].size(); ++k) {
      const double half = 0.5 * writer.width(), x = writer.left() + (k < rows ? 0.0 : half + 1.0 * mm);
      const double y = writer.y() - row_m * (static_cast<double>(k % rows) + 0.6);
      writer.put(left_text({x, y}, of[m][k]->number, small_text_m, true));
      writer.put(right_text({x + 0.55 * half, y}, of[m][k]->port, small_text_m));
      writer.put(right_text({x + half - 2.0 * mm, y}, of[m][k]->length, small_text_m));
    }
    writer.down(row_m * static_cast<double>(rows) + 0.8 * mm);
  }
  return true;
}

}  // namespace

Column column_of(const DrawnFloor& plan, const Frame& frame, const ColumnText& text,
                 const std::vector<KeyedText>& left_out_of_plan) {
  Writer writer(frame.column);
  Column column;
  writer.paragraph(plan.title, title_m, 0.0, true);
  writer.down(0.8 * mm);
  writer.paragraph(scale_words(plan, frame), text_m, 0.0);
  for (const KeyedText& one : text.sentence) writer.paragraph({one}, text_m, 0.0);
  scale_bar(writer, plan, frame);
  north(writer, plan);
  writer.rule();
  key(writer, text.key);
  if (text.loops) writer.rule();
  if (text.loops && !loop_list(writer, plan)) column.left_out.push_back({"list of loops", ""});
  const auto say = [&](const KeyedWords& sentence) {
    const double lines = static_cast<double>(wrapped(sentence, text_m, writer.width()).size());
    if (1.45 * text_m * lines > writer.room())
      column.left_out.push_back(joined(sentence));
    else
      writer.paragraph(sentence, text_m, 0.0);
  };
  if (!left_out_of_plan.empty()) {
    KeyedWords words{{"No place on the plan for: ", ""}};
    for (const KeyedText& one : left_out_of_plan) {
      if (&one != &left_out_of_plan[0]) words.push_back({", ", ""});
      words.push_back(one);
    }
    say(words);
  }
  if (!plan.notes.empty()) writer.rule();
  for (const KeyedWords& note : plan.notes) say(note);
  column.shape = std::move(writer.shapes_);
  return column;
}

}  // namespace slabwright::drawn
