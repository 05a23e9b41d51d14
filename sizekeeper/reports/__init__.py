"""What leaves the program: tables as text and HTML."""
