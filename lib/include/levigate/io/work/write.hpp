// The work behind io/write.hpp: defines what it declares.
#pragma once

#include <string>

#include "levigate/io/write.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/forms.hpp"
#include "levigate/io/work/write_described.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string to_json(const Stack& stack) {
  return detail::file_text(stack_format, stack, detail::as_given);
}

LEVIGATE_WORK std::string to_json(const Job& job) {
  return detail::file_text(job_format, job, detail::as_given);
}

}  // namespace levigate
