// How commands are typed, and their options as the parser knows them.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "app/request.hpp"

namespace slabwright::app {

/// What the help says behind a command's options, in paragraphs; most have none.
std::string_view note_of(std::string_view command);

/// How a command is typed, behind its name, and what else there is to say about that.
struct Usage {
  std::string_view typed, remark;
};
Usage usage_of(std::string_view command);

/// An option as the parser knows it.
struct ShownOption {
  std::string heading, name, value, meaning;
  std::vector<std::string> words;  ///< all that may stand behind it, where the design file knows them
};
/// Read from the parser itself, in the order of the help.
std::vector<ShownOption> shown_options(std::string_view command);

}  // namespace slabwright::app
