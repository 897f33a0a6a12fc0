// The work behind grade/grades.hpp: defines what it declares.
#pragma once

#include <vector>

#include "levigate/grade/grades.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/row.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/grade/work/from_row.hpp"
#include "levigate/grade/work/tables.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::vector<Grade> grades(System system) {
  std::vector<Grade> result;
  for (const GradeRow& row : grade_rows(system)) {
    result.push_back(detail::grade_from_row(system, row));
  }
  return result;
}

}  // namespace levigate
