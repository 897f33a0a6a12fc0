// Whole files, whole texts: what is read, what is refused, and that writing leaves no part of a file.
#include <filesystem>
#include <fstream>

#include "unit/io/json_workshop.hpp"

namespace file_test {
namespace {

using namespace json_workshop;
namespace fs = std::filesystem;
using testing::HasSubstr;

class Files : public testing::Test {
 protected:
  void SetUp() override {
    dir_ =
        fs::path(testing::TempDir()) /
        (std::string("levigate_") + testing::UnitTest::GetInstance()->current_test_info()->name());
    fs::remove_all(dir_);
    fs::create_directories(dir_);
  }
  void TearDown() override { fs::remove_all(dir_); }

  fs::path put(const std::string& name, const std::string& text) {
    std::ofstream(dir_ / name, std::ios::binary) << text;
    return dir_ / name;
  }
  std::vector<std::string> names() const {
    std::vector<std::string> result;
    for (const auto& entry : fs::directory_iterator(dir_)) {
      result.push_back(entry.path().filename().string());
    }
    std::sort(result.begin(), result.end());
    return result;
  }
  std::string failure(const fs::path& path) const {
    try {
      load_job(path);
    } catch (const BadInput& error) {
      return error.what();
    }
    return "nothing was thrown";
  }

  fs::path dir_;
};

TEST_F(Files, ErrorsNameTheFile) {
  const fs::path path = put("spoilt.json", job_with(": 540", ": true"));
  EXPECT_THAT(failure(path), HasSubstr("line 8 of " + path.string()));
}

TEST_F(Files, MissingDirectoryAndHugeFilesAreRefused) {
  EXPECT_THAT(failure(dir_ / "none.json"), HasSubstr("no file"));
  EXPECT_THAT(failure(dir_), HasSubstr("is a directory"));
  EXPECT_THAT(failure("/dev/null"), HasSubstr("not a regular file"));
  const fs::path huge = put("huge.json", "");
  fs::resize_file(huge, largest_file_bytes + 1);
  EXPECT_THAT(failure(huge), HasSubstr("16777217 bytes"));
}

TEST_F(Files, EmptyFileIsNoJson) {
  EXPECT_THAT(failure(put("empty.json", "")), HasSubstr("line 1"));
}

TEST_F(Files, ByteOrderMarkAndWindowsLinesAreTolerated) {
  std::string text = demo_text("job.json");
  for (std::size_t at = 0; (at = text.find('\n', at)) != std::string::npos; at += 2) {
    text.insert(at, "\r");
  }
  const Job job = load_job(put("marked.json", "\xEF\xBB\xBF" + text));
  EXPECT_EQ(to_json(job), to_json(job_from_json(demo_text("job.json"))));
  const std::string spoilt = "\xEF\xBB\xBF" + with(text, ": 540", ": true");
  EXPECT_THAT(failure(put("spoilt.json", spoilt)), HasSubstr("line 8 of "));
}

TEST_F(Files, AZeroByteDoesNotEndATextBeforeItsTime) {
  const std::string text = demo_text("stack.json");
  using namespace std::string_literals;
  for (const std::string& rest : {"\0"s, "\0 and more"s}) {
    expect_fails<BadInput>(stack_from_json, text + rest, line_with(text, "\n}") + 2,
                           {"there is a zero byte"});
  }
}

TEST_F(Files, DeepNestingIsRefused) {
  const std::string deep(100'000, '[');
  expect_fails<BadInput>(job_from_json, deep, 1, {"nested deeper than 64"});
  const std::string objects = [] {
    std::string text;
    for (int i = 0; i < 1000; ++i) text += "{\"a\":";
    return text;
  }();
  expect_fails<BadInput>(stack_from_json, objects, 1, {"nested deeper than 64"});
}

TEST_F(Files, WritingReplacesTheWholeFile) {
  const fs::path path = put("plan.json", "old and longer than the new one");
  write_file(path, "new");
  EXPECT_EQ(read_file(path), "new");
  EXPECT_THAT(names(), testing::ElementsAre("plan.json"));
}

TEST_F(Files, WritingFollowsALink) {
  const fs::path target = put("target.json", "old");
  fs::create_symlink(target, dir_ / "link.json");
  write_file(dir_ / "link.json", "new");
  EXPECT_TRUE(fs::is_symlink(dir_ / "link.json"));
  EXPECT_EQ(read_file(target), "new");
}

TEST_F(Files, AFailedWriteLeavesWhatWasThere) {
  fs::create_directory(dir_ / "plan.json");
  put("plan.json/inside", "kept");
  EXPECT_THROW(write_file(dir_ / "plan.json", "new"), BadInput);
  EXPECT_THROW(write_file(dir_ / "none" / "plan.json", "new"), BadInput);
  EXPECT_THROW(write_file("/dev/full", "new"), BadInput);
  EXPECT_THAT(names(), testing::ElementsAre("plan.json"));
  EXPECT_EQ(read_file(dir_ / "plan.json" / "inside"), "kept");
}

TEST_F(Files, AnotherFileBesideIsNotTouched) {
  put("plan.json.part0", "someone else's");
  write_file(dir_ / "plan.json", "new");
  EXPECT_EQ(read_file(dir_ / "plan.json.part0"), "someone else's");
  EXPECT_THAT(names(), testing::ElementsAre("plan.json", "plan.json.part0"));
}

}  // namespace
}  // namespace file_test
