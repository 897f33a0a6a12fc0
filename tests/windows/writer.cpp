// One of several writers of a journal, each a process of its own; and the reader that counts what they wrote.
//
//   writer JOURNAL WHO LINES         appends lines of WHO
//   writer JOURNAL WRITERS= LINES    exit 0 where each of so many writers has its lines there, whole and in order
#include <cstdio>
#include <exception>
#include <map>
#include <string>

#include "levigate/io/journal.hpp"

namespace {

void write(const char* journal, const char* who, int lines) {
  levigate::Entry entry;
  entry.kind = levigate::EntryKind::note;
  entry.at = "2026-03-01T09:30:00Z";
  entry.job = who;
  for (int i = 0; i < lines; ++i) {
    entry.text = std::to_string(i) + std::string(i % 2 == 0 ? 10 : 5000, '.');
    levigate::append(journal, entry);
  }
}

int count(const char* journal, int writers, int lines) {
  const levigate::JournalReading read = levigate::read_journal(journal);
  std::map<std::string, int> next;
  for (const levigate::Entry& entry : read.entries)
    if (std::stoi(entry.text) != next[entry.job]++) return 1;
  for (const auto& [who, held] : next)
    if (held != lines) return 1;
  std::printf("%zu lines of %zu writers, %zu torn\n", read.entries.size(), next.size(),
              read.torn.size());
  return read.torn.empty() && next.size() == static_cast<std::size_t>(writers) ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) try {
  if (argc != 4) {
    std::fputs("writer JOURNAL WHO LINES, or writer JOURNAL WRITERS= LINES\n", stderr);
    return 2;
  }
  const std::string who = argv[2];
  const int lines = std::stoi(argv[3]);
  if (who.ends_with('=')) return count(argv[1], std::stoi(who), lines);
  write(argv[1], argv[2], lines);
  return 0;
} catch (const std::exception& error) {
  std::fprintf(stderr, "writer: %s\n", error.what());
  return 1;
}
