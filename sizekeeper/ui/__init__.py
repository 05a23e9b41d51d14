"""The Qt window. The only package that imports Qt."""
