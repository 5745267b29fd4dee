// Plants with their sizes, for the tests of what to buy and how it behaves.
#pragma once
#include <algorithm>
#include <optional>
#include <string>

#include "plant/plants.hpp"
#include "slabwright/plant_sizes.hpp"

namespace slabwright::test {

struct Sized {
  Piped piped;
  OperatingPoint point;
  Checked<PlantSizes> sizes;
};

inline Sized sized(const Design& design, double duty_Pa = 30e3) {
  Sized all{piped(design), {}, {}};
  all.point = supply_for(all.piped.plant, all.piped.conditions, all.piped.wanted_W).value.value();
  const FlowTarget target = target_flows(all.piped.plant, &all.piped.envelope);
  all.sizes = size_plant(all.piped.plant, all.piped.envelope, all.point, target, duty_Pa);
  return all;
}

inline bool has(const std::vector<Diagnostic>& said, const std::string& code) {
  return std::any_of(said.begin(), said.end(), [&](const Diagnostic& d) { return d.code == code; });
}

/// Of the first with this code; absent where it was not said.
inline std::optional<Severity> severity_of(const std::vector<Diagnostic>& said, const std::string& code) {
  for (const Diagnostic& d : said)
    if (d.code == code) return d.severity;
  return std::nullopt;
}

}  // namespace slabwright::test
