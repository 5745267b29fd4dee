// A design file that is put together key by key.
#pragma once
#include <string>
#include <utility>
#include <vector>

namespace slabwright::test {

/// Keys by their paths ("room[2].area"), in sections in the order in which those first appear. A key set again keeps
/// its last text.
class DesignText {
 public:
  void set(const std::string& path, const std::string& text);
  void set_list(const std::string& path, const std::vector<std::string>& items);
  void remove(const std::string& path);
  bool has(const std::string& path) const;
  std::size_t rows(const std::string& section) const;  ///< of [[section]]
  /// The row after the last, as a prefix: "room[3]".
  std::string next_row(const std::string& section) const;
  std::vector<std::string> texts(const std::string& section, const std::string& word) const;
  std::vector<std::string> paths() const;
  std::string toml() const;

 private:
  struct Entry {
    std::string path, value;  ///< the value as TOML writes it
  };
  void put(const std::string& path, std::string value);
  std::vector<Entry> entries_;
};

}  // namespace slabwright::test
