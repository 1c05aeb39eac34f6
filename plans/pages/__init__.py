"""From a plan to pages: lines, rectangles, hatches and texts in millimetres on paper."""
