// EN 1264-2 / ISO 11855-2: heat from tubes in a screed that lies on insulation.
// Table and equation numbers are those of EN 1264-2:2021 and ISO 11855-2:2021 Annex A.
#pragma once
#include <optional>

#include "slabwright/handbook_made_for.hpp"

namespace slabwright {

/// One floor as EN 1264 describes it. The cover runs from the tube's crown, not from its axis.
struct En1264Floor {
  double spacing_m = 0.0;           ///< W
  double outside_m = 0.0;           ///< D
  double wall_m = 0.002;            ///< s_R
  double wall_W_per_mK = 0.35;      ///< lambda_R
  double cover_m = 0.0;             ///< s_u
  double screed_W_per_mK = 0.0;     ///< lambda_E
  double covering_m2K_per_W = 0.0;  ///< R_B
  bool tube_on_insulation = true;   ///< what the standard was made for
};

/// Whether the floor lies inside what the standard was made for. A tube at mid-depth of a structural slab does not.
MadeFor made_for(const En1264Floor&);

/// The factors of the power function as printed (ISO 11855-2 A.3 to A.7, EN tables A.1 to A.3): pure numbers.
/// The tables are read linearly in spacing and covering, and held at their ends outside.
struct En1264Factors {
  double covering_ratio = 0.0;    ///< a_B
  double spacing_ratio = 0.0;     ///< a_W
  double cover_ratio = 0.0;       ///< a_U
  double outside_ratio = 0.0;     ///< a_D
  double spacing_exponent = 0.0;  ///< m_W
  double cover_exponent = 0.0;    ///< m_U
  double outside_exponent = 0.0;  ///< m_D
  double product_ratio = 0.0;     ///< a_B a_W^m_W a_U^m_U a_D^m_D
};

/// Factors at the floor's own cover; a spacing above 0.375 m counts as 0.375 m.
En1264Factors en1264_factors(const En1264Floor&);

/// B: 6.7 W/m2K for the wall of 2 mm and 0.35 W/mK, corrected for any other. The correction grows with the spacing.
double en1264_wall_coefficient_W_per_m2K(const En1264Floor&);

/// K_H, heat per floor area and kelvin of water excess temperature, with the rules for spacings above 0.375 m
/// (ISO 11855-2 A.10) and for thick covers (A.8). Lengths and conductivity must be positive.
double en1264_coefficient_W_per_m2K(const En1264Floor&);

/// Where the characteristic meets the limit curve (ISO 11855-2 A.19 to A.24, EN tables A.4 to A.7).
struct En1264Limit {
  double base_W_per_m2 = 0.0;  ///< B_G
  double exponent = 0.0;       ///< n_G
  double excess_K = 0.0;       ///< dTH,G
  double heat_W_per_m2 = 0.0;  ///< q_G
};

/// `surface_rise_K`: hottest floor allowed less room, 9 K in the occupied area and 15 K in the edge strip.
/// Where coverings resist most the printed curves pass 8.92 rise^1.1, what a floor that hot everywhere gives, by up to
/// 8 %; take the lower of the two.
En1264Limit en1264_limit(const En1264Floor&, double surface_rise_K);

/// Basic characteristic q = 8.92 dT^1.1 (ISO 11855-2 eq. 1), for a floor warmer than the room.
double en1264_surface_heat_W_per_m2(double surface_rise_K);
/// Its inverse.
double en1264_surface_rise_K(double heat_W_per_m2);

/// Water temperatures over the room, as differences.
struct WaterExcess {
  double supply_K = 0.0;
  double return_K = 0.0;
};

/// Logarithmic mean dTH; absent unless supply >= return > 0.
std::optional<double> log_mean_excess_K(WaterExcess);
/// The supply over the room that has this log mean and this spread, exactly; `mean_K` positive.
double supply_excess_K(double mean_K, double spread_K);
/// The same from the series dTH + s/2 + s^2/(12 dTH) of EN 1264-3.
double supply_excess_series_K(double mean_K, double spread_K);
/// Spread of another room on the same supply by the standard's square root (EN 1264-3); absent where the supply
/// is below the mean that the room needs.
std::optional<double> second_room_spread_K(double supply_K, double mean_K);
/// The same spread from the log mean itself.
std::optional<double> second_room_spread_exact_K(double supply_K, double mean_K);

/// What lies above and below the tube plane (ISO 11855-2 A.29 to A.32).
struct En1264Layers {
  double above_m2K_per_W = 0.0;  ///< R_o
  double below_m2K_per_W = 0.0;  ///< R_u
};

/// R_o = 1/10.8 + R_B + s_u/lambda_E.
double en1264_above_m2K_per_W(const En1264Floor&);

/// q_U per floor area for the heat upward; `room_over_below_K` is room less what lies below.
double en1264_down_W_per_m2(const En1264Layers&, double up_W_per_m2, double room_over_below_K);

/// Water that carries up and down heat at this spread, kg/s per m2 of floor; c_W 4190 J/kgK.
double en1264_water_kg_per_sm2(double up_W_per_m2, double down_W_per_m2, double spread_K);

}  // namespace slabwright
