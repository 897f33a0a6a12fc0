"""Rules of the headers: which way includes point, where work may be included, how a header opens, what a
comment must state."""

import re
from pathlib import Path

import pytest

INCLUDE = Path(__file__).resolve().parents[2] / "lib" / "include"
HEADERS = sorted((INCLUDE / "levigate").rglob("*.hpp"))
NAMES = [path.relative_to(INCLUDE / "levigate").as_posix() for path in HEADERS]

# What each area may include: itself, and these. "" is the files beside levigate.hpp.
BASE = {"", "detail"}
STACK = BASE | {"grade"}
SURFACE = STACK | {"stack"}
FILM = SURFACE | {"surface"}
PLAN = FILM | {"film"}
RECOVER = PLAN | {"plan"}
JOURNAL = RECOVER | {"recover"}
BENCH = JOURNAL | {"journal"}
RISK = BENCH | {"bench"}
CORE = RISK | {"wheel", "risk"}
ALLOWED = {
    "": BASE,
    "detail": BASE,
    "grade": BASE,
    "stack": STACK,
    "surface": SURFACE,
    "film": FILM,
    "wheel": FILM,
    "plan": PLAN | {"wheel"},
    "recover": RECOVER,
    "journal": JOURNAL,
    "bench": BENCH,
    "risk": RISK,
    "io": CORE,
    "text": CORE,
}
THIRD_PARTY = {"io": "nlohmann/", "text": "fmt/"}
# JSON keeps a sentence beside each fact, so io takes in this one header of text, which needs no library.
SENTENCES = "levigate/text/sentences.hpp"
STANDARD_ONLY = re.compile(r"text/(work/)?(sentences|facts)")
# What C++ has no word for: locks, and writing through to the disk.
OF_A_SYSTEM = {"io/work/system_file.hpp": {"<fcntl.h", "<sys/file.h", "<sys/stat.h", "<unistd.h", "<windows.h"}}
MAX_LINES = 400


def area(name):
    return name.split("/")[0] if "/" in name else ""


def is_work(name):
    """What is not for users: helpers, and the definitions of what a header declares."""
    return "work" in name.split("/")


def includes(header):
    return re.findall(r'^\s*#\s*include\s*([<"][^>"]+)[>"]', header.read_text(), re.MULTILINE)


def forbidden_includes(name, lines):
    """Those of `lines` that the header `name` must not include. Each opens with its < or \"."""
    bad = []
    for line in lines:
        target = line[1:]
        if target.startswith("levigate/"):
            to = area(target.removeprefix("levigate/"))
            ok = line[0] == '"' and (to == area(name) or to in ALLOWED[area(name)])
            ok = ok or (area(name) == "io" and line == f'"{SENTENCES}')
            if STANDARD_ONLY.match(name) and to == "text":
                ok = ok and STANDARD_ONLY.match(target.removeprefix("levigate/")) is not None
        elif line in OF_A_SYSTEM.get(name, ()):
            ok = True
        elif "/" in target:
            allowed = is_work(name) and not STANDARD_ONLY.match(name)
            third_party = THIRD_PARTY.get(area(name)) if allowed else None
            ok = third_party is not None and target.startswith(third_party)
        else:  # a standard header has no folder and no suffix
            ok = line[0] == "<" and "." not in target
        if not ok:
            bad.append(target)
    return bad


@pytest.mark.parametrize("header", HEADERS, ids=NAMES)
def test_includes_point_one_way(header):
    name = header.relative_to(INCLUDE / "levigate").as_posix()
    if name != "levigate.hpp":
        assert forbidden_includes(name, includes(header)) == []


@pytest.mark.parametrize(
    "name, line",
    [
        ("grade/label.hpp", '"levigate/stack/sheet.hpp'),
        ("surface/contact.hpp", '"levigate/film/film.hpp'),
        ("film/film.hpp", '"levigate/plan/job.hpp'),
        ("wheel/heat.hpp", '"levigate/film/film.hpp'),
        ("plan/job.hpp", '"levigate/io/json.hpp'),
        ("text/card.hpp", "<nlohmann/json.hpp"),
        ("error.hpp", '"levigate/grade/grade.hpp'),
        ("error.hpp", "<math.h"),
        ("error.hpp", "<fmt/format.h"),
        ("io/file.hpp", "<unistd.h"),
        ("io/journal.hpp", "<unistd.h"),
        ("io/work/journal.hpp", "<fcntl.h"),
        ("io/work/journal.hpp", "<sys/file.h"),
        ("io/work/file.hpp", "<windows.h"),
        ("io/read.hpp", "<nlohmann/json.hpp"),
        ("grade/work/label.hpp", '"levigate/stack/sheet.hpp'),
        ("io/write.hpp", '"levigate/text/card.hpp'),
        ("plan/plan.hpp", '"levigate/text/sentences.hpp'),
        ("text/sentences.hpp", "<fmt/format.h"),
        ("text/work/sentences_of_why.hpp", '"levigate/text/work/page.hpp'),
    ],
)
def test_an_arrow_the_wrong_way_is_seen(name, line):
    assert forbidden_includes(name, [line]) == [line[1:]]


