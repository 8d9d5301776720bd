## Where one only looks.

viewer-no-page = This page does not open
viewer-no-link = This link does not open
viewer-without = Open the program without it
