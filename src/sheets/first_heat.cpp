// From the pour to the floor at work: the waits with who asks for them, and a log to fill in.
#include "sheets/page.hpp"

namespace slabwright::sheets {
namespace {

using report::Kind;

Markup when(const Quotes& q, const std::string& row) {
  if (q.words(row + ".date").text.empty()) return say("day ", q.figure(row + ".day", Kind::count));
  return say(q.words(row + ".weekday"), " ", q.words(row + ".date"));
}

Markup what(const Quotes& q, const std::string& row) {
  Markup words = quoted(q.words(row + ".what"));
  if (q.has(row + ".least_degC"))
    words += say(", concrete no colder than ", q.figure(row + ".least_degC", Kind::degree));
  return words;
}

Markup calendar(const Source& source) {
  const Quotes& q = source.q;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < q.rows("cure.row"); ++i) {
    const std::string row = key_of_row("cure.row", i);
    rows.push_back({when(q, row), what(q, row),
                    q.has(row + ".supply_degC") ? quoted(q.figure(row + ".supply_degC", Kind::degree)) : Markup{},
                    quoted(q.words(row + ".source")), tick()});
  }
  return section(
      "Day by day",
      table({{"when", {}, false}, {"what", {}, false}, {"water out"}, {"asked for by", {}, false}, {"done", {}, false}},
            rows));
}

Markup texts(const Quotes& q, const std::string& list) {
  std::vector<Markup> items;
  for (std::size_t i = 0; i < q.rows(list); ++i) items.push_back(quoted(q.words(key_of_row(list, i))));
  return bullets(items);
}

/// An empty table to write in, its columns what the answer says to log.
Markup log(const Source& source) {
  constexpr std::size_t days = 14;
  const Quotes& q = source.q;
  std::vector<Head> heads;
  for (std::size_t i = 0; i < q.rows("cure.log"); ++i)
    heads.push_back({q.words(key_of_row("cure.log", i)).text, {}, false});
  const std::vector<Markup> empty(heads.size(), Markup{"&nbsp;"});
  return section("Write down each day of the first heat", table(heads, std::vector<std::vector<Markup>>(days, empty)));
}

}  // namespace

std::optional<SheetBody> first_heat_sheet(const Source& source) {
  const Quotes& q = source.q;
  if (!q.has("cure")) return std::nullopt;
  Markup body = caution(
      prose("The concrete's supplier stands above every wait on this sheet: ask before heat comes on. A structural "
            "slab follows the supplier and the engineer; the standard for screeds is named where it is one."));
  if (q.words("cure.poured").text.empty())
    body += paragraph("The day of the pour is not known here: write it down. Poured on ", blank("                "));
  body += texts(q, "cure.caution") + calendar(source);
  body += section("Never", texts(q, "cure.never")) + log(source);
  return SheetBody{body};
}

}  // namespace slabwright::sheets
