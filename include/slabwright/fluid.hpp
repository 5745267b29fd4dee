// Water and glycol mixtures: properties, freezing point, and how far the sources are to be trusted.
#pragma once
#include <optional>

namespace slabwright {

enum class FluidKind { water, propylene_glycol, ethylene_glycol };

/// Whose numbers: solutions with the inhibitors that a heating system needs (ASHRAE Fundamentals 2001, tables) or of
/// the bare glycol (Melinder 2010, polynomials). What separates them is the uncertainty of a mixture; see
/// family_spread(). Water has one source, IAPWS SR6-08(2011), whatever the family.
enum class Family { inhibited, pure };

/// Glycol by volume, 0 to 1. A share of zero is water, whatever the kind; water has no share.
struct Mixture {
  FluidKind kind = FluidKind::water;
  double glycol_volume_share = 0.0;
};

/// Below this a glycol is refused by the design: too little inhibitor, and a few percent feed bacteria. Trade practice
/// (three trade pages: an inhibitor package works from 25 to 60 %, growth stops at 20 to 25 %).
inline constexpr double least_glycol_share = 0.20;
/// From here on nothing needs to be said (the same source).
inline constexpr double sound_glycol_share = 0.25;
/// Above this a glycol is refused by the design: the end of both families' tables.
inline constexpr double most_glycol_share = 0.60;

/// What friction needs to know of a fluid, at one temperature. Both greater than zero.
struct Liquid {
  double density_kg_per_m3 = 0.0;
  double viscosity_Pa_s = 0.0;
};

struct FluidProperties {
  double density_kg_per_m3 = 0.0;
  double specific_heat_J_per_kgK = 0.0;
  double viscosity_Pa_s = 0.0;
  double conductivity_W_per_mK = 0.0;
};

/// Where a question stands against what its source knows. Outside, every function answers for the nearest place inside.
enum class Range { inside, too_weak, too_strong, too_cold, too_hot };

/// The temperatures at which the source knows the mixture.
struct Window {
  double lowest_degC = 0.0;
  double highest_degC = 0.0;
};

/// Water: -20 to 110 degC at 0.1 MPa (liquid, also where it ought to freeze or boil). Inhibited: the rows that both
/// neighbouring columns of the table have, up to 100 degC. Pure: freezing point to 100 degC.
Window window_of(const Mixture& mixture, Family family = Family::inhibited);

/// Strength is judged before temperature. Inhibited: 10 to 60 % by volume. Pure: up to 60 % by mass.
Range range_of(const Mixture& mixture, double temperature_degC, Family family = Family::inhibited);

/// At 0.1 MPa; three bar more move density by 0.01 % and viscosity by less than 0.03 %.
/// Water: IAPWS SR6-08(2011). Inhibited: ASHRAE Fundamentals 2001, straight lines between the printed values in
/// temperature and in volume share, in the logarithm for viscosity, which costs it up to 2 % half way between two
/// columns. Pure: Melinder 2010. Outside range_of() the temperature and the share are taken to the nearest place
/// inside. Shares beyond 0 to 1 and temperatures that are no number break the contract.
FluidProperties properties_of(const Mixture& mixture, double temperature_degC, Family family = Family::inhibited);

/// Density and viscosity of properties_of() alone, which is cheaper.
Liquid liquid(const Mixture& mixture, double temperature_degC, Family family = Family::inhibited);

/// First crystals. Inhibited: ASHRAE Fundamentals 2001, straight lines between the rows. Pure: Melinder 2010.
/// Beyond freezing_range_of() that of the strongest mixture known, which is the careful side.
double freezing_point_degC(const Mixture& mixture, Family family = Family::inhibited);

/// Inhibited: to 60 % by volume (propylene) or 57.8 % (ethylene). Pure: to 60 % by mass.
Range freezing_range_of(const Mixture& mixture, Family family = Family::inhibited);

/// The weakest inhibited mixture that is still liquid there, in whole percent by volume, propylene where the kind is
/// water. From 25 %, as below it inhibitors are weak, to 50 %, as nobody fills a floor with more (practice); absent
/// where those do not do.
std::optional<double> glycol_that_keeps_share(FluidKind kind, double coldest_degC);

/// How far the pure family lies from the inhibited one: (pure - inhibited) / inhibited, and the freezing points'
/// difference. At a temperature outside their common window, that of its nearest end. All zero for water.
struct FamilySpread {
  double density_share = 0.0;
  double specific_heat_share = 0.0;
  double viscosity_share = 0.0;
  double conductivity_share = 0.0;
  double freezing_K = 0.0;
};
FamilySpread family_spread(const Mixture& mixture, double temperature_degC);

/// Glycol by mass, 0 to 1, by ASHRAE Fundamentals 2001; a straight line from its last row (60 % by mass) to pure
/// glycol.
double glycol_mass_share(const Mixture& mixture);

/// The mixture that has this share by mass; the inverse of glycol_mass_share(). 0 to 1.
Mixture mixture_by_mass(FluidKind kind, double glycol_mass_share);

/// Pressure, absolute, at which water boils: IAPWS SR1-86(1992), the saturation line, here for 0 to 110 degC, where it
/// lies within 0.01 % of the full formulation. Coefficients from memory; values to check against are IAPWS-95's. A
/// glycol mixture's is lower, which is the careful side.
double water_vapour_pressure_Pa(double temperature_degC);

/// Volume at the second temperature over volume at the first: what an expansion vessel must take up is this less one.
double volume_ratio(const Mixture& mixture, double from_degC, double to_degC, Family family = Family::inhibited);

}  // namespace slabwright
