import { describe, expect, it } from "vitest";
import { UnknownNameError } from "../../api/engine/errors.ts";
import { findMaterial, listMaterials } from "../../api/engine/recipe/materials.ts";

describe("materials are found", () => {
  it.each([
    ["whiting", "whiting"],
    ["China clay", "kaolin"],
    ["  CHINA_CLAY ", "kaolin"],
    ["china \t _-clay", "kaolin"],
    ["flint", "silica"],
    ["quartz", "silica"],
    ["calcium carbonate", "whiting"],
    ["sodium carbonate", "soda-ash"],
    ["Red Iron Oxide", "red-iron-oxide"],
  ])("%j is %s", (name, id) => expect(findMaterial(name).id).toBe(id));

  it.each([
    ["whitting", "whiting"],
    ["kaolinn", "kaolin"],
    ["dolamite", "dolomite"],
    ["zinc oxid", "zinc-oxide"],
  ])("%s: did you mean %s?", (name, suggestion) => {
    const error = refusal(name);
    expect(error.issues[0]).toMatchObject({ pointer: "/recipe/0/material", suggestion });
    expect(error.message).toContain(`Did you mean ${suggestion}?`);
  });

  it("asks which, where several share a word", () => {
    const { allowed, message } = refusal("feldspar").issues[0]!;
    expect(allowed).toEqual(expect.arrayContaining(["potash-feldspar", "soda-feldspar", "mixed-feldspar"]));
    expect(message).toContain("Say which");
  });

  it("repeats forty characters of the name, and no more", () => {
    expect(refusal("x".repeat(41)).message).toContain(`“${"x".repeat(40)}” is not`);
  });

  it("reads a name to its end, however far off that is", () => {
    expect(refusal(`whiting${" ".repeat(100)}substitute`).issues).toHaveLength(1);
  });

  it("asks for an analysis where nothing is near", () => {
    expect(refusal("unobtainium of the north").message).toContain("analysis or formula");
  });
});

it("the table cannot be changed", () => {
  const [first] = listMaterials();
  expect(Object.isFrozen(listMaterials()) && Object.isFrozen(first) && Object.isFrozen(first!.aliases)).toBe(true);
});

function refusal(name: string): UnknownNameError {
  try {
    findMaterial(name, "/recipe/0/material");
  } catch (error) {
    if (error instanceof UnknownNameError) return error;
    throw error;
  }
  throw new Error("nothing was thrown");
}
