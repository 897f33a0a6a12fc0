#!/usr/bin/env python3
"""Edit one number at a time by 1 % and see whether a test fails. Lists the survivors; none is the aim.

    python3 tests/mutate.py [--only WORD] [--seed N]

Tables: a random choice of the numbers in data/standards and data/profiles, the headers generated anew, as if
somebody had mistyped the page. Formulas: constants in the headers, listed below with the tests that guard them. Each
edit is made in a copy of the tree; the tests are compiled there without optimisation. Takes some minutes.
"""

import argparse
import json
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
CORE = "lib/include/levigate/"

# file, the code around the number (the number in brackets of the pattern), tests that should see it
FORMULAS = [
    ("units.hpp", r"return mil \* (25\.4);", ["reference/reference_test"]),
    ("units.hpp", r"return inch \* (25400\.0);", ["reference/reference_test"]),
    ("units.hpp", r"return inch \* (25\.4);", ["reference/reference_test"]),
    ("units.hpp", r"ft_min \* (0\.00508);", ["reference/reference_test"]),
    ("units.hpp", r"force_n / area_cm2 \* (10\.0);", ["reference/reference_test"]),
    ("surface/removal.hpp", r"size_um / (100\.0), exponent", ["unit/removal_test"]),
    ("surface/removal.hpp", r"um_per_m = (1e6);", ["unit/removal_test"]),
    ("surface/removal.hpp", r"mpa_per_kpa = (1e-3);", ["unit/removal_test"]),
    ("surface/removal.hpp", r"floor - \((1\.0) - floor\)", ["unit/removal_test"]),
    ("surface/contact.hpp", r"pi / (180\.0)", ["unit/contact_test"]),
    ("surface/contact.hpp", r"hardness_mpa / \((2\.0) \* tangent", ["unit/contact_test"]),
    ("surface/contact.hpp", r"pressure_mpa = (1e-3) \*", ["unit/contact_test"]),
    ("surface/contact.hpp", r"hypot\(input\.tip_spread, (0\.5) \*", ["unit/contact_test"]),
    ("surface/contact.hpp", r"tips_per_mm2_ = (1e6) \*", ["unit/contact_test"]),
    ("surface/contact.hpp", r"cut = (8\.0);", ["property/contact_states_test"]),
    ("surface/contact.hpp", r"density \* \(slope_ \+ (2\.0) \* softness_", ["unit/contact_test"]),
    ("surface/roughness.hpp", r"ra_per_groove_depth = (0\.\d+);", ["unit/scratch_test", "property/roughness_simulation_test"]),
    ("surface/roughness.hpp", r"rq_per_groove_depth = (0\.\d+);", ["unit/scratch_test", "property/roughness_simulation_test"]),
    ("surface/levelling.hpp", r"start = (0\.5) \* input\.peel_um", ["unit/levelling_test"]),
    ("surface/levelling.hpp", r"end = (0\.5) \* input\.residual_um", ["unit/levelling_test"]),
    ("surface/sheen.hpp", r"reference_index = (1\.567);", ["unit/sheen_test"]),
    ("surface/sheen.hpp", r"wavelength_um = (0\.55);", ["unit/sheen_test"]),
    ("surface/sheen.hpp", r"(4\.0) \* std::numbers::pi", ["unit/sheen_test"]),
    ("surface/sheen.hpp", r"return (100\.0) \* fresnel", ["unit/sheen_test"]),
    ("detail/normal.hpp", r"(0\.5) \* std::erfc", ["unit/normal_test"]),
    ("film/cut_through.hpp", r"return -std::expm1\((.*)\);", ["unit/cut_through_test"]),
    ("stack/speed.hpp", r"rpm / (60e3);", ["unit/wheel_heat_test", "reference/reference_test"]),
    ("wheel/heat.hpp", r"return (2\.0) \* detail", ["unit/wheel_heat_test"]),
    ("wheel/heat.hpp", r"rise_k / \((2\.0) \* detail", ["unit/wheel_heat_test"]),
    ("surface/defect.hpp", r"(2\.0) / 3\.0 \* left", ["unit/defect_test"]),
    ("surface/defect.hpp", r"pi / (8\.0) \*", ["unit/defect_test"]),
    ("surface/take_down.hpp", r"mm3_per_um_cm2 = (0\.1);", ["unit/defect_test"]),
    ("surface/take_down.hpp", r"face = (10\.0) \* std::sqrt", ["unit/defect_test"]),
    ("film/gauge.hpp", r"std::sqrt\((3\.0)\)", ["unit/rounds_test"]),
    ("film/agreement.hpp", r"contradiction_sigmas = (3\.0);", ["unit/rounds_test"]),
    ("wheel/pass.hpp", r"mm_per_m = (1e3);", ["unit/wheel_use_test"]),
    ("wheel/pass.hpp", r"rpm / (60\.0) \*", ["unit/wheel_use_test"]),
    ("grade/spread.hpp", r"normal_97 = (1\.88\d+);", ["unit/grade_tables"]),
    ("grade/spread.hpp", r"normal_95 = (1\.64\d+);", ["unit/grade_tables"]),
    ("grade/spread.hpp", r"normal_94 = (1\.55\d+);", ["unit/grade_tables"]),
    ("grade/spread.hpp", r"normal_75 = (0\.67\d+);", ["unit/grade_tables"]),
    ("grade/spread.hpp", r"return \{(0\.20), ", ["unit/grade_tables"]),
    ("grade/spread.hpp", r"return \{(0\.15), ", ["unit/grade_tables"]),
    ("grade/spread.hpp", r"return \{(0\.30), ", ["unit/grade_tables"]),
    ("plan/work/effort.hpp", r"tool\.duty / duty / (60\.0)", ["property/plan_oracle_test"]),
    ("plan/work/effort.hpp", r"refractive_index, (60\.0),", ["property/plan_oracle_test"]),
    ("plan/work/workings.hpp", r"std::max\((1\.0), zone\.area_cm2\),\n +\.cut", ["property/plan_oracle_test", "unit/plan_test"]),
    ("plan/work/ladder.hpp", r"pm_per_um = (1e6);", ["property/plan_oracle_test"]),
    ("plan/work/ladder.hpp", r"ms_per_minute = (60'000\.0);", ["property/plan_oracle_test", "unit/plan_test"]),
    ("plan/work/ladder.hpp", r"cost_per_currency = (10'000\.0);", ["property/plan_oracle_test"]),
    ("plan/work/ladder.hpp", r"micro_per_sheet = (1e6);", ["property/plan_oracle_test"]),
    ("plan/work/search.hpp", r"millimetre_pm = (1'000'000'000);", ["property/search_oracle_test", "unit/plan_test"]),
    ("plan/work/findings.hpp", r"worth_saying = (1\.25);", ["unit/plan_test"]),
    ("plan/reliance.hpp", r"most_film = (10\.0);", ["unit/reliance_test"]),
    ("plan/work/knobs.hpp", r"extrapolated \? (0\.12) :", ["unit/reliance_test"]),
    ("plan/work/knobs.hpp", r"\? 0\.12 : (0\.03)\)", ["unit/reliance_test"]),
    ("plan/work/knobs.hpp", r"(0\.75) \* value", ["unit/reliance_test"]),
    ("surface/scratch_width.hpp", r"return (0\.5) \* width_um", ["unit/recover_test"]),
    ("surface/scratch_width.hpp", r"return (2\.0) \* depth_um", ["unit/recover_test"]),
    ("recover/work/visible.hpp", r"any = (1\.0) / 180", ["unit/recover_test"]),
    ("surface/work/stray.hpp", r"um_per_mm = (1e3);", ["unit/recover_test"]),
    ("surface/work/stray.hpp", r"rigid \+ (4\.0) \* give", ["unit/recover_test"]),
    ("recover/work/sources_of_marks.hpp", r"spot_mm = (10\.0);", ["unit/recover_test"]),
    ("recover/work/sources_of_marks.hpp", r"cm2_per_m2 = (1e4);", ["unit/recover_test"]),
    ("recover/work/sources_of_marks.hpp", r"mm_per_um = (1e3) /", ["unit/recover_test"]),
]


