// Pieces of a page. What is prose is escaped and has no digit; what has digits is a quote of the answer.
#pragma once
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "slabwright/drawing.hpp"
#include "slabwright/report_quotes.hpp"

namespace slabwright::sheets {

/// HTML that is whole: escaped, every tag closed.
struct Markup {
  std::string html;
};
Markup operator+(Markup a, const Markup& b);
Markup& operator+=(Markup& a, const Markup& b);

/// Words of ours. Throws std::logic_error where they hold a digit: a figure is quoted.
Markup prose(std::string_view words);
/// A figure or a text of the answer, with its key.
Markup quoted(const Quote& quote);

inline Markup piece(const Markup& m) { return m; }
inline Markup piece(const Quote& q) { return quoted(q); }
inline Markup piece(std::string_view words) { return prose(words); }
inline Markup piece(const char* words) { return prose(words); }

/// A sentence of words, quotes and pieces.
template <class... Parts>
Markup say(const Parts&... parts) {
  Markup all;
  ((all += piece(parts)), ...);
  return all;
}

/// <tag class="...">inner</tag>
Markup wrap(std::string_view tag, const Markup& inner, std::string_view css_class = {});

template <class... Parts>
Markup paragraph(const Parts&... parts) {
  return wrap("p", say(parts...));
}
/// A heading of the second rank with what belongs to it, kept together in print where it fits a page.
Markup section(std::string_view heading, const Markup& inner);
Markup section(const Markup& heading, const Markup& inner);
Markup bullets(const std::vector<Markup>& items);
Markup numbered(const std::vector<Markup>& items);

/// The reader's question at left, the answer at right.
struct Fact {
  Markup question, answer;
};
Markup facts(const std::vector<Fact>& rows);

/// A head with its unit, where cells are numbers without theirs.
struct Head {
  std::string words;
  std::string unit = {};
  bool number = true;  ///< cells stand at the right
};
/// Scrolls by itself where a phone is too narrow; in print its head comes again on every page and no row is cut.
Markup table(const std::vector<Head>& heads, const std::vector<std::vector<Markup>>& rows);

/// The same where a phone is too narrow for its columns: there each row stands as a block of its own, head by head.
Markup stacking_table(const std::vector<Head>& heads, const std::vector<std::vector<Markup>>& rows);

/// Words that matter, within a sentence.
Markup strong(const Markup& inner);

/// Two pieces beside each other where there is room.
Markup pair(const Markup& left, const Markup& right);

/// Something to write on, with what belongs there. As wide as the words of `room` would be.
Markup blank(std::string_view room = "          ");
/// A box to tick.
Markup tick();
/// A caution: a rule at its left, in print too.
Markup caution(const Markup& inner);

/// A drawing in the page, as wide as there is room and no wider than it is on paper; `name` is a word, once on a page.
Markup figure(const Picture& picture, std::string_view name, const Markup& caption);

}  // namespace slabwright::sheets
