// The demo files with a few bytes changed: whatever it is, it reads or is refused by one of our errors.
#include <random>

#include "unit/io/json_workshop.hpp"

namespace json_mutation_test {
namespace {

using namespace json_workshop;

/// Changes a text at random: single bytes, pieces dropped, doubled or swapped for tokens of JSON.
class Mutator {
 public:
  explicit Mutator(unsigned seed) : random_(seed) {}

  std::string operator()(std::string text) {
    const std::size_t changes = 1 + below(3);
    for (std::size_t i = 0; i < changes && !text.empty(); ++i) {
      const std::size_t at = below(text.size());
      const std::size_t length = std::min(1 + below(20), text.size() - at);
      switch (below(4)) {
        case 0: text[at] = static_cast<char>(below(256)); break;
        case 1: text.erase(at, length); break;
        case 2: text.insert(at, text.substr(below(text.size()), length)); break;
        default: text.replace(text.find_first_of(":[,", at) + 1, length, token()); break;
      }
    }
    return text;
  }

 private:
  std::size_t below(std::size_t count) { return random_() % count; }

  std::string token() {
    static const std::string tokens[] = {"null",        "true",   "-1",       "0",
                                         "1e308",       "1e-320", "-1e999",   "[]",
                                         "{}",          "\"\"",   "\"P650\"", "\"600\"",
                                         "\"\\u0000\"", "[[[[",   "{\"a\":",  "9007199254740993"};
    return tokens[below(std::size(tokens))];
  }

  std::mt19937 random_;  // its numbers are the same everywhere; those of distributions are not
};

template <typename Read>
void expect_read_or_refused(Read read, const std::string& text, unsigned seed, int rounds) {
  Mutator mutated(seed);
  int taken = 0;
  for (int i = 0; i < rounds; ++i) {
    const std::string spoilt = mutated(text);
    try {
      const auto value = read(spoilt, "");
      read(to_json(value), "");
      ++taken;
    } catch (const BadInput& error) {
      ASSERT_GT(error.line(), 0) << error.what() << "\n" << spoilt;
      ASSERT_NE(std::string_view(error.what()).find(", line "), std::string_view::npos)
          << error.what();
    } catch (const Error& error) {
      ASSERT_NE(std::string_view(error.what()).find(", line "), std::string_view::npos)
          << error.what();
    }
  }
  EXPECT_GT(taken, rounds / 100);  // else the mutations are too coarse to test anything
  EXPECT_LT(taken, rounds);
}

TEST(JsonMutation, OfTheDemoJob) {
  expect_read_or_refused(job_from_json, demo_text("job.json"), 1, 10'000);
}

TEST(JsonMutation, OfTheDemoStack) {
  expect_read_or_refused(stack_from_json, demo_text("stack.json"), 2, 10'000);
}

TEST(JsonMutation, OfTheDay) {
  expect_read_or_refused(job_from_json, demo_text("day.json"), 3, 10'000);
  expect_read_or_refused(stack_from_json, demo_text("day_stack.json"), 4, 5'000);
}

TEST(JsonMutation, OfAShop) {
  Shop shop;
  shop.rates = {{"shellac", "", {1.1, 0.7, 1.9, 35}, {-0.75}},
                {"shellac", "film", {0.9, 0.6, 1.4, 35}, {-0.5, 0.25}}};
  shop.scratches = {{"shellac", "film", {1.3, 1.1, 1.5, 6}, {}}};
  shop.films = {{"shellac", -4.2, -7, -1.4, 3}};
  expect_read_or_refused(shop_from_json, to_json(shop), 5, 3'000);
}

}  // namespace
}  // namespace json_mutation_test
