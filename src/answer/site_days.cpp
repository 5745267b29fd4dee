// The days of the site: the pressure test, the pour, the first heat.
#include "answer/pass.hpp"
#include "slabwright/climate_statistics.hpp"
#include "slabwright/climate_winter.hpp"

namespace slabwright {

void add_site_days(Answer& answer, const WeatherYear* weather) {
  const Design& design = answer.file.design;
  const Monthly months = weather ? month_means_degC(weather->dry_bulb_degC)
                                 : usual_normals(design.climate.mean_degC, design.climate.half_swing_K).mean_degC;
  std::optional<double> supply_degC;
  if (answer.point) supply_degC = answer.point->supply_degC;
  answer.cure = cure_calendar(design, supply_degC, months);
  answer.pressure_test = pressure_test(design, months);
}

}  // namespace slabwright
