// What a reader reads of a page: words and numbers without tags, drawings left out.
#pragma once
#include <string>
#include <string_view>

namespace slabwright::test {

/// The text from the opening of one tag to the end of the other cut out, wherever it stands.
inline std::string without(std::string html, std::string_view from, std::string_view to) {
  for (std::size_t at = html.find(from); at != std::string::npos; at = html.find(from, at)) {
    const std::size_t end = html.find(to, at);
    html.erase(at, end == std::string::npos ? std::string::npos : end + to.size() - at);
  }
  return html;
}

inline std::string replaced(std::string text, std::string_view what, std::string_view by) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size()))
    text.replace(at, what.size(), by);
  return text;
}

/// A line for each paragraph, row and item; cells of a row stand apart.
inline std::string page_text(std::string html) {
  for (const auto& [from, to] : {std::pair<std::string_view, std::string_view>{"<head>", "</head>"},
                                 {"<svg", "</svg>"},
                                 {"<span class=\"h\">", "</span>"}})
    html = without(html, from, to);
  for (const char* cell : {"</td>", "</th>", "</dt>"}) html = replaced(html, cell, "  ");
  html = replaced(html, "&nbsp;", "_");
  std::string text;
  bool in_tag = false;
  for (const char c : html) {
    if (c == '<' || c == '>')
      in_tag = c == '<';
    else if (!in_tag)
      text += c;
  }
  for (const auto& [name, sign] : {std::pair<std::string_view, std::string_view>{"&lt;", "<"},
                                   {"&gt;", ">"},
                                   {"&quot;", "\""},
                                   {"&#39;", "'"},
                                   {"&amp;", "&"}})
    text = replaced(text, name, sign);
  while (text.find("\n\n") != std::string::npos) text = replaced(text, "\n\n", "\n");
  return text;
}

}  // namespace slabwright::test
