#include "slabwright/page.hpp"

#include <fmt/format.h>

#include <exception>
#include <nlohmann/json.hpp>
#include <optional>

#include "slabwright/asking.hpp"

namespace slabwright {
namespace {

using Json = nlohmann::ordered_json;

constexpr int our_fault = 70, usual_digits = 6, fewest_digits = 3, most_digits = 17;

Json tree_of(const PlacedProblem& problem) {
  Json tree = Json::object();
  if (!problem.file.empty()) tree["file"] = problem.file;
  if (problem.line > 0) tree["line"] = problem.line;
  if (problem.column > 0) tree["column"] = problem.column;
  if (!problem.option.empty()) tree["option"] = problem.option;
  if (!problem.code.empty()) tree["code"] = problem.code;
  if (!problem.about.empty()) tree["about"] = problem.about;
  tree["sentence"] = problem.sentence;
  return tree;
}

std::string text_of(const Refusal& refusal) {
  Json tree = {{"exit", refusal.exit}, {"text", refusal.text}, {"problems", Json::array()}};
  for (const PlacedProblem& problem : refusal.problem) tree["problems"].push_back(tree_of(problem));
  // Quoted words of a user may be no valid text.
  return tree.dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

std::string refused(const std::string& sentence, int exit = bad_words) {
  PlacedProblem problem;
  problem.sentence = sentence;
  return text_of(Refusal{exit, sentence + "\n", {problem}});
}

/// A request taken apart, or a sentence about it.
struct PageRequest {
  std::string command, design, name;
  TypedOptions typed;
  std::map<std::string, std::string> files;
  int digits = usual_digits;
  std::string problem;
};

std::string no_member(std::string_view name, std::string_view takes) {
  return fmt::format("the request's {} must be {}.", name, takes);
}

std::string take_option(const std::string& name, const Json& value, TypedOptions& typed) {
  if (name == "--set" && value.is_array()) {
    for (const Json& one : value) {
      if (!one.is_string()) return no_member("--set", "a list of texts");
      typed.set.push_back(one.get<std::string>());
    }
  } else if (name == "--set" && value.is_string()) {
    typed.set.push_back(value.get<std::string>());
  } else if (value.is_string()) {
    typed.text[name] = value.get<std::string>();
  } else if (value.is_boolean()) {
    if (value.get<bool>()) typed.flag.insert(name);
  } else {
    return no_member(name, "a text, or true");
  }
  return {};
}

std::string take_object(std::string_view name, const Json& value, PageRequest& request) {
  if (!value.is_object()) return no_member(name, "an object");
  for (const auto& [key, one] : value.items()) {
    if (name == "options") {
      if (std::string problem = take_option(key, one, request.typed); !problem.empty()) return problem;
    } else if (one.is_string()) {
      request.files[key] = one.get<std::string>();
    } else {
      return no_member(name, "an object of texts");
    }
  }
  return {};
}

std::string take_member(const std::string& name, const Json& value, PageRequest& request) {
  if (name == "options" || name == "files") return take_object(name, value, request);
  if (name == "digits") {
    if (!value.is_number_integer() || value < fewest_digits || value > most_digits)
      return no_member(name, fmt::format("a whole number from {} to {}", fewest_digits, most_digits));
    request.digits = value.get<int>();
    return {};
  }
  for (const auto& [known, into] :
       {std::pair{"command", &request.command}, {"design", &request.design}, {"name", &request.name}}) {
    if (name != known) continue;
    if (!value.is_string()) return no_member(name, "a text");
    *into = value.get<std::string>();
    return {};
  }
  return fmt::format("a request has no \"{}\": it has command, design, name, options, files and digits.",
                     excerpt(name));
}

PageRequest taken_apart(std::string_view text) {
  PageRequest request;
  const Json tree = Json::parse(text, nullptr, false);
  if (!tree.is_object()) {
    request.problem = "a request is a JSON object: {\"command\": \"design\", \"design\": \"...\"}.";
    return request;
  }
  for (const auto& [name, value] : tree.items()) {
    request.problem = take_member(name, value, request);
    if (!request.problem.empty()) return request;
  }
  const bool has_design = tree.contains("design");
  if (has_design && request.name.empty()) request.name = "design";
  if (!has_design) request.name.clear();
  return request;
}

GetFile from_request(const PageRequest& request) {
  return [&request](const FileWanted& wanted) {
    const auto found = request.files.find(wanted.name);
    if (found != request.files.end()) return FileGot{wanted.name, found->second, {}};
    return FileGot{wanted.name, {}, fmt::format("the request brings no file {}.", excerpt(wanted.name))};
  };
}

std::string gauge_of(const Asked& asked) {
  const PreparedGauge prepared = prepare_gauge(asked);
  return prepared.refusal ? text_of(*prepared.refusal) : json_of(gauge_answer(prepared.asked));
}

std::string answered(std::string_view text) {
  const PageRequest request = taken_apart(text);
  if (!request.problem.empty()) return refused(request.problem);
  if (request.command == "new") return refused("new makes a file; there is no disk here.");
  const AskedInWords words = asked_in_words(request.command, request.name, request.typed);
  if (!words.problem.empty()) return refused(words.problem);
  if (request.command == "gauge") return gauge_of(words.asked);
  const Prepared prepared = prepare(words.asked, request.design, from_request(request));
  if (prepared.refusal) return text_of(*prepared.refusal);
  const Answer answer = slabwright::answer(*prepared.read.checked.value, prepared.wishes, prepared.brought);
  if (const std::optional<Refusal> refusal = refused_readings(words.asked, prepared.brought, answer))
    return text_of(*refusal);
  return json_of(answer, request.digits);
}

}  // namespace

std::string page_answer(std::string_view request) {
  try {
    return answered(request);
  } catch (const std::exception& fault) {
    return refused(fmt::format("slabwright has a fault of its own: {}", fault.what()), our_fault);
  }
}

}  // namespace slabwright
