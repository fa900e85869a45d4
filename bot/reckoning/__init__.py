"""The sugarer's arithmetic: functions of plain numbers, with no clock and no store.

Every function takes and returns numbers whose unit stands in the name, raises ValueError with
one clear sentence on a value that cannot be, and names its source. What is only a rule of
thumb says so in its docstring.
"""
