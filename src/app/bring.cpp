#include "app/bring.hpp"

#include <filesystem>

#include "app/files.hpp"

namespace slabwright::app {
namespace {

FileText text_of_kind(FileWanted::Kind kind, const std::string& path) {
  switch (kind) {
    case FileWanted::Kind::weather: return read_weather_file(path);
    case FileWanted::Kind::readings: return read_readings_file(path);
    case FileWanted::Kind::found: break;
  }
  return read_found_file(path);
}

}  // namespace

GetFile from_disk(const std::string& design_name) {
  return [design_name](const FileWanted& wanted) {
    const std::filesystem::path named = wanted.name;
    const std::string path =
        (wanted.beside_design ? std::filesystem::path(design_name).parent_path() / named : named).string();
    FileText file = text_of_kind(wanted.kind, path);
    return FileGot{path, std::move(file.text), std::move(file.problem)};
  };
}

}  // namespace slabwright::app