# Words of one system, or of its C library alone, that a header could use with no include of its own.
SYSTEM_WORDS = re.compile(r"\b(_WIN32|__linux__|__APPLE__|__GLIBC__|strtok_r|localtime_r|gmtime_r|timegm|getpid|M_PI|fsync|flock|sincos)\b")


@pytest.mark.parametrize("header", HEADERS, ids=NAMES)
def test_one_header_alone_speaks_of_systems(header):
    name = header.relative_to(INCLUDE / "levigate").as_posix()
    code = re.sub(r"//.*", "", header.read_text())
    words = set(SYSTEM_WORDS.findall(code))
    assert words == ({"_WIN32", "fsync", "flock"} if name in OF_A_SYSTEM else set())


# Macros of <windows.h> in small letters, and what they leave of a name: nothing.
MACROS = re.compile(r"\b(near|far)\b")


@pytest.mark.parametrize("header", HEADERS, ids=NAMES)
def test_no_name_is_a_macro_of_windows(header):
    code = re.sub(r'//.*|"(\\.|[^"\\])*"', "", header.read_text())
    assert MACROS.findall(code) == []


# Which header brings which names of the standard library.
STANDARD = {
    "algorithm": "all_of any_of binary_search clamp copy copy_if count count_if equal erase_if fill find find_first_of"
    " find_if for_each is_sorted lower_bound max max_element merge min min_element minmax_element none_of nth_element"
    " partition_point ranges remove remove_if replace_if reverse rotate sort stable_sort transform unique upper_bound",
    "array": "array to_array",
    "atomic": "atomic",
    "bit": "bit_cast",
    "charconv": "chars_format from_chars to_chars",
    "chrono": "chrono",
    "cmath": "abs atan ceil cos cosh erf erfc exp exp2 expm1 floor fmod hypot isfinite isinf isnan lerp lgamma log"
    " log10 log1p log2 llround nan nextafter pow round signbit sin sinh sqrt tan tanh",
    "compare": "partial_ordering strong_ordering weak_ordering",
    "concepts": "floating_point integral invocable same_as",
    "cstddef": "byte nullptr_t ptrdiff_t size_t",
    "cstdint": "int32_t int64_t uint8_t uint32_t uint64_t uintmax_t",
    "cstdio": "FILE fclose fopen fwrite",
    "cstdlib": "llabs",
    "deque": "deque",
    "exception": "current_exception exception exception_ptr rethrow_exception",
    "filesystem": "filesystem",
    "fstream": "ifstream ios ofstream streamsize",
    "functional": "cref function greater less less_equal plus",
    "iterator": "back_inserter begin distance end make_move_iterator next prev size ssize",
    "limits": "numeric_limits",
    "map": "map multimap",
    "memory": "make_shared make_unique shared_ptr unique_ptr",
    "mutex": "mutex scoped_lock",
    "numbers": "numbers",
    "numeric": "accumulate iota midpoint",
    "optional": "nullopt optional",
    "set": "set",
    "span": "span",
    "sstream": "istringstream ostringstream",
    "stdexcept": "invalid_argument logic_error runtime_error",
    "string": "erase getline stod stoi string to_string",
    "string_view": "string_view",
    "system_error": "errc error_code generic_category make_error_code system_category system_error",
    "thread": "jthread thread",
    "tuple": "make_tuple tie tuple",
    "type_traits": "false_type integral_constant is_default_constructible_v is_enum_v is_integral_v"
    " is_null_pointer_v is_same_v is_unsigned_v remove_cvref_t true_type",
    "utility": "exchange forward get make_pair move pair swap",
    "variant": "get_if holds_alternative monostate variant visit",
    "vector": "vector",
}
BROUGHT_BY = {name: header for header, names in STANDARD.items() for name in names.split()}
# What any header of these has in hand: describe.hpp is written with it, and these come with any container.
AT_HAND = {"concepts", "iterator", "type_traits", "utility:get", "algorithm:erase_if"}


