"""A cabinet design becomes parts; one family per file."""
