"""What comes from files, frames and rows, and goes there."""
