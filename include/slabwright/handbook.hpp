// Formulas and tables as their sources print them; one small header a source.
#pragma once
#include "slabwright/handbook_air.hpp"
#include "slabwright/handbook_electrical.hpp"
#include "slabwright/handbook_en1264.hpp"
#include "slabwright/handbook_extremes.hpp"
#include "slabwright/handbook_floor_film.hpp"
#include "slabwright/handbook_iso13370.hpp"
#include "slabwright/handbook_made_for.hpp"
#include "slabwright/handbook_materials.hpp"
#include "slabwright/handbook_mixing.hpp"
#include "slabwright/handbook_practice.hpp"
#include "slabwright/handbook_star.hpp"
#include "slabwright/handbook_tank.hpp"
