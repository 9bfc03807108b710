import { describe, expect, it } from "vitest";
import { THAW_ON_RED_STONEWARE as THAW } from "../../api/schemas/larch-lane.ts";
import { app, faults, get, post, problemOf, THAW_TEXT } from "./support.ts";

const glaze = (lines: unknown[]) => ({ ...THAW, glaze: { recipe: lines } });

describe("400: not JSON", () => {
  it.each([
    ["", "The request has no content. Send a JSON object."],
    [
      '{"parts": 4,5}',
      'Line 1, column 13: I wanted a field name in double quotes, and found "5}". A decimal comma? Write a point.',
    ],
    [
      '{"a": 1,\n "b": 2,}',
      'Line 2, column 9: I wanted a field name in double quotes, and found "}". Take out the comma before it.',
    ],
    [
      '{"a": NaN}',
      'Line 1, column 7: I wanted a value, and found "NaN}". A number must be a number: leave the field out if you don\'t know it.',
    ],
    [
      "{'a': 1}",
      "Line 1, column 2: I wanted a field name in double quotes, and found \"'a': 1}\". JSON takes double quotes.",
    ],
    ['{"a": 1 // no\n}', 'Line 1, column 9: I wanted a comma or }, and found "// no". JSON has no comments.'],
    [
      '{"peakC": 04}',
      'Line 1, column 12: I wanted a comma or }, and found "4}". No number begins with 0. For a cone, give the peak in °C.',
    ],
    ['{"a": 10 4}', 'Line 1, column 10: I wanted a comma or }, and found "4}".'],
    ['{"a" 1}', 'Line 1, column 6: I wanted a colon, and found "1}".'],
    ['{"a": [1, 2', "Line 1, column 12: I wanted a comma or ], and the text ended."],
    ['{"a": 1} extra', 'Line 1, column 10: I wanted the end, and found "extra".'],
  ])("%j", async (text, detail) => {
    const problem = await problemOf(await post("/v1/fit", text));
    expect(problem).toMatchObject({ status: 400, detail, type: "https://ringtrue.example/problems/malformed-json" });
  });

  it("is refused without being echoed at length, however deep or long", async () => {
    for (const text of ["[".repeat(100_000), `{"${"x".repeat(100_000)}`, '{"a":'.repeat(20_000)]) {
      const problem = await problemOf(await post("/v1/fit", text));
      expect(problem.status).toBe(400);
      expect(JSON.stringify(problem).length).toBeLessThan(600);
    }
  });
});

describe("404", () => {
  it.each([
    ["/v1/fits", "/v1/fit"],
    ["/fit", "/v1/fit"],
    ["/v1/material", "/v1/materials"],
    ["/v2/fit", "/v1/fit"],
    ["/openapi.jsn", "/openapi.json"],
    ["/v1/materials/", "/v1/materials"],
    ["/v1/materials/whiting/", "/v1/materials/whiting"],
  ])("%s suggests %s", async (path, suggestion) => {
    const problem = await problemOf(await get(path));
    expect(problem).toMatchObject({ status: 404, suggestion });
    expect(problem.detail).toBe(`There is nothing at this address. Did you mean ${suggestion}?`);
  });

  it("suggests nothing where nothing is near, and says no long address back", async () => {
    expect(await problemOf(await get(`/v1/materials/${"a".repeat(200)}/`))).not.toHaveProperty("suggestion");
    expect(await problemOf(await get("/wp-admin/setup.php"))).not.toHaveProperty("suggestion");
  });
});

describe("405", () => {
  it.each([
    ["GET", "/v1/fit", "OPTIONS, POST"],
    ["DELETE", "/v1/fit/stream", "OPTIONS, POST"],
    ["POST", "/v1/materials", "GET, HEAD, OPTIONS"],
    ["PUT", "/v1/materials/whiting", "GET, HEAD, OPTIONS"],
    ["PATCH", "/health", "GET, HEAD, OPTIONS"],
  ])("%s %s says Allow: %s", async (method, path, allow) => {
    const response = await app.request(path, { method });
    expect(response.headers.get("allow")).toBe(allow);
    expect((await problemOf(response)).status).toBe(405);
  });

  it("HEAD answers where GET does, without content", async () => {
    const response = await app.request("/v1/bodies", { method: "HEAD" });
    expect([response.status, await response.text()]).toEqual([200, ""]);
  });
});

