"""What a plan says, as plain data: one section per file."""
