// The grade tables as printed, one row a grade. Generated from data/standards by data/generate.py: do not edit.
#pragma once

#include <span>

#include "levigate/grade/row.hpp"

// clang-format off
namespace levigate::inline v0 {

namespace detail {

// Coated abrasives, grain size: FEPA P, ISO 6344-2 (P12 to P220) and ISO 6344-3 (P240 to P5000).
inline constexpr Source fepa_p_tables{Basis::published_table, "two general reference tables agree (the one may derive from the other); ISO 6344-2 itself was not read"};
inline constexpr Source fepa_p_tables_rounded{Basis::published_table, "a general reference table, and a second one that agrees after rounding; ISO 6344 itself was not read"};
inline constexpr Source fepa_p_memory{Basis::from_memory, "from memory (ISO 6344-3:1998, Coated abrasives, Grain size analysis, Microgrit sizes P240 to P2500)"};
inline constexpr Source fepa_p_trade{Basis::from_memory, "a value seen in the trade, from memory"};
inline constexpr Source fepa_p_trade_pair{Basis::common_practice, "a trade page before 2021 sets P4000 near 5 um"};
inline constexpr Source fepa_p_slip{Basis::published_table, "one general reference table, taken as a slip"};
inline constexpr GradeRow fepa_p_rows[] = {
    {"P12", 12, 1815, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P16", 16, 1324, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P20", 20, 1000, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P24", 24, 764, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P30", 30, 642, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P36", 36, 538, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", "also printed: 500 um (one general reference table, taken as a slip)"},
    {"P40", 40, 425, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P50", 50, 336, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P60", 60, 269, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P80", 80, 201, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P100", 100, 162, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P120", 120, 125, {}, {}, {}, {}, fepa_p_tables, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", ""},
    {"P150", 150, 100, {}, {}, {}, {}, fepa_p_tables_rounded, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", "also printed: 97 um (a value seen in the trade, from memory)"},
    {"P180", 180, 82, {}, {}, {}, {}, fepa_p_tables_rounded, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", "also printed: 78 um (a value seen in the trade, from memory)"},
    {"P220", 220, 68, {}, {}, {}, {}, fepa_p_tables_rounded, {}, {}, "ISO 6344-2; the edition of the values is not known", "sieves", "also printed: 65 um (a value seen in the trade, from memory); also printed: 66 um (a value seen in the trade, from memory)"},
    {"P240", 240, 58.5, 2.0, 81.7, 44.5, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", "also printed: 58.4 um (one general reference table, taken as a slip)"},
    {"P280", 280, 52.2, 2.0, 74.0, 39.2, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", ""},
    {"P320", 320, 46.2, 1.5, 66.8, 34.2, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", ""},
    {"P360", 360, 40.5, 1.5, 60.3, 29.6, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", ""},
    {"P400", 400, 35.0, 1.5, 53.9, 25.2, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", ""},
    {"P500", 500, 30.2, 1.5, 48.3, 21.5, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", ""},
    {"P600", 600, 25.8, 1.0, 43.0, 18.0, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", "also printed: 25.75 um (a value seen in the trade, from memory)"},
    {"P800", 800, 21.8, 1.0, 38.1, 15.1, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", ""},
    {"P1000", 1000, 18.3, 1.0, 33.7, 12.4, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", ""},
    {"P1200", 1200, 15.3, 1.0, 29.7, 10.2, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013; kept in 2021 according to a commentary on the draft", "sedimentation tube", ""},
    {"P1500", 1500, 12.6, 1.0, 25.8, 8.3, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013", "sedimentation tube", "value of the 1998 and 2013 editions; the 2021 edition measures P1500 and finer on another instrument, and its number was not found"},
    {"P2000", 2000, 10.3, 0.8, 22.4, 6.7, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013", "sedimentation tube", "value of the 1998 and 2013 editions; the 2021 edition measures P1500 and finer on another instrument, and its number was not found"},
    {"P2500", 2500, 8.4, 0.5, 19.3, 5.4, 95, fepa_p_tables_rounded, fepa_p_memory, fepa_p_memory, "ISO 6344-3:1998 and 2013", "sedimentation tube", "value of the 1998 and 2013 editions; the 2021 edition measures P1500 and finer on another instrument, and its number was not found"},
    {"P3000", 3000, {}, {}, {}, {}, {}, {}, {}, {}, "ISO 6344-3:2021, name only", "X-ray sedimentation", "named since ISO 6344-3:2021, but no published number was found"},
    {"P4000", 4000, {}, {}, {}, {}, {}, {}, {}, {}, "ISO 6344-3:2021, name only", "X-ray sedimentation", "named since ISO 6344-3:2021, but no published number was found; also printed: 5 um (a trade page before 2021 sets P4000 near 5 um)"},
    {"P5000", 5000, {}, {}, {}, {}, {}, {}, {}, {}, "ISO 6344-3:2021, name only", "X-ray sedimentation", "named since ISO 6344-3:2021, but no published number was found"},
};

// Coated abrasives, grain size: CAMI, ANSI B74.18 (lineage CS 217-59, PS 8-67).
inline constexpr Source cami_one_table{Basis::published_table, "one general table of units and sizes; ANSI B74.18 itself was not read"};
inline constexpr Source cami_two_tables{Basis::published_table, "two general tables agree, one of them rounded in part; ANSI B74.18 itself was not read"};
inline constexpr Source cami_table_memory{Basis::published_table, "a general reference table, and memory agrees; ANSI B74.18 itself was not read"};
inline constexpr Source cami_memory{Basis::from_memory, "from memory (CAMI grading charts of the trade)"};
inline constexpr Source cami_memory_polish{Basis::from_memory, "from memory (a table for metallographic papers)"};
inline constexpr Source cami_inch{Basis::published_table, "a general reference table; the inch column of the main series, converted"};
inline constexpr Source cami_rounded{Basis::published_table, "a general reference table of rounded values"};
inline constexpr Source cami_shared{Basis::published_table, "a row shared with a P grade, so an equivalence rather than a measurement"};
inline constexpr Source cami_trade_pair{Basis::common_practice, "a trade page sets CAMI 1200 beside P4000 near 5 um"};
inline constexpr Source cami_slip{Basis::published_table, "one general table, taken as a slip"};
inline constexpr GradeRow cami_rows[] = {
    {"12", 12, 1842, {}, {}, {}, {}, cami_one_table, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "the row of the table has no readable label; the grade is assigned by its place"},
    {"16", 16, 1320, {}, {}, {}, {}, cami_one_table, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", ""},
    {"20", 20, 905, {}, {}, {}, {}, cami_one_table, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", ""},
    {"24", 24, 715, {}, {}, {}, {}, cami_one_table, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 708 um (a general reference table; the inch column of the main series, converted)"},
    {"30", 30, 638, {}, {}, {}, {}, cami_one_table, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 632 um (a general reference table; the inch column of the main series, converted)"},
    {"36", 36, 535, {}, {}, {}, {}, cami_two_tables, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 530 um (a general reference table; the inch column of the main series, converted); also printed: 500 um (one general table, taken as a slip)"},
    {"40", 40, 428, {}, {}, {}, {}, cami_one_table, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 425 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"50", 50, 351, {}, {}, {}, {}, cami_two_tables, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 348 um (a general reference table; the inch column of the main series, converted)"},
    {"60", 60, 268, {}, {}, {}, {}, cami_two_tables, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 265 um (a general reference table; the inch column of the main series, converted)"},
    {"80", 80, 192, {}, {}, {}, {}, cami_two_tables, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 190 um (a general reference table; the inch column of the main series, converted)"},
    {"100", 100, 141, {}, {}, {}, {}, cami_one_table, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 140 um (a general reference table; the inch column of the main series, converted)"},
    {"120", 120, 116, {}, {}, {}, {}, cami_two_tables, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 115 um (a general reference table of rounded values)"},
    {"150", 150, 93, {}, {}, {}, {}, cami_one_table, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 92 um (a general reference table of rounded values)"},
    {"180", 180, 78, {}, {}, {}, {}, cami_memory, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 82 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"220", 220, 66, {}, {}, {}, {}, cami_memory, {}, {}, "ANSI B74.18; the edition of the values is not known", "sieves", "also printed: 68 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"240", 240, 53.5, {}, {}, {}, {}, cami_memory, {}, {}, "ANSI B74.18; the edition of the values is not known", "sedimentation", "also printed: 53.0 um (a general reference table of rounded values); also printed: 52 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"280", 280, 44.0, {}, {}, {}, {}, cami_memory, {}, {}, "ANSI B74.18; the edition of the values is not known", "sedimentation", "also printed: 42 um (one general table of units and sizes; ANSI B74.18 itself was not read)"},
    {"320", 320, 36.0, {}, {}, {}, {}, cami_table_memory, {}, {}, "ANSI B74.18; the edition of the values is not known", "sedimentation", "also printed: 35 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"360", 360, 28.8, {}, {}, {}, {}, cami_memory, {}, {}, "ANSI B74.18; the edition of the values is not known", "sedimentation", "also printed: 28.0 um (a general reference table of rounded values)"},
    {"400", 400, 23.6, {}, {}, {}, {}, cami_memory, {}, {}, "ANSI B74.18; the edition of the values is not known", "sedimentation", "also printed: 23.0 um (a general reference table of rounded values); also printed: 22 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"500", 500, 19.7, {}, {}, {}, {}, cami_memory, {}, {}, "ANSI B74.18; the edition of the values is not known", "sedimentation", "also printed: 20.0 um (a general reference table of rounded values); also printed: 18 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"600", 600, 16.0, {}, {}, {}, {}, cami_table_memory, {}, {}, "ANSI B74.18; the edition of the values is not known", "sedimentation", "the finest grade of ANSI B74.18; also printed: 15 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"800", 800, 12.2, {}, {}, {}, {}, cami_memory, {}, {}, "none: trade usage", "not known", "a trade grade: ANSI B74.18 ends at 600; also printed: 12.6 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"1000", 1000, 9.2, {}, {}, {}, {}, cami_memory, {}, {}, "none: trade usage", "not known", "a trade grade: ANSI B74.18 ends at 600; also printed: 10.3 um (a row shared with a P grade, so an equivalence rather than a measurement)"},
    {"1200", 1200, {}, {}, {}, {}, {}, {}, {}, {}, "none: trade usage", "not known", "a trade grade: ANSI B74.18 ends at 600; no usable printed value; also printed: 5 um (a trade page sets CAMI 1200 beside P4000 near 5 um); also printed: 6.5 um (from memory (a table for metallographic papers))"},
};

// Abrasive micro grits, JIS R 6001, electrical resistance method.
inline constexpr Source jis_table{Basis::published_table, "a transcription of JIS R 6001:1987, electrical resistance method"};
inline constexpr Source jis_stone{Basis::published_table, "a general reference table, of a water stone; no value of the standard"};
inline constexpr GradeRow jis_rows[] = {
    {"#240", 240, 57.0, 3.0, 103, 40, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#280", 280, 48.0, 3.0, 87, 33, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#320", 320, 40.0, 2.5, 74, 27, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#360", 360, 35.0, 2.0, 66, 23, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#400", 400, 30.0, 2.0, 58, 20, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#500", 500, 25.0, 2.0, 50, 16, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#600", 600, 20.0, 1.5, 43, 13, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#700", 700, 17.0, 1.3, 37, 11, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#800", 800, 14.0, 1.0, 31, 9.0, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#1000", 1000, 11.5, 1.0, 27, 7.0, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", "also printed: 14 um (a general reference table, of a water stone; no value of the standard)"},
    {"#1200", 1200, 9.5, 0.8, 23, 5.5, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#1500", 1500, 8.0, 0.6, 20, 4.5, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#2000", 2000, 6.7, 0.6, 17, 4.0, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", "also printed: 7.5 um (a general reference table, of a water stone; no value of the standard)"},
    {"#2500", 2500, 5.5, 0.5, 14, 3.0, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#3000", 3000, 4.0, 0.5, 11, 2.0, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#4000", 4000, 3.0, 0.4, 8.0, 1.3, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#6000", 6000, 2.0, 0.4, 5.0, 0.8, 94, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", ""},
    {"#8000", 8000, 1.2, 0.3, 3.5, 0.6, 75, jis_table, jis_table, jis_table, "JIS R 6001:1987", "electrical sensing zone", "the fine limit is a 75 % point, not 94 %"},
};

// Bonded abrasives, grain size: FEPA F, ISO 8486-1 (F4 to F220) and ISO 8486-2 (F230 to F2000, photosedimentometer).
inline constexpr Source fepa_f_memory_macro{Basis::from_memory, "from memory (ISO 8486-1, Bonded abrasives, Macrogrits F4 to F220)"};
inline constexpr Source fepa_f_memory_micro{Basis::from_memory, "from memory (ISO 8486-2, Bonded abrasives, Microgrits F230 to F2000, photosedimentometer)"};
inline constexpr Source fepa_f_trade{Basis::common_practice, "a loose trade statement"};
inline constexpr GradeRow fepa_f_rows[] = {
    {"F4", 4, 4890, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F5", 5, 4125, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F6", 6, 3460, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F7", 7, 2900, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F8", 8, 2460, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F10", 10, 2085, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F12", 12, 1765, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F14", 14, 1470, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F16", 16, 1230, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F20", 20, 1040, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F22", 22, 885, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F24", 24, 745, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F30", 30, 625, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F36", 36, 525, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F40", 40, 438, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F46", 46, 370, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F54", 54, 310, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F60", 60, 260, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F70", 70, 218, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F80", 80, 185, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", "also printed: 180 um (a loose trade statement)"},
    {"F90", 90, 154, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F100", 100, 129, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F120", 120, 109, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F150", 150, 82, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F180", 180, 69, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F220", 220, 58, {}, {}, {}, {}, fepa_f_memory_macro, {}, {}, "ISO 8486-1; the edition of the values is not known", "sieves", ""},
    {"F230", 230, 53.0, 3.0, 82, 34, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", "a general table quotes the band 50.0 to 56.0 um (53.0 +- 3.0), but calls it F220"},
    {"F240", 240, 44.5, 2.0, 70, 28, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", ""},
    {"F280", 280, 36.5, 1.5, 59, 22, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", ""},
    {"F320", 320, 29.2, 1.5, 49, 16.5, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", ""},
    {"F360", 360, 22.8, 1.5, 40, 12, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", ""},
    {"F400", 400, 17.3, 1.0, 32, 8, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", ""},
    {"F500", 500, 12.8, 1.0, 25, 5, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", ""},
    {"F600", 600, 9.3, 1.0, 19, 3, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", ""},
    {"F800", 800, 6.5, 1.0, 14, 2, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", ""},
    {"F1000", 1000, 4.5, 0.8, 10, 1, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", "the fine limit is possibly an 80 % point"},
    {"F1200", 1200, 3.0, 0.5, 7, 1, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", "the fine limit is possibly an 80 % point"},
    {"F1500", 1500, 2.0, 0.4, 5, 0.8, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", "the fine limit is possibly an 80 % point; added in ISO 8486-2:2007"},
    {"F2000", 2000, 1.2, 0.3, 3.5, 0.5, 94, fepa_f_memory_micro, fepa_f_memory_micro, fepa_f_memory_micro, "ISO 8486-2; the edition of the values is not known", "photosedimentometer", "the fine limit is possibly an 80 % point; added in ISO 8486-2:2007"},
};

// Film and paper sold by the nominal size in micrometres.
inline constexpr Source micron_documented{Basis::common_practice, "a size sold, named by public commentaries; no standard behind it"};
inline constexpr Source micron_memory{Basis::from_memory, "from memory (catalogues of the trade)"};
inline constexpr GradeRow micron_rows[] = {
    {"100", {}, 100, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"80", {}, 80, {}, {}, {}, {}, micron_memory, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"60", {}, 60, {}, {}, {}, {}, micron_memory, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"50", {}, 50, {}, {}, {}, {}, micron_memory, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"40", {}, 40, {}, {}, {}, {}, micron_memory, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"30", {}, 30, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"20", {}, 20, {}, {}, {}, {}, micron_memory, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"15", {}, 15, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"12", {}, 12, {}, {}, {}, {}, micron_memory, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"9", {}, 9, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"5", {}, 5, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"3", {}, 3, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"2", {}, 2, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"1.5", {}, 1.5, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"1", {}, 1, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"0.5", {}, 0.5, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"0.3", {}, 0.3, {}, {}, {}, {}, micron_documented, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
    {"0.1", {}, 0.1, {}, {}, {}, {}, micron_memory, {}, {}, "none: nominal sizes of the trade", "not stated", ""},
};

// Abrasive micro grits, JIS R 6001, sedimentation tube method.
inline constexpr Source jis_sedimentation_memory{Basis::from_memory, "from memory (JIS R 6001:1998, Bonded abrasive grain sizes, sedimentation tube method)"};
inline constexpr GradeRow jis_sedimentation_rows[] = {
    {"#240", 240, 60.0, 4.0, 90, 48, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#280", 280, 52.0, 3.0, 79, 41, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#320", 320, 46.0, 2.5, 71, 35, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#360", 360, 40.0, 2.0, 64, 30, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#400", 400, 34.0, 2.0, 56, 25, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#500", 500, 28.0, 2.0, 48, 20, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#600", 600, 24.0, 1.5, 43, 17, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#700", 700, 21.0, 1.3, 39, 14, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#800", 800, 18.0, 1.0, 35, 12, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#1000", 1000, 15.5, 1.0, 32, 9.5, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#1200", 1200, 13.0, 1.0, 28, 7.8, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#1500", 1500, 10.5, 1.0, 24, 6.0, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#2000", 2000, 8.5, 0.7, 21, 4.7, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#2500", 2500, 7.0, 0.7, 18, 3.6, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
    {"#3000", 3000, 5.7, 0.5, 16, 2.8, 94, jis_sedimentation_memory, jis_sedimentation_memory, jis_sedimentation_memory, "JIS R 6001:1998", "sedimentation tube", ""},
};

// Bonded abrasives, grain size: FEPA F micro grits, ISO 8486-2, sedimentation tube.
inline constexpr Source fepa_f_tube_memory{Basis::from_memory, "from memory (ISO 8486-2, Bonded abrasives, Microgrits, US sedimentation tube)"};
inline constexpr GradeRow fepa_f_tube_rows[] = {
    {"F230", 230, 55.7, 3.0, 77, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F240", 240, 47.5, 2.0, 68, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F280", 280, 39.9, 1.5, 60, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F320", 320, 32.8, 1.5, 52, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F360", 360, 26.7, 1.5, 46, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F400", 400, 21.4, 1.0, 39, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F500", 500, 17.1, 1.0, 34, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F600", 600, 13.7, 1.0, 30, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F800", 800, 11.0, 1.0, 26, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F1000", 1000, 9.1, 0.8, 23, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
    {"F1200", 1200, 7.6, 0.5, 20, {}, {}, fepa_f_tube_memory, fepa_f_tube_memory, fepa_f_tube_memory, "ISO 8486-2; the edition of the values is not known", "sedimentation tube", ""},
};

}  // namespace detail

/// The rows of a system as printed, coarse to fine.
constexpr std::span<const GradeRow> grade_rows(System system) noexcept {
  switch (system) {
    case System::fepa_p: return detail::fepa_p_rows;
    case System::cami: return detail::cami_rows;
    case System::jis: return detail::jis_rows;
    case System::fepa_f: return detail::fepa_f_rows;
    case System::micron: return detail::micron_rows;
    case System::jis_sedimentation: return detail::jis_sedimentation_rows;
    case System::fepa_f_tube: return detail::fepa_f_tube_rows;
  }
  return {};
}

}  // namespace levigate
