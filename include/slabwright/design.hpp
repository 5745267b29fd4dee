// What the user wrote, and nothing computed.
#pragma once
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "design_floor.hpp"
#include "design_plan.hpp"
#include "design_plant.hpp"
#include "design_site.hpp"
#include "design_winter.hpp"
#include "design_words.hpp"
#include "diagnostics.hpp"

namespace slabwright {

/// A design file as values. Rows that the user left out and a workshop must have (a room, a big door, a manifold) are
/// added when the file is settled, and stand in the list of guesses.
struct Design {
  System units = System::us;
  Codes codes = Codes::north_america;
  Project project;
  Climate climate;
  Ground ground;
  Building building;
  std::vector<Room> room;
  std::vector<WallEntry> wall;
  std::vector<Partition> partition;
  std::vector<Opening> opening;
  std::vector<Exhaust> exhaust;
  std::vector<Gains> gains;
  Slab slab;
  FloorInsulation insulation;
  Edge edge;
  std::vector<EdgePartEntry> edge_part;
  std::vector<NoTubeEntry> no_tube;
  std::vector<Joint> joint;
  std::vector<Border> border;
  std::vector<Anchor> anchor;
  Tube tube;
  std::vector<Manifold> manifold;
  Mains mains;
  std::vector<LoopEntry> loop;
  FluidEntry fluid;
  Boiler boiler;
  PumpEntry pump;
  Valve valve;
  SecondSource second_source;
  Service service;
  Pressure pressure;
  FrostHold frost_hold;
  std::vector<WatchEntry> watch;
  Work work;
  std::vector<VehicleEntry> vehicle;
  Electricity electricity;
  std::vector<WayEntry> way;
  Bill bill;
  friend bool operator==(const Design&, const Design&) = default;
};
Record record_of(Design&);

/// A value that the user did not enter ("our guess" in text, `assumed` in JSON).
struct Assumption {
  std::string path;    ///< "slab.thickness", or a whole row "opening[1]"
  std::string text;    ///< as a design file would write it
  std::string source;  ///< a source, "practice" or "from memory"
  friend bool operator==(const Assumption&, const Assumption&) = default;
};

/// Where a key's value stands in the file, or the command-line option that set it (line 0).
struct Spot {
  int line = 0;
  int column = 0;
  std::string option;
};

/// A key set from the command line; it wins over the file.
struct Override {
  std::string path;    ///< "tube.spacing"
  std::string text;    ///< "12 in"
  std::string option;  ///< "--spacing", for the problem's place
};

/// A design with the guesses that complete it. `yours` counts the keys that the user gave.
struct DesignFile {
  Design design;
  std::vector<Assumption> assumed;
  std::vector<std::string> given;     ///< paths of the keys the user gave, in file order
  std::vector<Assumption> known;      ///< what stands in place of our usual guesses; see with_known()
  std::map<std::string, Spot> spots;  ///< where each path stands; not part of equality
  friend bool operator==(const DesignFile& a, const DesignFile& b) {
    return a.design == b.design && a.assumed == b.assumed;
  }
};

/// The outcome of reading: the file where it has no problem, and all problems at once in file order, options first.
struct ReadDesign {
  Checked<DesignFile> checked;        ///< `about` of what was said is a key of `spots`
  std::map<std::string, Spot> spots;  ///< of the problems too
  System units = System::us;          ///< what the sentences are printed in
};

/// Reads, repairs what people break in form, and settles a design file. Never throws for what a user can write.
/// `text` may be empty: a design from options alone.
ReadDesign read_design(std::string_view text, const std::vector<Override>& overrides = {});

/// Items that the reader takes in a list. A floor with more corners is no floor: every pair of edges is looked at, of
/// rooms against the slab too.
inline constexpr std::size_t most_list_items = 100;
/// Rows that it takes of a kind: "room".
std::size_t most_rows_of(std::string_view word);

/// The user's part of a design as a file that reads back to the same design with the same guesses: the shortest texts
/// in the user's own units. Remarks are not kept. Units that were guessed from a mixture of both are written down: the
/// shortest texts might tip the guess.
std::string write_design(const DesignFile& file);

/// The same file with one key set to another text, guesses settled anew: for ranges and the list of what matters most.
/// Empty where the text does not fit.
std::optional<DesignFile> with_key(const DesignFile& file, const std::string& path, std::string_view text);

/// The same file with these values in place of our usual guesses, wherever the user gave none, also when other keys are
/// changed later. They stay in the list of guesses, each with its own source. Every text must fit its key.
/// "climate.coldest" is a bound: the usual guess stands where it is the colder one.
DesignFile with_known(const DesignFile& file, std::vector<Assumption> known);

/// A short file with remarks for a beginner: the keys of a first design, those not set by an option as a remark, and
/// behind them what narrows the answer most. Reads without a problem where the options do.
std::string new_design_text(const std::vector<Override>& options = {});

/// A problem with the place where it stands, its words in the reader's units.
struct PlacedProblem {
  std::string file;          ///< as the user named it; empty where an option holds it, or nothing is known
  int line = 0, column = 0;  ///< counted from 1; 0 where not known
  std::string option;        ///< "--spacing"
  std::string code, about;   ///< of the diagnostic; empty of a sentence alone
  std::string sentence;
};
/// Every problem of a file called `name`, in file order.
std::vector<PlacedProblem> placed_problems(const ReadDesign& read, std::string_view name);

/// Every problem as "file:line:column: sentence", at most `most` of them and a count of the rest, in file order, ending
/// in "nothing was computed, nothing was written".
std::string problems_text(const ReadDesign& read, std::string_view name, std::size_t most = 10);

/// The table of one key by its path ("slab.thickness", "room[2].area"), or null.
const Key* key_at(const Design& design, std::string_view path);

/// The design-file reference page in Markdown, made from the descriptions: manuals/design-file.md.
std::string design_reference();

/// Outline or size or area as a floor: its area and its whole perimeter (a square's where only the area is known).
struct FloorShape {
  double area_m2 = 0.0;
  double perimeter_m = 0.0;
  bool shape_known = false;
  std::vector<Place> outline;  ///< counter-clockwise; empty where only the area is known
};
FloorShape floor_shape(const Slab& slab);
FloorShape floor_shape(const Room& room);

/// Floor of each room. One that says nothing of its size shares what the slab has left with others like it.
std::vector<double> room_floors_m2(const Design& design);

/// The mixture the loops carry, glycol by volume.
Mixture mixture_of(const FluidEntry& fluid);

/// Slab and topping together.
double floor_thickness_m(const Slab& slab);

/// Depth of the tube's axis below the top of slab or topping, whichever is the floor's.
double tube_axis_depth_m(const Design& design);

/// What a rectangle of the edge is made of: its material by name, or its own conductivity with the heat capacity of
/// foam below 0.1 W/mK and of soil above. Empty where neither says.
struct EdgeMaterial {
  double conductivity_W_per_mK = 0.0;
  double heat_capacity_J_per_m3K = 0.0;
};
std::optional<EdgeMaterial> edge_material(const EdgePartEntry& part);

/// The room's own temperature, or the climate's.
double indoor_of(const Design& design, const Room& room);

}  // namespace slabwright
