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
  Markup body = head_of(page, source) + wrap("main", page.body.text) + foot();
  for (std::size_t i = 0; i < page.body.wall.size(); ++i)
    body += wrap("figure", {svg_inside(page.body.wall[i], fmt::format("wall-{}", i + 1))}, "full");
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<link rel=\"icon\" "
      "href=\"data:,\">\n<title>{}</title>\n<style>{}</style>\n</head>\n<body{}>\n{}</body>\n</html>\n",
      prose(page.title).html, style_of(page, source.q.system()), page.body.wall.empty() ? "" : " class=\"poster\"",
      body.html);
}

SheetPage index_of(const Sheaf& sheaf, const Source& source) {
  SheetPage index{"index.html", "Sheets", "whoever holds the whole design", Paper::page, {}};
  std::vector<Fact> rows;
  for (const SheetPage& page : sheaf.page) {
    const Markup link{fmt::format("<a href=\"{}\">{}</a>", page.file, prose(page.title).html)};
    rows.push_back({link, prose("for " + page.reader)});
  }
  index.body.text = facts(rows);
  std::vector<Fact> missing;
  for (const Missing& one : sheaf.missing) missing.push_back({prose(one.title), prose(one.needs)});
  if (missing.empty()) return index;
  std::vector<Markup> lacking;
  for (std::size_t i = 0; i < source.answer.lacking.size(); ++i)
    lacking.push_back(quoted(source.q.words(key_of_row("lacking", i))));
  index.body.text += section("Not made", facts(missing) + bullets(lacking));
  return index;
}

Sheaf sheaf_of(const Source& source) {
  struct Entry {
    std::optional<SheetBody> (*make)(const Source&);
    const char* file;
    const char* title;
    const char* reader;
    Paper paper;
    const char* needs;
  };
  constexpr const char* shape = "needs the slab's size or outline, and loops that are not poured yet";
  constexpr const char* weather = "needs the weather and the slab: see below";
  constexpr Entry all[] = {
      {owner_sheet, "owner.html", "What it keeps and what it costs", "the owner, before choosing", Paper::page,
       "needs loops"},
      {materials_sheet, "materials.html", "Materials and cut list", "whoever orders and cuts", Paper::page,
       "a slab that is poured buys none"},
      {loop_cards, "loop-cards.html", "Loop cards", "the installer laying tube", Paper::page,
       "a slab that is poured is laid already"},
      {pressure_record, "pressure-test.html", "Pressure-test record", "the installer and the inspector", Paper::page,
       "a slab that is poured is tested already"},
      {pour_day_sheet, "pour-day.html", "Pour-day plan", "the concrete crew", Paper::page, shape},
      {sections_sheet, "sections.html", "Edge and door in section", "the concrete crew, the owner and the inspector",
       Paper::page, weather},
      {first_heat_sheet, "first-heat.html", "Cure and first heat", "the owner and the concrete crew", Paper::page,
       "a slab that is poured has cured"},
      {piping_sheet, "piping.html", "Piping scheme", "the installer and the inspector", Paper::page,
       "needs loops and a boiler"},
      {manifold_card, "manifold.html", "Manifold card", "the installer at the manifold", Paper::card,
       "needs loops with their lengths"},
      {electrician_sheet, "electrician.html", "What the electrician needs", "the electrician, for a quote", Paper::page,
       weather},
      {heat_pump_sheet, "heat-pump.html", "What the heat-pump fitter needs", "the heat-pump fitter, for a quote",
       Paper::page, weather},
      {frost_card, "frost-card.html", "Frost hold and power cuts", "the wall by the boiler", Paper::card, weather},
      {drilling_sheet, "drilling.html", "Drilling guide", "whoever drills into this floor", Paper::page,
       "needs loops that are drawn"},
      {as_built_sheet, "as-built.html", "As built", "the shop's wall, and whoever owns it next", Paper::page,
       "needs loops that are drawn"},
      {guesses_sheet, "guesses.html", "Our guesses and cautions", "everybody who relies on the other sheets",
       Paper::page, "needs loops"},
  };
  Sheaf sheaf;
  for (const Entry& entry : all) {
    if (auto body = entry.make(source))
      sheaf.page.push_back({entry.file, entry.title, entry.reader, entry.paper, std::move(*body)});
    else
      sheaf.missing.push_back({entry.title, entry.needs});
  }
  return sheaf;
}

}  // namespace slabwright::sheets
