"""The core holds facts: sentences stand in text/, but for errors, descriptions, tables and citations."""

import re
from pathlib import Path

INCLUDE = Path(__file__).resolve().parents[2] / "lib" / "include" / "levigate"
OUTSIDE = ("io", "text")  # io makes errors of files, and what it writes comes from text/sentences.hpp
TABLES = re.compile(r"_table\.hpp$|work/tables\.hpp$|caution\.hpp$|clogging\.hpp$")
CORE = {
    path.relative_to(INCLUDE).as_posix(): path
    for path in sorted(INCLUDE.rglob("*.hpp"))
    if path.relative_to(INCLUDE).parts[0] not in OUTSIDE and not TABLES.search(path.as_posix())
}

# A statement with one of these makes an error or a description, names an enumerator, or says where a number is from.
ALLOWED = re.compile(
    r"\b(throw|static_assert|case|BadInput|Fault|fault|told|refuse|require_\w+|member|describe|rule"
    r"|Source|Sourced|Basis|where)\b"
)
# The words of errors that are put together in several statements.
ERRORS = {
    "detail/profile.hpp",
    "grade/work/label_parts.hpp",
    "grade/work/candidates.hpp",
    "detail/moment.hpp",
    "stack/work/stack.hpp",
    "surface/defect.hpp",
}
# Where a number is from, and names of things.
CITATIONS = {"formulas.hpp", "grade/work/from_row.hpp"}
NAMES = {"wheel/work/compound.hpp"}

LISTED = ERRORS | CITATIONS | NAMES
LITERAL = re.compile(r'"((?:[^"\\\n]|\\.)*)"')


def plain(text):
    """Code without comments, single characters and lines of the preprocessor."""
    text = re.sub(r"^\s*#.*$", "", text, flags=re.MULTILINE)
    text = re.sub(r"//[^\n]*|/\*.*?\*/", "", text, flags=re.DOTALL)
    return re.sub(r"'(?:[^'\\\n]|\\.)'", "", text)


def sentences(text):
    """The literals of four words or more in statements that are none of the allowed."""
    found = []
    for statement in re.split(r";|\{\s*\n|\}\s*\n", plain(text)):
        if not ALLOWED.search(LITERAL.sub("", statement)):
            found += [one for one in LITERAL.findall(statement) if len(one.split()) > 3]
    return found


def test_the_core_makes_no_sentences():
    found = {name: sentences(path.read_text()) for name, path in CORE.items()}
    assert {name: said for name, said in found.items() if said and name not in LISTED} == {}


def test_what_is_listed_is_still_there():
    assert [name for name in sorted(LISTED) if not sentences(CORE[name].read_text())] == []


def test_a_sentence_is_seen():
    text = 'finding.message = named(sheet) + " has no price and counts as free";\n'
    assert sentences(text) == [" has no price and counts as free"]
    assert sentences('throw BadInput("the stack has no sheets");\n') == []
    assert sentences("// a comment may say \"as much as it likes\"\n") == []
