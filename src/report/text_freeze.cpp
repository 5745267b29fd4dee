// freeze: how low may the floor be left, and why not lower.
#include "report/text_freeze.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace slabwright::report {
namespace {

std::string dial(const Reader& reader, double degC) { return reader(Kind::dial, degC, Figure::frost_hold); }

/// The verdict, in the one sentence that is acted upon.
std::string setting_verdict(const Reader& reader) {
  const Answer& answer = reader.answer;
  if (!answer.freeze) return "HOW LOW CANNOT BE SAID YET.";
  const Freeze& freeze = *answer.freeze;
  if (freeze.verdict == FreezeVerdict::no_setting) return "NO SETTING IS SAFE. " + freeze.reason;
  if (freeze.verdict == FreezeVerdict::cannot_be_called) return "IT CANNOT BE CALLED SAFE. " + freeze.reason;
  // A slab sensor has no setting where no slab that the floor may be keeps every place.
  if (!freeze.slab)
    return fmt::format("SET THE WALL THERMOSTAT TO {}; no slab sensor setting is enough.",
                       dial(reader, freeze.air->dial_degC));
  return fmt::format("SET THE WALL THERMOSTAT TO {}, or the slab sensor to {}.", dial(reader, freeze.air->dial_degC),
                     dial(reader, freeze.slab->dial_degC));
}

bool freeze_verdict(const Diagnostic& said) {
  return said.code == "freeze.no-setting" || said.code == "freeze.cannot-be-called";
}

/// What fails or wants mending beside the setting itself.
Page other_reasons(const Reader& reader) {
  constexpr std::size_t most_reason_lines = 6;
  Page page;
  std::vector<Diagnostic> others = reader.answer.verdict.reasons;
  others.erase(std::remove_if(others.begin(), others.end(), freeze_verdict), others.end());
  if (others.empty()) return page;
  const bool fails = any(others, Severity::failure);
  add_text(page, fails ? "BUT THE SHOP DOES NOT WORK AS IT STANDS:" : "To mend:");
  add_reasons(page, reader, others, most_reason_lines);
  return page;
}

void add_page(Page& page, const Page& more) {
  page.lines.insert(page.lines.end(), more.lines.begin(), more.lines.end());
}

/// A note of the stage as a block, where it was said.
Block note(const Reader& reader, std::string_view code, int rank) {
  Page page;
  for (const Diagnostic& said : reader.answer.said)
    if (said.severity == Severity::note && said.code == code) add_text(page, sentence(said, reader.system()));
  return {page, {}, rank, false};
}

/// The footing stays longest; what the answer has told already in other words goes first.
std::vector<Block> notes(const Reader& reader) {
  return {note(reader, "freeze.footing", 3),
          note(reader, "freeze.shut", 10),
          note(reader, "freeze.corners", 11),
          note(reader, "freeze.two-dials", 12),
          note(reader, "freeze.usual-slab-setting", 13),
          note(reader, "freeze.lasting", 14)};
}

/// Notes give way first, then changes that change nothing, the second way back, the ice, all but two places, the
/// boiler.
std::vector<Block> found_blocks(const Reader& reader) {
  Page first = setting(reader);
  add_page(first, door_guess(reader));
  add_page(first, other_reasons(reader));
  return {{first, {}, 0, false},
          places(reader),
          {ice(reader), {}, 7, false},
          {outage(reader)},
          {tonight(reader), {}, 0, false},
          changes(reader),
          {faults(reader), {}, 4, false},
          recovery(reader),
          {turn_off(reader), {}, 0, false},
          {boiler_keeps(reader), {}, 5, false}};
}

/// Nothing is safe yet: what would help stands before what was found.
std::vector<Block> refused_blocks(const Reader& reader) {
  Block change = changes(reader);
  change.rank = 0;
  return {{door_guess(reader), {}, 0, false},    change,
          {other_reasons(reader), {}, 0, false}, places(reader),
          {ice(reader), {}, 7, false},           {outage(reader)},
          {tonight(reader), {}, 3, false},       {setting(reader), {}, 5, false},
          {faults(reader), {}, 4, false},        recovery(reader),
          {turn_off(reader), {}, 4, false},      {boiler_keeps(reader), {}, 5, false}};
}

std::vector<Block> all_blocks(const Reader& reader) {
  const bool found = reader.answer.freeze->verdict == FreezeVerdict::found;
  std::vector<Block> blocks = found ? found_blocks(reader) : refused_blocks(reader);
  for (Block& block : notes(reader)) blocks.push_back(std::move(block));
  return blocks;
}

std::size_t lines_of(const Block& block) { return block.page.lines.size() + (block.apart ? 1 : 0); }

}  // namespace

void add_blocks(Page& page, std::vector<Block> blocks, std::size_t for_the_end, bool full) {
  const auto empty = [](const Block& block) { return block.page.lines.empty(); };
  const auto forget_empty = [&] { blocks.erase(std::remove_if(blocks.begin(), blocks.end(), empty), blocks.end()); };
  forget_empty();
  while (!full) {
    std::size_t all = page.lines.size() + for_the_end;
    for (const Block& block : blocks) all += lines_of(block);
    const auto least =
        std::max_element(blocks.begin(), blocks.end(), [](const Block& a, const Block& b) { return a.rank < b.rank; });
    if (all <= most_lines || least == blocks.end() || least->rank == 0) break;
    least->page = std::exchange(least->shorter, {});
    least->rank = least->page.lines.empty() ? least->rank : 0;
    forget_empty();
  }
  for (const Block& block : blocks) {
    if (block.apart) add_gap(page);
    add_page(page, block.page);
  }
}

void add_freeze(Page& page, const Reader& reader) {
  constexpr std::size_t most_reason_lines = 6;
  const Answer& answer = reader.answer;
  add_first_line(page, reader, "how low may the floor be left?");
  add_text(page, setting_verdict(reader));
  if (!answer.freeze) {
    add_lacking(page, reader);
    add_reasons(page, reader, answer.verdict.reasons, most_reason_lines);
    return add_end(page, reader, "freeze", answer.envelope ? "" : "--outdoor \"-12 F\"");
  }
  if (reader.options.explain) {
    add_explained(page, reader);
    return add_end(page, reader, "freeze");
  }
  Page end;
  add_blank(end);
  add_lacking(end, reader);
  add_gap(end);
  const bool found = answer.freeze->verdict == FreezeVerdict::found;
  add_end(end, reader, "freeze", found ? "--explain" : "--door \"R-10\"");
  add_blocks(page, all_blocks(reader), end.lines.size(), reader.options.full);
  if (reader.options.full) {
    add_freeze_full(page, reader);
    add_full(page, reader);
  }
  // Whole reports end in an empty line already.
  if (!page.lines.empty() && page.lines.back().empty()) page.lines.pop_back();
  add_page(page, end);
}

}  // namespace slabwright::report
