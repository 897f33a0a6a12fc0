// The plan of the demo, number by number, against data/reference/golden_plan.txt: integers to the last digit, reals
// to 12 digits. Two compilers and the two ends of optimisation must agree on it, see tests.cmake.
//
//   golden_plan DATA_DIR           compare; exit 1 and show what differs
//   golden_plan DATA_DIR --write   write the file, after a change that is meant
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <vector>

#include "levigate/io/read.hpp"
#include "levigate/plan/plan.hpp"

namespace {

using namespace levigate;

struct Line {
  std::string name;
  std::string digits;
  bool real = false;
};

class Lines {
 public:
  void integer(const std::string& name, std::int64_t value) {
    lines_.push_back({name, std::to_string(value), false});
  }
  void real(const std::string& name, double value) {
    char digits[40];
    std::snprintf(digits, sizeof digits, "%.15g", value);
    lines_.push_back({name, digits, true});
  }
  const std::vector<Line>& all() const { return lines_; }

 private:
  std::vector<Line> lines_;
};

void add(Lines& lines, const std::string& name, const Plan& plan) {
  lines.integer(name + " milliseconds", plan.exact.milliseconds);
  lines.integer(name + " cost", plan.exact.cost);
  for (const std::size_t sheet : plan.exact.sheets) {
    lines.integer(name + " sheet", static_cast<std::int64_t>(sheet));
  }
  for (const std::int64_t depth_pm : plan.exact.depth_pm)
    lines.integer(name + " depth_pm", depth_pm);
  lines.integer(name + " film.depth_pm", plan.exact.film.depth_pm);
  lines.integer(name + " film.budget_pm", plan.exact.film.budget_pm);
}

Lines golden(const std::string& data) {
  const Job job = load_job(data + "/demo/job.json");
  const Stack stack = load_stack(data + "/demo/stack.json");
  const Plan best = plan(job, stack);
  Lines lines;
  add(lines, "best", best);
  for (const Step& step : best.steps) {
    lines.real(step.sheet + " minutes", step.minutes);
    lines.real(step.sheet + " sheets_used", step.sheets_used);
    lines.real(step.sheet + " gloss_gu", step.gloss_gu);
    for (const ZoneStep& zone : step.zones) {
      const std::string name = step.sheet + ", " + zone.zone;
      lines.real(name + " removal_um", zone.removal_um);
      lines.real(name + " scratch_um", zone.scratch_um);
      lines.real(name + " film_left_um", zone.film_left_um.value_or(0));
      lines.real(name + " travel_m", zone.travel_m);
    }
  }
  for (std::size_t i = 0; i < best.tradeoff.size(); ++i) {
    add(lines, "tradeoff " + std::to_string(i), best.tradeoff[i]);
  }
  return lines;
}

bool agree(const Line& ours, const std::string& digits) {
  if (!ours.real) return ours.digits == digits;
  const double a = std::stod(ours.digits), b = std::stod(digits);
  return std::abs(a - b) <= 1e-12 * std::abs(b);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2) return 2;
  const std::string data = argv[1];
  const std::string path = data + "/reference/golden_plan.txt";
  const Lines lines = golden(data);
  if (argc > 2 && std::string(argv[2]) == "--write") {
    std::ofstream file(path);
    for (const Line& line : lines.all()) file << line.name << " = " << line.digits << "\n";
    return file ? 0 : 1;
  }
  std::ifstream file(path);
  std::string text;
  std::size_t at = 0;
  int different = 0;
  while (std::getline(file, text)) {
    const std::size_t equals = text.rfind(" = ");
    const bool same = at < lines.all().size() && equals != std::string::npos &&
                      text.substr(0, equals) == lines.all()[at].name &&
                      agree(lines.all()[at], text.substr(equals + 3));
    if (!same) {
      ++different;
      std::cout << "golden: " << text << "\n  here: "
                << (at < lines.all().size() ? lines.all()[at].name + " = " + lines.all()[at].digits
                                            : "nothing")
                << "\n";
    }
    ++at;
  }
  if (at != lines.all().size())
    std::cout << "golden has " << at << " lines, here are " << lines.all().size() << "\n";
  return different == 0 && at == lines.all().size() && at > 0 ? 0 : 1;
}
