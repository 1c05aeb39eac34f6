"""What to cut, from which sheet, in which order."""
