// A question as people put it: a command, a design file's text, options in words, files beside them. Every door (the
// command line, the browser) takes the same words and gets the same answer or the same sentences. What touches a disk
// is the door's own.
#pragma once
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/answer.hpp"
#include "slabwright/answer_gauge.hpp"
#include "slabwright/asking_options.hpp"
#include "slabwright/report.hpp"

namespace slabwright {

/// Exit codes where there is no answer; an answer's own is 0 or 3.
inline constexpr int bad_design = 2, bad_words = 64;

/// Options as typed, by their names.
struct TypedOptions {
  std::map<std::string, std::string> text;
  std::vector<std::string> set;  ///< "tube.spacing=9 in"
  std::set<std::string> flag;
};

/// What is asked. `own` and `flag` are what the command alone takes.
struct Asked {
  std::string command;
  std::string file;                        ///< the design file's name, empty where options alone say everything
  std::vector<Override> overrides;         ///< keys of the design set by options
  std::map<std::string, std::string> own;  ///< "--at"; absent where not given
  std::set<std::string> flag;
};
/// The text of one of `own`; empty where it was not given.
const std::string& own_text(const Asked& asked, const std::string& name);

/// Options put in order, or a sentence that says what to write instead.
struct AskedInWords {
  Asked asked;
  std::string problem;
};
AskedInWords asked_in_words(std::string_view command, std::string_view file, const TypedOptions& typed);

/// A file that the question names beside the design.
struct FileWanted {
  enum class Kind { weather, readings, found } kind = Kind::weather;
  std::string name;            ///< as it was typed
  bool beside_design = false;  ///< counted from the design file's folder
};
/// Its text, or a sentence that says why there is none. `name` is what problems in it are told by.
struct FileGot {
  std::string name, text, problem;
};
using GetFile = std::function<FileGot(const FileWanted&)>;

/// Why there is no answer: as lines for people, and one by one.
struct Refusal {
  int exit = bad_design;
  std::string text;
  std::vector<PlacedProblem> problem;
};

/// A design file read and everything that answer() takes, or a refusal.
struct Prepared {
  ReadDesign read;
  Wishes wishes;
  Brought brought;
  std::optional<Refusal> refusal;
};
/// The refusal where neither a file nor an option says anything.
std::optional<Refusal> nothing_asked(const Asked& asked);

/// `text` is the design file's, empty where there is none.
Prepared prepare(const Asked& asked, std::string_view text, const GetFile& get);

/// The weather that a design names, read; the refusal where it cannot be. `read` has a design.
std::optional<Refusal> bring_weather(const ReadDesign& read, const Asked& asked, const GetFile& get, Brought& into);

/// What is wrong with readings that were brought, known once they were laid against the floor; nothing where they fit.
std::optional<Refusal> refused_readings(const Asked& asked, const Brought& brought, const Answer& answer);

/// The two readings of a pressure test with the units they were typed in, or a refusal.
struct PreparedGauge {
  GaugeAsked asked;
  GaugeOptions units;
  std::optional<Refusal> refusal;
};
PreparedGauge prepare_gauge(const Asked& asked);

}  // namespace slabwright