def standard_headers_missing(text):
    """Those of the standard library whose names a header uses and that it does not include itself."""
    code = re.sub(r"//.*", "", text)
    held = set(re.findall(r"#include <([^>]+)>", code))
    names = set(re.findall(r"\bstd::(\w+)", code))
    missing = {name: BROUGHT_BY.get(name, "a header that STANDARD must name") for name in names}
    return {
        name: header
        for name, header in missing.items()
        if header not in held | AT_HAND and f"{header}:{name}" not in AT_HAND
    }


@pytest.mark.parametrize("header", HEADERS, ids=NAMES)
def test_a_header_includes_what_it_uses_of_the_standard_library(header):
    # headers_alone would not see it: for time, it reads the standard headers once for all.
    assert standard_headers_missing(header.read_text()) == {}


def test_a_standard_header_that_is_missing_is_seen():
    assert standard_headers_missing("#include <map>\nstd::map<int, std::string> m;") == {"string": "string"}
    assert list(standard_headers_missing("std::never_heard_of x;")) == ["never_heard_of"]


def is_generated(name):
    return "Generated from data/" in (INCLUDE / "levigate" / name).read_text()


def test_umbrella_is_complete():
    umbrella = INCLUDE / "levigate" / "levigate.hpp"
    outside = {"detail", "io", "text"}
    core = [n for n in NAMES if n != "levigate.hpp" and area(n) not in outside]
    wanted = [n for n in core if not is_work(n) and not is_generated(n)]
    # Read the message as the text that levigate.hpp should hold.
    held = "".join(f'#include "{line[1:]}"\n' for line in sorted(includes(umbrella)))
    assert held == "".join(f'#include "levigate/{name}"\n' for name in wanted)


def light_of(work):
    """The header that declares what this one, of a folder work, defines. Beside levigate.hpp there is no
    such folder: that work is in detail/."""
    return work.replace("detail/work/", "").replace("work/", "")


def brings_in(work):
    """The last lines of a header whose work is `work`."""
    return f'\n}}  // namespace levigate\n\n#ifndef LEVIGATE_COMPILED\n#include "levigate/{work}"\n#endif\n'


def text_of(name):
    return (INCLUDE / "levigate" / name).read_text()


def defines(name):
    """Whether it defines what a library defines once: then nobody else may include it."""
    return re.search(r"^LEVIGATE_WORK ", text_of(name), re.MULTILINE) is not None


WORK = [n for n in NAMES if is_work(n)]
DEFINITIONS = [n for n in WORK if defines(n)]


def included_work(text):
    found = re.findall(r'^#include "levigate/([^"]+)"', text, re.MULTILINE)
    return [name for name in found if is_work(name)]


@pytest.mark.parametrize("name", [n for n in NAMES if not is_work(n)])
def test_a_light_header_brings_in_its_own_work_only(name):
    text = text_of(name)
    wanted = [work for work in DEFINITIONS if light_of(work) == name]
    assert included_work(text) == wanted
    assert all(text.endswith(brings_in(work)) for work in wanted)


@pytest.mark.parametrize("name", DEFINITIONS)
def test_a_definition_opens_with_what_declares_it(name):
    assert light_of(name) in NAMES
    ours = [line for line in includes(INCLUDE / "levigate" / name) if line[0] == '"']
    assert ours[0] == f'"levigate/{light_of(name)}'


@pytest.mark.parametrize("name", WORK)
def test_no_work_includes_a_definition(name):
    assert [work for work in included_work(text_of(name)) if work in DEFINITIONS] == []


def taken_in_too_early(first, texts):
    """(work, header) of each that a light header brings in while that header, which it includes, is still at its
    own includes: it stands before what it needs. `first` is the first header of a file."""
    state, found = {}, []

    def take_in(name, by):
        if name in state:
            if state[name] == "at its includes":
                found.append((by, name))
            return
        state[name] = "at its includes"
        head, _, brought_in = texts[name].partition("#ifndef LEVIGATE_COMPILED\n#include")
        for part, after in ((head, "said"), ("#include" + brought_in, "done")):
            for target in re.findall(r'^#include "levigate/([^"]+)"', part, re.MULTILINE):
                take_in(target, name)
            state[name] = after

    take_in(first, None)
    return found


def test_work_comes_in_after_what_it_needs():
    texts = {name: text_of(name) for name in NAMES}
    # A definition that comes first opens with its light header, whose last lines bring nothing more in.
    firsts = [name for name in NAMES if name not in DEFINITIONS]
    assert {pair for first in firsts for pair in taken_in_too_early(first, texts)} == set()


