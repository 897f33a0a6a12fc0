// The C interface: the same answers as those of C++, every fault with its place, nothing thrown, any number of threads.
#include "levigate/c/levigate.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <string>
#include <thread>
#include <vector>

#include "levigate/grade/meanings.hpp"
#include "levigate/io/json.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/stack/check.hpp"

namespace levigate_test {
namespace {

using namespace levigate;
using testing::HasSubstr;

const std::string demo = LEVIGATE_DATA_DIR "/demo/";

struct Answer {
  int status = -1;
  std::string text;
};

/// What a function of C answers, which is given back.
template <typename Function, typename... Texts>
Answer ask(Function function, Texts... texts) {
  char* answer = nullptr;
  const int status = function(texts..., &answer);
  Answer result{status, answer ? answer : "NULL"};
  levigate_free(answer);
  return result;
}

class CInterface : public testing::Test {
 protected:
  const std::string job = read_file(demo + "job.json");
  const std::string stack = read_file(demo + "stack.json");
};

constexpr const char* day =
    R"({"format":"levigate.journal/1","at":"2026-03-02T11:20:00Z",)"
    R"("kind":"step ended","job":"Walnut mantel-clock case","sheet":"b-400","minutes":175})"
    "\n";
constexpr const char* haze =
    R"({"format":"levigate.journal/1","at":"2026-03-02T12:20:00Z","kind":"mark found",)"
    R"("job":"Walnut mantel-clock case","mark":{"kind":"haze","zone":"top","seen":"sunlight"}})"
    "\n";

TEST_F(CInterface, PlansAsCxxDoes) {
  const Answer answer = ask(&levigate_plan, job.c_str(), stack.c_str());
  EXPECT_EQ(answer.status, levigate_ok);
  EXPECT_EQ(answer.text, to_json(plan(job_from_json(job), stack_from_json(stack))));
}

TEST_F(CInterface, ChecksAsCxxDoes) {
  const Stack drawer = stack_from_json(stack);
  const Answer usual = ask(&levigate_check, stack.c_str(), nullptr);
  EXPECT_EQ(usual.status, levigate_ok);
  EXPECT_EQ(usual.text, to_json(check(drawer)));
  Job strict = job_from_json(job);
  strict.rules.max_ratio = 1.3;
  const Answer by_job = ask(&levigate_check, stack.c_str(), to_json(strict).c_str());
  EXPECT_EQ(by_job.text, to_json(check(drawer, strict.rules)));
  EXPECT_NE(by_job.text, usual.text);
}

TEST_F(CInterface, ConvertsAsCxxDoes) {
  EXPECT_EQ(ask(&levigate_convert, "600", nullptr, nullptr).text, to_json(meanings("600")));
  const std::array jis{System::jis};
  const Answer answer = ask(&levigate_convert, "600", "CAMI", "JIS");
  EXPECT_EQ(answer.status, levigate_ok);
  EXPECT_EQ(answer.text, to_json(meanings("600", System::cami, jis)));
}

TEST_F(CInterface, GoesBackAsCxxDoes) {
  const JournalReading lines = journal_from_json(std::string(day) + haze);
  const Bench bench(job_from_json(job), stack_from_json(stack), std::nullopt, lines.entries);
  const Answer answer =
      ask(&levigate_go_back, job.c_str(), stack.c_str(), (std::string(day) + haze).c_str());
  EXPECT_EQ(answer.status, levigate_ok) << answer.text;
  EXPECT_EQ(answer.text, to_json(go_back(bench)));
}

TEST_F(CInterface, NoMarkThatIsOpenIsAFault) {
  const Answer answer = ask(&levigate_go_back, job.c_str(), stack.c_str(), day);
  EXPECT_EQ(answer.status, levigate_bad_input);
  EXPECT_THAT(answer.text, HasSubstr("no mark is open"));
}

TEST_F(CInterface, TellsEveryFaultOfEveryTextWithItsPlace) {
  std::string thin = job, odd = stack;
  const std::string area = "\"area_cm2\": ";
  thin.insert(thin.find(area) + area.size(), "-");
  odd.replace(odd.find("\"sheets\""), 8, "\"sheet\"");
  const Answer answer = ask(&levigate_plan, thin.c_str(), odd.c_str());
  EXPECT_EQ(answer.status, levigate_bad_input);
  EXPECT_THAT(answer.text, HasSubstr("\"quantity\": \"area_cm2\""));
  EXPECT_THAT(answer.text, HasSubstr("\"unit\": \"cm2\""));
  EXPECT_THAT(answer.text, HasSubstr("\"pointer\": \"/zones/0/area_cm2\""));
  EXPECT_THAT(answer.text, HasSubstr("\"file\": \"job\""));
  EXPECT_THAT(answer.text, HasSubstr("\"file\": \"stack\""));
}

TEST_F(CInterface, OneFaultHasItsOwnStatus) {
  std::string thin = job;
  const std::string area = "\"area_cm2\": ";
  thin.insert(thin.find(area) + area.size(), "-");
  EXPECT_EQ(ask(&levigate_plan, thin.c_str(), stack.c_str()).status, levigate_out_of_range);
  EXPECT_EQ(ask(&levigate_convert, "P6001", nullptr, nullptr).status, levigate_unknown_grade);
  EXPECT_EQ(ask(&levigate_convert, "600", "CAM", nullptr).status, levigate_bad_input);
}

TEST_F(CInterface, NullIsRefused) {
  const Answer none = ask(&levigate_plan, nullptr, nullptr);
  EXPECT_EQ(none.status, levigate_bad_input);
  EXPECT_THAT(none.text, HasSubstr("job is NULL, wanted text of levigate.job/1"));
  EXPECT_THAT(none.text, HasSubstr("stack is NULL, wanted text of levigate.stack/1"));
  EXPECT_THAT(ask(&levigate_check, nullptr, nullptr).text, HasSubstr("stack is NULL"));
  EXPECT_THAT(ask(&levigate_convert, nullptr, "CAM", "JIX").text,
              testing::AllOf(HasSubstr("label is NULL"), HasSubstr("CAM"), HasSubstr("JIX")));
  EXPECT_THAT(ask(&levigate_go_back, nullptr, nullptr, nullptr).text,
              HasSubstr("journal is NULL, wanted text of levigate.journal/1"));
  EXPECT_EQ(levigate_plan(job.c_str(), stack.c_str(), nullptr), levigate_bad_input);
  levigate_free(nullptr);
}

TEST_F(CInterface, TakesBytesOfAnyKind) {
  for (const char* text : {"", "{", "[]", "null", "\xff\xfe", "{\"format\": \"levigate.job/1\"}"}) {
    const Answer answer = ask(&levigate_plan, text, text);
    EXPECT_NE(answer.status, levigate_ok) << text;
    EXPECT_THAT(answer.text, HasSubstr("\"errors\": [")) << text;
  }
}

TEST_F(CInterface, AnswersThreadsAlike) {
  const Answer alone = ask(&levigate_plan, job.c_str(), stack.c_str());
  std::array<Answer, 4> answers;
  std::vector<std::thread> threads;
  for (Answer& each : answers)
    threads.emplace_back([&] { each = ask(&levigate_plan, job.c_str(), stack.c_str()); });
  for (std::thread& each : threads) each.join();
  for (const Answer& each : answers) EXPECT_EQ(each.text, alone.text);
}

TEST_F(CInterface, HasTheVersionOfTheLibrary) { EXPECT_STREQ(levigate_version(), version_string); }

}  // namespace
}  // namespace levigate_test
