// The C interface: plan, check, convert and go back, with JSON in and out.
//
// For C99, C++ and whatever calls C. Link levigate::c, a shared library. levigate::compiled has the functions too. Link it with the C++ linker.
//
// Texts:     UTF-8, with a zero byte at the end, in the formats of data/schema. A function does not keep what it is given.
// Ownership: `*answer` is yours. levigate_free() gives it back. Each function sets it, whatever it had before.
// Errors:    a function returns a number of levigate_status. Where that is not levigate_ok, `*answer` holds the faults:
//            {"errors": [{"code", "message", "quantity", "value", "unit", "low", "high", "pointer", "line", "contradicts",
//            "example", "file"}]}. All faults of all texts stand there at once. "file" names the argument that a fault is in.
//            No C++ exception leaves a function.
// Memory:    after levigate_no_memory, `*answer` is NULL. Where memory ends while JSON is in hand, the program ends: nlohmann/json
//            asks for memory to give JSON back.
// NULL:      refused as any other fault, unless an argument says what it stands for. levigate_free() takes it too.
// Threads:   any number may call at once. There is no state between calls.
// Stability: names, numbers of levigate_status and formats with a version stay. New functions and keys may come.
// Source:    as the functions of C++: plan(), check(), meanings(), go_back()
#pragma once

#if defined(_WIN32) && defined(LEVIGATE_C_MAKES)  // set where the shared library is made
#define LEVIGATE_C_API __declspec(dllexport)
#elif defined(__GNUC__)
#define LEVIGATE_C_API __attribute__((visibility("default")))
#else
#define LEVIGATE_C_API
#endif

#ifdef __cplusplus
extern "C" {
#endif

/// What a function returns. Those from 101 to 401 are the codes of levigate::Error.
enum levigate_status {
  levigate_ok = 0,
  levigate_unknown_grade = 101,
  levigate_ambiguous_label = 102,
  levigate_out_of_range = 201,
  levigate_bad_input = 301,  ///< also where there are several faults
  levigate_no_plan = 401,
  levigate_no_memory = 901,
  levigate_broken = 902  ///< a defect of the library; the message says more
};

/// Version of the library, such as "0.1.0". Not to be given back.
LEVIGATE_C_API const char* levigate_version(void);

/// The best plan of a job with the paper on hand.
///
/// Where there is none, that is an answer too: its "found" is false, and "why" tells the reason.
/// @param job     text of format levigate.job/1
/// @param stack   text of format levigate.stack/1
/// @param answer  takes text of format levigate.plan/1, or the faults
/// @return        levigate_ok, or what is wrong
LEVIGATE_C_API int levigate_plan(const char* job, const char* stack, char** answer);

/// Everything to say of the paper on hand.
///
/// @param stack   text of format levigate.stack/1
/// @param job     text of format levigate.job/1, whose rules count; NULL: the usual rules
/// @param answer  takes an array of findings, as those of a plan, or the faults
/// @return        levigate_ok, or what is wrong; findings are no faults
LEVIGATE_C_API int levigate_check(const char* stack, const char* job, char** answer);

/// All that a label may mean, each meaning beside the nearest grade of other systems.
///
/// @param label        the label, such as "P600"
/// @param bare_number  the system of labels that name none, such as "CAMI"; NULL: each that they may be of
/// @param system       where to look for the nearest grade, such as "JIS"; NULL: each system of coated abrasives
/// @param answer       takes an object with "label", "ambiguous", "note", "bare_number" and "meanings", or the faults
/// @return             levigate_ok, or what is wrong
LEVIGATE_C_API int levigate_convert(const char* label, const char* bare_number, const char* system,
                                    char** answer);

/// Where to go back to for the mark that is open in a journal.
///
/// The lines "step ended" of the journal tell what was done. Its last line "mark found" tells the mark.
/// @param job      text of format levigate.job/1: the job before the first step
/// @param stack    text of format levigate.stack/1
/// @param journal  lines of format levigate.journal/1
/// @param answer   takes text of format levigate.way_back/1, or the faults
/// @return         levigate_ok, or what is wrong; as where no mark is open
LEVIGATE_C_API int levigate_go_back(const char* job, const char* stack, const char* journal,
                                    char** answer);

/// Gives an answer back. NULL is fine.
LEVIGATE_C_API void levigate_free(char* answer);

#ifdef __cplusplus
}
#endif
