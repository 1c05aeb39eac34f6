"""How a mark is refused."""

from nesting.errors import Fault, InputError


def refuse(where: str, what: str, remedy: str) -> InputError:
    """Return an error with one fault."""
    return InputError([Fault(where=where, what=what, remedy=remedy)])
