#include "sheets/page.hpp"

#include <fmt/format.h>

#include "sheets/style.hpp"

namespace slabwright::sheets {
namespace {

Markup shop_name(const Source& source) {
  if (source.answer.file.design.project.name.empty()) return prose("Your shop");
  return quoted(source.q.words("design.project.name"));
}

/// What nobody may overlook on whichever sheet they hold.
Markup standing(const Source& source) {
  switch (source.answer.verdict.kind) {
    case VerdictKind::works: return {};
    case VerdictKind::mend:
      return caution(prose("Something is to be mended before this is built: it stands on the owner's sheet."));
    case VerdictKind::fails:
      return caution(
          prose("THIS DESIGN DOES NOT WORK as it stands: the owner's sheet says why. Do not build from it."));
  }
  return {};
}

Markup head_of(const SheetPage& page, const Source& source) {
  Markup head = wrap("p", shop_name(source), "shop") + wrap("h1", prose(page.title));
  if (!page.reader.empty()) head += paragraph("For ", page.reader, ".");
  return wrap("header", head + standing(source));
}

Markup foot() {
  return wrap("footer",
              prose("Computed from the design file and our guesses, not measured. ~ follows a figure that leans on a "
                    "guess. slabwright heats slabs; it does not engineer the concrete. Local codes and licensed people "
                    "come first."));
}

}  // namespace

std::string html_of(const SheetPage& page, const Source& source) {
  Markup body = head_of(page, source) + wrap("main", page.body) + foot();
  for (std::size_t i = 0; i < page.wall.size(); ++i)
    body += wrap("figure", {svg_inside(page.wall[i], fmt::format("wall-{}", i + 1))}, "full");
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<link rel=\"icon\" "
      "href=\"data:,\">\n<title>{}</title>\n<style>{}</style>\n</head>\n<body{}>\n{}</body>\n</html>\n",
      prose(page.title).html, style_of(page, source.q.system()), page.wall.empty() ? "" : " class=\"poster\"",
      body.html);
}

SheetPage index_of(const Sheaf& sheaf, const Source& source) {
  SheetPage index{"index.html", "Sheets", "whoever holds the whole design", Paper::page, {}};
  std::vector<Fact> rows;
  for (const SheetPage& page : sheaf.page) {
    const Markup link{fmt::format("<a href=\"{}\">{}</a>", page.file, prose(page.title).html)};
    rows.push_back({link, prose("for " + page.reader)});
  }
  index.body = facts(rows);
  std::vector<Fact> missing;
  for (const Missing& one : sheaf.missing) missing.push_back({prose(one.title), prose(one.needs)});
  if (missing.empty()) return index;
  std::vector<Markup> lacking;
  for (std::size_t i = 0; i < source.answer.lacking.size(); ++i)
    lacking.push_back(quoted(source.q.words(key_of_row("lacking", i))));
  index.body += section("Not made", facts(missing) + bullets(lacking));
  return index;
}

Sheaf sheaf_of(const Source& source) {
  struct Entry {
    std::optional<SheetPage> (*make)(const Source&);
    const char* title;
    const char* needs;
  };
  constexpr const char* shape = "needs the slab's size or outline, and loops that are not poured yet";
  constexpr const char* weather = "needs the weather and the slab: see below";
  constexpr Entry all[] = {
      {owner_sheet, "What it keeps and what it costs", "needs loops"},
      {materials_sheet, "Materials and cut list", "a slab that is poured buys none"},
      {loop_cards, "Loop cards", "a slab that is poured is laid already"},
      {pressure_record, "Pressure-test record", "a slab that is poured is tested already"},
      {pour_day_sheet, "Pour-day plan", shape},
      {sections_sheet, "Edge and door in section", weather},
      {first_heat_sheet, "Cure and first heat", "a slab that is poured has cured"},
      {piping_sheet, "Piping scheme", "needs loops and a boiler"},
      {manifold_card, "Manifold card", "needs loops with their lengths"},
      {electrician_sheet, "Electrician", weather},
      {heat_pump_sheet, "Heat-pump fitter", weather},
      {frost_card, "Frost hold and power cuts", weather},
      {drilling_sheet, "Drilling guide", "needs loops that are drawn"},
      {as_built_sheet, "As built", "needs loops that are drawn"},
      {guesses_sheet, "Our guesses and cautions", "needs loops"},
  };
  Sheaf sheaf;
  for (const Entry& entry : all) {
    if (auto page = entry.make(source))
      sheaf.page.push_back(std::move(*page));
    else
      sheaf.missing.push_back({entry.title, entry.needs});
  }
  return sheaf;
}

}  // namespace slabwright::sheets
