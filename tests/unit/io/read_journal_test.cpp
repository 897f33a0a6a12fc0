// Lines of a journal as JSON: they read back equal, what is wrong in them is told with its place, and what was torn is told
// from what someone wrote wrong.
#include "unit/io/journal_workshop.hpp"
#include "unit/io/json_workshop.hpp"

namespace read_journal_test {
namespace {

using namespace journal_workshop;
using json_workshop::expect_bad;
using json_workshop::expect_fails;
using json_workshop::with;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

const auto read_line = [](const std::string& text, const std::string& file) {
  return entry_from_json(text, file, 7);
};

TEST(EntryLine, ReadsBackEqualAndIsOneLine) {
  for (const Entry& each : one_of_each()) {
    const std::string line = to_json(each);
    EXPECT_EQ(entry_from_json(line), each) << line;
    EXPECT_EQ(line.find('\n'), line.size() - 1) << line;
  }
}

TEST(EntryLine, HoldsTheFormatFirstAndOnlyWhatIsThere) {
  EXPECT_EQ(to_json(one_of_each()[1]),
            "{\"format\":\"levigate.journal/1\",\"at\":\"2026-03-01T09:30:00Z\",\"kind\":\"step "
            "ended\",\"job\":\"walnut clock case\",\"sheet\":\"P800 "
            "wet\",\"minutes\":12.3,\"sheets_used\":0.1}\n");
  EXPECT_EQ(
      to_json(one_of_each()[7]),
      "{\"format\":\"levigate.journal/1\",\"at\":\"2026-03-01T09:30:00Z\",\"kind\":\"mark "
      "found\",\"job\":\"walnut clock "
      "case\",\"mark\":{\"kind\":\"wave\",\"zone\":\"top\",\"seen\":\"sunlight\",\"height_um\":"
      "1.5}}\n");
}

TEST(EntryLine, AWrongEntryIsNotWritten) {
  EXPECT_THROW(to_json(entry(EntryKind::note)), BadInput);
  EXPECT_THROW(to_json(note("\xFF")), BadInput);
  Entry ended = one_of_each()[1];
  ended.minutes = -1;
  EXPECT_THROW(to_json(ended), OutOfRange);
  const std::size_t around = to_json(note("x")).size() - 1;
  EXPECT_EQ(to_json(note(std::string(longest_entry_bytes - around, 'x'))).size(),
            longest_entry_bytes);
  EXPECT_THROW(to_json(note(std::string(longest_entry_bytes - around + 1, 'x'))), BadInput);
}

TEST(EntryLine, ErrorsNameValuePointerAndLine) {
  const std::string ended = to_json(one_of_each()[1]);
  const std::string found = to_json(one_of_each()[6]);
  expect_bad(read_line, with(ended, "\"minutes\"", "\"minute\""), "/minute", 7,
             {"the nearest is \"minutes\""});
  expect_bad(read_line, with(ended, "step ended", "step end"), "/kind", 7,
             {"'step end' is not known", "the nearest is 'step ended'"});
  expect_bad(read_line, with(ended, "journal/1", "journal/2"), "/format", 7, {"journal/2"});
  expect_bad(read_line, with(ended, "\"minutes\":12.3,", ""), "", 7, {"minutes is missing"});
  expect_bad(read_line, with(ended, "12.3", "\"12\""), "/minutes", 7, {"wanted a number"});
  expect_bad(read_line, with(ended, "12.3", "null"), "/minutes", 7, {"wanted a number"});
  expect_bad(read_line, with(ended, "T09", "T25"), "/at", 7, {"no such time of day"});
  expect_bad(read_line, with(ended, "\"sheet\"", "\"zone\":\"\",\"sheet\""), "/zone", 7,
             {"zone is empty"});
  expect_bad(read_line, with(ended, "\"sheet\"", "\"ra_um\":1,\"sheet\""), "/ra_um", 7,
             {"ra_um does not go with kind 'step ended'"});
  expect_bad(read_line, with(ended, "\"sheet\"", "\"sheet\":\"a\",\"sheet\""), "/sheet", 7,
             {"is repeated"});
  expect_bad(read_line, with(found, "\"seen\"", "\"sean\""), "/mark/sean", 7, {"\"seen\""});
  expect_bad(read_line, with(found, "cluster", "scratch"), "/mark/count", 7,
             {"the mark is not a cluster"});
  expect_bad(read_line, with(found, ":3}", ":3.5}"), "/mark/count", 7, {"not a whole number"});
  expect_bad(read_line, "[]", "", 7, {"an object of format"});
  expect_fails<OutOfRange>(read_line, with(ended, "12.3", "-12"), 7, {"minutes = -12 min"});
  expect_fails<OutOfRange>(read_line, with(found, ":90", ":190"), 7, {"direction_deg", "/mark"});
  expect_fails<BadInput>(read_line, with(ended, "12.3", "12.3.4"), 7, {"column"});
}

TEST(JournalText, HoldsEntriesWithTheirLines) {
  const std::vector<Entry> all = one_of_each();
  const JournalReading read = journal_from_json(lines_of(all));
  EXPECT_EQ(read.entries, all);
  EXPECT_THAT(read.lines, ElementsAre(1, 2, 3, 4, 5, 6, 7, 8, 9, 10));
  EXPECT_THAT(read.torn, SizeIs(0));
  EXPECT_EQ(journal_from_json(""), JournalReading{});
}

/// Cut anywhere, a journal keeps its whole lines, and the rest is told; what is appended then is there, and nothing else
/// changes.
TEST(JournalText, CutAtAnyByteLosesTheTornLineOnly) {
  const std::vector<Entry> all = one_of_each();
  const std::string text = lines_of(all);
  for (std::size_t cut = 0; cut <= text.size(); ++cut) {
    const std::string left = text.substr(0, cut);
    const auto whole = static_cast<std::size_t>(std::count(left.begin(), left.end(), '\n'));
    const std::size_t begin = left.rfind('\n') + 1;
    const bool newline_only = cut < text.size() && text[cut] == '\n';
    const bool torn = begin < cut && !newline_only;
    const std::size_t entries = whole + (newline_only ? 1 : 0);
    const auto expect = [&](const JournalReading& read, std::size_t more) {
      ASSERT_THAT(read.entries, SizeIs(entries + more)) << cut;
      EXPECT_TRUE(std::equal(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(entries),
                             read.entries.begin()))
          << cut;
      ASSERT_THAT(read.torn, SizeIs(torn ? 1 : 0)) << cut;
      if (!torn) return;
      EXPECT_EQ(read.torn[0].line, static_cast<int>(whole) + 1);
      EXPECT_EQ(read.torn[0].bytes, cut - begin);
    };
    expect(journal_from_json(left), 0);
    const std::string fresh = left.empty() || left.back() == '\n' ? "" : "\n";
    const JournalReading after = journal_from_json(left + fresh + to_json(note("after")));
    expect(after, 1);
    EXPECT_EQ(after.entries.back(), note("after"));
    EXPECT_EQ(after.lines.back(), static_cast<int>(whole) + (fresh.empty() ? 1 : 2));
  }
}

TEST(JournalText, ZeroBytesAreOfALineThatNeverReachedTheDisk) {
  const std::string line = to_json(note("kept"));
  const std::string zeros(40, '\0');
  const std::string pieces[] = {zeros, line.substr(0, 30) + zeros, zeros + line.substr(30, 20),
                                line.substr(0, line.size() - 1) + zeros};
  for (const std::string& piece : pieces) {
    const JournalReading read = journal_from_json(line + piece + "\n" + line);
    EXPECT_THAT(read.entries, ElementsAre(note("kept"), note("kept")));
    EXPECT_THAT(read.lines, ElementsAre(1, 3));
    ASSERT_THAT(read.torn, SizeIs(1));
    EXPECT_EQ(read.torn[0], (Torn{2, piece.size(), read.torn[0].message}));
    EXPECT_THAT(read.torn[0].message, HasSubstr("line 2 is torn"));
    EXPECT_THAT(read.torn[0].message, HasSubstr(std::to_string(piece.size()) + " bytes"));
  }
}

TEST(JournalText, WhatWasWrittenWrongIsAnErrorAndNotTorn) {
  const std::string good = to_json(note("good"));
  const std::string whole = good.substr(0, good.size() - 1);
  const auto read = [](const std::string& text, const std::string& file) {
    return journal_from_json(text, file);
  };
  const auto bad_line = [&](const std::string& line, std::initializer_list<std::string> said) {
    expect_fails<BadInput>(read, good + line + "\n" + good, 2, said);
    expect_fails<BadInput>(read, good + line, 2, said);
  };
  bad_line("words", {"text wants double quotes: \"words\""});
  bad_line("[1,", {"the text ends too early"});
  bad_line("\"{", {"the closing double quote of a text is missing"});
  bad_line(" {", {"the text ends too early"});
  bad_line("}", {"a value is missing before }"});
  bad_line(whole + whole,
           {"there is more text after the end", "column " + std::to_string(good.size())});
  bad_line(whole + ",", {"there is more text after the end"});
  bad_line("{'format'", {"a name in double quotes is wanted"});
  bad_line("{\"format\":\"levigate.journal/1\",\"text\":\"\xFF\xFF", {"UTF-8"});
  bad_line(with(whole, "note", "nod"), {"'nod' is not known"});
  bad_line("{}", {"format is missing"});
  bad_line(std::string(longest_entry_bytes + 1, ' '), {"bytes"});
  expect_fails<BadInput>(read, good + "\n" + good, 2, {"empty"});
}

TEST(JournalText, LinesOfWindowsAndBlanksAreTaken) {
  std::string line = to_json(note("x"));
  line.insert(line.size() - 1, "\r");
  EXPECT_THAT(journal_from_json(line + with(line, ",\"at\"", " ,\t\"at\"")).entries, SizeIs(2));
}

}  // namespace
}  // namespace read_journal_test
