// What came of many drawn designs, and how their inputs were spread.
#pragma once
#include <map>
#include <string>
#include <vector>

#include "random/run.hpp"
#include "slabwright/design.hpp"

namespace slabwright::test {

class Summary {
 public:
  void add(const Outcome& outcome);
  std::string text() const;
  std::size_t faults() const { return faults_.size(); }
  double valid_share() const;
  /// Of all stops tried, those that the value stated for them ends.
  double solved_share() const;
  /// Of the same, by what a shop would do, and not on paper alone.
  double would_be_done_share() const;

 private:
  std::pair<int, int> solved_of() const;
  std::map<std::string, int> ended_, asked_, stops_;
  std::map<std::string, std::pair<int, int>> tried_;  ///< code: solved, of so many
  int none_helps_ = 0, on_paper_ = 0;
  std::vector<std::string> faults_, unsolved_;
  int count_ = 0, valid_ = 0, broken_ = 0, broken_valid_ = 0;
  double worst_share_ = 0.0, cpu_s_ = 0.0, slowest_s_ = 0.0;
  std::string worst_of_;
  std::uint64_t slowest_ = 0;
};

/// Each key of a design: how often it was given, and for numbers least, quartiles and most, in SI.
class Spread {
 public:
  void add(const DesignFile& file);
  std::string text() const;

 private:
  struct Given {
    int count = 0;
    std::vector<double> si;
    std::map<std::string, int> words;
    Dimension dimension = Dimension::number;
  };
  std::map<std::string, Given> given_;
  int designs_ = 0;
};

}  // namespace slabwright::test
