// What all plots of an answer use: axes in the reader's units, words with their keys.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "sheets/plots.hpp"

namespace slabwright::sheets {

using report::Kind;
using Lean = report::Figure;

/// Values of a kind as the reader's axis has them.
class InUnits {
 public:
  InUnits(Kind kind, System system);
  double operator()(double si) const { return in_unit(si, unit_, dimension_); }
  /// "outdoor temperature, F"
  PlotAxis axis(const std::string& title) const;

 private:
  Dimension dimension_;
  std::string_view unit_;
  bool commas_;
};

/// Rising by hours.
PlotAxis hours_axis(const std::string& title);
double hours(double s);

void add_to(KeyedText& to, const Quote& quote);
void add_to(KeyedText& to, std::string_view words);

/// One line of words and quotes.
template <class... Parts>
KeyedText tell(const Parts&... parts) {
  KeyedText all;
  (add_to(all, parts), ...);
  return all;
}

/// Whether a heading goes on one line of a phone.
bool fits(const std::string& text);
/// A text of the answer as a heading, broken where it is too wide for a phone.
PlotWords heading_of(const Quote& quote);

PlotLine line_of(PlotInk ink, PlotWords words);

/// Values equally far apart in time, the first at no time.
PlotLine course_of(PlotLine line, const std::vector<double>& value, double every_s, const InUnits& units);

inline constexpr const char* month_words[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                              "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

}  // namespace slabwright::sheets
