// What drawn loops break, and where.
#include <fmt/format.h>

#include "lay_out.hpp"

namespace slabwright::routing {
namespace {

using measured::length;

/// Says one broken place: what, then where it is by two walls.
class Sayer {
 public:
  Sayer(const Design& design, const LayoutTask& task, const std::vector<Loop>& loops)
      : task_(task), loops_(loops), walls_(walls_told_from(design)) {}

  /// Nothing where no listed loop has to do with it, and of lengths, which are said for all loops alike.
  std::optional<Diagnostic> said(const BrokenPlace& broken) const {
    const Loop &loop = loops_[broken.loop], &other = loops_[broken.other];
    const Loop* listed = loop.entry ? &loop : other.entry ? &other : nullptr;
    if (!listed || broken.what == Broken::limit) return std::nullopt;
    const bool alone = broken.loop == broken.other;
    Diagnostic d{Severity::failure, {}, fmt::format("loop[{}].path", *listed->entry + 1), {}, {}};
    switch (broken.what) {
      case Broken::crossing:
        d.code = "layout.drawn-crosses";
        d.sentence = alone ? "{} crosses itself" : "{} crosses {}";
        d.parts = {loop.name};
        if (!alone) d.parts.emplace_back(other.name);
        break;
      case Broken::end:
        d.code = "layout.drawn-off-port";
        d.sentence =
            "an end of {} lies {} off its port (ports stand side by side about the manifold's place, {} apart); "
            "the port is";
        d.parts = {loop.name, length(broken.is_m), length(task_.manifold[loop.manifold].port_pitch_m)};
        break;
      case Broken::bend:
        d.code = "layout.drawn-bend";
        d.sentence = "{} bends to {}, and this tube takes {} or more: straighten it";
        d.parts = {loop.name, length(broken.is_m), length(task_.bend_radius_m)};
        break;
      case Broken::clearance:
        d.code = "layout.drawn-near";
        d.sentence = broken.is_m > 0.0 ? "{} comes as near as {} to a wall or a no-tube area"
                                       : "{} leaves the floor or enters a no-tube area";
        d.parts = {loop.name};
        if (broken.is_m > 0.0) d.parts.emplace_back(length(broken.is_m));
        break;
      case Broken::separation:
        d.code = "layout.drawn-close";
        d.sentence = alone ? "{} comes as near as {} to itself; the spacing is {}"
                           : "{} comes as near as {} to {}; the spacing is {}";
        d.parts = {loop.name, length(broken.is_m)};
        if (!alone) d.parts.emplace_back(other.name);
        d.parts.emplace_back(length(task_.spacing_m));
        break;
      case Broken::limit: break;
    }
    add_place(d, broken.place);
    return d;
  }

 private:
  void add_place(Diagnostic& d, Point place) const {
    if (!walls_) return;
    d.sentence += d.sentence.back() == 's' && d.code == "layout.drawn-off-port" ? " {} from the {}, {} from the {}"
                                                                                : ": {} from the {}, {} from the {}";
    for (const PlanWall* wall : {&walls_->first, &walls_->second}) {
      d.parts.emplace_back(length(from_wall_m(*wall, place)));
      d.parts.emplace_back(wall->name);
    }
  }

  const LayoutTask& task_;
  const std::vector<Loop>& loops_;
  std::optional<std::pair<PlanWall, PlanWall>> walls_;
};

}  // namespace

std::vector<Diagnostic> broken_said(const Design& design, const LayoutTask& task, const TubeLayout& layout,
                                    const std::vector<Loop>& loops) {
  std::vector<Diagnostic> said;
  if (task.drawn.empty()) return said;
  const Sayer sayer(design, task, loops);
  for (const BrokenPlace& broken : broken_places(task, layout)) {
    if (auto one = sayer.said(broken)) said.push_back(std::move(*one));
  }
  return said;
}

}  // namespace slabwright::routing
