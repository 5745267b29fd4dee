// The parts of `winter`, a file for each group. There is at least one way.
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "report/text_freeze.hpp"

namespace slabwright::report {

/// Whether what everything costs is known.
bool priced(const Reader& reader);
/// "1,420", "96.40": no decimals from 100 on.
std::string amount(const Reader& reader, double money);
/// The same behind the file's label: "$1,420", "EUR 96.40".
std::string money(const Reader& reader, double money);
/// "kWh", "$": what the head of a column of costs says.
std::string cost_unit(const Reader& reader);
/// What is compared: money where there is a price, else kWh.
double cost_of(const WayResult& way);
std::string cost_words(const Reader& reader, const WayResult& way);
/// "$1,420", "21,300 kWh".
std::string cost_words(const Reader& reader, double use_J, std::optional<double> money);
/// "12 %", of a figure that is at least 0.
std::string percent(double share);
/// "18 h", whole.
std::string whole_h(const Reader& reader, double s);
std::string way_name(const WayResult& way);
/// The same between quotes, for sentences.
std::string quoted_name(const WayResult& way);
/// "3:00", "19:00 the day before": so long before work begins.
std::string starts_at(const Reader& reader, int lead_h);

/// The best; where none passes, what comes nearest: nothing too near freezing, then warm at work.
const WayResult& shown_way(const Winter& winter);
/// How it was run before, the first way in which the second source runs; null where there is none.
const WayResult* run_before(const Winter& winter);
const WayResult* by_source(const Winter& winter);
/// What must stay above its limit and comes nearest to it; null where there is none.
const PlaceInWinter* nearest_place(const WayResult& way);

// text_winter_ways.cpp: all ways in one table, what fails, the months of the best.
Page ways(const Reader& reader);
Block failing(const Reader& reader);
Block months(const Reader& reader);
/// By source, for each month of the heating season and the year.
void add_months(Page& page, const Reader& reader, const WayResult& way);

// text_winter_runs.cpp: how the best way is started, the second source, the frost hold, what was searched.
Page starts(const Reader& reader);
Page doors(const Reader& reader);
Page source_days(const Reader& reader);
Page hold_costs(const Reader& reader);
Page searched(const Reader& reader);

// text_winter_more.cpp: wet floors, hard winters, soil, changes of the shop, last winter's bill.
Page sweating(const Reader& reader);
Page ten_winters(const Reader& reader);
Page soil_history(const Reader& reader);
Block pay_backs(const Reader& reader);
Block bill_fit(const Reader& reader);

// text_winter_full.cpp: what only stands under --full.
void add_winter_full(Page& page, const Reader& reader);

}  // namespace slabwright::report
