/** Prints one row a folder for the table of README.md, from the reports that Stryker wrote. */
import { existsSync, readFileSync } from "node:fs";

const folders = new Map();
for (const path of process.argv.slice(2).filter((each) => existsSync(each))) {
  for (const [file, { mutants }] of Object.entries(JSON.parse(readFileSync(path, "utf8")).files)) {
    const folder = /api\/engine\/([^/]+)/.exec(file)?.[1] ?? file;
    const row = folders.get(folder) ?? { files: 0, Killed: 0, Timeout: 0, unloaded: 0, Survived: 0, NoCoverage: 0 };
    row.files++;
    for (const { status, testsCompleted } of mutants) {
      // A file that throws while it loads leaves no test to fail, and the runner calls that survived.
      const found = status === "Survived" && !testsCompleted ? "unloaded" : status;
      row[found] = (row[found] ?? 0) + 1;
    }
    folders.set(folder, row);
  }
}
for (const [folder, row] of folders) {
  const { files, Killed, Timeout, unloaded, Survived, NoCoverage } = row;
  const noticed = Killed + Timeout + unloaded;
  const mutants = noticed + Survived + NoCoverage;
  const score = `${((100 * noticed) / mutants).toFixed(1)} %`;
  console.log(
    `| ${[`\`${folder}\``, files, mutants, Killed, Timeout, unloaded, Survived, NoCoverage, score].join(" | ")} |`,
  );
}
