// The shops whose winter is moved, and what physics says of it.
#pragma once
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "slabwright/design.hpp"

namespace slabwright::test {

/// A layout, or one with keys that no layout gives, of which then only those are moved.
struct Shop {
  std::string name;
  DesignFile file;
  std::vector<std::pair<std::string, std::string>> moves;  ///< path and text; empty: everything that is the winter's
};
std::vector<Shop> winter_shops();

/// What is moved in a shop, and to what: of rows that are read alike the first that gives a word.
std::vector<std::pair<std::string, std::string>> moves_of(const Shop& shop);

/// "shop: path" of what moves nothing in a shop, each with the reason.
const std::set<std::string>& passed_over_in_winter();

/// Every key of the winter that may move something, its rows as one.
std::set<std::string> keys_of_winter();

/// "vehicle[].mass" for "vehicle[2].mass".
std::string any_row(std::string path);

/// Where a column of each way has to go when a key is moved as the test moves it; '0': nowhere.
struct Physics {
  std::string path, column;
  char sign = '0';
};
const std::vector<Physics>& physics();

}  // namespace slabwright::test