describe("406", () => {
  it.each([
    ["/v1/fit", "image/png"],
    ["/v1/fit", "application/json;q=0"],
    ["/v1/fit/stream", "application/json"],
  ])("POST %s as %s", async (path, accept) => {
    expect((await problemOf(await post(path, THAW_TEXT, { accept }))).status).toBe(406);
  });

  // RFC 9110, 5.6.1: empty members of a list are passed over.
  it.each(["*/*", "application/*", "text/html, application/json;q=0.2", "text/html,*/*;q=0.1", "", ",,,", " , */* ,"])(
    "%s is fine",
    async (accept) => {
      expect((await post("/v1/fit", THAW_TEXT, { accept })).status).toBe(200);
    },
  );

  it("pages are HTML only", async () => {
    expect((await problemOf(await get("/", { accept: "application/json" }))).status).toBe(406);
  });
});

describe("413", () => {
  const large = JSON.stringify({ ...THAW, note: "x".repeat(256 * 1024) });

  it("says the limit, with or without a stated length", async () => {
    for (const headers of [{}, { "content-length": String(large.length) }]) {
      const problem = await problemOf(await post("/v1/fit", large, headers as Record<string, string>));
      expect(problem).toMatchObject({ status: 413, issues: [{ pointer: "", allowed: [262144] }] });
      expect(problem.detail).toContain("256 kB");
    }
  });

  it("stops reading a body that never ends", async () => {
    let sent = 0;
    const body = new ReadableStream({
      pull(controller) {
        sent += 16384;
        controller.enqueue(new Uint8Array(16384).fill(32));
      },
    });
    const headers = { "content-type": "application/json" };
    const response = await app.request("/v1/fit", { method: "POST", body, headers, duplex: "half" } as RequestInit);
    expect((await problemOf(response)).status).toBe(413);
    expect(sent).toBeLessThan(512 * 1024);
  });
});

describe("415", () => {
  it.each([
    ["/v1/fit", "text/plain", "application/json"],
    ["/v1/fit", "application/json; charset=latin1", "application/json"],
    ["/v1/fit/stream", "application/json", "application/x-ndjson"],
  ])("POST %s as %s", async (path, type, wanted) => {
    const response = await post(path, THAW_TEXT, { "content-type": type });
    expect(response.headers.get("accept")).toBe(wanted);
    expect((await problemOf(response)).status).toBe(415);
  });

  it("says so when the request says nothing", async () => {
    const body = new TextEncoder().encode(THAW_TEXT);
    const problem = await problemOf(await app.request("/v1/fit", { method: "POST", body }));
    expect(problem).toMatchObject({
      status: 415,
      detail: "The request does not say what it is. Set content-type: application/json.",
    });
  });

  it.each([
    ["/v1/fit", "application/json", "gzip", "gzip"],
    ["/v1/fit/verdicts", "application/x-ndjson", "x-gzip", "gzip"],
    ["/v1/fit", "application/json", "identity, BR", "br"],
  ])("POST %s as %s packed with %s", async (path, type, coding, named) => {
    const response = await post(path, THAW_TEXT, { "content-type": type, "content-encoding": coding });
    // RFC 9110, 12.5.3: a refused coding is answered with those that would do.
    expect(response.headers.get("accept-encoding")).toBe("identity");
    const { status, detail } = await problemOf(response);
    expect([status, detail]).toEqual([
      415,
      `This is packed with ${named}, which I do not unpack. Send it plain, without content-encoding.`,
    ]);
  });

  it("takes a content-encoding that packs nothing", async () => {
    for (const coding of ["identity", "utf-8", ""]) {
      expect((await post("/v1/fit", THAW_TEXT, { "content-encoding": coding })).status).toBe(200);
    }
  });

  it("takes the usual spellings", async () => {
    for (const type of ["application/json; charset=utf-8", "Application/JSON;charset=UTF-8"]) {
      expect((await post("/v1/fit", THAW_TEXT, { "content-type": type })).status).toBe(200);
    }
  });
});

