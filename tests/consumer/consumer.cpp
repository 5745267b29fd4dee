// Reads a design file and prints the tube it takes: a program that uses the library as it is installed.
#include <fstream>
#include <iostream>
#include <iterator>
#include <slabwright/answer.hpp>

int main(int, char* words[]) {
  std::ifstream file(words[1]);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  const slabwright::ReadDesign read = slabwright::read_design(text);
  if (!read.checked) return 2;
  std::cout << slabwright::answer(*read.checked.value, {}).loops->tube_m << " m of tube\n";
}
