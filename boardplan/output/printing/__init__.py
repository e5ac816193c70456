"""Sheets on paper at true size: sizes of paper, tiles, lettering, the PDF, what a printer is out."""
