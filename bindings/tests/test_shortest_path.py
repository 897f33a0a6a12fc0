"""The search against networkx, on a graph built here from the numeric functions alone."""


import levigate
import networkx
import numpy as np

LABELS = [
    *("P320", "P400", "P600", "P800", "P1000", "P1200", "P1500", "P2000", "P2500"),
    *("CAMI 320", "CAMI 400", "CAMI 600", "JIS #600", "JIS #800", "JIS #1200", "JIS #2000"),
    *("30 um", "15 um", "9 um", "5 um"),
]
START, END = "start", "end"
WEAR = 0.02  # as measured on the coating of these jobs


def random_problem(random):
    """A job on a solid, which has no film to run out of, and a stack without limit on paper."""
    count = int(random.integers(1, 12))
    sheets = []
    for index, label in enumerate(random.choice(LABELS, count, replace=False)):
        sheet = dict(
            id=f"s{index}",
            label=str(label),
            backing=str(random.choice(["latex paper", "film", "cloth", "foam-backed"])),
            width_mm=230,
            height_mm=280,
        )
        if random.random() < 0.15:
            sheet["block"] = "foam pad"
        sheets.append(sheet)
    zones = [
        dict(
            name=f"z{index}",
            area_cm2=float(random.uniform(20, 3000)),
            block=str(random.choice(["hard block", "cork block", "rubber block"])),
            peel_microns=float(random.uniform(0, 60)),
            peel_wavelength_mm=float(random.uniform(1, 8)),
            levelled=bool(random.random() < 0.8),
        )
        for index in range(random.integers(1, 4))
    ]
    job = dict(
        name="random",
        coating=dict(
            kind="solid",
            hardness_mpa=float(random.uniform(80, 400)),
            wear_coefficient=WEAR,
            refractive_index=1.5,
        ),
        zones=zones,
        target={"size_um": float(random.uniform(5, 30))},
        rules=dict(
            max_ratio=float(random.uniform(1.3, 3)),
            change_minutes=float(random.uniform(0, 6)),
            overcut=float(random.uniform(1, 3)),
        ),
        prefer="steps",
    )
    if random.random() < 0.4:
        job["start"] = {"scratched_by": str(random.choice(["P240", "P320", "P400", "CAMI 400"]))}
    return levigate.Job.from_dict(job), levigate.Stack(sheets)


def scratch_um(job, grade, backing, block):
    contact = levigate.contact(
        size_um=grade.median_um,
        log_spread=grade.log_spread,
        tip_spread=backing.tip_spread,
        modulus_mpa=backing.modulus_mpa,
        pressure_kpa=block.pressure_kpa,
        hardness_mpa=job.coating.hardness_mpa,
    )
    return contact.depth_um(job.rules.scratch_quantile)


def milliseconds(job, sheet, grade, removal_um):
    """Time of a step that removes removal_um(zone, tool) from each zone."""
    minutes = job.rules.change_minutes
    for zone in job.zones:
        tool = sheet.block or zone.block
        rate_um_per_m = levigate.removal_rate_um_per_m(
            wear_coefficient=WEAR,
            size_um=grade.median_um,
            pressure_kpa=tool.pressure_kpa,
            hardness_mpa=job.coating.hardness_mpa,
        ) * levigate.clogging_share(
            clean_every_m=sheet.backing.clean_every_m,
            fade_m=sheet.backing.fade_m,
            floor=sheet.backing.floor,
        )
        travel_m = removal_um(zone, tool) / rate_um_per_m * zone.area_cm2 / tool.area_cm2
        minutes += travel_m / tool.speed_m_s / tool.duty / 60
    return round(minutes * 60_000)


def levelling_um(job, zone, tool):
    if not zone.levelled:
        return 0.0
    return levigate.levelling_removal_um(
        peel_um=zone.peel_um,
        wavelength_mm=zone.peel_wavelength_mm,
        modulus_mpa=tool.modulus_mpa,
        pressure_kpa=tool.pressure_kpa,
        residual_um=job.rules.residual_peel_um,
    )


def graph_of(job, stack, latex):
    """Nodes are (id, whether it came first): the first leaves no scratch where it passed by."""
    rules, sprayed = job.rules, job.scratched_by is None
    keeps_off_edges = sprayed and not all(zone.levelled for zone in job.zones)
    sheets = list(zip(stack.sheets, stack.grades))
    graph = networkx.DiGraph()
    graph.add_nodes_from([START, END])

    def may_follow(coarse_um, fine_um):
        return rules.min_ratio <= coarse_um / fine_um <= rules.max_ratio

    def first_removal_um(zone, tool):
        if sprayed:
            return levelling_um(job, zone, tool)
        return rules.overcut * scratch_um(job, job.scratched_by, latex, zone.block)

    def add_steps_after(sheet, grade, first):
        if grade.median_um <= job.target.size_um:  # the first that meets the target is the last
            graph.add_edge((sheet.id, first), END, weight=0)
            if not (first and keeps_off_edges):
                return

        def removal_um(zone, tool):
            if first and sprayed and not zone.levelled:
                return 0.0
            return rules.overcut * scratch_um(job, grade, sheet.backing, sheet.block or zone.block)

        for finer, fine_grade in sheets:
            if may_follow(grade.median_um, fine_grade.median_um):
                weight = milliseconds(job, finer, fine_grade, removal_um)
                graph.add_edge((sheet.id, first), (finer.id, False), weight=weight)

    for sheet, grade in sheets:
        if sprayed or may_follow(job.scratched_by.median_um, grade.median_um):
            weight = milliseconds(job, sheet, grade, first_removal_um)
            graph.add_edge(START, (sheet.id, True), weight=weight)
        for first in (True, False):
            add_steps_after(sheet, grade, first)
    # The levelling step alone leaves edges as sprayed: it is a plan only where there is no other.
    alone = [((sheet.id, True), END) for sheet in stack.sheets if graph.has_edge((sheet.id, True), END)]
    others = graph.copy()
    others.remove_edges_from(alone)
    return others if keeps_off_edges and networkx.has_path(others, START, END) else graph


def test_300_random_jobs(sheet):
    latex = levigate.Stack([sheet("P400")]).sheets[0].backing
    random = np.random.default_rng(7)
    found = 0
    for _ in range(300):
        job, stack = random_problem(random)
        plan = levigate.plan(job, stack)
        graph = graph_of(job, stack, latex)
        assert plan.found == networkx.has_path(graph, START, END)
        if not plan.found:
            continue
        found += 1
        path = [START, *((s.sheet, i == 0) for i, s in enumerate(plan.steps)), END]
        assert len(path) == len(networkx.shortest_path(graph, START, END))
        assert round(plan.total.minutes * 60_000) == networkx.path_weight(graph, path, "weight")
    assert 200 <= found < 300, "both outcomes should occur"
