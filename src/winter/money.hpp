// What the year's electricity costs.
#pragma once
#include "winter/way_run.hpp"

namespace slabwright::winter {

std::optional<Tariff> tariff_of(const Electricity& electricity);
/// Of heat alone, hours in the order of the calendar.
MeterUse meter_of(const std::vector<WayHour>& hours);
/// What heat adds to the meter that carries `other_J` a month beside it, and the charge a month; with a meter of its
/// own what that shows.
YearBill heat_bill(const MeterUse& heat, const Electricity& electricity, double other_J);

}  // namespace slabwright::winter
