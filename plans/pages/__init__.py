"""From a plan to pages: lines, rectangles, hatches and texts in millimetres on paper.

In this package a bare number is a float of millimetres on paper, x to the right and y downwards
from the top left corner of the page. Lengths on a sheet stay nanometres until the drawing is
scaled (`plans.pages.sheet_scale`).
"""
