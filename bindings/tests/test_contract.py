"""Names that scripts rely on, units in names, and a docstring on everything."""

import inspect
import re
from pathlib import Path

import levigate
import pytest
from levigate import _core

CONTRACT = {
    "LabelReading": "candidates ambiguous note",
    "LabelMeanings": "label ambiguous note bare_number meanings to_dict",
    "LabelMeaning": "grade nearest",
    "Grade": "system label number median_um tolerance_um coarse_limit_um fine_limit_um "
    "fine_percent edition basis log_spread note sources",
    "Equivalent": "grade size_ratio within_tolerance overlap number coarser finer verdict",
    "Contact": "active_per_mm2 mean_depth_um depth_um ra_um rq_um",
    "Contacts": "active_per_mm2 mean_depth_um depth_um ra_um rq_um",
    "Stack": "load from_json from_dict sheets sheet_called to_json to_records __len__ __iter__ __contains__ __getitem__",
    "Zone": "from_dict to_dict __replace__",
    "Film": "from_dict to_dict __replace__",
    "Job": "load from_json from_dict to_json",
    "Finding": "kind severity sheets message",
    "Plan": "found before steps total tradeoff findings cautions why card bench_sheet bench_sheet_html to_dict to_json "
    "to_records plot bench job stack",
    "Totals": "minutes film steps cost",
    "Simulation": "minutes sheets zones steps draws seed to_dict to_json to_records",
    "SimulatedReading": "reading_20_gu reading_60_gu reading_85_gu",
    "SimulatedZone": "film_left_um thinnest_um cut_through over_budget",
    "Together": "found prefer pieces plans paper starves lacks minutes alone_minutes cost alone_cost "
    "draws seed suffices card to_dict to_json",
    "Piece": "job done has_plan minutes alone_minutes sheets alone_sheets",
    "PaperOfAll": "sheet on_hand sheets_used buy alone_sheets_used alone_buy sheets_enough enough_buy",
    "Calibration": "job minutes measurements cautions card to_dict to_json",
    "Measurement": "kind sheet tool zone area_cm2 sanding_minutes removal_um minutes log_sd overcut "
    "minutes_before minutes_after fold_before fold_after gain_per_hour",
    "Step": "sheet label size_um size_ratio gloss_gu minutes sheets_used cost zones",
    "ZoneStep": "removal_um scratch_um minutes gloss_20_gu gloss_85_gu film_left_um cut_through",
    "Block": "pressure_kpa wheel machine",
    "Machine": "pad_mm square orbit_mm rpm free_rpm rated_rpm keep_off_mm speed_m_s top_speed_m_s area_cm2 pressure_kpa",
    "MachineStep": "name speed_m_s rpm orbit_mm feed_m_s keep_off_mm dwell_s rise_k dwell_limit_s still",
    "Sheet": "worn_um coarsest_scratch_um coarsest_paper_um wear_share",
    "Zone": "film levelled below_um defects carries",
    "LocalStep": "zone defect block work",
    "Fault": "code message quantity value unit low high pointer line",
    "Error": "quantity value unit low high pointer line faults",
    "Formula": "function formula basis citation",
    "NamedProfile": "name note also",
    "Entry": "kind at job zone sheet minutes sheets_used direction_deg readings_um width_um ra_um "
    "mark text to_dict to_json from_dict from_json",
    "Journal": "path append read",
    "JournalReading": "entries lines torn from_json",
    "Torn": "line bytes message",
    "Bench": "job stack shop journal done open_mark grades present findings paper_left when_done",
    "WayBack": "found diagnosis legs tries card to_dict to_json to_records",
    "WhenDone": "job done pace step sheets minutes paper why findings draws seed card to_dict to_json",
    "StepUnderWay": "sheet spent_minutes minutes",
    "PaperLeft": "sheet used on_hand needed",
    "Shop": "person rates scratches films jobs minutes_noise scratch_noise load save report",
    "Learned": "shop outliers unmatched lines_before report",
    "Sourced": "value low high basis citation",
    "Buying": "job found why draws seed enough sheets minutes tried offers labels card to_dict to_json",
    "Comparison": "taken best draws seed minutes card to_dict to_json",
    "PairedMinutes": "first second more slower",
    "LearnedChange": "message before step was now reason findings more_minutes learned more_sheets",
    "Why": "message blocked_by smallest_max_ratio largest_min_ratio gaps compound too_deep_um "
    "zone film_short_um paper films",
    "SprayOptions": "gun volume_solids thinner dry_um_per_coat film_cv transfer_efficiency loss_share way_back",
    "SprayedZone": "zone area_cm2 edge_of coats film_um wanted_um depth_um way_back_um chance mix_ml",
    "Spraying": "job coating how wet_um_per_coat zones chance mix_ml why cautions card to_json to_dict",
    "FilmNeeded": "zone film_um needed_um dry_um_per_coat coats on_flat_um",
}
FUNCTIONS = (
    "read_label meanings grade grades convert sizes_um nearest contact levelling_removal_um gloss_gu "
    "surface_speed_m_s pad_speed_m_s dwell_limit_s cut_through check plan evaluate present formulas source "
    "rounds film_of_last_round edge_share edge_film hardness_at band_named bands_of take_down "
    "wheel_pass speed_finding with_diameter compound_named cleaning pieces simulate calibrate plan_many plan_together compare buy jobs jobs_nearly_named "
    "done_steps observe learn profiles profile_called unit_of"
).split()

