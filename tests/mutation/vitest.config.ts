import { basename } from "node:path";
import { BaseSequencer, type TestSpecification } from "vitest/node";
import usual from "../../.config/vitest.config.ts";
import tests from "./tests.json" with { type: "json" };

/** Only the tests that are about the folder whose mutants are tried. */
const folder = (process.env.MUTATED ?? "").split("/")[0] as keyof typeof tests;

/** In the order of the table, quick ones first: the first failure ends a mutant's run. */
class AsListed extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const places = tests[folder].map((path) => basename(path));
    const place = (file: TestSpecification) => places.indexOf(basename(file.moduleId));
    return [...files].sort((a, b) => place(a) - place(b));
  }
}

export default { ...usual, test: { ...usual.test, include: tests[folder], sequence: { sequencer: AsListed } } };
