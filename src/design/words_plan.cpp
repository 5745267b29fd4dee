// Worded values of the plan: places measured from two walls, and openings in partitions.
#include <fmt/format.h>

#include "design/split.hpp"
#include "slabwright/design_words.hpp"
#include "slabwright/fields.hpp"

namespace slabwright {
namespace {

constexpr double farthest_m = 1000.0;

/// "12 ft 4 in from west wall".
struct FromWall {
  Reading distance;
  std::string wall;
};
std::optional<FromWall> from_wall(std::string_view text) {
  const auto parts = split_at(text, " from ");
  if (!parts) return std::nullopt;
  return FromWall{read_quantity(parts->first, Dimension::length), parts->second};
}

std::string unread(std::string_view text) {
  return fmt::format("\"{}\" is no place. Write \"26 ft, 14 ft\" (to the right, then up), or \"{}\".", excerpt(text),
                     PlanPlace::example);
}

}  // namespace

std::string read_words(std::string_view text, PlanPlace& place) {
  const std::string plain = plain_characters(text);
  if (plain.find(" from ") == std::string::npos) {
    PlanPlace read;
    const std::string problem = read_words(text, read.at);
    if (problem.empty()) place = read;
    return problem.empty() || plain.find(',') != std::string::npos ? problem : unread(text);
  }
  auto parts = split_at(plain, ",");
  if (!parts) parts = split_at(plain, " and ");
  const auto first = parts ? from_wall(parts->first) : std::nullopt;
  const auto second = parts ? from_wall(parts->second) : std::nullopt;
  if (!first || !second) {
    return fmt::format("\"{}\" names one wall. A place takes two: \"{}\".", excerpt(text), PlanPlace::example);
  }
  for (const FromWall& one : {*first, *second}) {
    if (one.distance.fault != Fault::none) return unread(text);
    if (one.distance.si < 0.0 || one.distance.si > farthest_m) {
      return fmt::format("\"{}\": a place lies between 0 and 1000 m (3280 ft) from a wall.", excerpt(text));
    }
  }
  place = {{}, first->wall, second->wall, first->distance.si, second->distance.si};
  return {};
}

std::string write_words(const PlanPlace& place, System system) {
  if (place.first_wall.empty()) return write_words(place.at, system);
  return fmt::format("{} from {}, {} from {}", write_quantity(place.first_m, Dimension::length, system),
                     place.first_wall, write_quantity(place.second_m, Dimension::length, system), place.second_wall);
}

std::string read_words(std::string_view text, Gap& gap) {
  const std::string plain = plain_characters(text);
  const auto parts = split_at(plain, " at ");
  const Reading nothing{0.0, Fault::not_a_number, 0.0, {}};
  const Reading width = parts ? read_quantity(parts->first, Dimension::length) : nothing;
  Reading at = parts ? read_quantity(parts->second, Dimension::length) : nothing;
  if (at.fault == Fault::no_unit && at.written == 0.0) at.fault = Fault::none;  // zero is zero in any unit
  if (width.fault != Fault::none || at.fault != Fault::none) {
    return fmt::format("\"{}\" is no opening. Write \"{}\": how wide, and where it begins.", excerpt(text),
                       Gap::example);
  }
  if (width.si <= 0.0 || at.si < 0.0 || width.si > farthest_m || at.si > farthest_m) {
    return fmt::format("\"{}\": an opening is wider than nothing and begins on its partition.", excerpt(text));
  }
  gap = {width.si, at.si};
  return {};
}

std::string write_words(const Gap& gap, System system) {
  return write_quantity(gap.width_m, Dimension::length, system) + " at " +
         write_quantity(gap.at_m, Dimension::length, system);
}

}  // namespace slabwright
