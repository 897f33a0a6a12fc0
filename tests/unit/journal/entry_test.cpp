// What an entry of the journal must have, must not have, and when it says it happened; what a journal says was done.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdio>
#include <limits>
#include <map>

#include "levigate/detail/moment.hpp"
#include "levigate/journal/done.hpp"
#include "levigate/journal/entry.hpp"

namespace entry_test {
namespace {

using namespace levigate;
using testing::ElementsAre;
using testing::HasSubstr;

Entry entry(EntryKind kind) {
  Entry plain;
  plain.kind = kind;
  plain.at = "2026-03-01T09:30:00Z";
  plain.job = "clock case";
  return plain;
}

Mark mark() {
  Mark seen;
  seen.zone = "top";
  return seen;
}

/// Fills one member of an entry.
const std::map<std::string, void (*)(Entry&)> fill = {
    {"zone", [](Entry& e) { e.zone = "top"; }},
    {"sheet", [](Entry& e) { e.sheet = "P800"; }},
    {"minutes", [](Entry& e) { e.minutes = 0; }},
    {"sheets_used", [](Entry& e) { e.sheets_used = 1.5; }},
    {"removal_um", [](Entry& e) { e.removal_um = 1.5; }},
    {"overcut", [](Entry& e) { e.overcut = 2; }},
    {"direction_deg", [](Entry& e) { e.direction_deg = 45; }},
    {"readings_um",
     [](Entry& e) {
       e.readings_um = {98, 101.5};
     }},
    {"width_um", [](Entry& e) { e.width_um = 3; }},
    {"ra_um", [](Entry& e) { e.ra_um = 0.2; }},
    {"mark", [](Entry& e) { e.mark = mark(); }},
    {"tool", [](Entry& e) { e.tool = "hard block"; }},
    {"area_cm2", [](Entry& e) { e.area_cm2 = 100; }},
    {"text", [](Entry& e) { e.text = "a word"; }},
    {"line", [](Entry& e) { e.line = 3; }},
};

struct Kind {
  EntryKind kind;
  std::vector<std::string> needs, may;
};
const Kind kinds[] = {
    {EntryKind::step_begun, {"sheet"}, {"zone", "direction_deg", "minutes"}},
    {EntryKind::step_ended, {"sheet", "minutes"}, {"zone", "sheets_used", "removal_um", "overcut"}},
    {EntryKind::cleaned, {"sheet"}, {}},
    {EntryKind::film_read, {"zone", "readings_um"}, {}},
    {EntryKind::scratch_read, {"zone", "sheet", "width_um"}, {}},
    {EntryKind::patch_worked, {"sheet", "tool", "area_cm2", "minutes", "zone"}, {}},
    {EntryKind::mark_found, {"mark"}, {}},
    {EntryKind::note, {"text"}, {}},
    {EntryKind::struck, {"line", "text"}, {}},
};

Entry filled(EntryKind kind, const std::vector<std::string>& names) {
  Entry result = entry(kind);
  for (const std::string& name : names) fill.at(name)(result);
  return result;
}

/// What validate says, or nothing.
std::string fault(const Entry& given) {
  try {
    validate(given, "line");
  } catch (const Error& error) {
    return error.what();
  }
  return {};
}

TEST(Entry, EachKindNeedsItsMembers) {
  for (const auto& [kind, needs, may] : kinds) {
    EXPECT_EQ(fault(filled(kind, needs)), "") << to_string(kind);
    for (std::size_t i = 0; i < needs.size(); ++i) {
      std::vector<std::string> lacking = needs;
      lacking.erase(lacking.begin() + static_cast<std::ptrdiff_t>(i));
      const std::string said = needs[i] == "width_um" ? "either width_um or ra_um is needed"
                               : kind == EntryKind::patch_worked && needs[i] == "zone"
                                   ? "one of these is needed"
                                   : needs[i] + " is missing";
      if (kind == EntryKind::patch_worked && needs[i] == "zone") {
        EXPECT_THAT(fault(filled(kind, lacking)), HasSubstr(said));
        continue;
      }
      EXPECT_EQ(fault(filled(kind, lacking)),
                said + " with kind '" + std::string(to_string(kind)) + "', in line");
    }
  }
}

TEST(Entry, EachKindForbidsWhatItDoesNotHave) {
  int forbidden = 0;
  for (const auto& [kind, needs, may] : kinds) {
    for (const auto& [name, give] : fill) {
      Entry given = filled(kind, needs);
      give(given);
      const bool has = std::count(needs.begin(), needs.end(), name) > 0;
      const bool can = std::count(may.begin(), may.end(), name) > 0;
      if (has || can || name == "text") {
        EXPECT_EQ(fault(given), "") << to_string(kind) << ", " << name;
      } else if (name == "ra_um" && kind == EntryKind::scratch_read) {
        EXPECT_THAT(fault(given), HasSubstr("either width_um or ra_um is needed"));
      } else {
        EXPECT_EQ(fault(given),
                  name + " does not go with kind '" + std::string(to_string(kind)) + "', in line");
        ++forbidden;
      }
    }
  }
  EXPECT_EQ(forbidden, 10 + 8 + 13 + 12 + 10 + 9 + 13 + 14 + 13);
}

TEST(Entry, WhatAStepTookOffIsSaidOnce) {
  Entry both = filled(EntryKind::step_ended, {"sheet", "minutes", "removal_um", "overcut"});
  EXPECT_EQ(fault(both), "give either removal_um or overcut with kind 'step ended', in line");
}

TEST(Entry, APatchTellsInOneWayWhatCameOff) {
  const Entry bare = filled(EntryKind::patch_worked, {"sheet", "tool", "area_cm2", "minutes"});
  Entry gauged = bare, weighed = bare;
  gauged.before_um = {90, 92};
  gauged.after_um = {80, 81};
  weighed.before_g = 812.31;
  weighed.after_g = 812.13;
  EXPECT_EQ(fault(gauged), "");
  EXPECT_EQ(fault(weighed), "");
  Entry both = gauged;
  both.zone = "top";
  EXPECT_THAT(fault(both), HasSubstr("one of these is needed"));
  gauged.after_um.pop_back();
  EXPECT_THAT(fault(gauged), HasSubstr("after_um has 1 readings, before_um has 2"));
  weighed.after_g.reset();
  EXPECT_THAT(fault(weighed), HasSubstr("go together"));
}

TEST(Entry, KindsHaveNames) {
  for (const EntryKind kind : all_entry_kinds) EXPECT_EQ(entry_kind_named(to_string(kind)), kind);
  EXPECT_EQ(entry_kind_named("Step_ended"), EntryKind::step_ended);
  try {
    entry_kind_named("step endet");
    FAIL();
  } catch (const BadInput& error) {
    EXPECT_THAT(error.what(), HasSubstr("the nearest is 'step ended'"));
  }
}

TEST(Entry, ScratchesAreReadByOneMeans) {
  EXPECT_EQ(fault(filled(EntryKind::scratch_read, {"zone", "sheet", "ra_um"})), "");
}

TEST(Entry, NumbersHaveRanges) {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  const auto refused = [](Entry given, auto member, double value) {
    given.*member = value;
    EXPECT_THROW(validate(given, "line"), OutOfRange) << value;
  };
  const auto range = [&](const Entry& given, auto member, double low, double high) {
    for (const double end : {low, high}) {
      Entry at_end = given;
      at_end.*member = end;
      EXPECT_EQ(fault(at_end), "");
    }
    refused(given, member, std::nextafter(low, -1.0));
    refused(given, member, std::nextafter(high, 1e9));
    refused(given, member, nan);
  };
  const Entry ended = filled(EntryKind::step_ended, {"sheet"});
  range(ended, &Entry::minutes, 0, 1e5);
  range(filled(EntryKind::step_ended, {"sheet", "minutes"}), &Entry::sheets_used, 0, 1e5);
  range(filled(EntryKind::step_ended, {"sheet", "minutes"}), &Entry::removal_um, 0, 1e4);
  range(filled(EntryKind::step_ended, {"sheet", "minutes"}), &Entry::overcut, 1, 20);
  range(filled(EntryKind::step_begun, {"sheet"}), &Entry::direction_deg, 0, 180);
  range(filled(EntryKind::scratch_read, {"zone", "sheet"}), &Entry::width_um, 0.1, 1e3);
  range(filled(EntryKind::scratch_read, {"zone", "sheet"}), &Entry::ra_um, 1e-4, 1e3);
  Entry film = filled(EntryKind::film_read, {"zone", "readings_um"});
  film.readings_um = {0, 2e4, 20'001};
  EXPECT_EQ(fault(film), "readings_um[2] = 20001 um is outside 0 to 20000 um, in line");
}

TEST(Entry, AMarkIsCheckedAndNamesItsZoneItself) {
  Entry found = filled(EntryKind::mark_found, {"mark"});
  found.mark->zone = "";
  EXPECT_EQ(fault(found), "zone is empty, in line/mark");
  found.zone = "top";
  EXPECT_THAT(fault(found), HasSubstr("zone does not go with kind 'mark found'"));
  found = filled(EntryKind::mark_found, {"mark"});
  found.mark->direction_deg = 181;
  EXPECT_THROW(validate(found, "line"), OutOfRange);
}

TEST(Entry, TextsAreUtf8AndTheJobHasAName) {
  Entry note = filled(EntryKind::note, {"text"});
  note.text = "B\xC3\xBCrste \xF0\x9F\x98\x80";
  EXPECT_EQ(fault(note), "");
  for (const char* bad : {"\xC3", "\xFF", "a\xED\xA0\x80", "\xC0\x80", "ab\x80"}) {
    note.text = bad;
    EXPECT_EQ(fault(note), "text is not UTF-8, in line");
  }
  note = filled(EntryKind::note, {"text"});
  note.job = "";
  EXPECT_EQ(fault(note), "job is empty, in line");
}

TEST(Moment, OfRfc3339IsTaken) {
  // The first four are examples of RFC 3339, section 5.8.
  for (const char* at :
       {"1985-04-12T23:20:50.52Z", "1996-12-19T16:39:57-08:00", "1990-12-31T23:59:60Z",
        "1990-12-31T15:59:60-08:00", "1937-01-01T12:00:27.87+00:20", "2024-02-29T00:00:00Z",
        "2000-02-29T23:59:59z", "0000-02-29t00:00:00-00:00",
        "9999-12-31T23:59:59.999999999999+23:59", "2017-01-01T05:29:60+05:30",
        "2026-04-30T23:59:60Z"}) {
    EXPECT_EQ(detail::moment_fault(at), "") << at;
  }
}

TEST(Moment, OfNoCalendarIsRefused) {
  const std::pair<const char*, const char*> bad[] = {
      {"", "does not start"},
      {"2026-03-01", "does not start"},
      {"2026-03-01 09:30:00Z", "does not start"},
      {"2026-3-01T09:30:00Z", "does not start"},
      {" 2026-03-01T09:30:00Z", "does not start"},
      {"+026-03-01T09:30:00Z", "does not start"},
      {"2026-03-01T09:30Z", "does not start"},
      {"2026-03-01T09:30:00", "does not end with Z or an offset"},
      {"2026-03-01T09:30:00Z ", "does not end with Z or an offset"},
      {"2026-03-01T09:30:00+0100", "does not end with Z or an offset"},
      {"2026-03-01T09:30:00+01", "does not end with Z or an offset"},
      {"2026-03-01T09:30:00,5Z", "does not end with Z or an offset"},
      {"2026-03-01T09:30:00.5", "does not end with Z or an offset"},
      {"2026-03-01T09:30:00.Z", "no digit"},
      {"2026-00-01T09:30:00Z", "no such day"},
      {"2026-13-01T09:30:00Z", "no such day"},
      {"2026-03-00T09:30:00Z", "no such day"},
      {"2026-04-31T09:30:00Z", "no such day"},
      {"2026-02-29T09:30:00Z", "no such day"},
      {"1900-02-29T09:30:00Z", "no such day"},
      {"2026-03-01T24:00:00Z", "no such time"},
      {"2026-03-01T09:60:00Z", "no such time"},
      {"2026-03-01T09:30:61Z", "no such time"},
      {"2026-03-01T09:30:00+24:00", "no such offset"},
      {"2026-03-01T09:30:00-01:60", "no such offset"},
      {"2026-03-01T09:30:60Z", "end of a month in UTC"},
      {"2026-12-30T23:59:60Z", "end of a month in UTC"},
      {"2026-12-31T23:59:60+01:00", "end of a month in UTC"},
      {"2026-12-31T23:58:60Z", "end of a month in UTC"},
  };
  for (const auto& [at, said] : bad) {
    EXPECT_THAT(detail::moment_fault(at), HasSubstr(said)) << at;
    Entry note = filled(EntryKind::note, {"text"});
    note.at = at;
    EXPECT_THAT(fault(note), HasSubstr("at is \"")) << at;
  }
}

TEST(Moment, EveryDayOfFourCenturiesIsTheCalendars) {
  int days = 0;
  for (int year = 1800; year < 2200; ++year) {
    for (int month = 0; month <= 13; ++month) {
      for (int day = 0; day <= 32; ++day) {
        char text[32];
        std::snprintf(text, sizeof text, "%04d-%02d-%02dT12:00:00Z", year, month, day);
        days += detail::moment_fault(text).empty() ? 1 : 0;
      }
    }
  }
  EXPECT_EQ(days, 146'097);  // of a Gregorian cycle
}

Entry step(EntryKind kind, const std::string& sheet, const std::string& zone = "") {
  Entry result = entry(kind);
  result.sheet = sheet;
  result.zone = zone;
  if (kind == EntryKind::step_ended) result.minutes = 1;
  return result;
}

Entry begun(const std::string& sheet, double direction_deg, const std::string& zone = "") {
  Entry result = step(EntryKind::step_begun, sheet, zone);
  result.direction_deg = direction_deg;
  return result;
}

Entry ended(const std::string& sheet, const std::string& zone = "") {
  return step(EntryKind::step_ended, sheet, zone);
}

Entry of(Entry given, const std::string& job) {
  given.job = job;
  return given;
}

DoneStep done(const std::string& sheet, std::vector<std::string> zones,
              std::optional<double> direction_deg) {
  DoneStep result;
  result.sheet = sheet;
  result.zones = std::move(zones);
  result.direction_deg = direction_deg;
  return result;
}

TEST(Done, StepsAreThoseEndedInTheOrderOfTheLines) {
  std::vector<Entry> all = {
      begun("b", 10),        ended("b"),        filled(EntryKind::note, {"text"}),
      begun("a", 20, "top"), ended("a", "top"), begun("c", 30)};
  all[1].at = "2026-03-02T00:00:00Z";  // the clock was wrong
  EXPECT_THAT(done_steps(all, "clock case"),
              ElementsAre(done("b", {}, 10), done("a", {"top"}, 20)));
}

TEST(Done, ADirectionIsThatOfTheStepThatWasBegun) {
  const std::vector<Entry> all = {begun("a", 10, "top"),
                                  begun("a", 20, "side"),
                                  begun("b", 30),
                                  ended("a", "top"),
                                  ended("b"),
                                  ended("a", "side"),
                                  ended("a", "top"),  // never begun again
                                  begun("a", 40, "top"),
                                  begun("a", 50, "top"),  // begun anew: the last counts
                                  ended("a"),  // all zones: which way the others ran is not said
                                  ended("a", "top"),
                                  begun("b", 60, "top"),
                                  ended("b")};
  EXPECT_THAT(done_steps(all, "clock case"),
              ElementsAre(done("a", {"top"}, 10), done("b", {}, 30), done("a", {"side"}, 20),
                          done("a", {"top"}, std::nullopt), done("a", {}, std::nullopt),
                          done("a", {"top"}, std::nullopt), done("b", {}, std::nullopt)));
}

TEST(Done, BegunForAllZonesItIsEndedInEach) {
  const std::vector<Entry> all = {begun("a", 10),    ended("a", "top"), ended("a", "side"),
                                  ended("a", "top"), begun("a", 20),    ended("a", "top"),
                                  ended("a")};
  EXPECT_THAT(
      done_steps(all, "clock case"),
      ElementsAre(done("a", {"top"}, 10), done("a", {"side"}, 10), done("a", {"top"}, std::nullopt),
                  done("a", {"top"}, 20), done("a", {}, 20)));
}

TEST(Done, JobsAreToldApart) {
  const std::vector<Entry> all = {of(begun("a", 10), "tray"), of(begun("a", 20), "clock case"),
                                  of(ended("a"), "clock case"), of(ended("a"), "tray")};
  EXPECT_THAT(jobs(all), ElementsAre("tray", "clock case"));
  EXPECT_THAT(done_steps(all, "clock case"), ElementsAre(done("a", {}, 20)));
  EXPECT_THAT(done_steps(all, "tray"), ElementsAre(done("a", {}, 10)));
  EXPECT_THAT(done_steps(all, "box"), ElementsAre());
}

}  // namespace
}  // namespace entry_test
