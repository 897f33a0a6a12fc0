"""A plan left off and taken up again."""

import json
import math
import pickle

import levigate
import pytest
from levigate import DoneStep


@pytest.fixture(scope="module")
def whole(demo):
    return levigate.plan(*demo)


def test_what_remains_is_the_rest_of_the_plan(demo, whole):
    job, stack = demo
    for count in range(1, len(whole.steps)):
        done = [DoneStep(step.sheet) for step in whole.steps[:count]]
        rest = levigate.plan(levigate.present(job, stack, done), stack)
        assert [step.sheet for step in rest.steps] == [s.sheet for s in whole.steps[count:]]
        minutes = sum(step.minutes for step in whole.steps[:count]) + rest.total.minutes
        assert minutes == pytest.approx(whole.total.minutes, abs=1e-4)  # milliseconds a step


def test_all_done_leaves_nothing_to_do(demo, whole):
    job, stack = demo
    done = [DoneStep(step.sheet) for step in whole.steps]
    rest = levigate.plan(levigate.present(job, stack, done), stack)
    assert not rest.found and rest.why.blocked_by == "done"
    assert "Nothing to do" in rest.card()


def test_films_go_down_unless_they_were_read(demo, whole):
    job, stack = demo
    done = [DoneStep(whole.steps[0].sheet)]
    read = {"front and sides": levigate.film_from_readings([61, 66, 58, 63])}
    now = {zone.name: zone for zone in levigate.present(job, stack, done, read).zones}
    before = {zone.name: zone for zone in job.zones}
    assert now["front and sides"].film == read["front and sides"]
    removed_um = whole.steps[0].zones["top"].removal_um
    assert now["top"].film.mean_um == pytest.approx(before["top"].film.mean_um - removed_um)
    assert now["top"].film.sd_um == pytest.approx(
        math.hypot(before["top"].film.sd_um, job.rules.removed_cv * removed_um)
    )
    assert now["top"].carries.grade == whole.stack.grades[
        [sheet.id for sheet in stack.sheets].index(whole.steps[0].sheet)
    ]


def test_zones_out_of_step_are_worked_where_they_need_it(demo, whole):
    job, stack = demo
    first, *later = whole.steps
    done = [DoneStep(first.sheet), *(DoneStep(step.sheet, zones=["top"]) for step in later)]
    rest = levigate.plan(levigate.present(job, stack, done), stack)
    assert rest.found
    assert [step.zones["top"].worked for step in rest.steps] == [False] * len(rest.steps)
    assert all(step.zones["front and sides"].worked for step in rest.steps)
    assert "pass by" in rest.card()
    assert len(rest.plot().axes) > 0


def test_a_job_in_between_is_written_and_read(demo, whole):
    job, stack = demo
    now = levigate.present(job, stack, [DoneStep(whole.steps[0].sheet)])
    assert levigate.Job.from_dict(json.loads(now.to_json())) == now
    assert pickle.loads(pickle.dumps(now)) == now
    start = now.to_dict()["zones"][0]["start"]
    assert start["scratched_by"] == now.zones[0].carries.grade.label
    assert start["scratch_um"] == whole.steps[0].zones[job.zones[0].name].scratch_um


def test_what_is_not_there_or_not_known_is_refused(demo, whole):
    job, stack = demo
    first, second = (step.sheet for step in whole.steps[:2])
    for done, films, words in (
        ([DoneStep("nothing")], None, "sheet"),
        ([DoneStep(first, zones=["lid"])], None, "zone"),
        ([DoneStep(first, zones=["top", "top"])], None, "repeated"),
        ([DoneStep(first), DoneStep(second), DoneStep(first)], None, "not finer"),
        ([], {"lid": job.zones[0].film}, "zone"),
    ):
        with pytest.raises(levigate.BadInput, match=words):
            levigate.present(job, stack, done, films)
    with pytest.raises(levigate.OutOfRange, match="removal_um"):
        levigate.present(job, stack, [DoneStep(first, removal_um=-1)])
