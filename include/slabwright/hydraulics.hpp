// Hydraulics: pumps, valves, the hydronic graph, its flows and heads.
#pragma once
#include "slabwright/hydraulics_graph.hpp"
#include "slabwright/hydraulics_network.hpp"
#include "slabwright/hydraulics_pump.hpp"
#include "slabwright/hydraulics_temperature.hpp"
#include "slabwright/hydraulics_valve.hpp"
