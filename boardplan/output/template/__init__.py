"""The drilling template, full size, on as many sheets as it takes."""
