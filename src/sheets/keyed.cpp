#include "sheets/keyed.hpp"

#include "slabwright/drawing_plan.hpp"

namespace slabwright {

KeyedText taped(double length_m, System system, std::string key) {
  return {length_words(length_m, system), std::move(key)};
}

KeyedText run_of(double length_m, System system, std::string key) {
  return {system == System::us ? show_as(length_m, Dimension::length, "ft", 0)
                               : show_as(length_m, Dimension::length, "m", 1),
          std::move(key)};
}

KeyedText small_of(double length_m, System system, std::string key) {
  if (system == System::us) return taped(length_m, system, std::move(key));
  return {show_as(length_m, Dimension::length, "mm", 0), std::move(key)};
}

KeyedText degrees_of(double degC, System system, std::string key) {
  return {show(degC, Dimension::degree, system), std::move(key)};
}

KeyedText named(const std::string& name, std::string key) {
  return name.empty() ? KeyedText{} : KeyedText{name, std::move(key)};
}

KeyedText named_or(const std::string& name, std::string key, const std::string& ours) {
  return name.empty() ? KeyedText{ours, ""} : KeyedText{name, std::move(key)};
}

}  // namespace slabwright
