/**
 * Runs the service on Node.
 *
 * `PORT` (4600) and `HOST` (127.0.0.1) say where to listen, `WORKERS` (1) how many processes share it, and the names
 * in http/settings.ts who may ask and how much. `--greet` first prints a real fit in plain words.
 *
 * @module
 */
import cluster from "node:cluster";
import { readSettings, type Settings, SettingsError } from "./http/settings.ts";
import { listen } from "./node/listen.ts";
import { runWorkers } from "./node/workers.ts";
import { greeting } from "./pages/greeting.ts";
import { sampleReport } from "./pages/sample.ts";

const LOOPBACK = ["127.0.0.1", "::1", "localhost"];

const port = Number(process.env.PORT || 4600);
const hostname = process.env.HOST || "127.0.0.1";
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  refuse(`PORT is ${process.env.PORT}. It must be a whole number from 0 to 65535.`);
}
const settings = settingsOrRefuse();
const addressAt = (open: number) => `http://${hostname === "127.0.0.1" ? "localhost" : hostname}:${open}`;
const address = addressAt(port);
const announce = (open: number) => console.log(`Ringtrue listens at ${addressAt(open)}/ (Ctrl+C stops it)`);

if (cluster.isPrimary && process.argv.includes("--greet")) console.log(greeting(sampleReport(), address));
if (cluster.isPrimary && settings.workers > 1) runWorkers(settings.workers, announce);
else if (cluster.isPrimary) listen({ port, hostname, address, settings }, announce);
else listen({ port, hostname, address, settings, process: String(cluster.worker?.id) }, () => {});

function settingsOrRefuse(): Settings {
  const surroundings = { loopback: LOOPBACK.includes(hostname), watched: process.stderr.isTTY === true };
  try {
    return readSettings(process.env, surroundings);
  } catch (error) {
    if (error instanceof SettingsError) refuse(error.message);
    throw error;
  }
}

function refuse(why: string): never {
  console.error(why);
  process.exit(1);
}
