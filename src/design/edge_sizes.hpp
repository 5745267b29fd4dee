// Sizes of [edge] that mean something only beside what they are the sizes of.
#pragma once
#include <string_view>

namespace slabwright {

struct EdgeSize {
  std::string_view word, of;                ///< "wing_width" of "wing_insulation"
  std::string_view us, si;                  ///< practice, where it is absent; empty: absent is a meaning of its own
  std::string_view us_example, si_example;  ///< of what it is the size of
};

inline constexpr EdgeSize edge_sizes[] = {{"footing_depth", "stem_wall", "48 in", "1.2 m", "8 in", "200 mm"},
                                          {"footing_width", "stem_wall", "", "", "8 in", "200 mm"},
                                          {"footing_thickness", "footing_width", "8 in", "200 mm", "16 in", "400 mm"},
                                          {"thickened_width", "thickened_depth", "12 in", "300 mm", "12 in", "300 mm"},
                                          {"inside_insulation", "stem_wall", "", "", "8 in", "200 mm"},
                                          {"inside_depth", "inside_insulation", "24 in", "600 mm", "R-10", "1.8 m2K/W"},
                                          {"flat_width", "flat_insulation", "24 in", "600 mm", "R-10", "1.8 m2K/W"},
                                          {"wing_width", "wing_insulation", "24 in", "600 mm", "R-10", "1.8 m2K/W"},
                                          {"wing_depth", "wing_insulation", "12 in", "300 mm", "R-10", "1.8 m2K/W"},
                                          {"apron_length", "apron_thickness", "48 in", "1.2 m", "5 in", "120 mm"},
                                          {"apron_gap", "apron_thickness", "", "", "5 in", "120 mm"}};

}  // namespace slabwright
