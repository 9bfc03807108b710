"""Teaches schemathesis one JSON a line: a request of one line, and the answer to it."""

import json

import schemathesis


@schemathesis.serializer("application/x-ndjson")
def one_line(_context, value):
    return json.dumps(value).encode() + b"\n"


@schemathesis.deserializer("application/x-ndjson")
def first_answer(_context, response):
    return json.loads(response.content.splitlines()[0])
