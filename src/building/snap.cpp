#include <algorithm>
#include "slabwright/building_snap.hpp"
#include "slabwright/climate_snap.hpp"
namespace slabwright {
Snap snap_of(const Design& design, const WeatherYear*) {
  SnapShape shape;
  shape.before_degC = std::max(*design.climate.outdoor_degC, *design.climate.coldest_degC);
  shape.lowest_degC = *design.climate.coldest_degC;
  const ColdSnap snap = made_up_snap(shape);
  return {snap.hourly_degC, snap.lead_hours, shape.lowest_degC, shape.lowest_degC + 5.0, "3 days"};
}
}  // namespace slabwright
