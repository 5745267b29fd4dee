// Turns of phrase that several sheets share.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "sheets/page.hpp"
#include "slabwright/report_words.hpp"

namespace slabwright::sheets {

using report::Caution;
using report::Kind;
using Lean = report::Figure;

/// What is not known, and the answer's own lines of what would tell it.
Markup not_known(const Source& source, std::string_view what);

/// The quote, followed by `~` where such a figure leans on a guess.
Quote leaning(const Source& source, Quote quote, Lean figure);

/// "9 h", "less than one hour", "more than 96 h": hours of a power cut at a key that counts them whole, or is absent.
Markup whole_hours(const Source& source, const std::string& key);

/// Money where there is a price, else energy: the members of the record at `at` with these ends.
Markup cost(const Source& source, const std::string& at, std::string_view use_J = "use_J",
            std::string_view money = "money");

/// "Wall thermostat 52 F ~, or slab sensor 67 F ~."; nothing where no place decides.
Markup lowest_settings(const Source& source);

/// The row of the power cuts from the lowest setting in the coldest weather; nothing where there is none.
std::optional<std::size_t> worst_cut(const Source& source);
/// The rows from the lowest setting, mildest weather first.
std::vector<std::size_t> cuts_from_lowest(const Source& source);
/// Of such a row: how cold it is outside, how long there is time, and for which place.
std::vector<Markup> cut_cells(const Source& source, std::size_t row);

/// "one, two and three".
Markup listed(const std::vector<Markup>& items);

/// The answer's remarks (`said`) whose codes begin so; a failure and a warning as a caution, a note as a paragraph.
Markup remarks(const Source& source, const std::vector<std::string_view>& codes);

Markup caution_about(Caution about);

}  // namespace slabwright::sheets
