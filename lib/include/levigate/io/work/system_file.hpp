// A file by the calls of the system: locks and writing through to the disk, which C++ has no word for.
// The only header with includes of a system. Every call gives its error, empty where there is none.
#pragma once

#ifdef _WIN32
#ifndef NOMINMAX
#define NOMINMAX
#endif
#ifndef WIN32_LEAN_AND_MEAN
#define WIN32_LEAN_AND_MEAN
#endif
#include <windows.h>
#else
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#endif

#include <algorithm>
#include <cerrno>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string_view>
#include <system_error>
#include <utility>

namespace levigate::inline v0::detail {

enum class FileUse { read, append };  ///< to append makes a file where there is none
enum class FileLock { shared, alone };

/// What there is to know of an open file.
struct FileFacts {
  bool regular = false;
  std::uintmax_t bytes = 0;
  std::uintmax_t volume = 0, number = 0;  ///< no other file has both
};

#ifdef _WIN32

/// For Windows: CreateFileW, LockFileEx, FlushFileBuffers. Locks hold for the whole file, also for who asks for none.
class SystemFile {
 public:
  SystemFile() = default;
  SystemFile(const SystemFile&) = delete;
  SystemFile& operator=(const SystemFile&) = delete;
  ~SystemFile() { close(); }

  std::error_code open(const std::filesystem::path& path, FileUse use) {
    close();
    const bool append = use == FileUse::append;
    handle_ = opened(path, append ? GENERIC_READ | GENERIC_WRITE : GENERIC_READ,
                     append ? OPEN_ALWAYS : OPEN_EXISTING, FILE_ATTRIBUTE_NORMAL);
    return error_unless(handle_ != INVALID_HANDLE_VALUE);
  }

  std::error_code look(FileFacts& facts) const { return look(handle_, facts); }

  /// Whether a path leads to this file.
  bool stands_at(const std::filesystem::path& path) const {
    SystemFile other;
    other.handle_ = opened(path, 0, OPEN_EXISTING, FILE_FLAG_BACKUP_SEMANTICS);
    FileFacts here, there;
    return other.handle_ != INVALID_HANDLE_VALUE && !look(here) && !other.look(there) &&
           here.volume == there.volume && here.number == there.number;
  }

  /// Waits until nobody is in the way.
  std::error_code lock(FileLock lock) {
    OVERLAPPED from{};
    const DWORD how = lock == FileLock::alone ? LOCKFILE_EXCLUSIVE_LOCK : 0;
    return error_unless(LockFileEx(handle_, how, 0, MAXDWORD, MAXDWORD, &from));
  }
  void unlock() noexcept {
    OVERLAPPED from{};
    UnlockFileEx(handle_, 0, MAXDWORD, MAXDWORD, &from);
  }

  std::error_code read(char* to, std::size_t count, std::uintmax_t from) const {
    while (count > 0) {
      OVERLAPPED at = offset(from);
      DWORD got = 0;
      if (!ReadFile(handle_, to, piece(count), &got, &at)) return error_unless(false);
      if (got == 0) return std::make_error_code(std::errc::io_error);
      to += got;
      from += got;
      count -= got;
    }
    return {};
  }

  /// Writes all of it at the end, wherever that is by then.
  std::error_code append(std::string_view text) {
    while (!text.empty()) {
      OVERLAPPED end{};
      end.Offset = end.OffsetHigh = MAXDWORD;  // which WriteFile takes for the end
      DWORD taken = 0;
      if (!WriteFile(handle_, text.data(), piece(text.size()), &taken, &end))
        return error_unless(false);
      if (taken == 0) return std::make_error_code(std::errc::io_error);
      text.remove_prefix(taken);
    }
    return {};
  }

  /// Returns when all that was written is on disk, the file's size with it.
  std::error_code sync() { return error_unless(FlushFileBuffers(handle_)); }

  std::error_code cut(std::uintmax_t bytes) {
    FILE_END_OF_FILE_INFO end{};
    end.EndOfFile.QuadPart = static_cast<LONGLONG>(bytes);
    return error_unless(SetFileInformationByHandle(handle_, FileEndOfFileInfo, &end, sizeof end));
  }

  /// Nothing: a program cannot synchronize a directory here. NTFS writes changes of names in their order, and
  /// FlushFileBuffers waits for them. From memory: nobody here saw the page.
  std::error_code sync_name(const std::filesystem::path&) { return {}; }

 private:
  static HANDLE opened(const std::filesystem::path& path, DWORD access, DWORD how, DWORD flags) {
    const DWORD others = FILE_SHARE_READ | FILE_SHARE_WRITE | FILE_SHARE_DELETE;
    return CreateFileW(path.c_str(), access, others, nullptr, how, flags, nullptr);
  }
  static std::error_code look(HANDLE handle, FileFacts& facts) {
    facts = {};
    if (GetFileType(handle) != FILE_TYPE_DISK) return {};  // a pipe or a device
    BY_HANDLE_FILE_INFORMATION found{};
    if (!GetFileInformationByHandle(handle, &found)) return error_unless(false);
    facts.regular = (found.dwFileAttributes & FILE_ATTRIBUTE_DIRECTORY) == 0;
    facts.bytes = joined(found.nFileSizeHigh, found.nFileSizeLow);
    facts.volume = found.dwVolumeSerialNumber;
    facts.number = joined(found.nFileIndexHigh, found.nFileIndexLow);
    return {};
  }
  static std::error_code error_unless(bool fine) {
    if (fine) return {};
    return {static_cast<int>(GetLastError()), std::system_category()};
  }
  static std::uintmax_t joined(DWORD high, DWORD low) {
    return (static_cast<std::uintmax_t>(high) << 32) | low;
  }
  static OVERLAPPED offset(std::uintmax_t from) {
    OVERLAPPED at{};
    at.Offset = static_cast<DWORD>(from);
    at.OffsetHigh = static_cast<DWORD>(from >> 32);
    return at;
  }
  static DWORD piece(std::size_t count) {
    return static_cast<DWORD>(std::min<std::size_t>(count, std::size_t{1} << 30));
  }
  void close() noexcept {
    if (handle_ != INVALID_HANDLE_VALUE) CloseHandle(handle_);
    handle_ = INVALID_HANDLE_VALUE;
  }

