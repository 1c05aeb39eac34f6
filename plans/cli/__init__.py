"""The command line: the only place that prints."""

from plans.cli.app import app, main

__all__ = ["app", "main"]
