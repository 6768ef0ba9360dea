"""Cutting boards and sheets from stock: whole numbers in, layouts that a saw can make and a proven bound out."""
