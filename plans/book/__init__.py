"""The book of leftovers."""
