#include "random/summary.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace slabwright::test {
namespace {

std::string counted(const char* title, const std::map<std::string, int>& rows) {
  std::string text = fmt::format("\n{}\n", title);
  for (const auto& [name, count] : rows) text += fmt::format("{:8}  {}\n", count, name);
  return text;
}

/// "room[].area" for "room[2].area".
std::string of_any_row(std::string path) {
  const std::size_t open = path.find('[');
  if (open != std::string::npos) path.erase(open + 1, path.find(']') - open - 1);
  return path;
}

bool is_valid(const std::string& ended) {
  return ended == "works" || ended == "mend" || ended == "fails" || ended == "lacking";
}

}  // namespace

void Summary::add(const Outcome& outcome) {
  ++count_;
  const bool valid = is_valid(outcome.ended) || !outcome.asked.empty();
  valid_ += valid;
  broken_ += outcome.nearly_broken;
  broken_valid_ += outcome.nearly_broken && valid;
  ++ended_[valid ? outcome.ended : "refused: " + outcome.ended];
  for (const std::string& name : outcome.asked) ++asked_[name];
  for (const std::string& code : outcome.stops) ++stops_[code];
  for (const std::string& fault : outcome.faults) faults_.push_back(fmt::format("{}: {}", outcome.number, fault));
  for (const Tried& one : outcome.tried) {
    tried_[one.code].first += one.solved;
    ++tried_[one.code].second;
    none_helps_ += one.told == none_helps;
    on_paper_ += one.solved && one.told.compare(0, on_paper.size(), on_paper) == 0;
    if (!one.solved) unsolved_.push_back(fmt::format("{}: {}: {}", outcome.number, one.code, one.told));
  }
  cpu_s_ += outcome.cpu_s;
  if (outcome.cpu_s > slowest_s_) {
    slowest_s_ = outcome.cpu_s;
    slowest_ = outcome.number;
  }
  if (outcome.worst_share > worst_share_) {
    worst_share_ = outcome.worst_share;
    worst_of_ = fmt::format("{} of design {}", outcome.worst_of, outcome.number);
  }
}

double Summary::valid_share() const { return count_ > 0 ? static_cast<double>(valid_) / count_ : 0.0; }

std::pair<int, int> Summary::solved_of() const {
  std::pair<int, int> sum{0, 0};
  for (const auto& [code, counts] : tried_) sum = {sum.first + counts.first, sum.second + counts.second};
  return sum;
}

double Summary::solved_share() const {
  const auto [solved, all] = solved_of();
  return all > 0 ? static_cast<double>(solved) / all : 1.0;
}

double Summary::would_be_done_share() const {
  const auto [solved, all] = solved_of();
  return all > 0 ? static_cast<double>(solved - on_paper_) / all : 1.0;
}

std::string Summary::text() const {
  std::string text = fmt::format("{} designs, {} valid ({:.1f} %); of {} with a key or two broken or at a limit, {}\n",
                                 count_, valid_, 100.0 * valid_share(), broken_, broken_valid_);
  text += fmt::format("{:.1f} s of processor, {:.3f} s each; slowest design {}, {:.2f} s\n", cpu_s_,
                      count_ > 0 ? cpu_s_ / count_ : 0.0, slowest_, slowest_s_);
  text += fmt::format("worst identity: off by {:.1e} of its largest term ({})\n", worst_share_, worst_of_);
  text += counted("how they ended", ended_) + counted("answers made", asked_) + counted("stopped early by", stops_);
  text += fmt::format(
      "\nwith the value stated {:.1f} % of the stops solve; {} of them on paper alone, for {} no value was "
      "found\n",
      100.0 * solved_share(), on_paper_, none_helps_);
  for (const auto& [code, counts] : tried_)
    text += fmt::format("{:5} of {:5}  {}\n", counts.first, counts.second, code);
  constexpr std::size_t most_shown = 40;
  for (std::size_t i = 0; i < std::min(most_shown, unsolved_.size()); ++i) text += "  not " + unsolved_[i] + "\n";
  text += fmt::format("\nfaults: {}\n", faults_.size());
  for (const std::string& fault : faults_) text += "  " + fault + "\n";
  return text;
}

void Spread::add(const DesignFile& file) {
  ++designs_;
  for (const std::string& path : file.given) {
    const auto found = find_path(reading(file.design), path);
    if (!found || !found->key) continue;
    Given& given = given_[of_any_row(path)];
    ++given.count;
    if (found->key->unit) given.dimension = found->key->unit->dimension;
    if (const auto* number = std::get_if<Number>(&found->slot))
      given.si.push_back(*number->at);
    else if (const auto* maybe = std::get_if<MaybeNumber>(&found->slot); maybe && *maybe->at)
      given.si.push_back(**maybe->at);
    else
      ++given.words[write_out(*found->key, found->slot, System::si)];
  }
}

std::string Spread::text() const {
  std::string text = fmt::format("{:38}{:>7}  least, quartiles and most in SI; or texts, the most frequent first\n",
                                 fmt::format("keys of {} valid designs", designs_), "given");
  for (const auto& [path, given] : given_) {
    text += fmt::format("{:38}{:7}", path, given.count);
    std::vector<double> si = given.si;
    std::sort(si.begin(), si.end());
    for (int quarter = 0; quarter <= 4 && !si.empty(); ++quarter)
      text += "  " + show(si[(si.size() - 1) * static_cast<std::size_t>(quarter) / 4], given.dimension, System::si);
    std::vector<std::pair<int, std::string>> words;
    for (const auto& [word, count] : given.words) words.emplace_back(-count, word);
    std::sort(words.begin(), words.end());
    if (!words.empty()) text += fmt::format("  {} texts:", words.size());
    for (std::size_t i = 0; i < std::min<std::size_t>(3, words.size()); ++i)
      text += fmt::format(" {} ({})", words[i].second.substr(0, 24), -words[i].first);
    text += "\n";
  }
  return text;
}

}  // namespace slabwright::test
