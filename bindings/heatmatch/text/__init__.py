"""What results say as text and HTML."""
