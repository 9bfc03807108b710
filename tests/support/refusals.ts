/** What the engine refuses. */
import { EngineError, type Issue } from "../../api/engine/errors.ts";

/** The refusal that a call ends in; fails where it ends in none. */
export function caught(run: () => unknown): EngineError {
  const error = refusal(run);
  if (!error) throw new Error("Nothing was refused.");
  return error;
}

/** What is wrong by the engine's own account, none where it answers. */
export const issuesOf = (run: () => unknown): readonly Issue[] => refusal(run)?.issues ?? [];

function refusal(run: () => unknown): EngineError | undefined {
  try {
    run();
  } catch (error) {
    if (error instanceof EngineError) return error;
    throw error;
  }
  return undefined;
}