describe("422: all at once", () => {
  it("tells names that nobody knows beside what cannot be read", async () => {
    const question = {
      glaze: { recipe: [{ material: "whitting", parts: "4O" }, { material: "silica", parts: 20 }, { material: "" }] },
      body: { class: "Red Stoneware" },
      firing: { peakC: 2264 },
    };
    const { issues = [] } = await problemOf(await post("/v1/fit", question));
    expect(issues.map(({ pointer, suggestion }) => [pointer, suggestion])).toEqual([
      ["/glaze/recipe/0/parts", undefined],
      ["/glaze/recipe/2/material", undefined],
      ["/glaze/recipe/2/parts", undefined],
      ["/firing/peakC", undefined],
      ["/glaze/recipe/0/material", "whiting"],
      ["/body/class", "red-stoneware"],
    ]);
  });

  it("says the same of a name as where nothing else is amiss", async () => {
    const named = { ...THAW, body: { class: "red-stonware" } };
    const [alone] = (await problemOf(await post("/v1/fit", named))).issues!;
    const { issues } = await problemOf(await post("/v1/fit", { ...named, seed: -1 }));
    expect(issues?.[1]).toEqual(alone);
  });

  it("leaves alone what stands in a field that nobody knows", async () => {
    const problem = await problemOf(
      await post("/v1/fit", { ...THAW, kiln: { class: "small" }, ware: { class: "cup" } }),
    );
    expect(problem.issues?.map(({ pointer }) => pointer).sort()).toEqual(["/kiln", "/ware/class"]);
  });

  it("stops at fifty", async () => {
    const recipe = Array.from({ length: 80 }, (_, n) => ({ material: `mud ${n}`, parts: n === 0 ? -1 : 1 }));
    expect((await problemOf(await post("/v1/fit", { ...THAW, glaze: { recipe } }))).issues).toHaveLength(50);
  });
});

describe("422: a field by another name", () => {
  const asked = async (question: unknown) => (await problemOf(await post("/v1/fit", question))).issues ?? [];

  it.each<[string, string, object?]>([
    // Written otherwise
    ["/firing/peak_c", "peakC"],
    ["/firing/PeakC", "peakC"],
    ["/firing/PEAK-C", "peakC"],
    ["/firing/cooling_c_per_hour", "coolingCPerHour"],
    ["/ware/wall_mm", "wallMm"],
    // Without its unit, or with another
    ["/firing/peak", "peakC"],
    ["/ware/wall", "wallMm"],
    ["/ware/wall_in", "wallMm"],
    ["/ware/edgeRadius", "edgeRadiusMm"],
    ["/glaze/thickness", "thicknessMm", { recipe: [{ material: "silica", parts: 20 }] }],
    ["/body/Youngs", "youngsGPa", { class: "red-stoneware" }],
    // In the words of the trade
    ["/firing/temperature", "peakC"],
    ["/firing/temp_f", "peakC"],
    ["/firing/coolingRate", "coolingCPerHour"],
    ["/firing/cooling_rate", "coolingCPerHour"],
    ["/ware/thickness", "wallMm"],
    ["/glaze/ingredients", "recipe"],
    ["/glaze/coe", "expansion"],
    ["/body/type", "class"],
    ["/body/coe", "expansion", { class: "red-stoneware" }],
  ])("%s means %s", async (pointer, suggestion, beside = {}) => {
    const [part, field] = pointer.slice(1).split("/") as [string, string];
    const issues = await asked({ ...THAW, [part]: { ...beside, [field]: 6 } });
    expect(issues).toMatchObject([
      { pointer, suggestion, message: `I don't know the field \`${field}\`. Did you mean \`${suggestion}\`?` },
    ]);
  });

  it.each([
    ["amount", "parts", { material: "silica" }],
    ["percent", "parts", { material: "silica" }],
    ["Weight", "parts", { material: "silica" }],
    ["ingredient", "material", { parts: 20 }],
  ])("%s in a line means %s", async (field, suggestion, beside) => {
    const issues = await asked(glaze([{ ...beside, [field]: 20 }]));
    expect(issues.find(({ pointer }) => pointer === `/glaze/recipe/0/${field}`)).toMatchObject({ suggestion });
  });

  it("a line by its name may mean a material", async () => {
    expect(await asked(glaze([{ name: "silica", parts: 20 }]))).toEqual([
      {
        pointer: "/glaze/recipe/0",
        message:
          "Item 1 of `recipe` needs one of `material`, `analysis`, `formula`. Did you mean `material` by `name`?",
        allowed: ["material", "analysis", "formula"],
        suggestion: "material",
      },
    ]);
  });

  it("no trade word means a field that stands beside it", async () => {
    const question = glaze([{ material: "silica", name: "fine silica", parts: 20 }]);
    const issues = await asked(question);
    expect(issues).toMatchObject([
      { pointer: "/glaze/recipe/0/name", message: expect.stringContaining("Here I know `material` or `parts`.") },
    ]);
    expect(issues[0]).not.toHaveProperty("suggestion");
  });

  it.each([
    // The middle of the printed tables, to 10 °C: tests/http/parts.test.ts.
    ["6", " Cone 6 bends near 1220 °C; cones differ by maker and heating rate."],
    [6, " Cone 6 bends near 1220 °C, cone 06 near 1000 °C; cones differ by maker and heating rate."],
    ["six", " Cones differ by maker and heating rate."],
  ])("cone %j is told with where it bends", async (cone, said) => {
    expect(await asked({ ...THAW, firing: { cone } })).toMatchObject([
      {
        pointer: "/firing/cone",
        suggestion: "peakC",
        message: `I don't know the field \`cone\`. Give the peak in °C as \`peakC\`.${said}`,
      },
    ]);
  });

  it("a name as long as a hostile one is told, and means nothing", async () => {
    const key = `${"wall_".repeat(20_000)}mm`;
    const issues = await asked({ ...THAW, ware: { [key]: 6 } });
    expect(issues[0]).not.toHaveProperty("suggestion");
    expect(JSON.stringify(issues).length).toBeLessThan(600);
  });
});

