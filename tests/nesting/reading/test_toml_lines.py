import tomllib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.reading.toml_lines import Path, find_lines

TEXT = '''# a job
title = "x"
[job]
  name = "Hall # 1"   # remark
note = """
width = 3
[saw]
"""
[[sheet]]
width = 1220
measured = [
  17.7, # [18]
  17.8,
]
trim = { left = 10, right = 5.5 }  # both
[[sheet]]
"width" = '1'
trim.top = 3
[[cabinet.panel]]
x = 1
[[cabinet.panel]]
x = 2
[cabinet.panel.hole]
y = 3
'''


def quoted(path: Path) -> tuple[int, str]:
    spot = find_lines(TEXT)[path]
    return spot.line, TEXT.split("\n")[spot.line - 1][spot.start : spot.end]


@pytest.mark.parametrize(
    ("path", "line", "text"),
    [
        (("title",), 2, '"x"'),
        (("job",), 3, "[job]"),
        (("job", "name"), 4, '"Hall # 1"'),
        (("sheet", 0, "width"), 10, "1220"),
        (("sheet", 0, "trim"), 15, "{ left = 10, right = 5.5 }"),
        (("sheet", 0, "trim", "left"), 15, "10"),
        (("sheet", 0, "trim", "right"), 15, "5.5"),
        (("sheet", 1), 16, "[[sheet]]"),
        (("sheet", 1, "width"), 17, "'1'"),
        (("sheet", 1, "trim", "top"), 18, "3"),
        (("cabinet", "panel", 0, "x"), 20, "1"),
        (("cabinet", "panel", 1, "x"), 22, "2"),
        (("cabinet", "panel", 1, "hole", "y"), 24, "3"),
    ],
)
def test_a_value_is_found_where_it_stands(path: Path, line: int, text: str) -> None:
    assert quoted(path) == (line, text)


def test_what_stands_inside_a_long_text_is_no_key_and_no_heading() -> None:
    assert ("job", "width") not in find_lines(TEXT)
    assert ("saw",) not in find_lines(TEXT)


def test_every_path_that_is_found_is_one_that_the_file_has() -> None:
    # Reference: the standard library's own reading of the same text.
    whole: Any = tomllib.loads(TEXT)
    for path in find_lines(TEXT):
        value = whole
        for step in path:
            value = value[step]


@pytest.mark.property
@given(st.text(st.sampled_from("[]={}\"'#., \nab1\\"), max_size=200))
def test_no_text_breaks_the_scan(text: str) -> None:
    for spot in find_lines(text).values():
        assert 1 <= spot.line <= text.count("\n") + 1
        assert 0 <= spot.start <= spot.end <= len(text.split("\n")[spot.line - 1])
