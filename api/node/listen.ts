/** One process that answers: sockets, files, the log, and an end that leaves nothing half answered. @module */
import { readFile } from "node:fs/promises";
import { createServer, type IncomingMessage, type Server } from "node:http";
import { createRequire } from "node:module";
import type { AddressInfo } from "node:net";
import { dirname, join } from "node:path";
import { getRequestListener } from "@hono/node-server";
import type { Context } from "hono";
import { createApp } from "../app.ts";
import { callerAddress } from "../http/caller.ts";
import type { Settings } from "../http/settings.ts";
import { Turns } from "../http/turns.ts";
import { bundlePageFile } from "../pages/bundle.ts";
import type { AssetLoader } from "../routes/reference.ts";
import { drawPng } from "./draw-png.ts";
import { answerUnreadable, refuse, refuseUnread } from "./refuse-unread.ts";

/** Longest wait for requests under way when told to stop; a second signal cuts it short [ms]. */
const GRACE_MS = 60_000;
/** Longest silence on a connection with a request under way, either way: nobody holds a place for nothing [ms]. */
const SILENCE_MS = 120_000;
/** Longest wait for a request's headers [ms]. */
const HEADERS_MS = 20_000;
/** How long an idle connection is kept. Longer than balancers keep theirs, so that they never meet a closed one [ms]. */
const KEEP_ALIVE_MS = 65_000;

/** Where and how to listen. */
export interface Listening {
  port: number;
  hostname: string;
  /** Where callers reach the service, for the front page's example. */
  address: string;
  settings: Settings;
  /** Tells this process from others that share the port. */
  process?: string;
}

const referenceFolder = dirname(createRequire(import.meta.url).resolve("swagger-ui-dist/package.json"));
const loadAsset: AssetLoader = async (name) => new Uint8Array(await readFile(join(referenceFolder, name)));
/** One for the one event loop there is. */
const turns = new Turns();
const writeLine = (line: object) => void process.stderr.write(`${JSON.stringify(line)}\n`);

/**
 * Listens until the process is told to stop, then finishes what is under way and goes.
 * @param onListening - told the port once it is open
 * @returns the server, for whoever wants to look at it
 */
export function listen(
  { port, hostname, address, settings, ...rest }: Listening,
  onListening: (port: number) => void,
): Server {
  let stopping = false;
  const report = (error: unknown, requestId: string) => {
    const stack = error instanceof Error ? error.stack : String(error);
    writeLine({ time: new Date().toISOString(), requestId, fault: stack });
  };
  const app = createApp({
    ...rest,
    loadAsset,
    loadPageFile: bundlePageFile,
    drawPng,
    address,
    settings,
    log: writeLine,
    report,
    ready: () => !stopping,
    turns,
    ...(settings.perMinute ? { addressOf: (c: Context) => addressOf(c, settings.proxies) } : {}),
  });
  const ask = getRequestListener(app.fetch, { hostname, errorHandler: (error) => answerUnreadable(error, report) });
  // The runtime would refuse a missing host without a word.
  const server = createServer({ requireHostHeader: false }, (incoming, outgoing) => {
    if (incoming.headers.host === undefined && incoming.httpVersion !== "1.0") refuse(outgoing, "malformed-request");
    else void ask(incoming, outgoing);
  });
  refuseUnread(server);
  server.listen(port, hostname, () => onListening((server.address() as AddressInfo).port));
  // A bulk question may take as long as it takes, as long as something moves; the app itself times out the others.
  server.requestTimeout = 0;
  server.headersTimeout = HEADERS_MS;
  server.keepAliveTimeout = KEEP_ALIVE_MS;
  server.setTimeout(SILENCE_MS);
  server.on("error", (error: NodeJS.ErrnoException) => {
    const taken = error.code === "EADDRINUSE";
    console.error(taken ? `Port ${port} is taken. Set PORT to another, such as PORT=${port + 1}.` : error.message);
    process.exit(1);
  });

  /** Says no to `/ready` for a while, stops taking requests, lets those under way finish, then goes. */
  function stop(): void {
    if (stopping) return;
    stopping = true;
    setTimeout(() => {
      server.close(() => process.exit(0));
      // A connection whose request ends after this is kept open for more unless it is closed here.
      setInterval(() => server.closeIdleConnections(), 50).unref();
      setTimeout(() => server.closeAllConnections(), GRACE_MS).unref();
    }, settings.drainS * 1000);
  }
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, stop);
  return server;
}

function addressOf(c: Context, proxies: number): string {
  const { incoming } = c.env as { incoming?: IncomingMessage };
  return callerAddress(incoming?.socket.remoteAddress, c.req.header("x-forwarded-for"), proxies);
}
