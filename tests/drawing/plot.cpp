// A plot: nothing on anything, values at their places, words by what they name.
#include "slabwright/drawing_plot.hpp"

#include <cmath>
#include <cstdlib>
#include <fstream>

#include "floors.hpp"
#include "plots.hpp"
#include "support/catch.hpp"

using namespace slabwright;

namespace {

void check_text(const DrawnPlot& drawn) {
  const std::vector<Box> boxes = text_boxes(drawn.picture);
  const Box paper{{0.0, 0.0}, {drawn.picture.width_m, drawn.picture.height_m}};
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    INFO(boxes[i].low.x_m << ' ' << boxes[i].low.y_m << ' ' << boxes[i].high.x_m << ' ' << boxes[i].high.y_m);
    CHECK(within(boxes[i], paper));
    for (std::size_t j = i + 1; j < boxes.size(); ++j) CHECK_FALSE(overlap(boxes[i], boxes[j]));
  }
}

const Layer& layer_of(const DrawnPlot& drawn, const std::string& name) {
  for (const Layer& layer : drawn.picture.layer) {
    if (layer.name == name) return layer;
  }
  throw std::logic_error("no layer of that name");
}

/// Everything drawn lies in the picture.
void check_inside(const DrawnPlot& drawn) {
  const Box paper = grown({{0.0, 0.0}, {drawn.picture.width_m, drawn.picture.height_m}}, 1e-9);
  const auto in = [&](Point p) { return within({p, p}, paper); };
  for (const Layer& layer : drawn.picture.layer) {
    for (const SheetShape& shape : layer.shape) {
      if (const auto* trace = std::get_if<Trace>(&shape)) {
        for (const Piece& piece : trace->path) CHECK((in(piece.from) && in(piece.to)));
      }
      if (const auto* area = std::get_if<Area>(&shape)) {
        for (const Point p : area->ring[0]) CHECK(in(p));
      }
      if (const auto* disc = std::get_if<Disc>(&shape)) CHECK(in(disc->centre));
    }
  }
}

std::vector<Lettering> letterings(const DrawnPlot& drawn, const std::string& layer) {
  std::vector<Lettering> found;
  for (const SheetShape& shape : layer_of(drawn, layer).shape) {
    if (const auto* text = std::get_if<Lettering>(&shape)) found.push_back(*text);
  }
  return found;
}

double apart_m(const Box& box, Point a, Point b) {
  double least = 1.0;
  for (int k = 0; k <= 50; ++k) {
    const double s = k / 50.0, x = a.x_m + s * (b.x_m - a.x_m), y = a.y_m + s * (b.y_m - a.y_m);
    const double dx = std::max({box.low.x_m - x, x - box.high.x_m, 0.0});
    const double dy = std::max({box.low.y_m - y, y - box.high.y_m, 0.0});
    least = std::min(least, std::sqrt(dx * dx + dy * dy));
  }
  return least;
}

}  // namespace

TEST_CASE("no text of a plot touches another, and all lies in the picture") {
  for (const plots::Case& one : plots::awkward()) {
    INFO(one.name);
    const DrawnPlot drawn = draw_plot(one.plot);
    check_text(drawn);
    check_inside(drawn);
    CHECK(drawn.left_out.empty());
    const std::string svg = svg_of(drawn.picture);
    CHECK(floors::xml_fault(svg) == "");
    CHECK(svg == svg_of(draw_plot(one.plot).picture));
    if (const char* folder = std::getenv("SLABWRIGHT_PICTURES"))
      std::ofstream(std::string(folder) + "/" + one.name + ".svg") << svg;
  }
}

TEST_CASE("letters of a plot are read on a phone") {
  constexpr double phone_px = 330.0;
  for (const plots::Case& one : plots::awkward()) {
    const DrawnPlot drawn = draw_plot(one.plot);
    for (const Layer& layer : drawn.picture.layer) {
      for (const SheetShape& shape : layer.shape) {
        const auto* text = std::get_if<Lettering>(&shape);
        if (text) CHECK(text->size_m / drawn.picture.width_m * phone_px >= 11.0);
      }
    }
  }
}

TEST_CASE("no words lie on a curve or a mark") {
  for (const plots::Case& one : plots::awkward()) {
    INFO(one.name);
    const DrawnPlot drawn = draw_plot(one.plot);
    for (const Lettering& text : letterings(drawn, "words")) {
      INFO(text.text);
      const Box box = box_of(text);
      for (const SheetShape& shape : layer_of(drawn, "values").shape) {
        const auto* trace = std::get_if<Trace>(&shape);
        const auto* disc = std::get_if<Disc>(&shape);
        if (disc) CHECK_FALSE(within({disc->centre, disc->centre}, box));
        for (std::size_t k = 0; trace && k < trace->path.size(); ++k)
          CHECK(apart_m(box, trace->path[k].from, trace->path[k].to) > 0.0);
      }
    }
  }
}

