// Whether a drawing's texts lie apart, on the paper, and off its lines.
#pragma once
#include "slabwright/drawing.hpp"
#include "support/catch.hpp"

namespace slabwright::test {

struct LabelFaults {
  std::size_t texts = 0, outside = 0, meeting = 0, crossed = 0;
  std::string first;  ///< a text that one of them is about
};

/// `lines`: names of layers whose traces no text may lie on.
inline LabelFaults label_faults(const Picture& picture, const std::vector<std::string>& lines = {}) {
  LabelFaults faults;
  std::vector<std::pair<Box, std::string>> texts;
  for (const Layer& layer : picture.layer) {
    for (const SheetShape& shape : layer.shape) {
      if (const auto* text = std::get_if<Lettering>(&shape)) texts.emplace_back(box_of(*text), text->text);
    }
  }
  faults.texts = texts.size();
  const Box paper{{0.0, 0.0}, {picture.width_m, picture.height_m}};
  const auto bad = [&](std::size_t& count, const std::string& what) {
    ++count;
    if (faults.first.empty()) faults.first = what;
  };
  for (std::size_t i = 0; i < texts.size(); ++i) {
    if (!within(texts[i].first, paper)) bad(faults.outside, texts[i].second);
    for (std::size_t j = i + 1; j < texts.size(); ++j) {
      if (overlap(texts[i].first, texts[j].first)) bad(faults.meeting, texts[i].second + " / " + texts[j].second);
    }
  }
  for (const Layer& layer : picture.layer) {
    if (std::find(lines.begin(), lines.end(), layer.name) == lines.end()) continue;
    for (const SheetShape& shape : layer.shape) {
      const auto* trace = std::get_if<Trace>(&shape);
      if (!trace || trace->path.empty()) continue;
      const auto corners = flattened(trace->path, 1e-4);
      for (std::size_t k = 1; k < corners.size(); ++k) {
        for (const auto& [box, words] : texts) {
          const Floor ground{ring_of(grown(box, -0.05e-3)), {}};
          if (!clipped(corners[k - 1], corners[k], ground).empty()) bad(faults.crossed, words);
        }
      }
    }
  }
  return faults;
}

inline void check_label_faults(const Picture& picture, const std::vector<std::string>& lines = {}) {
  const LabelFaults faults = label_faults(picture, lines);
  INFO(faults.first);
  CHECK(faults.texts > 0);
  CHECK(faults.outside == 0);
  CHECK(faults.meeting == 0);
  CHECK(faults.crossed == 0);
}

}  // namespace slabwright::test
