/**
 * Writes the description of the service to `api/openapi.json`.
 *
 * @module
 */
import { writeFileSync } from "node:fs";
import { createApp } from "./app.ts";

/** The description as the service serves it, in the form it is kept in: two-space indents, a newline at the end. */
export async function openapiText(): Promise<string> {
  const response = await createApp().request("/openapi.json");
  return `${JSON.stringify(await response.json(), null, 2)}\n`;
}

if (import.meta.url === `file://${process.argv[1]}`) {
  writeFileSync(new URL("openapi.json", import.meta.url), await openapiText());
}
