/** What comes back for each line of a bulk question. @module */
import { z } from "zod";
import { ExpansionReport } from "./expansion.ts";
import { count, words } from "./figures.ts";
import { FitReport, FitVerdict } from "./fit-report.ts";
import { Problem } from "./problem.ts";

const line = count("Which line of the request this answers, from 1 [-].", 1, { min: 1 });
const id = words("The line's own tag, where it had one.", "thaw-7").optional();

export const LineProblem = z
  .strictObject({ line, id, error: Problem })
  .meta({ id: "LineProblem", description: "A line that could not be answered; the lines after it still are." });

export const FitLineResult = z
  .strictObject({ line, id, result: FitReport })
  .meta({ id: "FitLineResult", description: "The answer to one line." });

export const FitLineAnswer = z
  .union([FitLineResult, LineProblem])
  .meta({ id: "FitLineAnswer", description: "One line of the answer: a result, or a problem in its place." });

export const FitVerdictLineResult = z
  .strictObject({ line, id, result: FitVerdict })
  .meta({ id: "FitVerdictLineResult", description: "The answer to one line, in short." });

export const FitVerdictLineAnswer = z
  .union([FitVerdictLineResult, LineProblem])
  .meta({ id: "FitVerdictLineAnswer", description: "One line of the answer: a verdict, or a problem in its place." });

export const ExpansionLineResult = z
  .strictObject({ line, id, result: ExpansionReport })
  .meta({ id: "ExpansionLineResult", description: "The answer to one line." });

export const ExpansionLineAnswer = z
  .union([ExpansionLineResult, LineProblem])
  .meta({ id: "ExpansionLineAnswer", description: "One line of the answer: a result, or a problem in its place." });
