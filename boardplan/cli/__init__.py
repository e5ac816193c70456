"""From a shell, without a window and without Qt."""
