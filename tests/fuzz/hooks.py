"""Teaches schemathesis one JSON a line: a request of one line, the answer to it, and where a bad line is refused."""

import json

import schemathesis
from schemathesis.specs.openapi.checks import negative_data_rejection

LINES = "application/x-ndjson"


@schemathesis.serializer(LINES)
def one_line(_context, value):
    return json.dumps(value).encode() + b"\n"


@schemathesis.deserializer(LINES)
def first_answer(_context, response):
    return json.loads(response.content.splitlines()[0])


@schemathesis.check
def bad_line_refused(ctx, response, case):
    """A line that cannot be is refused in its place, and the stream around it is fine: 200."""
    if not case.path.endswith(("/stream", "/verdicts")):
        return None
    lines = response.content.splitlines() if response.status_code == 200 else []
    if lines and "error" in json.loads(lines[0]):
        return None
    return negative_data_rejection(ctx, response, case)