def test_work_that_comes_in_too_early_is_seen():
    texts = {
        "a.hpp": '#include "levigate/b.hpp"\n',
        "b.hpp": '#ifndef LEVIGATE_COMPILED\n#include "levigate/work/b.hpp"\n#endif\n',
        "work/b.hpp": '#include "levigate/b.hpp"\n#include "levigate/a.hpp"\n',
    }
    assert taken_in_too_early("a.hpp", texts) == [("work/b.hpp", "a.hpp")]
    assert taken_in_too_early("b.hpp", texts) == []


def test_the_library_compiles_each_definition_once():
    sources = sorted((INCLUDE.parent / "src").glob("*.cpp"))
    compiled = [work for source in sources for work in included_work(source.read_text())]
    assert sorted(compiled) == DEFINITIONS


@pytest.mark.parametrize("folder", ["bindings/src", "tests", "examples"])
def test_nobody_else_includes_a_definition(folder):
    files = [f for f in (INCLUDE.parents[1] / folder).rglob("*.[ch]pp")]
    assert files != []
    assert [(f.name, w) for f in files for w in included_work(f.read_text()) if w in DEFINITIONS] == []


@pytest.mark.parametrize("header", HEADERS, ids=NAMES)
def test_opens_with_what_it_is_for(header):
    lines = header.read_text().splitlines()
    assert re.match(r"// \S.{20,}", lines[0]), "the first line says what the header is for"
    after = next(line for line in lines if not line.startswith("//"))
    assert after == "#pragma once"
    assert len(lines) <= MAX_LINES


def documented_functions(text):
    """(comment, declaration) of everything that carries an `@param` or `@return`."""
    for block in re.finditer(r"((?:^[ \t]*///.*\n)+)((?:[^{;]|\{\})*)", text, re.MULTILINE):
        if re.search(r"@(param|return)", block[1]):
            yield block[1], block[2]


def complaints(comment, declaration):
    """What the comment of a function lacks."""
    required = ["Source:"]
    if "noexcept" not in declaration:
        required += ["Throws:"]
    if "double" in declaration:
        required += ["NaN:"]
    if "double" in declaration.split("(")[0]:
        required += ["Accuracy:"]
    lacks = [word for word in required if word not in comment]
    entries = re.findall(r"@param +(\w+)(.*(?:\n[ \t]*///  +.*)*)", comment)
    lacks += [f"{name} in the declaration" for name, _ in entries if name not in declaration]
    suffix = re.compile(r"_(um|mm|cm2|m|kpa|mpa|n|m_s|min|gu|s|deg|rpm|percent)$")
    lacks += [f"[unit] of {name}" for name, rest in entries if suffix.search(name) and "[" not in rest]
    return lacks


@pytest.mark.parametrize("header", HEADERS, ids=NAMES)
def test_comments_state_the_contract(header):
    found = {}
    for comment, declaration in documented_functions(header.read_text()):
        lacks = complaints(comment, declaration)
        if lacks:
            found[" ".join(declaration.split())[:80]] = lacks
    assert found == {}


def undocumented(text):
    """The public functions on numbers that have no comment at all."""
    public = re.sub(r"^namespace detail.*?^}  // namespace", "", text, flags=re.DOTALL | re.MULTILINE)
    function = r"^(?!.*///|template).*\n((?:template.*\n)?(?:inline|constexpr|(?!LEVIGATE_WORK)[A-Z]\w*|double|std::\S+) [^=;\n]*\([^{;]*)"
    return [found for found in re.findall(function, public, re.MULTILINE) if "double" in found]


@pytest.mark.parametrize("name", [n for n in NAMES if area(n) not in THIRD_PARTY])
def test_every_number_has_a_comment(name):  # io and text only print what the others computed
    assert undocumented((INCLUDE / "levigate" / name).read_text()) == []


def test_a_function_without_comment_is_seen():
    text = "}\n\ninline double f(double d_um) { return d_um; }\n"
    assert undocumented(text) == ["inline double f(double d_um) "]
    assert undocumented(text.replace("}\n\n", "}\n\n/// Depth.\n")) == []


def test_a_comment_without_its_contract_is_seen():
    text = "/// Depth.\n/// @param size_um  median\ninline double f(double d_um) { return d_um; }\n"
    (function,) = documented_functions(text)
    assert complaints(*function) == [
        "Source:",
        "Throws:",
        "NaN:",
        "Accuracy:",
        "size_um in the declaration",
        "[unit] of size_um",
    ]
