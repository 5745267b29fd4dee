#include "slabwright/sitework_lines.hpp"

#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

LaidPiece laid(const Piece& piece) {
  LaidPiece one{piece.from.x_m, piece.from.y_m, piece.to.x_m, piece.to.y_m, {}, {}, {}, ""};
  if (piece.radius_m <= 0.0) return one;
  one.radius_m = piece.radius_m;
  one.centre_x_m = piece.centre.x_m;
  one.centre_y_m = piece.centre.y_m;
  one.turn = piece.turn == Side::left ? "left" : "right";
  return one;
}

}  // namespace

Piece piece_of(const LaidPiece& piece) {
  const Point from{piece.from_x_m, piece.from_y_m}, to{piece.to_x_m, piece.to_y_m};
  if (!piece.radius_m) return line(from, to);
  expects(piece.centre_x_m && piece.centre_y_m, "piece_of: an arc without a centre");
  Piece bend = arc(from, to, {*piece.centre_x_m, *piece.centre_y_m}, piece.turn == "left" ? Side::left : Side::right);
  bend.radius_m = *piece.radius_m;
  return bend;
}

std::optional<LaidLines> laid_lines(const Design& design, const LoopPlan& plan) {
  if (!plan.drawing) return std::nullopt;
  LaidLines lines;
  for (const Loop& loop : plan.loop) {
    if (!loop.path) return std::nullopt;
    LaidLoopLines one{loop.name, {}, {}};
    for (const Piece& piece : *loop.path) one.piece.push_back(laid(piece));
    for (const JointCrossing& at : loop.crossing) {
      const std::string joint = at.joint < design.joint.size() ? design.joint[at.joint].name : "";
      one.crossing.push_back({joint, at.place.x_m, at.place.y_m, at.at_m});
    }
    lines.loop.push_back(std::move(one));
  }
  for (std::size_t i = 0; i < plan.drawing->apron.size(); ++i) {
    LaidApron apron{i < design.manifold.size() ? design.manifold[i].name : "", {}};
    for (const Point& corner : plan.drawing->apron[i]) apron.corner.push_back({corner.x_m, corner.y_m});
    lines.apron.push_back(std::move(apron));
  }
  return lines;
}

}  // namespace slabwright
