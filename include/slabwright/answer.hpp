// Design and wishes to answer: which stages run, and nothing else.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "slabwright/answer_remedies.hpp"
#include "slabwright/answer_sums.hpp"
#include "slabwright/balance.hpp"
#include "slabwright/balance_lengths.hpp"
#include "slabwright/balance_meters.hpp"
#include "slabwright/climate.hpp"
#include "slabwright/freeze_bands.hpp"
#include "slabwright/freeze_courses.hpp"
#include "slabwright/freeze_outage.hpp"
#include "slabwright/freeze_recovery.hpp"
#include "slabwright/freeze_section.hpp"
#include "slabwright/plant_curves.hpp"
#include "slabwright/plant_floor_field.hpp"
#include "slabwright/plant_scheme.hpp"
#include "slabwright/progress.hpp"
#include "slabwright/sitework.hpp"
#include "slabwright/sitework_control.hpp"
#include "slabwright/sitework_cure.hpp"
#include "slabwright/sitework_guide.hpp"
#include "slabwright/sitework_lines.hpp"
#include "slabwright/sitework_plan.hpp"
#include "slabwright/sitework_pressure.hpp"
#include "slabwright/winter.hpp"
#include "slabwright/winter_outdoor.hpp"

namespace slabwright {

/// The question asked, one for each command that computes.
enum class Question { check, design, route, balance, freeze, winter, drill, sheets, cure };

struct Wishes {
  Question question = Question::design;
  bool sensitivities = true;  ///< ranges, what matters most, what would lower the frost hold
  bool bands = true;          ///< of the frost hold, where that is the question
  DrillAsked drill = {};      ///< where a hole is the question
  bool wide = false;          ///< a search over more settings, where the winter is the question
  bool better_place = false;  ///< for the manifold, where the route is the question
  Works progress = {};        ///< told of what may take a second or more
  bool remedies = true;       ///< one key and value for each solve that stopped early
};

/// What a design names beside itself, read by whoever has the disk.
struct Brought {
  std::optional<WeatherFile> weather;
  std::optional<MeterSheet> meters;  ///< readings of the manifolds; only where balancing is the question
};

enum class VerdictKind { works, mend, fails };

/// Made once, printed first by every command.
struct Verdict {
  VerdictKind kind = VerdictKind::works;
  std::vector<Diagnostic> reasons;  ///< what to mend, or why it does not work; gravest first
};

/// One number under the three guesses about a building that is not described.
struct Three {
  double tight = 0.0;
  double usual = 0.0;
  double poor = 0.0;
};

/// How far the answer leans on one guess.
struct Sensitivity {
  std::string path;              ///< the guess
  std::string guess;             ///< what was taken, as a file would write it
  double boiler_W = 0.0;         ///< largest change of the wanted boiler power
  std::optional<double> hold_K;  ///< largest change of the slab setting had the coldest hour lasted
};

/// A change and the frost hold it leads to.
struct FreezeChange {
  std::string what;
  bool before_pour = false;              ///< too late once the concrete is in
  std::optional<double> slab_dial_degC;  ///< absent: no slab setting is enough
  double air_dial_degC = 0.0;
};
/// Whether it leads to a lower setting than the one there is, or to one where there is none.
bool lowers(const FreezeChange& change, const Freeze& freeze);

/// Everything computed in one run. A stage that was not wished for, or that lacks something, is absent.
struct Answer {
  Wishes wishes;
  DesignFile file;
  Verdict verdict;
  std::vector<Diagnostic> said;      ///< everything the stages said, in their order
  std::vector<std::string> lacking;  ///< "for heat, pump and boiler: give --outdoor"
  std::optional<LoopPlan> loops;
  std::optional<CutList> cuts;         ///< of coils for the loops
  std::optional<Materials> materials;  ///< what they are laid with
  std::optional<PlanFigures> plan;     ///< what a plan of them tells in numbers; only for questions that draw one
  std::optional<StakeOut> stakes;      ///< where lines are snapped for them; only when the route is the question
  std::optional<LaidLines> laid;       ///< their tube as lines and arcs; only when the route is the question
  std::optional<std::vector<BetterPlace>> better;  ///< places for manifolds; only where they were wished for
  std::optional<DrillGuide> drill;                 ///< of the hole that is the question, else of the design's anchors
  std::optional<ControlPoints> control;            ///< to find the tube again; this and the next only for sheets
  std::optional<DrillBands> drill_bands;
  std::optional<CureCalendar> cure;  ///< this and the next only where cure or sheets are the question
  std::optional<PressureTest> pressure_test;
  std::optional<Envelope> envelope;
  std::optional<FloorPlan> floor;
  std::optional<Balance> balance;
  std::optional<MetersRead> meters;     ///< readings that were brought, row for row of the loops
  std::optional<ReadBack> read_back;    ///< what they say of loops whose lengths are known ...
  std::optional<FittedLengths> fitted;  ///< ... and of loops that are only counted
  std::optional<OperatingPoint> point;
  std::optional<OperatingPoint> shut;  ///< the same with the zone valves shut that the design has shut
  std::optional<PlantSizes> sizes;
  std::optional<PipingScheme> scheme;       ///< to draw the plant; only where sheets are the question
  std::optional<PlantCurves> curves;        ///< this and the next only for sheets
  std::optional<HeatByOutdoor> by_outdoor;  ///< what the weather asks for and what heats in it
  std::optional<FloorField>
      field;  ///< the floor everywhere, where loops are drawn; only when the design is the question
  std::optional<Freeze> freeze;
  std::optional<Outage> outage;  ///< this and the next four only when the frost hold is the question
  std::vector<SingleFault> fault;
  std::vector<Recovery> recovery;
  std::vector<SensorCase> sensor;
  std::optional<TurnOff> turn_off;
  std::optional<FreezeCourses> courses;    ///< the same runs as curves; only for sheets
  std::optional<AnswerSums> sums;          ///< of all these; only for sheets
  std::vector<SectionField> edge_section;  ///< cold edges under the frost hold; only for sheets
  std::optional<Winter> winter;            ///< only when the winter is the question
  std::optional<Bands> bands;              ///< the dials of `freeze` then cover them
  std::optional<Three> loss_W;             ///< of a building not described, as every range
  std::optional<Three> boiler_W;
  std::optional<Three> supply_degC;
  std::optional<Three> slab_dial_degC;
  std::optional<Three> air_dial_degC;
  std::optional<double> poor_fails_degC;  ///< outdoors, below this the boiler cannot follow if the building is poor
  std::vector<Sensitivity> sensitivity;   ///< the most important first
  std::vector<FreezeChange> change;       ///< what would lower the frost hold, best first
  std::vector<Remedy> remedy;             ///< for what stopped early
};

/// `Answer::file` is the design with what the weather knows in place of our guesses.
Answer answer(const DesignFile& file, const Wishes& wishes, const Brought& brought = {});

/// The design with the weather's values for what the user did not give: `outdoor` (the 99.6 % hour), `mean`,
/// `half_swing` and `altitude`, as round as a file would write them, and the lowest hour as a bound for `coldest`: a
/// typical year hides extremes. A value that its key would refuse is left out. They count as guesses of the source
/// "weather file", and stay when other keys change.
DesignFile with_weather(const DesignFile& file, const WeatherFile& weather);

/// 0 works, 3 a limit fails. (2 is the design file's and the app's.)
int exit_code(const Answer& answer);

}  // namespace slabwright
