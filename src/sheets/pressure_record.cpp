// The pressure test's record: what to pump up to, what the gauge should then show, who saw it.
#include "sheets/page.hpp"

namespace slabwright::sheets {
namespace {

using report::Kind;

Markup rules(const Source& source) {
  const Quotes& q = source.q;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < q.rows("pressure_test.rule"); ++i) {
    const auto key = [&](std::string_view member) { return key_of_row("pressure_test.rule", i, member); };
    Markup pressure = quoted(q.figure(key("least_Pa"), Kind::gauge));
    pressure += q.has(key("most_Pa")) ? say(" to ", q.figure(key("most_Pa"), Kind::gauge)) : prose(" or more");
    rows.push_back({quoted(q.words(key("medium"))), pressure, quoted(q.words(key("how_long"))),
                    quoted(q.words(key("source"))), quoted(q.words(key("provided")))});
  }
  return section(
      "What is asked for",
      table({{"with", {}, false}, {"gauge", {}, false}, {"for", {}, false}, {"by", {}, false}, {"provided", {}, false}},
            rows) +
          paragraph("The local authority and the tube's maker decide which of these "
                    "counts. Here: ",
                    q.words("pressure_test.because")));
}

Markup readings(const Source& source) {
  const Quotes& q = source.q;
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < q.rows("pressure_test.at"); ++i) {
    const auto key = [&](std::string_view member) { return key_of_row("pressure_test.at", i, member); };
    rows.push_back({quoted(q.bare(key("air_degC"), Kind::degree)), quoted(q.bare(key("test_Pa"), Kind::gauge)),
                    quoted(q.bare(key("pour_Pa"), Kind::gauge))});
  }
  const std::string degree(report::unit(Kind::degree, q.system())), gauge(report::unit(Kind::gauge, q.system()));
  return section("What the gauge shows with no leak, on air",
                 paragraph("Pumped up to ", q.figure("pressure_test.pumped_Pa", Kind::gauge), " at ",
                           q.figure("pressure_test.pumped_degC", Kind::degree),
                           ". Colder air in the tubes reads lower without "
                           "any leak. During the pour about ",
                           q.figure("pressure_test.pour_Pa", Kind::gauge), " stays on.") +
                     table({{"tube at", degree}, {"test", gauge}, {"during the pour", gauge}}, rows));
}

Markup record() {
  std::vector<std::vector<Markup>> rows;
  for (const char* when : {"pumped up", "time starts", "time ends", "before the pour", "after the pour"})
    rows.push_back({prose(when), blank("            "), blank("        "), blank("        "), blank("            ")});
  return section("Record", table({{"when", {}, false},
                                  {"date, hour", {}, false},
                                  {"gauge", {}, false},
                                  {"air", {}, false},
                                  {"read by", {}, false}},
                                 rows) +
                               facts({{prose("Tested with"), say(tick(), "water ", tick(), "air")},
                                      {prose("Loops in the test"), blank()},
                                      {prose("Holds"), say(tick(), "yes ", tick(), "no, found at ", blank())},
                                      {prose("Tested by, licence, signature"), blank()},
                                      {prose("Seen by the inspector, signature"), blank()}}));
}

}  // namespace

std::optional<SheetBody> pressure_record(const Source& source) {
  if (!source.q.has("pressure_test")) return std::nullopt;
  std::vector<Markup> care;
  for (std::size_t i = 0; i < source.q.rows("pressure_test.care"); ++i)
    care.push_back(quoted(source.q.words(key_of_row("pressure_test.care", i))));
  return SheetBody{rules(source) + readings(source) + record() + section("Take care", bullets(care))};
}

}  // namespace slabwright::sheets
