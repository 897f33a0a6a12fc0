// Reading stacks and jobs from JSON. Every error names the value, its pointer and its line.
#pragma once

#include <filesystem>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// A stack from JSON text of format levigate.stack/1. Labels are not read: that is for check(), which tells of
/// all of them, and for plan().
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the stack
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number
///            outside its range; BadInput for all faults at once where there are several
/// Source:    data/schema/stack.schema.json
Stack stack_from_json(std::string_view text, std::string_view file = "");

/// A job from JSON text of format levigate.job/1.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the job
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number
///            outside its range; UnknownGrade, AmbiguousLabel for a label in start or target; BadInput for all
///            faults at once where there are several
/// Source:    data/schema/job.schema.json
Job job_from_json(std::string_view text, std::string_view file = "");

/// The stack in a file. Throws: what read_file and stack_from_json throw, naming the file.
Stack load_stack(const std::filesystem::path& path);

/// The job in a file. Throws: what read_file and job_from_json throw, naming the file.
Job load_job(const std::filesystem::path& path);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/read.hpp"
#endif
