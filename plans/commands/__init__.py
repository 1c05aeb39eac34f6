"""One command per file; each returns an outcome and prints nothing."""
