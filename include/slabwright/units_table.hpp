// The rows of the units table. Exact definitions: international yard and pound (1959) 0.3048 m and 0.45359237 kg; US
// gallon 231 in3; standard gravity 9.80665 m/s2; Btu of the International Table 1055.05585262 J.
#pragma once
#include "units.hpp"

namespace slabwright::table {

using D = Dimension;
inline constexpr double foot = 0.3048, inch = 0.0254, gallon = 231.0 * inch * inch * inch, gravity = 9.80665;
inline constexpr double pound = 0.45359237, psi = pound * gravity / (inch * inch), btu = 1055.05585262;
inline constexpr double btu_h = btu / 3600.0, fahrenheit = 5.0 / 9.0;

inline constexpr Unit rows[] = {
    {"", "_number", D::number},
    {"in", "", D::length, inch}, {"ft", "", D::length, foot}, {"mm", "", D::length, 1e-3}, {"cm", "", D::length, 1e-2},
    {"m", "_m", D::length}, {"yd", "", D::length, 3.0 * foot},
    {"ft2", "", D::area, foot * foot}, {"m2", "_m2", D::area}, {"in2", "", D::area, inch * inch},
    {"gal", "", D::volume, gallon}, {"L", "", D::volume, 1e-3}, {"m3", "_m3", D::volume},
    {"ft3", "", D::volume, foot * foot * foot},
    {"F", "", D::degree, fahrenheit, -32.0}, {"C", "_degC", D::degree},
    {"F", "", D::rise, fahrenheit}, {"K", "_K", D::rise}, {"C", "", D::rise},
    {"psi", "", D::pressure, psi}, {"bar", "", D::pressure, 1e5}, {"kPa", "", D::pressure, 1e3},
    {"Pa", "_Pa", D::pressure}, {"mbar", "", D::pressure, 1e2},
    {"ft", "", D::head, foot}, {"m", "", D::head},
    {"gpm", "", D::flow, gallon / 60.0}, {"L/min", "", D::flow, 1e-3 / 60.0}, {"L/s", "", D::flow, 1e-3},
    {"m3/h", "", D::flow, 1.0 / 3600.0}, {"m3/s", "_m3_per_s", D::flow},
    {"cfm", "", D::flow, foot * foot * foot / 60.0}, {"L/h", "", D::flow, 1e-3 / 3600.0},
    {"kg/s", "_kg_per_s", D::mass_flow}, {"lb/h", "", D::mass_flow, pound / 3600.0},
    {"ft/s", "", D::velocity, foot}, {"m/s", "_m_per_s", D::velocity},
    {"Btu/h", "", D::power, btu_h}, {"kW", "", D::power, 1e3}, {"W", "_W", D::power},
    {"kWh", "", D::energy, 3.6e6}, {"J", "_J", D::energy}, {"Btu", "", D::energy, btu},
    {"Btu/h ft2", "", D::flux, btu_h / (foot * foot)}, {"W/m2", "_W_per_m2", D::flux},
    {"R", "", D::insulance, fahrenheit * foot * foot / btu_h, 0.0, true},
    {"m2K/W", "_m2K_per_W", D::insulance},
    {"Btu in/h ft2 F", "", D::conductivity, btu_h * inch / (foot * foot * fahrenheit)},
    {"Btu/h ft F", "", D::conductivity, btu_h / (foot * fahrenheit)}, {"W/mK", "_W_per_mK", D::conductivity},
    {"Btu/h ft2 F", "", D::transmittance, btu_h / (foot * foot * fahrenheit)},
    {"W/m2K", "_W_per_m2K", D::transmittance},
    {"Btu/h F", "", D::conductance, btu_h / fahrenheit}, {"W/K", "_W_per_K", D::conductance},
    {"Btu/h ft F", "", D::line_conductance, btu_h / (foot * fahrenheit)},
    {"W/mK", "_W_per_m_K", D::line_conductance},
    {"lb/ft3", "", D::density, pound / (foot * foot * foot)}, {"kg/m3", "_kg_per_m3", D::density},
    {"Btu/lb F", "", D::specific_heat, btu / (pound * fahrenheit)}, {"J/kgK", "_J_per_kgK", D::specific_heat},
    {"mPa s", "", D::viscosity, 1e-3}, {"Pa s", "_Pa_s", D::viscosity},
    {"%", "", D::share, 0.01}, {"", "_share", D::share},
    {"V", "_V", D::voltage}, {"A", "_A", D::current},
    {"Cv", "", D::valve_coefficient, 0.8649776554423244, 0.0, true},
    {"Kv", "_kv", D::valve_coefficient, 1.0, 0.0, true},
    {"per hour", "", D::air_change, 1.0 / 3600.0}, {"", "_per_s", D::air_change},
    {"h", "", D::time, 3600.0}, {"min", "", D::time, 60.0}, {"d", "", D::time, 86400.0}, {"s", "_s", D::time},
    {"turns", "_turns", D::turns},
    {"mK/W", "_mK_per_W", D::linear_resistance},
    {"kJ/m3K", "", D::heat_capacity, 1e3}, {"MJ/m3K", "", D::heat_capacity, 1e6},
    {"J/m3K", "_J_per_m3K", D::heat_capacity},
};

}  // namespace slabwright::table
