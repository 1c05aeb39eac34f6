"""Reading a plan file, strictly: what cannot be rehearsed is refused."""

import json
from pathlib import Path
from typing import Any

from nesting.errors import Fault, InputError
from plans.rehearsal.document import stranger


def read_plan(path: Path) -> dict[str, Any]:
    """Return the content of a plan file.

    Only its kind and version are looked at; `rehearse` judges the rest.

    Raises:
        InputError: There is no such file, it cannot be read, or it is no plan of this version.
    """
    try:
        document = json.loads(path.read_bytes().decode("utf-8-sig"))
    except FileNotFoundError:
        raise _refused(path, "there is no such file", "Check its name and folder.") from None
    except IsADirectoryError:
        raise _refused(path, "it is a folder", "Name a plan file.") from None
    except OSError as error:
        reason = error.strerror or str(error)
        raise _refused(path, f"it cannot be read ({reason})", "Check the file.") from error
    except UnicodeDecodeError:
        raise _refused(path, "it is not a text file in UTF-8", "Name a plan file.") from None
    except (ValueError, RecursionError):
        raise _refused(
            path,
            "it is not a whole JSON file",
            "Name a plan file, or make the plan again with 'setout plan'.",
        ) from None
    fault = stranger(document)
    if fault is not None:
        raise _refused(path, fault.what, fault.remedy)
    assert isinstance(document, dict)
    return document


def _refused(path: Path, what: str, remedy: str) -> InputError:
    return InputError([Fault(where=str(path), what=what, remedy=remedy)])
