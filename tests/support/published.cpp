#include "support/published.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <vector>

namespace slabwright::test {
namespace {

/// Collects the rows of this program; written when the program ends, under another name first, so that a page is
/// never made from a run that crashed half way.
class Rows {
 public:
  ~Rows() {
    const char* folder = std::getenv("SLABWRIGHT_VALIDATION_DIR");
    const char* part = std::getenv("SLABWRIGHT_VALIDATION_PART");
    if (!folder || !part || lines_.empty()) return;
    std::error_code ignored;
    std::filesystem::create_directories(folder, ignored);
    const std::string path = fmt::format("{}/{}.tsv", folder, part);
    {
      std::ofstream out(path + ".part");
      for (const std::string& line : lines_) out << line << '\n';
    }
    std::filesystem::rename(path + ".part", path, ignored);
  }
  void add(std::string line) { lines_.push_back(std::move(line)); }

 private:
  std::vector<std::string> lines_;
};

Rows& rows() {
  static Rows all;
  return all;
}

/// The step of the last printed digit: "0.0399" -> 1e-4, "1.5e3" -> 100.
double last_digit(std::string_view printed) {
  const std::size_t power_at = printed.find_first_of("eE");
  const std::string_view digits = printed.substr(0, power_at);
  const std::size_t point = digits.find('.');
  const int decimals = point == std::string_view::npos ? 0 : static_cast<int>(digits.size() - point - 1);
  const int power =
      power_at == std::string_view::npos ? 0 : std::atoi(std::string(printed.substr(power_at + 1)).c_str());
  return std::pow(10.0, power - decimals);
}

/// Ours to the digits that the source prints, so that every compiler writes the same page.
std::string to_digits(double value, std::string_view printed) {
  const std::size_t power_at = printed.find_first_of("eE");
  const std::size_t point = printed.find('.');
  const std::size_t end = power_at == std::string_view::npos ? printed.size() : power_at;
  const int decimals = point == std::string_view::npos ? 0 : static_cast<int>(end - point - 1);
  if (power_at != std::string_view::npos) return fmt::format("{:.{}e}", value, decimals);
  return fmt::format("{:.{}f}", value, decimals);
}

const char* word(Oracle oracle) {
  switch (oracle) {
    case Oracle::published: return "published";
    case Oracle::reference_code: return "reference code";
    case Oracle::derived: return "derived";
  }
  return "";
}

}  // namespace

bool agrees(const Source& source, std::string_view what, std::string_view printed, double ours, Within within) {
  const double theirs = std::strtod(std::string(printed).c_str(), nullptr);
  const bool own_tolerance = within.absolute > 0.0 || within.relative > 0.0;
  // A hair over half a digit: the printed value itself was rounded from a double.
  const double allowed =
      own_tolerance ? std::max(within.absolute, within.relative * std::abs(theirs)) : 0.500001 * last_digit(printed);
  const bool holds = std::abs(ours - theirs) <= allowed;
  const std::string tolerance = !own_tolerance          ? std::string("its last digit")
                                : within.relative > 0.0 ? fmt::format("{:.3g} %", within.relative * 100.0)
                                                        : fmt::format("{:.3g}", within.absolute);
  rows().add(fmt::format("{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}", source.title, source.place, word(source.oracle), what,
                         printed, to_digits(ours, printed), tolerance, within.why, holds ? "yes" : "NO"));
  if (!holds) {
    UNSCOPED_INFO(fmt::format("{} {}: {} is printed as {}, ours is {:.12g}, allowed {:.3g}", source.title, source.place,
                              what, printed, ours, allowed));
  }
  return holds;
}

}  // namespace slabwright::test
