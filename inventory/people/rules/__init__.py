"""What is due, what may not be kept, and what a first day is told: values in, values out."""
