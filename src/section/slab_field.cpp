// The section's field for a few floor films, and what lies between them.
#include <algorithm>
#include <cmath>
#include <iterator>

#include "response.hpp"
#include "slabwright/contract.hpp"

namespace slabwright {
namespace {

using namespace section;

/// Films of EN 1264, with room on both sides: 6 over a floor as warm as its room, 6.5 over a cold one, 13.4 over one
/// that is 60 K warmer.
constexpr double tabled_films_W_per_m2K[] = {5.5, 7.0, 9.0, 11.5, 14.0};

/// A face of one temperature, plastic tubes in concrete, water that all but stands.
constexpr double tabled_evened_share[] = {1.0, 0.6, 0.1, -0.4, -0.8};

SectionWeights weights_of(const TubeRowWeights& w) { return {w.tube_share, w.above_share, w.below_share}; }

/// A temperature of the top face, seen on the floor's own face above the layers lumped into its film: same heat.
SectionWeights through_layers(SectionWeights top, double lumped_W_per_m2K, double film_W_per_m2K) {
  const double share = lumped_W_per_m2K / film_W_per_m2K;
  return {top.tube_share * share, 1.0 - share + top.room_share * share, top.below_share * share};
}

/// From the water. Floor temperatures are those above the covering.
SectionResponse response_of(const TubeRowResponse& r, double lumped_W_per_m2K, double film_W_per_m2K) {
  const auto floor = [&](const TubeRowWeights& w) {
    return through_layers(weights_of(w), lumped_W_per_m2K, film_W_per_m2K);
  };
  SectionResponse out;
  out.room_W_per_m_K = r.above_W_per_m_K;
  out.below_W_per_m_K = r.below_W_per_m_K;
  out.through_W_per_m_K = r.through_W_per_m_K;
  out.floor_mean = floor(r.floor_mean);
  out.floor_over_tube = floor(r.floor_over_tube);
  out.floor_midway = floor(r.floor_midway);
  out.plane_midway = weights_of(r.plane_midway);
  out.error_share = r.error.above_share;
  return out;
}

void add_share(SectionWeights& sum, const SectionWeights& w, double share) {
  sum.tube_share += share * w.tube_share;
  sum.room_share += share * w.room_share;
  sum.below_share += share * w.below_share;
}

void add_share(SectionResponse& sum, const SectionResponse& r, double share) {
  sum.room_W_per_m_K += share * r.room_W_per_m_K;
  sum.below_W_per_m_K += share * r.below_W_per_m_K;
  sum.through_W_per_m_K += share * r.through_W_per_m_K;
  add_share(sum.floor_mean, r.floor_mean, share);
  add_share(sum.floor_over_tube, r.floor_over_tube, share);
  add_share(sum.floor_midway, r.floor_midway, share);
  add_share(sum.plane_midway, r.plane_midway, share);
  sum.error_share = std::max(sum.error_share, r.error_share);
}

/// Bare floor and floor under mats side by side over one tube. The places watched are those of the bare floor: nobody
/// stands under a pallet, and a sensor belongs beside it.
SectionResponse side_by_side(const Section& s, const SectionResponse& bare, const SectionResponse& matted) {
  SectionResponse both;
  add_share(both, bare, 1.0 - s.matted_share);
  add_share(both, matted, s.matted_share);
  both.floor_over_tube = bare.floor_over_tube;
  both.floor_midway = bare.floor_midway;
  both.plane_midway = bare.plane_midway;
  return both;
}

/// A response for each tube, from the water.
std::vector<SectionResponse> solved_under(const Section& s, double film_W_per_m2K,
                                          const std::vector<double>& tube_mK_per_W) {
  const auto floor = [&](double mat_m2K_per_W) {
    const TubeRow row = tube_row(s, film_W_per_m2K, mat_m2K_per_W);
    std::vector<SectionResponse> all;
    for (const TubeRowResponse& r : tube_row_responses(row, tube_mK_per_W, {.tolerance_share = 1e-5})) {
      all.push_back(response_of(r, row.above_W_per_m2K, film_W_per_m2K));
    }
    return all;
  };
  std::vector<SectionResponse> responses = floor(0.0);
  if (s.matted_share <= 0.0) return responses;
  const std::vector<SectionResponse> matted = floor(s.mat_m2K_per_W);
  for (std::size_t i = 0; i < responses.size(); ++i) responses[i] = side_by_side(s, responses[i], matted[i]);
  return responses;
}

/// A film in series with what lies between it and the tube plane.
double to_plane_W_per_m2K(const Section& s, double film_W_per_m2K) {
  return 1.0 / (1.0 / film_W_per_m2K + plane_m2K_per_W(s));
}

/// Lagrange's polynomial through all nodes: the share of node `i` at `at`.
double share_of(const std::vector<double>& nodes, std::size_t i, double at) {
  double share = 1.0;
  for (std::size_t j = 0; j < nodes.size(); ++j) {
    if (j != i) share *= (at - nodes[j]) / (nodes[i] - nodes[j]);
  }
  return share;
}

SlabField solve_slab(const Section& s) {
  expects(tube_fits(s), "section: the tube does not lie within its layer");
  SlabField field;
  field.film_W_per_m2K.assign(std::begin(tabled_films_W_per_m2K), std::end(tabled_films_W_per_m2K));
  field.evened_share.assign(std::begin(tabled_evened_share), std::end(tabled_evened_share));
  std::vector<double> tubes;
  for (const double share : field.evened_share) tubes.push_back(tube_mK_per_W_for(s, share));
  for (const double film : field.film_W_per_m2K) {
    field.plane_W_per_m2K.push_back(to_plane_W_per_m2K(s, film));
    const std::vector<SectionResponse> from_water = solved_under(s, film, tubes);
    for (std::size_t i = 0; i < tubes.size(); ++i) {
      field.at_face.push_back(with_resistance(from_water[i], -tubes[i]));
    }
  }
  return field;
}

/// Heat through the film is the floor's rise over the room: the mean floor follows from the conductances.
SectionWeights floor_mean_of(const SectionResponse& r, double spacing_m, double film_W_per_m2K) {
  const double film_W_per_m_K = film_W_per_m2K * spacing_m;
  const double tube = r.room_W_per_m_K / film_W_per_m_K, below = r.through_W_per_m_K / film_W_per_m_K;
  return {tube, 1.0 - tube - below, below};
}

}  // namespace

Section with_field(Section section) {
  section.field = std::make_shared<const SlabField>(solve_slab(section));
  return section;
}

SectionResponse respond(const Section& s, double film_W_per_m2K, double tube_mK_per_W) {
  expects(film_W_per_m2K > 0.0, "respond: a film that passes no heat");
  expects(tube_mK_per_W >= 0.0, "respond: a negative resistance");
  expects(tube_fits(s), "respond: the tube does not lie within its layer");
  const bool tabled =
      s.field && film_W_per_m2K >= s.field->film_W_per_m2K.front() && film_W_per_m2K <= s.field->film_W_per_m2K.back();
  if (!tabled) return solved_under(s, film_W_per_m2K, {tube_mK_per_W}).front();
  const SlabField& field = *s.field;
  const double plane_W_per_m2K = to_plane_W_per_m2K(s, film_W_per_m2K);
  const double evened = evened_share(s, tube_mK_per_W);
  SectionResponse between;
  for (std::size_t i = 0, at = 0; i < field.plane_W_per_m2K.size(); ++i) {
    const double of_film = share_of(field.plane_W_per_m2K, i, plane_W_per_m2K);
    for (std::size_t j = 0; j < field.evened_share.size(); ++j, ++at) {
      add_share(between, field.at_face[at], of_film * share_of(field.evened_share, j, evened));
    }
  }
  between = with_resistance(between, tube_mK_per_W);
  between.floor_mean = floor_mean_of(between, s.spacing_m, film_W_per_m2K);
  return between;
}

}  // namespace slabwright
