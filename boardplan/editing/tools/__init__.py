"""What the pointer does on the canvas, as generators over pointer events."""