TEST_CASE("values stand where the axis says") {
  PlotPanel panel = plots::lines({plots::line("", {{2, 10}, {4, 30}, {8, 20}})});
  panel.mark.push_back({{4, 30}, {}, false});
  panel.y.least = 0.0;
  const DrawnPlot drawn = draw_plot(plots::plot_of(panel));
  const PlotFrame& frame = drawn.frame[0];
  CHECK(frame.low.x == 2.0);
  CHECK(frame.high.x == 8.0);
  CHECK(frame.low.y == 0.0);
  CHECK(frame.high.y == Approx(30.0));
  CHECK(on_paper(frame, {2, 0}).x_m == Approx(frame.area.low.x_m));
  CHECK(on_paper(frame, {5, 15}).x_m == Approx(0.5 * (frame.area.low.x_m + frame.area.high.x_m)));
  CHECK(on_paper(frame, {5, 15}).y_m == Approx(0.5 * (frame.area.low.y_m + frame.area.high.y_m)));
  // The words of a tick stand level with its value.
  for (const Lettering& text : letterings(drawn, "axes")) {
    if (text.text == "20" && text.align == Align::right) CHECK(text.middle.y_m == Approx(on_paper(frame, {2, 20}).y_m));
    if (text.text == "6" && text.align == Align::middle) CHECK(text.middle.x_m == Approx(on_paper(frame, {6, 0}).x_m));
  }
  const auto& shapes = layer_of(drawn, "values").shape;
  const auto& trace = std::get<Trace>(shapes[0]);
  REQUIRE(trace.path.size() == 2);
  CHECK(trace.path[0].to == on_paper(frame, {4, 30}));
  CHECK(std::get<Disc>(shapes.back()).centre == on_paper(frame, {4, 30}));
}

TEST_CASE("stacked bars stand on one another, others side by side") {
  PlotPanel panel;
  panel.bars = {{{3, 4}, {}, PlotTone::dark}, {{1, 2}, {}, PlotTone::light}};
  for (const bool stacked : {false, true}) {
    panel.stacked = stacked;
    const DrawnPlot drawn = draw_plot(plots::plot_of(panel));
    std::vector<Box> bars;
    for (const SheetShape& shape : layer_of(drawn, "values").shape)
      bars.push_back(box_round(std::get<Area>(shape).ring[0]));
    REQUIRE(bars.size() == 4);
    const auto height = [&](double value) {
      return on_paper(drawn.frame[0], {0, value}).y_m - on_paper(drawn.frame[0], {0, 0}).y_m;
    };
    CHECK(bars[1].high.y_m - bars[1].low.y_m == Approx(height(4)));
    CHECK(bars[3].high.y_m - bars[3].low.y_m == Approx(height(2)));
    CHECK(bars[2].low.y_m == Approx(stacked ? bars[0].high.y_m : bars[0].low.y_m));
    CHECK(bars[2].low.x_m == Approx(stacked ? bars[0].low.x_m : bars[0].high.x_m));
  }
}

TEST_CASE("what lies beyond given ends is cut off there") {
  PlotPanel panel = plots::lines({plots::line("", {{0, 0}, {10, 100}, {20, 0}})});
  panel.y.least = 0.0;
  panel.y.most = 50.0;
  Plot plot = plots::plot_of(panel);
  plot.x.least = 2.0;
  const DrawnPlot drawn = draw_plot(plot);
  check_inside(drawn);
  const auto& shapes = layer_of(drawn, "values").shape;
  REQUIRE(shapes.size() == 2);
  const auto& rising = std::get<Trace>(shapes[0]).path;
  const Point from = on_paper(drawn.frame[0], {2, 20}), to = on_paper(drawn.frame[0], {5, 50});
  CHECK(distance_m(rising.front().from, from) < 1e-9);
  CHECK(distance_m(rising.back().to, to) < 1e-9);
}

