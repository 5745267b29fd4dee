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

struct SheetBody {
  Markup text;
  /// Drawings that each take a whole sheet of paper of their own size, behind the rest; all of one size. The page is
  /// printed on such paper then, with its words on the first.
  std::vector<Picture> wall = {};
};

struct SheetPage {
  std::string file;    ///< "owner.html"
  std::string title;   ///< "What it keeps and what it costs"
  std::string reader;  ///< "the owner, before buying"
  Paper paper = Paper::page;
  SheetBody body;
};

/// What a sheet is made from.
struct Source {
  const Answer& answer;
  const Quotes& q;
};

/// The page as one self-contained file: no scripts, no fonts or pictures of elsewhere. Its first lines name the shop,
/// what the sheet is and whether the design works.
std::string html_of(const SheetPage& page, const Source& source);

/// What stands on the sheet of each reader; absent where the answer has nothing for it.
std::optional<SheetBody> owner_sheet(const Source& source);
std::optional<SheetBody> electrician_sheet(const Source& source);
std::optional<SheetBody> heat_pump_sheet(const Source& source);
std::optional<SheetBody> frost_card(const Source& source);
std::optional<SheetBody> guesses_sheet(const Source& source);
std::optional<SheetBody> pour_day_sheet(const Source& source);
std::optional<SheetBody> sections_sheet(const Source& source);
std::optional<SheetBody> piping_sheet(const Source& source);
std::optional<SheetBody> drilling_sheet(const Source& source);
std::optional<SheetBody> as_built_sheet(const Source& source);
std::optional<SheetBody> loop_cards(const Source& source);
std::optional<SheetBody> manifold_card(const Source& source);
std::optional<SheetBody> materials_sheet(const Source& source);
std::optional<SheetBody> pressure_record(const Source& source);
std::optional<SheetBody> first_heat_sheet(const Source& source);

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
