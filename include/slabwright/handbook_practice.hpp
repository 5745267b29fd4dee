// Figures of practice: what is taken when a file does not say. Each carries the word that tells what it is worth.
#pragma once
#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace slabwright {

/// A number whose unit stands in its variable's name.
struct PracticeFigure {
  double value = 0.0;
  std::string_view word;  ///< "practice", "from memory" or a source
};

/// US figures are round in inches and degF, SI figures in metres and kelvin; neither is the other one converted.
enum class Customary { us, si };

/// What a building loses when nobody has described it.
struct BuildingGuess {
  std::string_view name;         ///< tight, usual, poor
  double floor_W_per_m2K = 0.0;  ///< heat loss per floor area, ground not counted; one value for US and SI
  std::string_view word = "practice";
};
/// 0.20, 0.30 and 0.45 Btu/h ft2 degF.
inline constexpr std::array<BuildingGuess, 3> building_guesses{{{"tight", 1.136}, {"usual", 1.703}, {"poor", 2.555}}};

/// Electric boilers as sold, smallest first, W.
std::span<const double> boiler_steps_W(Customary);
/// The smallest that gives at least this much; absent where none does.
std::optional<double> next_boiler_W(double needed_W, Customary);
inline constexpr PracticeFigure boiler_pickup_share{0.20, "practice"};
inline constexpr PracticeFigure boiler_water_rise_K{20.0, "from memory"};  ///< most across a boiler: least flow

/// Invented pumps that stand for what is sold: H0 (1 - (Q/Qm)^2).
struct GenericPump {
  std::string_view name;
  double shutoff_m = 0.0;
  double most_m3_per_s = 0.0;
  std::string_view word = "practice";
};
std::span<const GenericPump> generic_pumps();
/// Head in metres of the fluid; 0 beyond the most flow, the shut-off head backwards.
double generic_pump_head_m(const GenericPump&, double flow_m3_per_s);

/// An element of an electric boiler that is switched by itself, at most; and heat in mild weather over the coldest's,
/// where a stage runs shortest.
inline constexpr PracticeFigure boiler_stage_W{6000.0, "practice"};
inline constexpr PracticeFigure mild_load_share{0.25, "practice"};

/// Suction head below which water may boil in a small pump with a wet rotor.
inline constexpr PracticeFigure pump_suction_m{3.0, "practice"};

/// Air out of a loop: flow at which bubbles go along for certain, the least at which they do (2 ft/s), and how often
/// its water is changed.
inline constexpr PracticeFigure purge_good_m_per_s{1.2, "practice"};
inline constexpr PracticeFigure purge_least_m_per_s{0.6, "practice"};
inline constexpr PracticeFigure purge_changes{2.0, "practice"};
/// Gauge at the highest pipe: air is then driven out and none drawn in (4 psi, trade manuals).
inline constexpr PracticeFigure least_top_gauge_Pa{27.6e3, "practice"};
/// Where a port's meter reads well.
inline constexpr PracticeFigure meter_least_share{0.2, "practice"};
inline constexpr PracticeFigure meter_most_share{0.9, "practice"};
/// Highest marks of flow meters at a port as sold, smallest first, m3/s.
std::span<const double> meter_scales_m3_per_s(Customary);

}  // namespace slabwright
