// What cannot be meant, among keys that were read. Nothing is concluded from a key whose own text is broken.
#pragma once
#include <initializer_list>
#include <string>
#include <variant>
#include <vector>

#include "design/draft.hpp"

namespace slabwright {

class Judge {
 public:
  explicit Judge(Draft& draft) : design(draft.design), draft_(draft) {}

  const Design& design;

  bool given(const std::string& path) const { return is_given(draft_, path); }
  bool sound(std::initializer_list<std::string> paths) const;

  using Parts = std::vector<std::variant<std::string, Measured>>;
  void problem(std::string about, std::string code, std::string sentence, Parts parts = {});
  void warning(std::string about, std::string code, std::string sentence, Parts parts = {});

  /// " (first in line 12)", or nothing where it does not stand in the file.
  std::string line_of(const std::string& path) const;

 private:
  Draft& draft_;
};

void judge_climate(Judge& judge);
void judge_edge(Judge& judge);
void judge_edge_parts(Judge& judge);
/// Of a design in which nothing else is wrong.
void judge_extent(Judge& judge);
void judge_floor(Judge& judge);
void judge_loops(Judge& judge);
void judge_names(Judge& judge);
void judge_plan(Judge& judge);
void judge_plant(Judge& judge);
void judge_second_source(Judge& judge);
void judge_site(Judge& judge);
void judge_winter(Judge& judge);

}  // namespace slabwright
