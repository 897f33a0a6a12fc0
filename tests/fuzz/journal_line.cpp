// Any bytes as a journal: it reads, or is refused by one of our errors. What reads is written and read back equal; cut anywhere,
// it keeps its whole lines and tells of the rest, and what is appended then is there.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "levigate/io/entry.hpp"
#include "levigate/io/read_journal.hpp"

namespace {

using namespace levigate;

void require(bool holds) {
  if (!holds) std::abort();
}

void cut_at(const JournalReading& whole, const std::string& text, std::size_t cut) {
  const std::string left = text.substr(0, cut);
  const std::size_t begin = left.rfind('\n') + 1;
  const bool newline_only = cut < text.size() && text[cut] == '\n';
  const bool torn = begin < cut && !newline_only;
  const auto lines = static_cast<std::size_t>(std::count(left.begin(), left.end(), '\n'));
  const std::size_t kept = lines + (newline_only ? 1 : 0);
  const std::string fresh = left.empty() || left.back() == '\n' ? "" : "\n";
  const JournalReading read = journal_from_json(left);
  const JournalReading after = journal_from_json(left + fresh + to_json(whole.entries.back()));
  for (const JournalReading& reading : {read, after}) {
    require(reading.torn.size() == (torn ? 1 : 0));
    require(!torn || reading.torn[0].bytes == cut - begin);
    require(reading.entries.size() >= kept);
    require(std::equal(whole.entries.begin(),
                       whole.entries.begin() + static_cast<std::ptrdiff_t>(kept),
                       reading.entries.begin()));
  }
  require(read.entries.size() == kept && after.entries.size() == kept + 1);
  require(after.entries.back() == whole.entries.back());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  JournalReading reading;
  try {
    reading = journal_from_json(bytes);
  } catch (const Error&) {
    return 0;
  }
  std::string text;
  for (const Entry& entry : reading.entries) text += to_json(entry);
  const JournalReading again = journal_from_json(text);
  require(again.entries == reading.entries && again.torn.empty());
  if (text.empty()) return 0;
  std::size_t mixed = size;
  for (std::size_t i = 0; i < size; ++i) mixed = mixed * 31 + data[i];
  for (std::size_t i = 0; i < 8; ++i) cut_at(again, text, (mixed + i * 7919) % (text.size() + 1));
  return 0;
}
