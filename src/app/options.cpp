// What is said about commands beside their options.
#include "app/options.hpp"

namespace slabwright::app {
namespace {

constexpr std::string_view winter_note =
    "There is money in the answer only where you say what electricity costs, else kWh. In the file (see [electricity] "
    "for hours, tiers and demand), or here: --set electricity.price=\"... /kWh\" --set electricity.currency=\"$\"\n"
    "Ways of running stand in the file as [[way]]; where there are none, the usual ones are compared.";
constexpr std::string_view gauge_note =
    "What comes out is a verdict, and exit code 0 it holds, 3 it leaks, 2 nobody can tell yet.";

}  // namespace

std::string_view note_of(std::string_view command) {
  if (command == "winter") return winter_note;
  return command == "gauge" ? gauge_note : std::string_view{};
}

Usage usage_of(std::string_view command) {
  if (command == "gauge") return {"--then \"60 psi at 70 F\" --now \"53 psi at 20 F\"", {}};
  if (command == "new") return {"FILE [options]", "writes FILE, never over one that is there"};
  return {"[FILE] [options]", "options win over the file"};
}

}  // namespace slabwright::app
