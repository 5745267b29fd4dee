// Files whole or not at all: each is written under a name of its own, brought to the disk, and then renamed.
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <stdexcept>
#include <system_error>

#include "app/files.hpp"

namespace slabwright::app {
namespace {

/// An open file or folder, shut when it goes.
struct Opened {
  int at;
  explicit Opened(int descriptor) : at(descriptor) {}
  Opened(const Opened&) = delete;
  Opened& operator=(const Opened&) = delete;
  ~Opened() {
    if (at >= 0) ::close(at);
  }
};

/// Whatever is asked of a folder is asked by this, not by its name: the name may come to mean another meanwhile.
int open_folder(const std::string& folder) {
  return ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
}

std::string failed(const std::string& path, int error) {
  if (error == ENOSPC || error == EDQUOT)
    return fmt::format("{} cannot be written: the disk is full. Make room there, or name another place.", path);
  if (error == EACCES || error == EPERM || error == EROFS)
    return fmt::format("{} cannot be written: you may not write there. Name another place.", path);
  if (error == EEXIST) return fmt::format("{} is there already. Choose another name.", path);
  return fmt::format("{} cannot be written: {}.", path, std::generic_category().message(error));
}

std::string with_nothing_written(const std::string& sentence) { return sentence + " Nothing was written."; }

/// The bytes on the disk, not only on their way: a full disk may show no earlier than that. Returns the system's error.
int write_through(int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t wrote = ::write(file, text.data(), text.size());
    if (wrote < 0 && errno != EINTR) return errno;
    if (wrote > 0) text.remove_prefix(static_cast<std::size_t>(wrote));
  }
  // Some places, such as a pipe's, hold nothing that could be brought to a disk.
  return ::fsync(file) != 0 && errno != EINVAL && errno != ENOTSUP ? errno : 0;
}

std::string unfinished(const std::string& name) { return name + std::string(unfinished_ending); }

/// Writes under the unfinished name, which is nobody else's. A link of that name is taken away, not followed.
int write_unfinished(int folder, const std::string& name, std::string_view text) {
  const std::string own_name = unfinished(name);
  ::unlinkat(folder, own_name.c_str(), 0);
  Opened file(::openat(folder, own_name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666));
  if (file.at < 0) return errno;
  const int error = write_through(file.at, text);
  if (error != 0) ::unlinkat(folder, own_name.c_str(), 0);
  return error;
}

/// What a run that was killed left here.
void take_away_unfinished(int folder, const std::string& path) {
  std::error_code ignored;
  for (std::filesystem::directory_iterator entry(path, ignored), end; entry != end; entry.increment(ignored)) {
    const std::string name = entry->path().filename().string();
    if (name.size() > unfinished_ending.size() && name.ends_with(unfinished_ending))
      ::unlinkat(folder, name.c_str(), 0);
    if (ignored) break;
  }
}

/// Names of sheets are the program's own. Were one made of a user's words, it could lead out of the folder.
void require_own_name(const std::string& name) {
  constexpr std::string_view own = "abcdefghijklmnopqrstuvwxyz-.";
  if (name.empty() || name.front() == '.' || name.find_first_not_of(own) != std::string::npos)
    throw std::logic_error("\"" + name + "\" is no name for a sheet");
}

bool is_folder(int folder, const std::string& name) {
  struct stat found {};
  return ::fstatat(folder, name.c_str(), &found, AT_SYMLINK_NOFOLLOW) == 0 && S_ISDIR(found.st_mode);
}

/// The first error in bringing all of them to the disk, with its sheet's name; nothing where there is none.
std::string write_all_unfinished(int folder, const std::string& path, const std::vector<Sheet>& sheets) {
  for (const Sheet& sheet : sheets) {
    const std::string shown = (std::filesystem::path(path) / sheet.name).string();
    if (is_folder(folder, sheet.name)) return fmt::format("{} is a folder where a file should go. Move it.", shown);
    if (const int error = write_unfinished(folder, sheet.name, sheet.content); error != 0) return failed(shown, error);
  }
  return {};
}

}  // namespace

std::string folder_problem(const std::string& folder) {
  std::error_code ignored;
  const std::filesystem::file_status status = std::filesystem::status(folder, ignored);
  if (folder.empty() || !std::filesystem::exists(status) || std::filesystem::is_directory(status)) return {};
  return with_nothing_written(fmt::format("{} is a file; --out takes a folder.", folder));
}

std::string write_sheets(const std::string& folder, const std::vector<Sheet>& sheets) {
  for (const Sheet& sheet : sheets) require_own_name(sheet.name);
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  const Opened at(open_folder(folder));
  if (at.at < 0) return with_nothing_written(failed(folder, error ? error.value() : errno));
  // Where locks are not to be had, nobody waits: files are whole all the same.
  ::flock(at.at, LOCK_EX);
  take_away_unfinished(at.at, folder);
  if (const std::string problem = write_all_unfinished(at.at, folder, sheets); !problem.empty()) {
    take_away_unfinished(at.at, folder);
    return with_nothing_written(problem);
  }
  for (const Sheet& sheet : sheets) {
    if (::renameat(at.at, unfinished(sheet.name).c_str(), at.at, sheet.name.c_str()) == 0) continue;
    const int reason = errno;
    take_away_unfinished(at.at, folder);
    return failed((std::filesystem::path(folder) / sheet.name).string(), reason);
  }
  ::fsync(at.at);
  return {};
}

std::string write_new_file(const std::string& path, const std::string& text) {
  const std::filesystem::path whole(path);
  const std::string name = whole.filename().string();
  const Opened at(open_folder(whole.parent_path().string()));
  if (at.at < 0) return with_nothing_written(failed(path, errno));
  struct stat found {};
  if (::fstatat(at.at, name.c_str(), &found, AT_SYMLINK_NOFOLLOW) == 0)
    return with_nothing_written(failed(path, EEXIST));
  if (const int error = write_unfinished(at.at, name, text); error != 0)
    return with_nothing_written(failed(path, error));
  // A link never takes the place of a file that has come meanwhile; where there are no links, a rename must do.
  int error = ::linkat(at.at, unfinished(name).c_str(), at.at, name.c_str(), 0) == 0 ? 0 : errno;
  if (error == EPERM || error == ENOTSUP)
    error = ::renameat(at.at, unfinished(name).c_str(), at.at, name.c_str()) == 0 ? 0 : errno;
  ::unlinkat(at.at, unfinished(name).c_str(), 0);
  return error == 0 ? std::string{} : with_nothing_written(failed(path, error));
}

}  // namespace slabwright::app