def changed(number):
    """The text of a number, 1 % larger. Not a number: the expression in brackets, 1 % larger."""
    plain = number.replace("'", "")
    try:
        value = float(plain)
    except ValueError:
        return f"1.01 * ({number})"
    if re.fullmatch(r"\d+", plain):
        return str(max(int(plain) + 1, round(value * 1.01)))
    return repr(value * 1.01)


def formula_edits():
    for file, pattern, tests in FORMULAS:
        text = (ROOT / CORE / file).read_text(encoding="utf-8")
        # Comments say the formula too; an edit there would survive and mean nothing.
        code = re.sub(r"//[^\n]*", lambda m: " " * len(m.group()), text)
        match = re.search(pattern, code)
        if not match:
            sys.exit(f"{file}: nothing matches {pattern}")
        edit = text[: match.start(1)] + changed(match.group(1)) + text[match.end(1) :]
        line = text.count("\n", 0, match.start(1)) + 1
        yield f"{CORE}{file}:{line}: {match.group(1)}", CORE + file, edit, False, tests


def table_edits(folder, pattern, count, tests, choice):
    for file in sorted((ROOT / "data" / folder).glob("*.json")):
        text = file.read_text(encoding="utf-8")
        matches = list(re.finditer(pattern, text))
        for match in choice.sample(matches, min(count, len(matches))):
            number = match.group(1)
            value = float(number) * 1.01
            # A printed table keeps its decimals; at least the last digit moves.
            decimals = len(number.partition(".")[2])
            digits = f"{value:.{decimals}f}"
            if digits == number:
                digits = f"{float(number) + 10**-decimals:.{decimals}f}"
            edit = text[: match.start(1)] + digits + text[match.end(1) :]
            line = text.count("\n", 0, match.start(1)) + 1
            yield f"data/{folder}/{file.name}:{line}: {number}", f"data/{folder}/{file.name}", edit, True, tests


