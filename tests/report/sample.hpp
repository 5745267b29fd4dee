// An answer made by hand, so that what is printed can be known beforehand.
#pragma once
#include "slabwright/report.hpp"
#include "support/layouts.hpp"

namespace slabwright::test {

inline constexpr double ft = 0.3048, gpm = 3.785411784e-3 / 60.0, btu_h = 1055.05585262 / 3600.0;
inline double of_F(double F) { return (F - 32.0) / 1.8; }

LoopPlan sample_loops();
/// Everything present, nothing wrong.
Answer sample(Question question);
/// The building not described: every range is there.
Answer undescribed(Question question);

Diagnostic said(Severity severity, std::string sentence);

bool has(const std::string& text, const std::string& part);
/// The text with every run of spaces and ends of lines as one space, so that where a line ends does not matter.
std::string flat(const std::string& text);
std::vector<std::string> lines_of(const std::string& text);

}  // namespace slabwright::test
