// A section in time: what a step of each driver does, and fields under drivers that change.
#pragma once
#include <cstddef>
#include <vector>

#include "slabwright/conduction.hpp"
#include "units_exact.hpp"

namespace slabwright {

/// Nodes of the grid store what the quarter cells around them store; nodes without capacity follow at once, and nodes
/// of fixed temperature store nothing.
struct TimeOptions {
  FieldOptions grid = {};
  /// Largest error of one step at any node, for unit steps as a share of the largest steady answer to the driver. The
  /// weights themselves were within twice this in trials.
  double step_share = 3e-5;
  /// The same where drivers are given in time.
  double step_K = 1e-3;
};

/// What each driver does that steps from 0 to 1 at time 0, everything at 0 before.
struct StepResponses {
  /// [time][point][driver] and [time][boundary][driver]; units as in UnitResponses.
  std::vector<std::vector<std::vector<double>>> weights, heat_in;
  /// [time][driver]: heat stored since the start, J/m per unit.
  std::vector<std::vector<double>> stored_J_per_m;
  /// Heat that entered or was let free, less heat stored, as a share of the larger: the worst driver at the last time.
  /// Rounding, about 1e-12.
  double imbalance_share = 0.0;
  std::size_t unknowns = 0, steps = 0, factorisations = 0;
};

/// Solves C dT/dt = drive u - K T by a two-stage diagonally implicit method of second order, L-stable (Alexander 1977),
/// in steps that the estimated error chooses. Steps are a time between two asked-for times over a power of two, so that
/// few factorisations serve.
/// Broken contracts (std::logic_error): those of unit_responses, a heat capacity below 0, times not above 0 or not
/// rising, a step error not above 0.
StepResponses step_responses(const FieldSection& section, const std::vector<FieldPoint>& watched,
                             const std::vector<double>& times_s, const TimeOptions& options = {});

/// [driver], each in its own unit.
using DriverValues = std::vector<double>;

/// Drivers in time, linear between rows. Two rows of one time are a jump.
struct DriverSeries {
  std::vector<double> times_s;        ///< at least one; not falling
  std::vector<DriverValues> drivers;  ///< [time]
};

/// The period of the weather.
inline constexpr double common_year_s = 365.0 * day_s;

/// Drivers that swing for ever: mean + cosine cos(2 pi t / period) + sine sin(2 pi t / period).
struct PeriodicDrivers {
  double period_s;  ///< above 0
  DriverValues mean, cosine, sine;
};

/// Drivers that do not change.
PeriodicDrivers steady_drivers(const DriverValues& drivers);

struct FieldRun {
  std::vector<std::vector<double>> temperatures_degC;  ///< [time of the series][point]
  std::vector<std::vector<double>> heat_in_W_per_m;    ///< [time of the series][boundary]
  std::vector<double> stored_J_per_m;                  ///< [time of the series], since its first time
  std::vector<double> entered_J_per_m;                 ///< entered or let free since then: the same but for rounding
  std::size_t unknowns = 0, steps = 0, factorisations = 0;
};

/// From the state that `before` has brought about by the first time of the series. At a jump the first row's answer is
/// from before it and the second's from after, where nodes without capacity have followed.
/// Broken contracts (std::logic_error): as above, and rows that do not fit the drivers.
FieldRun field_run(const FieldSection& section, const std::vector<FieldPoint>& watched, const PeriodicDrivers& before,
                   const DriverSeries& series, const TimeOptions& options = {});

/// Swing of each point and heat per unit swing of each driver, when it has swung for ever: in phase with the driver,
/// and a quarter period behind it. Amplitude and lag follow from the two.
struct SwingResponses {
  std::vector<std::vector<double>> weights_with, weights_behind;  ///< [point][driver]
  std::vector<std::vector<double>> heat_in_with, heat_in_behind;  ///< [boundary][driver]
};
SwingResponses swing_responses(const FieldSection& section, const std::vector<FieldPoint>& watched, double period_s,
                               const FieldOptions& options = {});

/// A material that gives off heat as it freezes, over a range of temperature: frozen at its low end, thawed at its high
/// end, in between a mix. The section's own figures are of the thawed material.
struct FreezingMaterial {
  std::size_t material;                   ///< row in FieldSection::materials
  double latent_J_per_m3;                 ///< 0 or more
  double frozen_conductivity_W_per_mK;    ///< above 0
  double frozen_heat_capacity_J_per_m3K;  ///< 0 or more
  double frozen_at_degC, thawed_at_degC;  ///< rising
};

struct FreezingOptions {
  FieldOptions grid = {};
  double longest_step_s = hour_s;  ///< above 0
};

/// As field_run, where materials freeze and thaw. Steps are implicit, of first order, in heat content rather than
/// temperature, so that no latent heat is lost however fast a node freezes; conductivities are those of the start of a
/// step. `before` acts on the section as if thawed. No step is longer than `longest_step_s`.
/// Broken contracts (std::logic_error): as field_run; a freezing material without range, row or conductivity.
FieldRun freezing_run(const FieldSection& section, const std::vector<FieldPoint>& watched,
                      const std::vector<FreezingMaterial>& freezing, const PeriodicDrivers& before,
                      const DriverSeries& series, const FreezingOptions& options = {});

}  // namespace slabwright
