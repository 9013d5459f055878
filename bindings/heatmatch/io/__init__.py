"""Input and output of files, data frames and rows."""
