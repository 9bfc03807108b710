/**
 * Runs the service on Node. The only file that knows files, environment and sockets.
 *
 * `PORT` (4600) and `HOST` (127.0.0.1) say where to listen; `--greet` first prints a real fit in plain words.
 *
 * @module
 */
import { readFile } from "node:fs/promises";
import type { Server } from "node:http";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { serve } from "@hono/node-server";
import { createApp } from "./app.ts";
import { greeting } from "./pages/greeting.ts";
import { sampleReport } from "./pages/sample.ts";
import type { AssetLoader } from "./routes/reference.ts";

/** Longest wait for requests under way when told to stop [ms]. */
const GRACE_MS = 10_000;

const port = Number(process.env.PORT || 4600);
const hostname = process.env.HOST || "127.0.0.1";
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  console.error(`PORT is ${process.env.PORT}. It must be a whole number from 0 to 65535.`);
  process.exit(1);
}

const referenceFolder = dirname(createRequire(import.meta.url).resolve("swagger-ui-dist/package.json"));
const loadAsset: AssetLoader = async (name) => new Uint8Array(await readFile(join(referenceFolder, name)));
const report = (error: unknown, requestId: string) => console.error(`request ${requestId}:`, error);

const address = `http://${hostname === "127.0.0.1" ? "localhost" : hostname}:${port}`;

if (process.argv.includes("--greet")) console.log(greeting(sampleReport(), address));

const server = serve({ fetch: createApp({ loadAsset, report, address }).fetch, port, hostname }, (listening) => {
  console.log(`Ringtrue listens at ${address.replace(/\d+$/, String(listening.port))}/ (Ctrl+C stops it)`);
}) as Server;
// A bulk question may take as long as it takes; the app itself times out the others.
server.requestTimeout = 0;

server.on("error", (error: NodeJS.ErrnoException) => {
  const taken = error.code === "EADDRINUSE";
  console.error(taken ? `Port ${port} is taken. Set PORT to another, such as PORT=${port + 1}.` : error.message);
  process.exit(1);
});

/** Stops taking requests, lets those under way finish, then goes. */
function stop(): void {
  server.close(() => process.exit(0));
  // A connection whose request ends after this is kept open for more unless it is closed here.
  setInterval(() => server.closeIdleConnections(), 50).unref();
  setTimeout(() => server.closeAllConnections(), GRACE_MS).unref();
}
for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, stop);