TEST_CASE("two lines with words are told apart: each is nearer to its own") {
  const plots::Case crossing = plots::awkward()[3];
  const DrawnPlot drawn = draw_plot(crossing.plot);
  const auto words = letterings(drawn, "words");
  REQUIRE(words.size() == 2);
  const PlotPanel& panel = crossing.plot.panel[0];
  for (std::size_t k = 0; k < 2; ++k) {
    const auto distance = [&](std::size_t line) {
      return apart_m(box_of(words[k]), on_paper(drawn.frame[0], panel.line[line].at[0]),
                     on_paper(drawn.frame[0], panel.line[line].at[1]));
    };
    CHECK(words[k].text == panel.line[k].words[0].text);
    CHECK(distance(k) + 0.0005 < distance(1 - k));
  }
}

TEST_CASE("words that find no place are told") {
  PlotPanel panel =
      plots::lines({plots::line("words that are far longer than any plot for a phone is wide", {{0, 1}, {9, 2}})});
  for (int k = 0; k < 40; ++k) panel.mark.push_back({{0.2 * k, 1.5}, plots::words("a marked place"), false});
  const DrawnPlot drawn = draw_plot(plots::plot_of(panel));
  check_text(drawn);
  const std::size_t there = letterings(drawn, "words").size();
  CHECK(there + drawn.left_out.size() == 41);
  CHECK(std::find(drawn.left_out.begin(), drawn.left_out.end(), panel.line[0].words[0].text) != drawn.left_out.end());
}

TEST_CASE("a heading that is wider than the picture is told too") {
  PlotPanel panel = plots::lines({plots::line("", {{0, 1}, {9, 2}})});
  panel.heading = {{"a heading of more words than go beside one another on a phone", ""}, {"and a short one", ""}};
  const DrawnPlot drawn = draw_plot(plots::plot_of(panel));
  CHECK(drawn.left_out == std::vector<std::string>{panel.heading[0].text});
  check_text(drawn);
}

TEST_CASE("panels to be compared have one scale") {
  PlotPanel low = plots::lines({plots::line("", {{0, 0}, {9, 20}})});
  low.y.reaches = 100.0;
  Plot plot = plots::plot_of(low);
  plot.panel.push_back(plots::lines({plots::line("", {{0, 0}, {9, 100}})}));
  const DrawnPlot drawn = draw_plot(plot);
  CHECK(drawn.frame[0].high.y == drawn.frame[1].high.y);
  CHECK(drawn.frame[0].area.low.x_m == drawn.frame[1].area.low.x_m);
  CHECK(drawn.frame[1].area.high.y_m < drawn.frame[0].area.low.y_m);
}

TEST_CASE("panels to be compared keep one scale where one of them needs room for words") {
  PlotPanel worded = plots::bars(12, 1, false);
  worded.bars[0].value.assign(12, 1000.0);
  worded.y.reaches = 1000.0;
  worded.height_m = 0.026;
  PlotPanel plain = worded;
  for (PlotBars& bars : plain.bars) bars.words.clear();
  Plot plot = plots::month_plot(worded);
  plot.panel.push_back(plain);
  const DrawnPlot drawn = draw_plot(plot);
  CHECK(drawn.left_out.empty());
  const DrawnPlot wordless = draw_plot(plots::month_plot(plain));
  CHECK(drawn.frame[0].high.y > wordless.frame[0].high.y);
  CHECK(drawn.frame[0].high.y == drawn.frame[1].high.y);
}

TEST_CASE("numbers of a scale say so, and words bring their own keys") {
  PlotPanel panel = plots::lines({plots::line("", {{0, 1}, {9, 2}})});
  panel.line[0].words = {{"46 F", "freeze.air.dial_degC"}};
  panel.heading = {{"2 ways", "winter.way"}};
  const DrawnPlot drawn = draw_plot(plots::plot_of(panel));
  for (const Lettering& text : letterings(drawn, "axes")) {
    const bool digit = text.text.find_first_of("0123456789") != std::string::npos;
    if (text.text == "2 ways")
      CHECK(text.key == "winter.way");
    else
      CHECK(text.key == (digit ? scale_mark : ""));
  }
  REQUIRE(letterings(drawn, "words").size() == 1);
  CHECK(letterings(drawn, "words")[0].key == "freeze.air.dial_degC");
}

TEST_CASE("a plot that cannot be is a fault of ours") {
  CHECK_THROWS_AS(draw_plot(Plot{}), std::logic_error);
  CHECK_THROWS_AS(draw_plot(plots::plot_of(plots::lines({plots::line("", {{1, 0}, {0, 0}})}))), std::logic_error);
  CHECK_THROWS_AS(draw_plot(plots::plot_of(plots::lines({plots::line("", {{1, std::nan("")}})}))), std::logic_error);
}
