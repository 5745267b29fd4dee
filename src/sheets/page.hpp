// A page for one reader: what it holds, and how it becomes a file.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "sheets/markup.hpp"

namespace slabwright::sheets {

enum class Paper {
  page,  ///< letter or A4
  card,  ///< half letter or A5: cards to cut apart or to hang up
};

struct SheetPage {
  std::string file;    ///< "owner.html"
  std::string title;   ///< "What it keeps and what it costs"
  std::string reader;  ///< "the owner, before buying"
  Paper paper = Paper::page;
  Markup body;
  /// Drawings that each take a whole sheet of paper of their own size, behind the rest; all of one size. The page is
  /// printed on such paper then, with its words on the first.
  std::vector<Picture> wall = {};
};

/// What a sheet is made from.
struct Source {
  const Answer& answer;
  const Quotes& q;
};

/// The page as one self-contained file: no scripts, no fonts or pictures of elsewhere. Its first lines name the shop,
/// what the sheet is and whether the design works.
std::string html_of(const SheetPage& page, const Source& source);

/// A sheet for each reader, each in a file of its name; absent where the answer has nothing for it.
std::optional<SheetPage> owner_sheet(const Source& source);
std::optional<SheetPage> electrician_sheet(const Source& source);
std::optional<SheetPage> heat_pump_sheet(const Source& source);
std::optional<SheetPage> frost_card(const Source& source);
std::optional<SheetPage> guesses_sheet(const Source& source);
std::optional<SheetPage> pour_day_sheet(const Source& source);
std::optional<SheetPage> sections_sheet(const Source& source);
std::optional<SheetPage> piping_sheet(const Source& source);
std::optional<SheetPage> drilling_sheet(const Source& source);
std::optional<SheetPage> as_built_sheet(const Source& source);
std::optional<SheetPage> loop_cards(const Source& source);
std::optional<SheetPage> manifold_card(const Source& source);
std::optional<SheetPage> materials_sheet(const Source& source);
std::optional<SheetPage> pressure_record(const Source& source);
std::optional<SheetPage> first_heat_sheet(const Source& source);

/// A sheet that this answer has nothing for, and what it would need.
struct Missing {
  std::string title;
  std::string needs;
};
struct Sheaf {
  std::vector<SheetPage> page;  ///< in the order of the job
  std::vector<Missing> missing;
};
Sheaf sheaf_of(const Source& source);
/// The page that leads to them.
SheetPage index_of(const Sheaf& sheaf, const Source& source);

}  // namespace slabwright::sheets
