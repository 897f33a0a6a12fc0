// The types that have a form of their own in files, in one place.
#pragma once

#include "levigate/io/work/form.hpp"

namespace levigate::inline v0::detail {

inline const FileForm* form_of(const Description&) { return nullptr; }

}  // namespace levigate::inline v0::detail