CLASSES = {
    name: value
    for name, value in vars(_core).items()
    if inspect.isclass(value) and not issubclass(value, Exception)
}
CALLABLES = {name: value for name, value in vars(_core).items() if inspect.isbuiltin(value)}
PROPERTIES = [
    (name, attribute, value)
    for name, owner in CLASSES.items()
    for attribute, value in vars(owner).items()
    if isinstance(value, property)
]

# A number has a unit as suffix, or stands here because it has none.
UNIT_OF = Path(__file__).parents[2] / "lib" / "include" / "levigate" / "unit_of.hpp"
UNITS = re.findall(
    r'\{"(\w+)", "\S+"\}', UNIT_OF.read_text().split(" unit_table[] = {", 1)[1].split("};", 1)[0]
)
UNIT = re.compile(rf"(^|_)({'|'.join(UNITS)})$")
WITHOUT_UNIT = set(
    # shares, ratios and coefficients
    "active_share cut_through cut_through_limit duty floor friction influence load_residual "
    "log_spread log_spread_1 log_spread_2 max_ratio min_ratio overcut overlap packing q ratio "
    "refractive_index removed_cv scratch_quantile share size_ratio smallest_max_ratio "
    "cutting_efficiency short_share largest_min_ratio peel_factor thinner tip_spread volume_solids wear_coefficient wrap film film_low "
    "film_high key "
    "clogged_share heat_share left_share minutes_factor rate_share shrink wear_share "
    "comes_back gone_chance clean_chance probability fold_before fold_after chance film_cv transfer_efficiency loss_share "
    # learned from journals
    "factor log_sd weight observations t lines lines_before "
    # minutes or um, as the observation has it; a position
    "actual predicted entry "
    # counts, grit numbers and money
    "bytes coats code cost count expected in_round line needed number on_hand passes price readings sheets_used spots step "
    "buy alone_buy alone_cost alone_sheets_used enough_buy starves sheets_enough "
    "enough longer pieces sheets tried usual film_used marks passes_left rinse_every_strokes steps strokes_left turns used "
    # of draws; the quantiles of an interval are in the unit of what it is of
    "draws seed threads p10 p50 p90 mean "
    # the unit is in `quantity`, or in the name that was asked for
    "value low high "
    # changes of minutes, and minutes of one
    "minutes_low minutes_high minutes_each "
    # a unit without a short form: J/(m2 K s^0.5)
    "effusivity".split()
)


