"""The fit of many questions at once in numpy, one row a question, one column a draw: the yardstick of `bench.py`.

Recipes of built-in materials on a body known by its class or by class and stated mean, one rate of cooling, one coat
on a wall that stays straight: what the bench asks. `reckon` says the same at length and answers for everything.
"""
