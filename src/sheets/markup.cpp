#include "sheets/markup.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace slabwright::sheets {
namespace {

std::string in_tag(std::string_view tag, const std::string& inner, std::string_view css_class = {}) {
  const std::string attribute = css_class.empty() ? "" : fmt::format(" class=\"{}\"", css_class);
  return fmt::format("<{0}{1}>{2}</{0}>", tag, attribute, inner);
}

Markup list_of(std::string_view tag, const std::vector<Markup>& items) {
  std::string inner;
  for (const Markup& item : items) inner += in_tag("li", item.html) + "\n";
  return items.empty() ? Markup{} : Markup{in_tag(tag, "\n" + inner) + "\n"};
}

const char* column_class(const Head& head) { return head.number ? "n" : ""; }

std::string head_row(const std::vector<Head>& heads) {
  std::string cells;
  for (const Head& head : heads) {
    const std::string unit = head.unit.empty() ? "" : "<br>" + in_tag("small", escaped(head.unit));
    cells += in_tag("th", prose(head.words).html + unit, column_class(head));
  }
  return in_tag("tr", cells);
}

/// `cell_of` says what stands in a cell, by its head and what was given.
template <class CellOf>
Markup table_of(const std::vector<Head>& heads, const std::vector<std::vector<Markup>>& rows,
                std::string_view css_class, CellOf cell_of) {
  std::string body;
  for (const std::vector<Markup>& row : rows) {
    std::string cells;
    for (std::size_t c = 0; c < row.size(); ++c)
      cells += in_tag("td", cell_of(heads[c], row[c]), column_class(heads[c]));
    body += in_tag("tr", cells) + "\n";
  }
  const std::string all = in_tag("thead", head_row(heads)) + "\n" + in_tag("tbody", "\n" + body);
  return {in_tag("div", in_tag("table", "\n" + all), css_class) + "\n"};
}

}  // namespace

Markup operator+(Markup a, const Markup& b) {
  a.html += b.html;
  return a;
}

Markup& operator+=(Markup& a, const Markup& b) {
  a.html += b.html;
  return a;
}

Markup prose(std::string_view words) {
  const bool digit = std::any_of(words.begin(), words.end(), [](char c) { return c >= '0' && c <= '9'; });
  if (digit) throw std::logic_error(fmt::format("sheets: a figure that is not quoted: {}", words));
  return {escaped(std::string(words))};
}

Markup quoted(const Quote& quote) {
  const std::string unit = quote.unit.empty() ? "" : fmt::format(" data-unit=\"{}\"", escaped(quote.unit));
  return {fmt::format("<span{} data-key=\"{}\"{}>{}</span>", quote.number ? " class=\"f\"" : "", escaped(quote.key),
                      unit, escaped(quote.text))};
}

Markup wrap(std::string_view tag, const Markup& inner, std::string_view css_class) {
  return {in_tag(tag, inner.html, css_class) + "\n"};
}

Markup section(const Markup& heading, const Markup& inner) {
  return wrap("section", Markup{in_tag("h2", heading.html) + "\n"} + inner);
}

Markup section(std::string_view heading, const Markup& inner) { return section(prose(heading), inner); }

Markup bullets(const std::vector<Markup>& items) { return list_of("ul", items); }
Markup numbered(const std::vector<Markup>& items) { return list_of("ol", items); }

Markup facts(const std::vector<Fact>& rows) {
  std::string inner;
  for (const Fact& row : rows)
    inner += in_tag("div", in_tag("dt", row.question.html) + in_tag("dd", row.answer.html)) + "\n";
  return rows.empty() ? Markup{} : Markup{in_tag("dl", "\n" + inner) + "\n"};
}

Markup table(const std::vector<Head>& heads, const std::vector<std::vector<Markup>>& rows) {
  return table_of(heads, rows, "wide", [](const Head&, const Markup& cell) { return cell.html; });
}

Markup stacking_table(const std::vector<Head>& heads, const std::vector<std::vector<Markup>>& rows) {
  return table_of(heads, rows, "wide stack", [](const Head& head, const Markup& cell) {
    const std::string words = head.unit.empty() ? head.words : head.words + ", " + head.unit;
    return in_tag("span", escaped(words), "h") + in_tag("span", cell.html);
  });
}

Markup strong(const Markup& inner) { return {in_tag("strong", inner.html)}; }

Markup pair(const Markup& left, const Markup& right) {
  return wrap("div", wrap("div", left) + wrap("div", right), "pair");
}

Markup blank(std::string_view room) {
  std::string inner;
  for (std::size_t i = 0; i < room.size(); ++i) inner += "&nbsp;";
  return {in_tag("span", inner, "blank")};
}

Markup tick() { return {"<span class=\"tick\"></span>"}; }

Markup caution(const Markup& inner) { return wrap("p", inner, "caution"); }

Markup figure(const Picture& picture, std::string_view name, const Markup& caption) {
  const std::string text = caption.html.empty() ? "" : in_tag("figcaption", caption.html);
  return {in_tag("figure", svg_inside(picture, std::string(name)) + text) + "\n"};
}

}  // namespace slabwright::sheets
