"""Published instances, each file with its source, and how to read them."""
