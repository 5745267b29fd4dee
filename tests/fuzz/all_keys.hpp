// A design in which a walk meets every key.
#pragma once
#include "slabwright/design.hpp"

namespace slabwright::fuzz {

inline Design every_key() {
  Design design;
  for (const Key& key : record_of(design).keys) {
    const Slot slot = key.slot(&design);
    if (const auto* rows = std::get_if<Rows>(&slot)) rows->add(rows->at);
  }
  return design;
}

}  // namespace slabwright::fuzz
