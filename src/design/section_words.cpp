// Words that people use for a section, and what is said.
#include "design/synonyms.hpp"

namespace slabwright {
namespace {

constexpr std::string_view tubes = "tubes go in [tube]", concrete = "the concrete goes in [slab]";
constexpr std::string_view foam = "foam under the slab goes in [insulation], foam at its edge in [edge]";
constexpr std::string_view walls = "walls, roof and leaks go in [building]";
constexpr std::string_view openings = "doors and windows go in [[opening]], one for each";
constexpr std::string_view weather = "the weather goes in [climate]", warms = "what warms the water goes in [boiler]";
constexpr std::string_view air_heat = "what warms the air goes in [second_source]";
constexpr std::string_view mixture = "water or glycol goes in [fluid]", loops = "a loop goes in [[loop]]";
constexpr std::string_view supply = "the electric supply goes in [service]";
constexpr std::string_view prices = "what electricity costs goes in [electricity]";
constexpr std::string_view ways = "a way of running the winter goes in [[way]], one for each";
constexpr std::string_view cold_vehicles = "a cold vehicle goes in [[vehicle]], one for each";
constexpr std::string_view working = "working hours go in [work]", bills = "last winter's bill goes in [bill]";
constexpr std::string_view no_tube = "where no tube may lie goes in [[no_tube]], one for each area";
constexpr std::string_view joints = "joints of the concrete go in [[joint]]",
                           inner = "walls inside go in [[partition]]";
constexpr std::string_view holes = "holes to be drilled go in [[anchor]]";
constexpr SectionWord all_section_words[] = {
    {"pipe", "tube", tubes},
    {"piping", "tube", tubes},
    {"tubing", "tube", tubes},
    {"hose", "tube", tubes},
    {"pex", "tube", tubes},
    {"floor", "slab", concrete},
    {"concrete", "slab", concrete},
    {"panel", "slab", concrete},
    {"foam", "insulation", foam},
    {"underslab", "insulation", foam},
    {"perimeter", "edge", "foam at the edge goes in [edge]"},
    {"heatpump", "second_source", air_heat},
    {"minisplit", "second_source", air_heat},
    {"unitheater", "second_source", air_heat},
    {"heater", "boiler", warms},
    {"furnace", "boiler", warms},
    {"waterheater", "boiler", warms},
    {"source", "boiler", warms},
    {"heatsource", "boiler", warms},
    {"tank", "boiler", warms},
    {"rate", "electricity", prices},
    {"price", "electricity", prices},
    {"tariff", "electricity", prices},
    {"cost", "electricity", prices},
    {"money", "electricity", prices},
    {"utility", "electricity", prices},
    {"schedule", "way", ways},
    {"mode", "way", ways},
    {"program", "way", ways},
    {"routine", "way", ways},
    {"plan", "way", ways},
    {"strategy", "way", ways},
    {"setback", "way", ways},
    {"scenario", "way", ways},
    {"truck", "vehicle", cold_vehicles},
    {"car", "vehicle", cold_vehicles},
    {"plough", "vehicle", cold_vehicles},
    {"plow", "vehicle", cold_vehicles},
    {"hour", "work", working},
    {"shift", "work", working},
    {"calendar", "work", working},
    {"people", "work", working},
    {"occupancy", "work", working},
    {"usage", "bill", bills},
    {"consumption", "bill", bills},
    {"history", "bill", bills},
    {"weather", "climate", weather},
    {"temperature", "climate", "temperatures go in [climate]"},
    {"outdoor", "climate", "outdoor is a key of [climate]"},
    {"indoor", "climate", "indoor is a key of [climate]"},
    {"setpoint", "climate", "the temperature wanted goes in [climate] as indoor"},
    {"thermostat", "climate", "the temperature wanted goes in [climate] as indoor"},
    {"soil", "ground", "the soil goes in [ground]"},
    {"earth", "ground", "the soil goes in [ground]"},
    {"roof", "building", walls},
    {"ceiling", "building", walls},
    {"house", "building", walls},
    {"shell", "building", walls},
    {"door", "opening", openings},
    {"bigdoor", "opening", openings},
    {"garagedoor", "opening", openings},
    {"window", "opening", openings},
    {"fan", "exhaust", "a fan goes in [[exhaust]]"},
    {"ventilation", "exhaust", "a fan goes in [[exhaust]]"},
    {"zone", "room", "a room goes in [[room]]"},
    {"circuit", "loop", loops},
    {"coil", "loop", loops},
    {"header", "manifold", "the manifold goes in [[manifold]]"},
    {"distributor", "manifold", "the manifold goes in [[manifold]]"},
    {"collector", "manifold", "the manifold goes in [[manifold]]"},
    {"glycol", "fluid", mixture},
    {"antifreeze", "fluid", mixture},
    {"water", "fluid", mixture},
    {"circulator", "pump", "what moves the water goes in [pump]"},
    {"power", "service", supply},
    {"electric", "service", supply},
    {"breaker", "service", supply},
    {"freeze", "frost_hold", "margins over freezing go in [frost_hold]"},
    {"frost", "frost_hold", "margins over freezing go in [frost_hold]"},
    {"hold", "frost_hold", "margins over freezing go in [frost_hold]"},
    {"margin", "frost_hold", "margins over freezing go in [frost_hold]"},
    {"shop", "project", "the shop's name goes in [project]"},
    {"general", "project", "the shop's name goes in [project]"},
    {"expansion", "pressure", "fill and relief go in [pressure]"},
    {"relief", "pressure", "fill and relief go in [pressure]"},
    {"main", "mains", "pipes between boiler and manifold go in [mains]"},
    {"supply", "mains", "pipes between boiler and manifold go in [mains]"},
    {"sensor", "watch", "a place that must not freeze goes in [[watch]]"},
    {"machine", "gains", "heat from machines goes in [[gains]]"},
    {"load", "gains", "heat from machines goes in [[gains]]"},
    {"covering", "", "what lies on the concrete is written in [slab] as covering"},
    {"keepout", "no_tube", no_tube},
    {"keepoff", "no_tube", no_tube},
    {"obstacle", "no_tube", no_tube},
    {"column", "no_tube", no_tube},
    {"post", "no_tube", no_tube},
    {"drain", "no_tube", no_tube},
    {"pad", "no_tube", no_tube},
    {"pit", "no_tube", no_tube},
    {"innerwall", "partition", inner},
    {"interiorwall", "partition", inner},
    {"divider", "partition", inner},
    {"controljoint", "joint", joints},
    {"expansionjoint", "joint", joints},
    {"sawcut", "joint", joints},
    {"bolt", "anchor", holes},
    {"hole", "anchor", holes},
};

}  // namespace

std::span<const SectionWord> section_words() { return all_section_words; }

}  // namespace slabwright
