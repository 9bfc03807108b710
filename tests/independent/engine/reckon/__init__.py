"""The engine's figures worked out a second time, from the documented formulas alone. See ../README.md."""