def run(command, folder):
    return subprocess.run(command, cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)


def verdict(edit):
    """What noticed the edit: a test, the compiler, the generator; or None."""
    _, path, text, generate, tests = edit
    with tempfile.TemporaryDirectory() as folder:
        for part in ("lib", "data", "tests"):
            shutil.copytree(ROOT / part, Path(folder) / part)
        (Path(folder) / path).write_text(text, encoding="utf-8")
        if generate and run([sys.executable, "data/generate.py"], folder).returncode:
            return "the generator"
        for test in tests:
            program = str(Path(folder) / "test")
            compiled = run(
                ["g++", "-std=c++20", "-O0", "-ffp-contract=off", "-DFMT_HEADER_ONLY", "-Ilib/include", "-Itests",
                 f'-DLEVIGATE_DATA_DIR="{folder}/data"', f"tests/{test}.cpp", "-o", program,
                 "-lgmock", "-lgtest", "-lgtest_main", "-lpthread"], folder)
            if compiled.returncode:
                return f"the compiler, in {test}"
            if run([program, "--gtest_brief=1"], folder).returncode:
                return test
    return None


def main():
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--only", default="", help="only edits whose description holds this")
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    choice = random.Random(arguments.seed)
    edits = list(formula_edits())
    edits += table_edits("standards", r'"(?:median|tolerance|coarse_limit|fine_limit)_um": \["(\d+(?:\.\d+)?)"', 3, ["reference/double_entry_test"], choice)
    edits += table_edits("profiles", r'"value": (\d+(?:\.\d+)?)', 3, ["reference/profile_entry_test"], choice)
    edits = [edit for edit in edits if arguments.only in edit[0]]
    survivors = []
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        for edit, noticed in zip(edits, pool.map(verdict, edits)):
            print(f"{edit[0]:75} {noticed or 'SURVIVES'}", flush=True)
            if not noticed:
                survivors.append(edit[0])
    print(f"\n{len(edits)} edits of 1 %, {len(survivors)} survivors")
    for survivor in survivors:
        print("  " + survivor)
    return 1 if survivors else 0


if __name__ == "__main__":
    sys.exit(main())
