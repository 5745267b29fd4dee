// Symbols: our own simple shapes, each with its word beside it on the drawing or in its key.
#include "schematic_symbols.hpp"

namespace slabwright::schematic {
namespace {

using namespace drawn;

/// Draws about a place with `flow` ahead and what lies to its left.
class Symbol {
 public:
  Symbol(Point at, Point flow, double half_m, bool dashed)
      : at_(at), flow_(flow), half_m_(half_m), pen_{0.3 * mm, dark, dashed ? Dash::dashes : Dash::solid} {}

  Point place(double ahead, double left) const {
    return shifted(shifted(at_, flow_, ahead * half_m_), across(flow_), left * half_m_);
  }
  void ring(const std::vector<Point>& corners, bool filled = false) {
    Polygon polygon;
    for (const Point p : corners) polygon.push_back(place(p.x_m, p.y_m));
    shapes_.push_back(Area{{polygon}, Fill{filled ? dark : white, Pattern::plain, dark}, pen_});
  }
  void stroke(Point a, Point b) { shapes_.push_back(drawn::stroke(place(a.x_m, a.y_m), place(b.x_m, b.y_m), pen_)); }
  void disc(double ahead, double left, double radius) {
    shapes_.push_back(Disc{place(ahead, left), radius * half_m_, white, pen_});
  }
  void box(double ahead, double left) { ring({{-ahead, -left}, {ahead, -left}, {ahead, left}, {-ahead, left}}); }
  void bow_tie() { ring({{-1, -0.6}, {1, 0.6}, {1, -0.6}, {-1, 0.6}}); }
  /// Back and forth across the flow.
  void zigzag(double from, double to, double wide, int legs) {
    Path path;
    Point last = place(from, 0);
    for (int k = 0; k <= legs; ++k) {
      const double ahead = from + (to - from) * (k + 0.5) / (legs + 1);
      const Point next = place(ahead, k % 2 == 0 ? wide : -wide);
      path.push_back(line(last, next));
      last = next;
    }
    path.push_back(line(last, place(to, 0)));
    shapes_.push_back(Trace{path, pen_});
  }
  std::vector<SheetShape> shapes() { return std::move(shapes_); }

 private:
  Point at_, flow_;
  double half_m_;
  Pen pen_;
  std::vector<SheetShape> shapes_;
};

void valve(Symbol& s, SchematicSymbol symbol) {
  s.bow_tie();
  switch (symbol) {
    case SchematicSymbol::bypass_valve:
      s.zigzag(-0.6, 0.6, 0.0, 1);
      s.stroke({0, 0}, {0, 0.9});
      s.stroke({-0.5, 0.9}, {0.5, 0.9});
      s.stroke({-0.5, 1.2}, {0.5, 1.2});
      break;
    case SchematicSymbol::zone_valve:
      s.stroke({0, 0}, {0, 0.8});
      s.ring({{-0.5, 0.8}, {0.5, 0.8}, {0.5, 1.7}, {-0.5, 1.7}});
      break;
    case SchematicSymbol::balancing_valve:
      s.stroke({0, 0}, {0, 0.8});
      s.disc(0, 1.1, 0.4);
      break;
    default: break;
  }
}

/// Devices that hang on a pipe beside the flow: to its left.
void tap(Symbol& s, SchematicSymbol symbol) {
  s.stroke({0, 0}, {0, 1.1});
  if (symbol == SchematicSymbol::low_water) {
    s.disc(0, 1.8, 0.7);
    s.stroke({-0.25, 1.2}, {-0.25, 2.4});
    return;
  }
  s.ring({{0, 1.1}, {-0.6, 2.0}, {0.6, 2.0}});
  s.ring({{0, 1.1}, {0.9, 0.6}, {0.9, 1.6}});
}

void pump(Symbol& s) {
  s.disc(0, 0, 1.0);
  s.ring({{-0.5, -0.85}, {-0.5, 0.85}, {1.0, 0}}, true);
}

void boiler(Symbol& s) {
  s.box(1.35, 1.7);
  s.zigzag(-0.9, 0.9, 0.8, 3);
}

void shared(Symbol& s) {
  s.box(1.6, 0.9);
  s.stroke({-0.9, -0.9}, {-0.9, 0.9});
  s.stroke({0.9, -0.9}, {0.9, 0.9});
}

void air_separator(Symbol& s) {
  s.disc(0, 0, 1.0);
  s.stroke({0, 1.0}, {0, 1.7});
  s.disc(0, 1.95, 0.25);
}

void tank(Symbol& s) {
  s.disc(0, 0, 1.1);
  s.stroke({0, -1.1}, {0, 1.1});
}

/// Two one-way valves, one after the other.
void fill(Symbol& s) {
  s.ring({{1.0, -0.6}, {1.0, 0.6}, {0.1, 0}});
  s.stroke({0.1, -0.6}, {0.1, 0.6});
  s.ring({{0.0, -0.6}, {0.0, 0.6}, {-0.9, 0}});
  s.stroke({-0.9, -0.6}, {-0.9, 0.6});
}

void check(Symbol& s) {
  s.ring({{-0.8, -0.7}, {-0.8, 0.7}, {0.8, 0}});
  s.stroke({0.8, -0.7}, {0.8, 0.7});
}

}  // namespace

std::vector<SheetShape> symbol_at(const DrawnElement& element, Point at, Point flow, bool small) {
  Symbol s(at, flow, small ? 1.5 * mm : symbol_m, element.by_others);
  switch (element.symbol) {
    case SchematicSymbol::boiler: boiler(s); break;
    case SchematicSymbol::pump: pump(s); break;
    case SchematicSymbol::mixing_valve: s.ring({{0, 0}, {-1, -0.6}, {-1, 0.6}}); break;
    case SchematicSymbol::bypass_valve:
    case SchematicSymbol::balancing_valve:
    case SchematicSymbol::return_valve:
    case SchematicSymbol::zone_valve: valve(s, element.symbol); break;
    case SchematicSymbol::check_valve: check(s); break;
    case SchematicSymbol::shared_piece: shared(s); break;
    case SchematicSymbol::tube: s.zigzag(-4.0, 4.0, 0.7, 7); break;
    case SchematicSymbol::relief_valve:
    case SchematicSymbol::low_water: tap(s, element.symbol); break;
    case SchematicSymbol::air_separator: air_separator(s); break;
    case SchematicSymbol::tank: tank(s); break;
    case SchematicSymbol::fill: fill(s); break;
    case SchematicSymbol::pipe:
    case SchematicSymbol::bar: break;
  }
  return s.shapes();
}

SheetShape arrow_at(Point at, Point flow) {
  const double half = 1.1 * mm;
  const Point tip = shifted(at, flow, half), back = shifted(at, flow, -half);
  return Area{{{tip, shifted(back, across(flow), 0.6 * half), shifted(back, across(flow), -0.6 * half)}},
              Fill{dark, Pattern::plain, dark},
              {0.1 * mm, dark, Dash::solid}};
}

}  // namespace slabwright::schematic
