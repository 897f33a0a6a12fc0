"""Settings of Sphinx for the Python pages; build.py calls it."""

project = "levigate"
extensions: list[str] = []
html_theme = "alabaster"
html_theme_options = {
    "description": "Grit progressions for clear coats",
    "extra_nav_links": {"C++, decisions, sources": "../index.html"},
    "page_width": "1140px",
    "sidebar_width": "230px",
    "font_family": "sans-serif",
    "head_font_family": "sans-serif",
    "font_size": "15px",
    "show_powered_by": False,
}
html_copy_source = False
html_show_copyright = False
add_module_names = False
toc_object_entries_show_parents = "hide"
python_maximum_signature_line_length = 90
# Each type in a signature is one of ours, or one of these.
nitpicky = True
nitpick_ignore_regex = [
    ("py:.*", "ArrayLike|Figure|Any|Literal|Callable|Iterable|Mapping|Sequence|PathLike|ValueError|Exception"),
    ("py:.*", "(npt\\.)?ndarray|Ellipsis|int|float|str|bool|None|list|tuple|dict|object|bytes|\\.\\.\\."),
]