  HANDLE handle_ = INVALID_HANDLE_VALUE;
};

#else

/// A call, made again where a signal cut it short.
template <typename Call>
auto uninterrupted(Call call) {
  while (true) {
    const auto result = call();
    if (result >= 0 || errno != EINTR) return result;
  }
}

/// For POSIX systems: O_APPEND, flock, fsync. Locks hold among those who ask for one.
class SystemFile {
 public:
  SystemFile() = default;
  SystemFile(const SystemFile&) = delete;
  SystemFile& operator=(const SystemFile&) = delete;
  ~SystemFile() { close(); }

  std::error_code open(const std::filesystem::path& path, FileUse use) {
    close();
    const int flags = use == FileUse::append ? O_RDWR | O_APPEND | O_CREAT : O_RDONLY;
    // Without O_NONBLOCK, opening a pipe waits for its other end.
    number_ = uninterrupted(
        [&] { return ::open(path.c_str(), flags | O_CLOEXEC | O_NOCTTY | O_NONBLOCK, 0666); });
    return error_unless(number_ >= 0);
  }

  std::error_code look(FileFacts& facts) const {
    struct stat found {};
    if (::fstat(number_, &found) != 0) return error_unless(false);
    facts = facts_of(found);
    return {};
  }

  /// Whether a path leads to this file.
  bool stands_at(const std::filesystem::path& path) const {
    struct stat found {};
    FileFacts here;
    if (::stat(path.c_str(), &found) != 0 || look(here)) return false;
    const FileFacts there = facts_of(found);
    return here.volume == there.volume && here.number == there.number;
  }

  /// Waits until nobody is in the way.
  std::error_code lock(FileLock lock) {
    const int how = lock == FileLock::alone ? LOCK_EX : LOCK_SH;
    return error_unless(uninterrupted([&] { return ::flock(number_, how); }) == 0);
  }
  void unlock() noexcept {
    ::flock(number_, LOCK_UN);
  }  // closing does not do it where a fork holds a copy

  std::error_code read(char* to, std::size_t count, std::uintmax_t from) const {
    while (count > 0) {
      const auto got =
          uninterrupted([&] { return ::pread(number_, to, count, static_cast<off_t>(from)); });
      if (got < 0) return error_unless(false);
      if (got == 0) return std::make_error_code(std::errc::io_error);
      to += got;
      from += static_cast<std::uintmax_t>(got);
      count -= static_cast<std::size_t>(got);
    }
    return {};
  }

  /// Writes all of it at the end, wherever that is by then. One write, unless the system takes a part only.
  std::error_code append(std::string_view text) {
    while (!text.empty()) {
      const auto taken = uninterrupted([&] { return ::write(number_, text.data(), text.size()); });
      if (taken < 0) return error_unless(false);
      text.remove_prefix(static_cast<std::size_t>(taken));
    }
    return {};
  }

  /// Returns when all that was written is on disk, the file's size with it.
  std::error_code sync() { return synchronized(number_); }

  std::error_code cut(std::uintmax_t bytes) {
    return error_unless(
        uninterrupted([&] { return ::ftruncate(number_, static_cast<off_t>(bytes)); }) == 0);
  }

  /// Returns when the name is on disk in its directory.
  std::error_code sync_name(const std::filesystem::path& path) {
    std::error_code failed;
    const auto target = std::filesystem::canonical(path, failed);  // past a link
    if (failed) return failed;
    SystemFile directory;
    directory.number_ = uninterrupted(
        [&] { return ::open(target.parent_path().c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); });
    return directory.number_ < 0 ? error_unless(false) : directory.sync();
  }

 private:
  static std::error_code error_unless(bool fine) {
    return fine ? std::error_code() : std::error_code(errno, std::generic_category());
  }
  static std::error_code synchronized(int number) {
#ifdef F_FULLFSYNC  // macOS: fsync alone leaves it in the memory of the drive
    if (uninterrupted([&] { return ::fcntl(number, F_FULLFSYNC); }) >= 0) return {};
#endif
    return error_unless(uninterrupted([&] { return ::fsync(number); }) == 0);
  }
  static FileFacts facts_of(const struct stat& found) {
    return {S_ISREG(found.st_mode), static_cast<std::uintmax_t>(found.st_size),
            static_cast<std::uintmax_t>(found.st_dev), static_cast<std::uintmax_t>(found.st_ino)};
  }
  void close() noexcept {
    if (number_ >= 0) ::close(number_);
    number_ = -1;
  }

  int number_ = -1;
};

#endif

}  // namespace levigate::inline v0::detail
