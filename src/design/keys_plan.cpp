#include "design/choices.hpp"

namespace slabwright {

Record record_of(WallEntry& x) {
  static constexpr Key keys[] = {
      key<&WallEntry::name>({.meaning = "What it is called, in places measured from it: \"bench wall\"."}),
      key<&WallEntry::from>({.meaning = "One end of its inner face."}),
      key<&WallEntry::to>({.meaning = "The other end."}),
      key<&WallEntry::tube_spacing_m>({.meaning = "Closer tube along it, where loops are drawn; `tube.spacing` when "
                                                  "absent.",
                                       .least = 0.05,
                                       .most = 0.75}),
      key<&WallEntry::band_width_m>(
          {.meaning = "How far into the floor that reaches; 4 ft or 1.2 m when absent.", .least = 0.1, .most = 10.0})};
  return {keys, &x};
}

Record record_of(Partition& x) {
  static constexpr Key keys[] = {
      key<&Partition::name>({.meaning = "What it is called."}),
      key<&Partition::from>({.meaning = "Where its middle line begins."}),
      key<&Partition::to>({.meaning = "Where it ends."}),
      key<&Partition::openings>({.meaning = "Its doorways: how wide, and how far from `from` each begins."}),
      key<&Partition::thickness_m>({.meaning = "How thick it is.",
                                    .us = "4.5 in",
                                    .si = "120 mm",
                                    .source = "practice",
                                    .least = 0.02,
                                    .most = 1.0}),
      key<&Partition::clearance_m>({.meaning = "From its face to the nearest tube, which its fasteners must not meet.",
                                    .us = "4 in",
                                    .si = "100 mm",
                                    .source = "practice",
                                    .least = 0.0,
                                    .most = 1.0})};
  return {keys, &x};
}

Record record_of(NoTubeEntry& x) {
  static constexpr Key keys[] = {
      key<&NoTubeEntry::name>({.meaning = "What is there."}),
      key<&NoTubeEntry::outline>({.meaning = "Its corners, one after the other; or give `place` with `size` or "
                                             "`diameter`."}),
      key<&NoTubeEntry::place>({.meaning = "Its middle."}),
      key<&NoTubeEntry::size>({.meaning = "Across x up the plan."}),
      key<&NoTubeEntry::diameter_m>({.meaning = "Of a round one.", .least = 0.02, .most = 50.0}),
      key<&NoTubeEntry::clearance_m>({.meaning = "From its edge to the nearest tube's centre line.",
                                      .us = "4 in",
                                      .si = "100 mm",
                                      .source = "practice",
                                      .least = 0.0,
                                      .most = 2.0})};
  return {keys, &x};
}

Record record_of(Joint& x) {
  static constexpr Key keys[] = {
      key<&Joint::name>({.meaning = "What it is called."}),
      key<&Joint::kind>(
          {.meaning = "Sawn into the top, or a gap where the concrete ends.", .us = "sawn", .source = "practice"}),
      key<&Joint::from>({.meaning = "Where it begins."}), key<&Joint::to>({.meaning = "Where it ends."}),
      key<&Joint::saw_depth_m>({.meaning = "How deep the saw goes; a quarter of the slab when absent (practice).",
                                .least = 0.005,
                                .most = 0.5})};
  return {keys, &x};
}

Record record_of(Border& x) {
  static constexpr Key keys[] = {key<&Border::name>({.meaning = "What it is called."}),
                                 key<&Border::from>({.meaning = "Where it begins."}),
                                 key<&Border::to>({.meaning = "Where it ends."})};
  return {keys, &x};
}

Record record_of(Anchor& x) {
  static constexpr Key keys[] = {
      key<&Anchor::name>({.meaning = "What it shall hold."}),
      key<&Anchor::place>({.meaning = "The hole; or, with `holes`, the point that those are measured from."}),
      key<&Anchor::holes>({.meaning = "Each hole by its distances from `place`, to the right and up."}),
      key<&Anchor::diameter_m>({.meaning = "Of the hole.",
                                .us = "1/2 in",
                                .si = "12 mm",
                                .source = "practice",
                                .least = 0.002,
                                .most = 0.3}),
      key<&Anchor::depth_m>({.meaning = "Of the hole, from the top of the floor.",
                             .us = "3 in",
                             .si = "80 mm",
                             .source = "practice",
                             .least = 0.005,
                             .most = 1.0})};
  return {keys, &x};
}

}  // namespace slabwright
