// What is special about the types of jobs and stacks in files, in one place.
#pragma once

#include <vector>

#include "levigate/io/work/file_keys.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/form_film.hpp"
#include "levigate/io/work/form_job.hpp"
#include "levigate/io/work/form_profile.hpp"
#include "levigate/io/work/form_sheet.hpp"
#include "levigate/io/work/form_stack.hpp"
#include "levigate/io/work/likely.hpp"

namespace levigate::inline v0::detail {

inline std::vector<FileForm> all_forms() {
  std::vector<FileForm> forms = profile_forms();
  for (const FileForm& form : job_type_forms()) forms.push_back(form);
  for (const FileForm& form : {film_form(), coat_form(), defect_form(), sheet_form(), stack_form()})
    forms.push_back(form);
  return forms;
}

inline std::vector<FileKeys> all_keys() {
  return {bare_number_keys(),
          file_keys<Job, JobStart, take_start, start_keys>("zones", {"scratched_by"}),
          file_keys<Target, TargetGrade, take_grade, grade_keys>(""),
          file_keys<Target, TargetSheen, take_sheen, sheen_keys>("gloss_gu", {"label"}),
          file_keys<Zone, ZoneFilm, take_film, film_keys>("block", {"film"}),
          file_keys<Zone, ZoneEdge, take_edge, edge_keys>("peel_wavelength_mm", {"edge"}),
          file_keys<Zone, ZoneStart, take_carried, carried_keys>("defects", {"carries"}),
          file_keys<Carried, CarriedGrade, take_carried_grade, carried_grade_keys>("", {"grade"}),
          file_keys<Defect, DefectReadings, take_height>("kind"),
          file_keys<Sheet, SheetCompound, take_compound, compound_keys>("size_um"),
          file_keys<Sheet, SheetTool, take_tool, tool_keys>("backing", {"kind"})};
}

inline const FileForms& given_forms() {
  static const std::vector<FileForm> types = all_forms();
  static const std::vector<FileKeys> keys = all_keys();
  static const FileForms forms{types, keys, ask_unit};
  return forms;
}

/// Jobs and stacks.
inline constexpr Style as_given{.full = false, .forms = given_forms};

}  // namespace levigate::inline v0::detail
