"""Runs dxf2gcode without a window: run_dxf2gcode.py DRAWING.dxf G-CODE.ngc, settings in the folder that HOME names.

Under Python 3.10 and later Qt takes no float where it wants a whole number; the fonts and scroll bars of its window, which
nobody sees here, are given rounded ones. What it reads and writes is left alone.
"""
import os
import runpy
import sys

os.environ["QT_QPA_PLATFORM"] = "offscreen"
from PyQt5 import QtGui, QtWidgets


def whole(number):
    return int(round(number)) if isinstance(number, float) else number


class Font(QtGui.QFont):
    def __init__(self, *arguments):
        super().__init__(*map(whole, arguments))


QtGui.QFont = Font
set_value = QtWidgets.QScrollBar.setValue
QtWidgets.QScrollBar.setValue = lambda bar, value: set_value(bar, whole(value))
sys.path.insert(0, "/usr/share/dxf2gcode")
sys.argv = ["dxf2gcode", sys.argv[1], "-e", sys.argv[2], "-q"]
runpy.run_path("/usr/bin/dxf2gcode", run_name="__main__")
