"""Hazard knowledge: data sheets, classes, statements, labels and posters."""
