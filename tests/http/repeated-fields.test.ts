/** A field that stands twice in one object is refused: JSON.parse would keep the last and lose the first. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fieldsNamed, repeatedFields } from "../../api/http/repeated-fields.ts";
import { post, problemOf, stream, THAW_TEXT } from "./support.ts";

const pointers = (text: string, most = 50) => repeatedFields(text, most).map(({ pointer }) => pointer);

describe("a field given twice", () => {
  it("is refused where it stands", async () => {
    const problem = await problemOf(await post("/v1/fit", THAW_TEXT.replace('"parts":42', '"parts":42,"parts":4')));
    expect(problem).toMatchObject({ status: 422, type: expect.stringMatching(/\/impossible-input$/) });
    expect(problem.issues).toEqual([
      { pointer: "/glaze/recipe/0/parts", message: "`parts` is given twice. Keep one." },
    ]);
  });

  it("is told beside whatever else is wrong", async () => {
    const text = THAW_TEXT.replace('"parts":42', '"parts":42,"parts":-4');
    const { issues } = await problemOf(await post("/v1/fit", text));
    expect(issues?.map(({ message }) => message)).toEqual([
      "`parts` is given twice. Keep one.",
      "`parts` is -4. It must be 0 or more.",
    ]);
  });

  it("is refused in its line alone, by its tag", async () => {
    const twice = THAW_TEXT.replace("{", '{"id":"a","seed":1,"seed":1,');
    const { lines } = await stream("/v1/fit/stream", [twice, THAW_TEXT]);
    expect(lines).toMatchObject([
      { line: 1, id: "a", error: { status: 422, issues: [{ pointer: "/seed" }] } },
      { line: 2, result: {} },
    ]);
  });

  it.each([
    ['{"a":1,"a":2}', ["/a"]],
    ['{"a":1,"b":{"a":1},"c":[{"a":1},{"a":2}]}', []],
    ['{"a":[0,{},{"b":1,\n"b" : 2}],"c":1}', ["/a/2/b"]],
    // One name in two spellings, a name of quotes and backslashes, and texts that look like fields.
    ['{"parts":1,"p\\u0061rts":2}', ["/parts"]],
    ['{"\\\\":1,"\\"\\\\":2,"\\\\":3}', ["/\\"]],
    ['{"a":"b\\":1,\\"a\\":","b":"{\\"a\\":1}\\\\","c":":"}', []],
    // Each is told once, in the order in which it is met again.
    ['{"a":{"b":1,"b":2,"b":3},"a":{"b":4,"b":5}}', ["/a/b", "/a"]],
    ["[]", []],
    ['"a:b"', []],
  ])("%s", (text, found) => {
    expect(pointers(text)).toEqual(found);
    let kept = 0;
    JSON.parse(text, function (this: unknown, key, value) {
      if (!Array.isArray(this) && key !== "") kept += 1;
      return value;
    });
    expect(fieldsNamed(text) > kept).toBe(found.length > 0);
  });

  it("is looked for no longer than issues are told", () => {
    const text = `{${Array.from({ length: 99 }, (_, n) => `"f${n}":1,"f${n}":2`).join()}}`;
    expect(pointers(text, 3)).toEqual(["/f0", "/f1", "/f2"]);
  });

  it("is never found in what JSON.stringify wrote", () => {
    const count = (value: unknown): number =>
      typeof value !== "object" || value === null
        ? 0
        : Object.values(value).reduce(
            (sum, inner) => sum + count(inner),
            Array.isArray(value) ? 0 : Object.keys(value).length,
          );
    fc.assert(
      fc.property(fc.jsonValue(), fc.integer({ min: 0, max: 2 }), (value, indent) => {
        const text = JSON.stringify(value, null, indent);
        expect(fieldsNamed(text)).toBe(count(JSON.parse(text)));
        expect(repeatedFields(text, 50)).toEqual([]);
      }),
    );
  });
});
