"""The air of a task."""
