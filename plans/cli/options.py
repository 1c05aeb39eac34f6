"""Arguments and options that several commands share."""

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer


class PaperName(StrEnum):
    """Papers that the pages are made for."""

    A4 = "A4"
    LETTER = "Letter"


# Whether a file can be read is for the command to say, in the words of every other fault.
JobFile = Annotated[
    Path, typer.Argument(metavar="JOB", readable=False, help="The job file (TOML).")
]
PlanFile = Annotated[
    Path, typer.Argument(metavar="PLAN", readable=False, help="A plan file (NAME.plan.json).")
]
Json = Annotated[bool, typer.Option("--json", help="Print the result as JSON.")]
Quiet = Annotated[bool, typer.Option("--quiet", help="Print nothing but the result and errors.")]
Debug = Annotated[bool, typer.Option("--debug", help="Show where in the code an error arose.")]
OutFolder = Annotated[
    Path | None, typer.Option(help="Folder to write into. Default: beside the job file.")
]
PlanFolder = Annotated[
    Path | None, typer.Option(help="Folder of the plan file. Default: beside the job file.")
]
Paper = Annotated[PaperName, typer.Option(help="Paper to print on.")]
Seed = Annotated[int, typer.Option(min=0, help="Another seed, another search.")]
Effort = Annotated[
    int | None, typer.Option(min=0, help="Iterations of each search. Decides the plan.")
]
Seconds = Annotated[float | None, typer.Option(min=0.0, help="Stop searching after this long.")]
Svg = Annotated[bool, typer.Option("--svg", help="Also write each page as SVG.")]
Book = Annotated[
    bool, typer.Option("--book", help="Use the book of leftovers, and reserve what is used.")
]
