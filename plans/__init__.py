"""What the builder prints and reads."""
