"""The C interface: from a program in C and through ctypes, with the answers and the faults that Python gives."""

import ctypes
import json
import subprocess
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import levigate
import pytest

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "data" / "demo"
INCLUDE = ROOT / "lib" / "include"
LIBRARY = ROOT / ".build" / "module" / "lib" / "liblevigate.a"  # that the module is made of
JOB, STACK = ((DEMO / name).read_text() for name in ("job.json", "stack.json"))
MARK = {"kind": "mark found", "at": "2026-03-03T12:00:00Z", "mark": {"kind": "haze", "zone": "top", "seen": "sunlight"}}
SHOWN = ROOT / "lib" / "cmake" / "levigate_c.map"


@pytest.fixture(scope="module")
def shared(tmp_path_factory):
    shared = tmp_path_factory.mktemp("c") / "liblevigate_c.so"
    whole = ["-Wl,--whole-archive", LIBRARY, "-Wl,--no-whole-archive"]
    subprocess.run(["g++", "-shared", "-o", shared, f"-Wl,--version-script={SHOWN}", *whole], check=True)
    return shared


@pytest.fixture(scope="module")
def functions(shared):
    functions = ctypes.CDLL(str(shared))
    functions.levigate_version.restype = ctypes.c_char_p
    functions.levigate_free.argtypes = [ctypes.c_void_p]
    functions.levigate_free.restype = None
    return functions


@pytest.fixture
def ask(functions):
    def ask(name, *texts):
        answer = ctypes.c_void_p()
        given = [ctypes.c_char_p(text.encode() if text is not None else None) for text in texts]
        status = getattr(functions, f"levigate_{name}")(*given, ctypes.byref(answer))
        text = ctypes.string_at(answer.value).decode()
        functions.levigate_free(answer)
        return status, text

    return ask


def test_it_shows_the_functions_of_c_alone(shared):
    listed = subprocess.run(["nm", "-D", "--defined-only", shared], check=True, capture_output=True, text=True).stdout
    names = {line.split()[-1] for line in listed.splitlines()}
    assert names == {f"levigate_{name}" for name in ("version", "plan", "check", "convert", "go_back", "free")}


def test_a_plan_is_that_of_python_to_the_byte(ask, demo):
    assert ask("plan", JOB, STACK) == (0, levigate.plan(*demo).to_json())


def test_a_drawer_is_checked_as_python_does(ask, demo):
    job, stack = demo
    for rules, given in ((None, None), (job.rules, JOB)):
        status, text = ask("check", STACK, given)
        assert status == 0
        assert json.loads(text) == [finding.to_dict() for finding in levigate.check(stack, rules)]


def test_a_label_is_converted_as_python_does(ask):
    for label, bare, system in (("600", None, None), ("P600", None, "JIS"), ("600", "CAMI", "FEPA P")):
        wanted = levigate.meanings(label, bare or "ask", [system] if system else levigate.COATED_SYSTEMS)
        status, text = ask("convert", label, bare, system)
        assert (status, json.loads(text)) == (0, wanted.to_dict())


def test_the_way_back_is_that_of_python_to_the_byte(ask, demo):
    job, stack = demo
    mark = levigate.Entry.from_dict({"format": "levigate.journal/1", "job": job.name, **MARK})
    lines = (DEMO / "journal.jsonl").read_text() + mark.to_json()
    bench = levigate.Bench(job, stack, journal=levigate.JournalReading.from_json(lines))
    assert ask("go_back", JOB, STACK, lines) == (0, levigate.go_back(bench).to_json())


def test_faults_are_those_of_python(ask):
    text = JOB.replace('"area_cm2": ', '"area_cm2": -', 2)
    with pytest.raises(levigate.BadInput) as raised:
        levigate.Job.from_json(text, "job")
    status, answer = ask("plan", text, STACK)
    assert status == raised.value.code
    told = json.loads(answer)["errors"]
    assert len(told) == len(raised.value.faults) == 2
    for one, fault in zip(told, raised.value.faults, strict=True):
        assert one.pop("file") == "job"
        assert one["message"] == fault.message
        assert one == {name: getattr(fault, name) for name in one}
        assert set(one) == {name for name, is_a in vars(levigate.Fault).items() if isinstance(is_a, property)}


def test_eight_threads_get_the_same(ask):
    with ThreadPoolExecutor(8) as threads:
        answers = set(threads.map(lambda _: ask("plan", JOB, STACK), range(16)))
    assert answers == {ask("plan", JOB, STACK)}


def test_version_is_that_of_the_module(functions):
    assert functions.levigate_version().decode() == levigate.__version__


@pytest.mark.parametrize("compiler", ["gcc", "clang-14"])
def test_a_program_in_c_plans(compiler, tmp_path, demo):
    strict = ["-std=c99", "-Wall", "-Wextra", "-pedantic", "-Wconversion", "-Werror"]
    source = ROOT / "examples" / "c" / "first_plan.c"
    subprocess.run([compiler, *strict, f"-I{INCLUDE}", "-c", source, "-o", tmp_path / "first.o"], check=True)
    subprocess.run(["g++", tmp_path / "first.o", LIBRARY, "-o", tmp_path / "first"], check=True)
    printed = subprocess.run([tmp_path / "first"], cwd=ROOT, check=True, capture_output=True, text=True).stdout
    assert printed == levigate.plan(*demo).to_json()
    elsewhere = subprocess.run([tmp_path / "first"], cwd=tmp_path, capture_output=True, text=True)
    assert elsewhere.returncode == 1
    assert [one["quantity"] for one in json.loads(elsewhere.stderr)["errors"]] == ["job", "stack"]


def test_the_header_is_c_alone():
    text = (INCLUDE / "levigate" / "c" / "levigate.h").read_text()
    assert "#include" not in text
