// The types that have a form of their own in files, in one place.
#pragma once

#include "levigate/detail/work.hpp"
#include "levigate/io/work/form.hpp"

namespace levigate::inline v0::detail {

LEVIGATE_WORK const FileForm* form_of(const Description&) { return nullptr; }

}  // namespace levigate::inline v0::detail
