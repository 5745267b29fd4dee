// The words of the design's enums.
#pragma once
#include <array>
#include <string_view>

#include "slabwright/design.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

#define SLABWRIGHT_CHOICES(Enum, ...)                                           \
  template <>                                                                   \
  struct Choices<Enum> {                                                        \
    static constexpr auto names = std::to_array<std::string_view>(__VA_ARGS__); \
  }

SLABWRIGHT_CHOICES(System, {"US", "SI"});
SLABWRIGHT_CHOICES(Codes, {"north america", "europe", "none"});
SLABWRIGHT_CHOICES(Quality, {"tight", "usual", "poor"});
SLABWRIGHT_CHOICES(OpeningKind, {"big door", "door", "window"});
SLABWRIGHT_CHOICES(JointKind, {"sawn", "expansion"});
SLABWRIGHT_CHOICES(TubeFit, {"stretched", "exact"});
SLABWRIGHT_CHOICES(Runs, {"as they fit", "lengthwise", "crosswise"});
SLABWRIGHT_CHOICES(BalanceBy, {"length", "heat"});
SLABWRIGHT_CHOICES(Facing, {"away from wall", "up", "down", "left", "right"});
SLABWRIGHT_CHOICES(Makeup, {"tempered", "untempered"});
SLABWRIGHT_CHOICES(FluidKind, {"water", "propylene glycol", "ethylene glycol"});
SLABWRIGHT_CHOICES(BoilerKind, {"electric boiler", "tank heater", "none"});
SLABWRIGHT_CHOICES(BoilerPiping, {"direct", "closely spaced tees", "separator", "buffer", "mixing valve", "injection"});
SLABWRIGHT_CHOICES(PumpMode, {"constant speed", "constant pressure", "proportional pressure"});
SLABWRIGHT_CHOICES(Together, {"in parallel", "in series"});
SLABWRIGHT_CHOICES(ReturnWay, {"each its own", "direct", "reverse"});
SLABWRIGHT_CHOICES(ValveShape, {"linear", "equal percentage"});
SLABWRIGHT_CHOICES(SecondSourceKind, {"none", "heat pump", "water heat pump"});
SLABWRIGHT_CHOICES(WatchKind, {"wall pipe", "room pipe", "drain trap", "sprinkler", "hose bib", "outdoor line"});
SLABWRIGHT_CHOICES(Mass, {"light", "medium", "heavy"});
SLABWRIGHT_CHOICES(Defrost, {"in table", "on demand", "by clock"});
SLABWRIGHT_CHOICES(WorkDays, {"monday to friday", "monday to saturday", "every day", "saturday and sunday"});
SLABWRIGHT_CHOICES(WayFloor, {"work", "frost hold", "off", "setpoint"});
SLABWRIGHT_CHOICES(WaySensor, {"air", "slab", "both"});
SLABWRIGHT_CHOICES(WayRest, {"nights and days off", "days off"});
SLABWRIGHT_CHOICES(WaySource, {"off", "in working hours", "always"});

#undef SLABWRIGHT_CHOICES

}  // namespace slabwright
