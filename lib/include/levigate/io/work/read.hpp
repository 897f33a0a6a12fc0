// The work behind io/read.hpp: defines what it declares.
#pragma once

#include <filesystem>
#include <string_view>

#include "levigate/io/read.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/file.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/forms.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Stack stack_from_json(std::string_view text, std::string_view file) {
  return detail::value_of_file<Stack>(text, file, stack_format, detail::as_given);
}

LEVIGATE_WORK Job job_from_json(std::string_view text, std::string_view file) {
  return detail::value_of_file<Job>(text, file, job_format, detail::as_given);
}

LEVIGATE_WORK Stack load_stack(const std::filesystem::path& path) {
  return stack_from_json(read_file(path), path.string());
}

LEVIGATE_WORK Job load_job(const std::filesystem::path& path) {
  return job_from_json(read_file(path), path.string());
}

}  // namespace levigate
