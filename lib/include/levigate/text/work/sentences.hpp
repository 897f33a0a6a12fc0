// The work behind text/sentences.hpp, area by area: defines what it declares.
#pragma once

#include "levigate/text/work/sentences_of_finding.hpp"
#include "levigate/text/work/sentences_of_journal.hpp"
#include "levigate/text/work/sentences_of_recover.hpp"
#include "levigate/text/work/sentences_of_surface.hpp"
#include "levigate/text/work/sentences_of_wheel.hpp"
#include "levigate/text/work/sentences_of_why.hpp"
