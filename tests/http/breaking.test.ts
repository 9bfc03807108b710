/** The guard over the description: planted breaks are found, harmless changes are not. */
import { describe, expect, it } from "vitest";
import { breakingChanges, type Description, raised } from "../../.config/breaking.ts";
import committed from "../../api/openapi.json" with { type: "json" };

const before = committed as unknown as Description;

/** The committed description with something changed. */
function changed(change: (copy: Description) => void): string[] {
  const after = structuredClone(before);
  change(after);
  return breakingChanges(before, after);
}
const schema = (copy: Description, name: string) => copy.components.schemas[name]!;
const field = (copy: Description, name: string, key: string) => schema(copy, name).properties![key]!;

describe("breaking changes", () => {
  it("are none between a description and itself", () => expect(changed(() => {})).toEqual([]));

  it.each<[string, (copy: Description) => void, string]>([
    ["a call gone", (d) => delete d.paths["/v1/fit"], "POST /v1/fit is gone"],
    ["a method gone", (d) => delete d.paths["/v1/bodies"]!.get, "GET /v1/bodies is gone"],
    [
      "another name",
      (d) => (d.paths["/v1/fit"]!.post!.operationId = "judge"),
      "POST /v1/fit is no longer called checkFit",
    ],
    [
      "a parameter gone",
      (d) => (d.paths["/v1/bodies"]!.get!.parameters = []),
      "GET /v1/bodies: parameter limit is gone",
    ],
    [
      "a parameter required",
      (d) => (d.paths["/v1/bodies"]!.get!.parameters![0]!.required = true),
      "GET /v1/bodies: parameter limit is now required",
    ],
    [
      "a type of content gone",
      (d) => (d.paths["/v1/fit"]!.post!.requestBody!.content = {}),
      "POST /v1/fit request: application/json is gone",
    ],
    [
      "a status gone",
      (d) => delete d.paths["/v1/fit"]!.post!.responses!["422"],
      "POST /v1/fit 422: application/problem+json is gone",
    ],
    [
      "a field that goes in gone",
      (d) => delete schema(d, "RecipeGlaze").properties!.additions,
      "RecipeGlaze.additions is gone",
    ],
    [
      "a field that comes out gone",
      (d) => delete schema(d, "FitReport").properties!.stress,
      "FitReport.stress is gone",
    ],
    [
      "a field newly required",
      (d) => schema(d, "RecipeGlaze").required!.push("thicknessMm"),
      "RecipeGlaze.thicknessMm is now required",
    ],
    [
      "a field that may be missing",
      (d) => (schema(d, "Quantity").required = ["value"]),
      "Quantity.unit may now be missing",
    ],
    [
      "another type",
      (d) => (field(d, "Problem", "status").type = "string"),
      "Problem.status was integer and is string",
    ],
    [
      "an answer that may be null",
      (d) => (field(d, "Problem", "title").type = ["string", "null"]),
      "Problem.title was string and is string or null",
    ],
    [
      "a value or null in its other form and of another type",
      (d) => {
        schema(d, "Material").properties!.densityGPerCm3 = { anyOf: [{ type: "string" }, { type: "null" }] };
      },
      "Material.densityGPerCm3 was number or null and is string or null",
    ],
    ["a word gone", (d) => schema(d, "Verdict").enum!.pop(), 'Verdict no longer knows "shivers"'],
    [
      "a lower limit",
      (d) => (field(d, "RecipeGlaze", "recipe").maxItems = 50),
      "RecipeGlaze.recipe: maxItems was 100 and is 50",
    ],
    [
      "a new limit",
      (d) => (field(d, "RecipeGlaze", "thicknessMm").exclusiveMinimum = 0),
      "RecipeGlaze.thicknessMm: exclusiveMinimum was open and is 0",
    ],
    ["a way of saying it gone", (d) => schema(d, "Glaze").anyOf!.splice(0, 1), "Glaze: RecipeGlaze is no longer taken"],
    [
      "an answer of a new kind",
      (d) => field(d, "Chemistry", "seger").anyOf!.push({ type: "string" }),
      "Chemistry.seger: string is a new kind of answer",
    ],
  ])("%s", (_, change, sentence) => expect(changed(change)).toContain(sentence));

  it.each<[string, (copy: Description) => void]>([
    ["a new call", (d) => Object.assign(d.paths, { "/v1/new": d.paths["/v1/fit"] })],
    ["a new field to leave out", (d) => (schema(d, "RecipeGlaze").properties!.colour = { type: "string" })],
    [
      "a new field in an answer",
      (d) => {
        schema(d, "Material").properties!.colour = { type: "string" };
        schema(d, "Material").required!.push("colour");
      },
    ],
    ["a wider limit", (d) => (field(d, "RecipeGlaze", "recipe").maxItems = 500)],
    ["a new word", (d) => schema(d, "Verdict").enum!.push("sings")],
    ["a new way of saying it", (d) => schema(d, "MadeGlaze").anyOf!.push({ type: "object", required: ["photograph"] })],
    ["a field no longer required", (d) => (schema(d, "FitLine").required = ["glaze"])],
    [
      "a value or null in its other form",
      (d) => {
        const { type, ...rest } = field(d, "Material", "densityGPerCm3");
        Object.assign(schema(d, "Material").properties!, {
          densityGPerCm3: { anyOf: [{ ...rest, type: (type as string[])[0] }, { type: "null" }] },
        });
      },
    ],
    ["other words about it", (d) => (schema(d, "Glaze").description = "What covers the clay.")],
  ])("are not: %s", (_, change) => expect(changed(change)).toEqual([]));

  it("are owned up to by the version", () => {
    expect(raised("0.1.4", "0.2.0")).toBe(true);
    expect(raised("0.9.0", "1.0.0")).toBe(true);
    expect(raised("1.2.0", "2.0.0")).toBe(true);
    for (const after of ["0.1.4", "0.1.5"]) expect(raised("0.1.4", after)).toBe(false);
    expect(raised("1.2.0", "1.3.0")).toBe(false);
  });
});
