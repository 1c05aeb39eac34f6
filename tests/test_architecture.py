"""The rules of the project that a program can check."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PACKAGES = ("nesting", "plans")
SOURCES = sorted(path for package in PACKAGES for path in (ROOT / package).rglob("*.py"))
LIBRARIES_LOADED_LATE = ("numba", "numpy", "reportlab", "highspy", "shapely", "python_calamine")


def named(path: Path) -> str:
    return str(path.relative_to(ROOT))


def test_layers_hold() -> None:
    run = subprocess.run(
        [Path(sys.executable).parent / "lint-imports", "--no-cache"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == 0, run.stdout


@pytest.mark.parametrize("tool", [["check"], ["format", "--check"]], ids=["rules", "format"])
def test_the_code_is_clean(tool: list[str]) -> None:
    run = subprocess.run(
        [Path(sys.executable).parent / "ruff", *tool, "--no-cache", "."],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == 0, run.stdout


@pytest.mark.slow
def test_types_hold() -> None:
    run = subprocess.run(
        [sys.executable, "-m", "mypy"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stdout


@pytest.mark.parametrize("path", SOURCES, ids=named)
def test_public_names_have_docstrings(path: Path) -> None:
    tree = ast.parse(path.read_text("utf-8"))
    assert ast.get_docstring(tree), f"{named(path)}: the module has no docstring"
    missing = [
        node.name
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef | ast.ClassDef)
        and not node.name.startswith("_")
        and not ast.get_docstring(node)
        and not _is_nested(tree, node)
    ]
    assert not missing, f"{named(path)}: no docstring on {', '.join(missing)}"


def _is_nested(tree: ast.Module, wanted: ast.AST) -> bool:
    """Return whether a name lies inside a function or a private class, where nobody calls it."""
    return any(
        wanted in ast.walk(node)
        for node in ast.walk(tree)
        if node is not wanted
        and (
            isinstance(node, ast.FunctionDef)
            or (isinstance(node, ast.ClassDef) and node.name.startswith("_"))
        )
    )


@pytest.mark.parametrize("path", SOURCES, ids=named)
def test_imports_stand_at_the_top(path: Path) -> None:
    if path.is_relative_to(ROOT / "plans" / "commands"):
        pytest.skip("commands load heavy libraries late, so that --help is instant")
    tree = ast.parse(path.read_text("utf-8"))
    inside = [
        node.lineno
        for function in ast.walk(tree)
        if isinstance(function, ast.FunctionDef)
        for node in ast.walk(function)
        if isinstance(node, ast.Import | ast.ImportFrom)
    ]
    assert not inside, f"{named(path)}: imports inside functions at lines {inside}"


@pytest.mark.parametrize("path", SOURCES, ids=named)
def test_only_the_command_line_prints(path: Path) -> None:
    tree = ast.parse(path.read_text("utf-8"))
    prints = [
        node.lineno
        for node in ast.walk(tree)
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id == "print"
    ]
    assert not prints, f"{named(path)}: prints at lines {prints}"


def test_help_loads_no_heavy_library() -> None:
    code = (
        "import sys, plans.cli; "
        f"print([name for name in {LIBRARIES_LOADED_LATE!r} if name in sys.modules])"
    )
    run = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert run.stdout.strip() == "[]"
