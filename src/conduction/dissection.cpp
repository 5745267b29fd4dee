#include "conduction/assembly.hpp"

namespace slabwright::conduction {
namespace {

struct Block {
  std::size_t first_column, end_column, first_row, end_row;
};

void append(const Block& block, std::size_t row_length, std::vector<std::size_t>& order) {
  for (std::size_t j = block.first_row; j < block.end_row; ++j) {
    for (std::size_t i = block.first_column; i < block.end_column; ++i) order.push_back(j * row_length + i);
  }
}

void dissect(const Block& block, std::size_t row_length, std::vector<std::size_t>& order) {
  const std::size_t wide = block.end_column - block.first_column, high = block.end_row - block.first_row;
  // Below three nodes there is nothing left to part.
  if (wide < 3 && high < 3) return append(block, row_length, order);
  Block low = block, line = block, high_half = block;
  if (wide >= high) {
    const std::size_t middle = block.first_column + wide / 2;
    low.end_column = line.first_column = middle;
    line.end_column = high_half.first_column = middle + 1;
  } else {
    const std::size_t middle = block.first_row + high / 2;
    low.end_row = line.first_row = middle;
    line.end_row = high_half.first_row = middle + 1;
  }
  dissect(low, row_length, order);
  dissect(high_half, row_length, order);
  append(line, row_length, order);
}

}  // namespace

std::vector<std::size_t> dissected(std::size_t columns, std::size_t rows) {
  std::vector<std::size_t> order;
  order.reserve(columns * rows);
  dissect({0, columns, 0, rows}, columns, order);
  return order;
}

}  // namespace slabwright::conduction