def signature(function):
    """The first line that says how to call it: of the first form, where there are several."""
    return next(line for line in function.__doc__.splitlines() if " -> " in line)


@pytest.mark.parametrize("name, attributes", CONTRACT.items())
def test_classes_of_the_contract(name, attributes):
    owner = getattr(levigate, name)
    assert [a for a in attributes.split() if not hasattr(owner, a)] == []


@pytest.mark.parametrize("name", FUNCTIONS)
def test_functions_of_the_contract(name):
    assert callable(getattr(levigate, name))


def test_arguments_of_the_contract():
    for name, wanted in {
        "contact": "size_um log_spread tip_spread modulus_mpa pressure_kpa hardness_mpa "
        "flank_deg packing",
        "levelling_removal_um": "peel_um wavelength_mm modulus_mpa pressure_kpa residual_um",
        "gloss_gu": "refractive_index angle_deg rq_um",
        "surface_speed_m_s": "diameter_mm rpm",
        "grade": "text bare",
        "check": "stack rules",
        "evaluate": "job stack sequence",
        "simulate": "job plan draws seed threads progress bands shop",
        "calibrate": "job plan draws seed threads shop",
        "plan_many": "jobs stack rules threads progress",
        "plan_together": "jobs stack shop draws seed threads",
        "learn": "shop job stack entries",
    }.items():
        assert re.findall(r"(\w+): ", signature(CALLABLES[name])) == wanted.split()


def test_all_of_it_is_exported():
    public = {name for name in vars(_core) if not name.startswith("_")} | {"__version__"}
    assert set(levigate.__all__) == public
    assert levigate.__all__ == sorted(levigate.__all__)


def test_every_number_has_its_unit_in_its_name():
    attributes = [
        a for _, a, value in PROPERTIES if re.search(r"-> (float|int)", signature(value.fget))
    ]
    arguments = [
        argument
        for function in [
            *CALLABLES.values(),
            *(m for c in CLASSES.values() for m in vars(c).values() if inspect.isroutine(m)),
        ]
        for argument in re.findall(
            r"(\w+): (?:float|int|typing.Supports|\w+\[float)", function.__doc__ or ""
        )
    ]
    assert len(attributes) > 60 and len(arguments) > 60
    names = set(attributes) | set(arguments)
    assert {n for n in names if not UNIT.search(n) and n not in WITHOUT_UNIT} == set()
    assert WITHOUT_UNIT - names == set(), "listed, but there is no such number"


def test_a_docstring_on_everything():
    bare = [n for n, value in {**CLASSES, **CALLABLES}.items() if len(value.__doc__.strip()) < 15]
    bare += [f"{n}.{a}" for n, a, value in PROPERTIES if not (value.__doc__ or "").strip()]
    for name, owner in CLASSES.items():
        for attribute, value in vars(owner).items():
            if inspect.isroutine(value) and not attribute.startswith("_"):
                if len((getattr(owner, attribute).__doc__ or "").splitlines()) < 3:
                    bare.append(f"{name}.{attribute}")
    assert bare == []


@pytest.mark.parametrize("name", CALLABLES)
def test_a_function_says_first_what_it_does(name):
    lines = CALLABLES[name].__doc__.splitlines()
    forms = [number for number, line in enumerate(lines) if " -> " in line]
    for first in (lines[number + 2] for number in forms):
        assert first and len(first) <= 90


def test_no_name_of_cpp_shows():
    texts = [value.__doc__ for value in CALLABLES.values()]
    texts += [value.fget.__doc__ for *_, value in PROPERTIES]
    texts += [m.__doc__ or "" for c in CLASSES.values() for m in vars(c).values() if callable(m)]
    assert [t for t in texts if "::" in t or "object at 0x" in t] == []
