// What slabwright says about itself.
#include <fmt/format.h>

#include "app/request.hpp"

namespace slabwright::app {

std::string front_page() {
  return R"(slabwright works out a heated concrete floor: the tube loops, the water, the
pump and boiler, the lowest setting at which nothing freezes, and what each way
of running it through the winter costs.
It heats slabs; it does not engineer the concrete. Local codes come first.

The three short questions (put your own numbers in):
  How many loops?     slabwright design --size "36 x 30 ft" --spacing "12 in"
  How do I set them?  slabwright balance --tube "1/2 in" --lengths "188 241 ft"
  How low can I go?   slabwright freeze --size "36 x 30 ft" --outdoor "-12 F"

The whole job, in order, from one file that you keep:
  new      make the file                 route    the loops as lines to lay
  check    read it, say what we guess    balance  set the manifold
  design   everything at once            freeze   lowest setting, and why
                                         winter   what each way of running costs
  gauge    is the pressure test leaking? drill    may I drill here?
  cure     when heat may come on         sheets   pages to print, one per reader

Start:  slabwright new my-shop.toml --size "36 x 30 ft" --spacing "12 in"
        (already poured? add --poured 5, the number of loops)
More:   slabwright COMMAND --help
)";
}

namespace {

constexpr std::string_view winter_words =
    "  --quick      leave out what nobody can know, hard winters, changes of the shop\n"
    "               and the search for better settings: only the ways themselves\n"
    "  --wide       search among 420 settings, not 96; it takes a second or two more\n"
    "\nThere is money in the answer only where you say what electricity costs, else\n"
    "kWh. In the file (see [electricity] for hours, tiers and demand), or here:\n"
    "  slabwright winter my-shop.toml --set electricity.price=\"... /kWh\" \\\n"
    "                                 --set electricity.currency=\"$\"\n"
    "Ways of running stand in the file as [[way]]; where there are none, the usual\n"
    "ones are compared.\n";

/// What only this command takes.
std::string own_words(std::string_view command) {
  std::string page;
  if (command == "drill") {
    page +=
        "\nWhich hole (without --at: the anchors of the file):\n"
        "  --at         \"12 ft 4 in from west wall, 7 ft from south wall\", or \"x, y\"\n"
        "  --diameter   \"1/2 in\"       of the hole\n"
        "  --depth      \"3 in\"         of the hole\n"
        "  --tolerance  \"1.5 in\"       19 of 20 places of tube lie so near to the drawing\n"
        "  --may-move   \"6 in\"         how far each way a machine may be moved\n"
        "  --found      FILE           places where tube was found, each on a line like --at;\n"
        "                              behind a semicolon the same spot as drawn, if known\n";
  }
  if (command == "balance") {
    page +=
        "\nWhat the meters show (then: which loop is odd, and why):\n"
        "  --read       \"0.73 0.64 - 0.57\"   flows port by port, - where none was read,\n"
        "               in the file's unit or with one: \"... gpm\"; or \"3: 0.2\" of some\n"
        "  --readings   FILE           a table (CSV): loop or port, flow (gpm), and what you\n"
        "               have of supply (F), return (F), front (min), turns, room (F)\n"
        "  --water      \"95 F\"         in the loops, where no temperatures were read\n"
        "  --room       \"50 F\"         air in the shop while it was read\n"
        "  --meter-error \"10 %\"       how far the meters may be off\n";
  }
  if (command == "route") {
    page +=
        "  --better-place   look for a place along the walls where a manifold would\n"
        "               serve the floor better; it takes a few times as long\n";
  }
  if (command == "freeze") {
    page +=
        "  --explain    why this setting: the arithmetic of the place that decides\n"
        "  --quick      leave out what nobody can know (soil, air leaks, wet or crushed\n"
        "               foam, where the tubes lie, a sensor's error both ways): no bands,\n"
        "               and settings that are the best figures and the sensor's error\n";
  }
  if (command == "winter") page += winter_words;
  return page;
}

}  // namespace

namespace {

constexpr std::string_view gauge_page =
    "  slabwright gauge --then \"60 psi at 70 F\" --now \"53 psi at 20 F\"\n"
    "\nThe two readings, each a gauge's pressure at the temperature of the tube:\n"
    "  --then       \"4 bar at 20 C\"  the first\n"
    "  --now        \"3.5 bar at 5 C\" the one now\n"
    "  --after      \"16 h\"         from the first to the one now\n"
    "  --test       air            what the tube is filled with: air or water\n"
    "  --gauge-error \"1 psi\"       how far one reading may be off; 2 % of a usual scale\n"
    "                              when absent\n"
    "  --thermometer-error \"2 F\"   the same of a temperature; 1 K when absent\n"
    "  --altitude   \"5,300 ft\"     of the place, over the sea\n"
    "\nWhat comes out: a verdict, and exit code 0 it holds, 3 it leaks, 2 nobody can\n"
    "tell yet.\n"
    "  --json       the whole answer for a program\n";

}  // namespace

std::string help_page(std::string_view command) {
  std::string page;
  for (const Command& c : commands()) {
    if (c.name == command) page += fmt::format("slabwright {}: {}\n\n", c.name, c.does);
  }
  if (command == "gauge") return page + std::string(gauge_page);
  page += command == "new" ? "  slabwright new FILE [options]     writes FILE, never over one that is there\n"
                           : fmt::format("  slabwright {} [FILE] [options]     options win over the file\n", command);
  page += "\nOptions that stand for keys of the file:\n";
  for (const ShortOption& o : short_options(command)) {
    page += fmt::format("  {:<12} {:<14} {}\n", o.name, fmt::format("\"{}\"", o.example), o.meaning);
  }
  page += "  --lengths    \"188 241 ft\"   loops by their lengths, leaders included\n";
  page += "  --set        key=\"text\"     any key of the file: --set ground.conductivity=\"2.0 W/mK\"\n";
  if (command != "new") {
    page +=
        "\nWhat comes out:\n"
        "  --full       every figure, not the short answer\n"
        "  --json       the whole answer for a program\n"
        "  --out DIR    tables as CSV files in DIR: loops, balance; of freeze also\n"
        "               power cuts and ways back to work; of winter every way, and the\n"
        "               best one hour by hour\n";
  }
  return page + own_words(command);
}

}  // namespace slabwright::app
