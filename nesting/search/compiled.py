"""Compiling the kernels, and keeping what was compiled.

The kernels are plain functions on whole-number arrays that numba turns into machine code. They
make no arrays of their own, so counting who holds which array is left out: handing arrays from
function to function took half of the time with it, and it is what would free an array made inside.
The code is kept beside the module, or, where that folder cannot be written, in the user's cache
folder; where neither can be, it is compiled anew in every process.
"""

from collections.abc import Callable
from typing import Any, TypeVar, cast

import numba

Kernel = TypeVar("Kernel", bound=Callable[..., Any])

_OPTIONS: Any = {"nogil": True, "error_model": "numpy", "no_cfunc_wrapper": True, "_nrt": False}
_INNER: Any = {**_OPTIONS, "no_cpython_wrapper": True}


def compiled(function: Kernel) -> Kernel:
    """Return the compiled form of a kernel; compiling itself waits for the first call.

    The global lock is released while it runs, so that several searches share the cores.
    """
    try:
        kernel: Any = numba.njit(cache=True, **_OPTIONS)(function)
    except RuntimeError:  # no folder for the cache can be written
        kernel = numba.njit(**_OPTIONS)(function)
    return cast("Kernel", kernel)


def inner(function: Kernel) -> Kernel:
    """Return the compiled form of a function that only kernels of its own module call.

    It has no way in from Python and no place in the cache: both would have to be compiled, written
    and looked for, and the code is a part of the kernels that call it anyway.
    """
    kernel: Any = numba.njit(**_INNER)(function)
    return cast("Kernel", kernel)
