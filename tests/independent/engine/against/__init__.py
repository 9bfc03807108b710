"""The engine's answers against ours, one module a part of the engine."""