describe("422: what cannot be", () => {
  it.each<[string, unknown, string, string | RegExp]>([
    ["not an object", null, "", "The request is null. It must be an object in braces."],
    ["a list", [], "", "The request is a list. It must be an object in braces."],
    [
      "no body",
      { glaze: THAW.glaze },
      "/body",
      "`body` is missing: a fired clay body: by class, stated expansion, dilatometer curve or phases.",
    ],
    [
      "an unknown field",
      { ...THAW, fireing: {} },
      "/fireing",
      "I don't know the field `fireing`. Did you mean `firing`?",
    ],
    [
      "a misspelt way",
      { ...THAW, glaze: { recipie: [] } },
      "/glaze/recipie",
      "I don't know the field `recipie`. Did you mean `recipe`?",
    ],
    [
      "no way at all",
      { ...THAW, glaze: {} },
      "/glaze",
      "`glaze` needs one of `recipe`, `oxides`, `expansion`, `layers`.",
    ],
    [
      "two ways",
      { ...THAW, glaze: { recipe: [], oxides: {} } },
      "/glaze",
      "`recipe` and `oxides` are two ways of saying one thing. Keep one of them.",
    ],
    [
      "negative parts",
      glaze([{ material: "silica", parts: -3 }]),
      "/glaze/recipe/0/parts",
      "`parts` is -3. It must be 0 or more.",
    ],
    [
      "parts in quotes",
      glaze([{ material: "silica", parts: "4,5" }]),
      "/glaze/recipe/0/parts",
      '`parts` is "4,5", a text. Write the number 4.5, without quotes.',
    ],
    [
      "no parts",
      glaze([{ material: "silica" }]),
      "/glaze/recipe/0/parts",
      "`parts` is missing: parts by weight; a recipe need not total 100 [-].",
    ],
    [
      "two materials in a line",
      glaze([{ material: "silica", formula: "SiO2", parts: 1 }]),
      "/glaze/recipe/0",
      "`material` and `formula` are two ways of saying one thing. Keep one of them.",
    ],
    [
      "an unknown material",
      glaze([{ material: "whitting", parts: 1 }]),
      "/glaze/recipe/0/material",
      /Did you mean whiting\?/,
    ],
    // With a class beside it the validator looks at the class alone, and must not call the expansion unknown.
    [
      "a range from hot to cold beside a class",
      { ...THAW, body: { class: "red-stoneware", expansion: { value: 5.6, rangeC: [600, 20] } } },
      "/body/expansion/rangeC",
      /write the lower temperature first/,
    ],
    [
      "a word for an expansion beside a class",
      { ...THAW, body: { class: "red-stoneware", expansion: { value: "six" } } },
      "/body/expansion/value",
      /must be a number/,
    ],
    [
      "a misspelt field beside a class and a wrong expansion",
      { ...THAW, body: { class: "red-stoneware", expansion: { value: "six" }, absorbtionPercent: 2 } },
      "/body/absorbtionPercent",
      /Did you mean `absorptionPercent`\?/,
    ],
    ["a wall in inches", { ...THAW, ware: { wallMm: 0.25 } }, "/ware/wallMm", /0\.25 in would be 6\.35 mm/],
    ["a wall of no unit", { ...THAW, ware: { wallMm: -1 } }, "/ware/wallMm", "`wallMm` is -1. It must be 0.5 or more."],
    [
      "a coat in µm",
      { ...THAW, glaze: { ...THAW.glaze, thicknessMm: 300 } },
      "/glaze/thicknessMm",
      /300 µm would be 0\.3/,
    ],
    [
      "a misspelt expansion beside a class",
      { ...THAW, body: { class: "red-stoneware", expantion: { value: 6 } } },
      "/body/expantion",
      "I don't know the field `expantion`. Did you mean `expansion`?",
    ],
    [
      "a name of its own for the expansion beside a class",
      { ...THAW, body: { class: "red-stoneware", growth: 6 } },
      "/body/growth",
      /Here I know `class`, .*`expansion`/,
    ],
    ["an unknown class", { ...THAW, body: { class: "red-stonewear" } }, "/body/class", /Did you mean red-stoneware\?/],
    ["an empty recipe", glaze([]), "/glaze/recipe", "`recipe` has 0 entries. I take at least 1."],
    [
      "101 lines",
      glaze(Array(101).fill({ material: "silica", parts: 1 })),
      "/glaze/recipe",
      "`recipe` has 101 entries. I take at most 100.",
    ],
    ["a total of nought", glaze([{ material: "silica", parts: 0 }]), "/glaze/recipe", /./],
    [
      "1e-7/K",
      { ...THAW, body: { expansion: { value: 61 } } },
      "/body/expansion/value",
      "61 looks like 6.1 written in 1e-7/K. This field is in 1e-6/K, so write 6.1.",
    ],
    [
      "1e-8/K",
      { ...THAW, body: { expansion: { value: 610 } } },
      "/body/expansion/value",
      "610 looks like 6.1 written in 1e-8/K. This field is in 1e-6/K, so write 6.1.",
    ],
    [
      "1/K",
      { ...THAW, body: { expansion: { value: 0.0000061 } } },
      "/body/expansion/value",
      "0.0000061 looks like 6.1 written in 1/K. This field is in 1e-6/K, so write 6.1.",
    ],
    [
      "a glaze at 65",
      { ...THAW, glaze: { expansion: { value: 65 } } },
      "/glaze/expansion/value",
      "65 looks like 6.5 written in 1e-7/K. This field is in 1e-6/K, so write 6.5.",
    ],
    [
      "a range upside down",
      { ...THAW, body: { expansion: { value: 6, rangeC: [500, 20] } } },
      "/body/expansion/rangeC",
      "The range runs from cold to hot: write the lower temperature first.",
    ],
    [
      "a glaze's mean to 932 °F",
      { ...THAW, glaze: { expansion: { value: 6, rangeC: [68, 932] } } },
      "/glaze/expansion/rangeC/1",
      "A mean to 932 °C is more than I take. In °F it would be 500 °C. It must be 900 or less.",
    ],
    [
      "a mean past all kilns",
      { ...THAW, glaze: { expansion: { value: 6, rangeC: [20, 2000] } } },
      "/glaze/expansion/rangeC/1",
      "Item 2 of `rangeC` is 2000. It must be 900 or less.",
    ],
    ["a cone for a peak", { ...THAW, firing: { peakC: 6 } }, "/firing/peakC", /Did you mean a cone\? Cone 6 bends/],
    ["a cone in words", { ...THAW, firing: { peakC: "cone 04" } }, "/firing/peakC", /Cone 04 bends near 1060 °C/],
    [
      "a peak in quotes",
      { ...THAW, firing: { peakC: "1240" } },
      "/firing/peakC",
      '`peakC` is "1240", a text. Write the number 1240, without quotes.',
    ],
    [
      "Fahrenheit",
      { ...THAW, firing: { peakC: 2264 } },
      "/firing/peakC",
      "2264 °C would melt the kiln. In °F it would be 1240 °C, so write 1240.",
    ],
    ["an unknown word", { ...THAW, ware: { glazed: "both-sides" } }, "/ware/glazed", /^`glazed` is "both-sides"\. /],
    ["a broken seed", { ...THAW, seed: 1.5 }, "/seed", "`seed` is 1.5. It must be a whole number."],
    [
      "a skin of no thickness",
      { ...THAW, glaze: { ...THAW.glaze, thicknessMm: 0 } },
      "/glaze/thicknessMm",
      "`thicknessMm` is 0. It must be 0.01 or more.",
    ],
    [
      "one point of a curve",
      { ...THAW, body: { curve: [{ c: 20, strainPercent: 0 }] } },
      "/body/curve",
      "`curve` has 1 entries. I take at least 2.",
    ],
  ])("%s", async (_, question, pointer, message) => {
    const problem = await problemOf(await post("/v1/fit", question));
    expect(problem.status).toBe(422);
    const issue = problem.issues?.find((one) => one.pointer === pointer);
    expect(issue?.message ?? JSON.stringify(problem.issues)).toMatch(
      typeof message === "string" ? new RegExp(`^${message.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`) : message,
    );
  });

  it("a number past all numbers", async () => {
    const problem = await problemOf(await post("/v1/fit", THAW_TEXT.replace('"parts":42', '"parts":1e999')));
    expect(problem.issues).toEqual([
      {
        pointer: "/glaze/recipe/0/parts",
        message: "`parts` is a larger number than any I can hold. Check its power of ten.",
      },
    ]);
  });

  it("tells every fault at once", async () => {
    const question = { ...glaze([{ material: "silica", parts: -1 }, {}]), ware: { wall: 5 }, firing: { peakC: "hot" } };
    const problem = await problemOf(await post("/v1/fit", question));
    expect(problem.issues?.map((one) => one.pointer)).toEqual([
      "/glaze/recipe/0/parts",
      "/glaze/recipe/1",
      "/firing/peakC",
      "/ware/wall",
    ]);
    expect(problem.detail).toMatch(/^4 things need mending: /);
  });

  it("tells at most fifty", async () => {
    const fields = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`f${i}`, 1]));
    const problem = await problemOf(await post("/v1/fit", { ...THAW, ...fields }));
    expect(problem.issues).toHaveLength(50);
  });

  it("refuses nesting past 32 levels and says the limit", async () => {
    const deep = JSON.parse("[".repeat(40) + "]".repeat(40));
    const problem = await problemOf(await post("/v1/fit", { ...THAW, glaze: deep }));
    expect(problem.issues?.[0]).toMatchObject({ allowed: [32], message: expect.stringContaining("32 levels") });
  });

  it.each(["__proto__", "constructor", "toString", "hasOwnProperty"])(
    "the key %s does nothing but be refused",
    async (key) => {
      for (const text of [
        THAW_TEXT.replace("{", `{"${key}":{"polluted":1},`),
        THAW_TEXT.replace('"glaze":{', `"glaze":{"${key}":{"polluted":1},`),
        JSON.stringify({
          glaze: { oxides: { basis: "moles", amounts: { SiO2: 3, CaO: 1 } } },
          body: THAW.body,
        }).replace('"SiO2":3', `"SiO2":3,"${key}":1`),
      ]) {
        const problem = await problemOf(await post("/v1/fit", text));
        expect(problem.status).toBe(422);
        expect(problem.issues?.[0]?.message).toContain(key);
      }
      expect(({} as { polluted?: number }).polluted).toBeUndefined();
    },
  );

  it("escapes pointers", async () => {
    const problem = await problemOf(await post("/v1/fit", { ...THAW, "a/b~c": 1 }));
    expect(problem.issues?.[0]?.pointer).toBe("/a~1b~0c");
  });
});

it("nothing above was a fault of the service's own", () => expect(faults).toEqual([]));
