// The C interface: reads all texts, asks the library, and turns whatever is thrown into a status and JSON.
#include <cstdlib>
#include <cstring>
#include <exception>
#include <new>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/c/levigate.h"
#include "levigate/detail/profile.hpp"
#include "levigate/grade/meanings.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/read.hpp"
#include "levigate/io/read_journal.hpp"
#include "levigate/io/write_errors.hpp"
#include "levigate/io/write_plan.hpp"
#include "levigate/io/write_way_back.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/version.hpp"

namespace {

using namespace levigate;

static_assert(levigate_unknown_grade == static_cast<int>(ErrorCode::unknown_grade) &&
              levigate_ambiguous_label == static_cast<int>(ErrorCode::ambiguous_label) &&
              levigate_out_of_range == static_cast<int>(ErrorCode::out_of_range) &&
              levigate_bad_input == static_cast<int>(ErrorCode::bad_input) &&
              levigate_no_plan == static_cast<int>(ErrorCode::no_plan));

/// Arguments that cannot be used, with all their faults.
struct Refused {
  std::vector<FaultOf> faults;
};

/// Reads the arguments of a call, and keeps the faults of all of them.
class Arguments {
 public:
  /// None where the argument cannot be read.
  template <typename Reader>
  auto read(const char* text, const char* name, std::string_view wanted, Reader reader)
      -> std::optional<decltype(reader(text, name))> {
    if (!text) {
      Fault fault;
      fault.message = std::string(name) + " is NULL, wanted text of " + std::string(wanted);
      fault.quantity = name;
      faults_.push_back({fault, name});
      return std::nullopt;
    }
    try {
      return reader(text, name);
    } catch (const Error& error) {
      for (const Fault& fault : error.faults()) faults_.push_back({fault, name});
      return std::nullopt;
    }
  }
  std::optional<Job> job(const char* text) { return read(text, "job", job_format, &job_from_json); }
  std::optional<Stack> stack(const char* text) {
    return read(text, "stack", stack_format, &stack_from_json);
  }
  /// Throws: Refused where there are faults
  void require_all() const {
    if (!faults_.empty()) throw Refused{faults_};
  }

 private:
  std::vector<FaultOf> faults_;
};

/// Throws: std::bad_alloc
char* copied(const std::string& text) {
  char* copy = static_cast<char*>(std::malloc(text.size() + 1));
  if (!copy) throw std::bad_alloc();
  std::memcpy(copy, text.c_str(), text.size() + 1);
  return copy;
}

int refuse(char** answer, int status, const std::vector<FaultOf>& faults) {
  *answer = copied(errors_json(faults));
  return status;
}

/// What a call asks for, made an answer.
template <typename Ask>
int answered(char** answer, Ask ask) {
  try {
    *answer = copied(ask());
    return levigate_ok;
  } catch (const Refused& refused) {
    const bool one = refused.faults.size() == 1;
    const int status =
        one ? static_cast<int>(refused.faults.front().fault.code) : levigate_bad_input;
    return refuse(answer, status, refused.faults);
  } catch (const Error& error) {
    std::vector<FaultOf> faults;
    for (const Fault& fault : error.faults()) faults.push_back({fault});
    return refuse(answer, static_cast<int>(error.code()), faults);
  } catch (const std::bad_alloc&) {
    throw;
  } catch (const std::exception& defect) {
    Fault fault;
    fault.code = static_cast<ErrorCode>(levigate_broken);
    fault.message = std::string("levigate is broken: ") + defect.what();
    return refuse(answer, levigate_broken, {{fault}});
  }
}

/// The same where memory ends, too. Nothing is thrown.
template <typename Ask>
int answer_to(char** answer, Ask ask) noexcept {
  if (!answer) return levigate_bad_input;
  *answer = nullptr;
  try {
    return answered(answer, ask);
  } catch (const std::bad_alloc&) {
    return levigate_no_memory;
  } catch (...) {
    return levigate_broken;
  }
}

System system_of(std::string_view name, std::string_view) {
  return detail::kind_named(choices<System>, name, "system");
}

}  // namespace

const char* levigate_version() { return version_string; }

int levigate_plan(const char* job, const char* stack, char** answer) {
  return answer_to(answer, [&] {
    Arguments arguments;
    auto read_job = arguments.job(job);
    auto read_stack = arguments.stack(stack);
    arguments.require_all();
    return to_json(plan(Bench(std::move(*read_job), std::move(*read_stack))));
  });
}

int levigate_check(const char* stack, const char* job, char** answer) {
  return answer_to(answer, [&] {
    Arguments arguments;
    const auto read_stack = arguments.stack(stack);
    const auto read_job = job ? arguments.job(job) : std::nullopt;
    arguments.require_all();
    return to_json(check(*read_stack, read_job ? read_job->rules : Rules{}));
  });
}

int levigate_convert(const char* label, const char* bare_number, const char* system,
                     char** answer) {
  return answer_to(answer, [&] {
    Arguments arguments;
    std::optional<System> bare, wanted;
    if (bare_number) bare = arguments.read(bare_number, "bare_number", "a system", &system_of);
    if (system) wanted = arguments.read(system, "system", "a system", &system_of);
    const auto text = arguments.read(label, "label", "a label",
                                     [](const char* given, auto) { return std::string(given); });
    arguments.require_all();
    const std::span<const System> systems =
        wanted ? std::span<const System>(&*wanted, 1) : std::span<const System>(coated_systems);
    return to_json(meanings(*text, bare, systems));
  });
}

int levigate_go_back(const char* job, const char* stack, const char* journal, char** answer) {
  return answer_to(answer, [&] {
    Arguments arguments;
    auto read_job = arguments.job(job);
    auto read_stack = arguments.stack(stack);
    auto lines = arguments.read(journal, "journal", journal_format, &journal_from_json);
    arguments.require_all();
    const Bench bench(std::move(*read_job), std::move(*read_stack), std::nullopt,
                      std::move(lines->entries), std::move(lines->lines));
    return to_json(go_back(bench));
  });
}

void levigate_free(char* answer) { std::free(answer); }
