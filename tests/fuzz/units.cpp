// Quantities of every dimension, and the text of every key of a design.
#include <cmath>

#include "fuzz/all_keys.hpp"
#include "fuzz/targets.hpp"

namespace slabwright::fuzz {
namespace {

bool quantity(std::string_view text, Dimension dimension) {
  const Reading reading = read_quantity(text, dimension);
  if (reading.fault != Fault::none) return false;
  must(std::isfinite(reading.si), "a quantity that is not finite");
  for (const System system : {System::us, System::si}) {
    const std::string written = write_quantity(reading.si, dimension, system);
    const Reading again = read_quantity(written, dimension);
    must(again.fault == Fault::none && again.si == reading.si, "what is written reads back as another: " + written);
    must(!show(reading.si, dimension, system).empty(), "nothing is shown");
  }
  return true;
}

/// What a key takes it writes, and takes again as the same.
bool of_key(const Key& key, const Slot& slot, std::string_view text) {
  const std::string problem = read_into(key, slot, text);
  must(problem.find('\n') == std::string::npos && problem.size() < 500, "a sentence of many lines: " + problem);
  if (!problem.empty()) return false;
  for (const System system : {System::us, System::si}) {
    const std::string written = write_out(key, slot, system);
    const std::string refused = read_into(key, slot, written, system);
    must(refused.empty(), std::string(key.word) + " does not take what it wrote: " + written + ": " + refused);
    must(write_out(key, slot, system) == written, std::string(key.word) + " reads back as another: " + written);
  }
  return true;
}

}  // namespace

bool units(std::string_view bytes) {
  if (bytes.size() > longest_value) return false;
  bool accepted = read_number(bytes).has_value();
  (void)plain_characters(bytes);
  (void)excerpt(bytes);
  for (int each = 0; each <= static_cast<int>(Dimension::money_per_rise); ++each)
    accepted = quantity(bytes, static_cast<Dimension>(each)) || accepted;
  Design with_rows = every_key();
  walk(record_of(with_rows), [&](const std::string&, const Key& key, const Slot& slot) {
    if (const auto* list = std::get_if<WordedList>(&slot)) {
      const Worded item = list->add(list->at);
      if (item.read(item.at, bytes).empty()) {
        accepted = true;
        const std::string written = item.write(item.at, System::us);
        must(item.read(item.at, written).empty(), std::string(key.word) + " does not take what it wrote: " + written);
      }
    } else if (of_key(key, slot, bytes) && !std::holds_alternative<Text>(slot)) {
      accepted = true;
    }
  });
  return accepted;
}

}  // namespace slabwright::fuzz
