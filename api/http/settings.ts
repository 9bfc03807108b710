/**
 * How a service is run, read from the environment: who may ask, how often, how much at once, what is told of it.
 *
 * Every name is checked: a misspelt setting that was meant to shut a door must not leave it open.
 *
 * @module
 */
import { closest } from "../engine/errors.ts";

/** What whoever runs the service decides. */
export interface Settings {
  /** SHA-256 hashes of the keys that are let in [hex]; several at once for rotation, none lets everyone in. */
  keyHashes: string[];
  /** Requests that one caller may send in a minute; null for any number. */
  perMinute: number | null;
  /** Proxies in front that are trusted to add the caller's address to `x-forwarded-for` [-]. */
  proxies: number;
  /** Origins of pages that may read answers; `*` for every page. */
  origins: string[];
  /** Questions under way at once, streams included, before more are turned away [-]. */
  mostAtOnce: number;
  /** Whether one line is written for each request. */
  log: boolean;
  /** Whether `/metrics` is served. */
  metrics: boolean;
  /** Processes that share the port [-]. */
  workers: number;
  /** How long to go on answering after being told to stop, `/ready` already saying no [s]. */
  drainS: number;
}

/** A setting that cannot be; the message says which, why and what would do. */
export class SettingsError extends Error {
  override readonly name = "SettingsError";
}

/** What the runtime knows and the environment does not say. */
export interface Surroundings {
  /** Whether only this machine can reach the service: no rate limit then unless one is set. */
  loopback: boolean;
  /** Whether a person is watching the log: no log then unless one is asked for. */
  watched: boolean;
}

type Environment = Readonly<Record<string, string | undefined>>;

const NAMES = [
  "RINGTRUE_KEYS",
  "RINGTRUE_RATE",
  "RINGTRUE_PROXIES",
  "RINGTRUE_ORIGINS",
  "RINGTRUE_CONCURRENCY",
  "RINGTRUE_LOG",
  "RINGTRUE_METRICS",
  "RINGTRUE_DRAIN",
  // Read by the examples, to find a service.
  "RINGTRUE_URL",
];

/** Requests a minute for each caller of a service that others can reach. Common practice, no source. */
const PUBLIC_RATE = 600;

/**
 * Reads every setting.
 * @param env - the environment
 * @param surroundings - where the service listens and who watches
 * @throws SettingsError for an unknown name or a value that cannot be
 * @example readSettings({ RINGTRUE_RATE: "60" }, { loopback: true, watched: true }).perMinute // 60
 */
export function readSettings(env: Environment, { loopback, watched }: Surroundings): Settings {
  for (const name of Object.keys(env)) {
    if (!name.startsWith("RINGTRUE_") || NAMES.includes(name)) continue;
    const meant = closest(name, NAMES);
    throw new SettingsError(`I don't know the setting ${name}.${meant ? ` Did you mean ${meant}?` : ""}`);
  }
  return {
    keyHashes: list(env.RINGTRUE_KEYS).map(keyHash),
    perMinute:
      env.RINGTRUE_RATE === "off" || (!env.RINGTRUE_RATE && loopback)
        ? null
        : whole(env, "RINGTRUE_RATE", PUBLIC_RATE, 1, 1_000_000, "requests a minute for each caller, or off"),
    proxies: whole(env, "RINGTRUE_PROXIES", 0, 0, 10, "trusted proxies in front of the service"),
    origins: list(env.RINGTRUE_ORIGINS).map(origin),
    mostAtOnce: whole(env, "RINGTRUE_CONCURRENCY", 256, 1, 100_000, "questions under way at once"),
    log: onOff(env, "RINGTRUE_LOG", !watched),
    metrics: onOff(env, "RINGTRUE_METRICS", false),
    workers: whole(env, "WORKERS", 1, 1, 256, "processes"),
    drainS: whole(env, "RINGTRUE_DRAIN", 0, 0, 600, "seconds"),
  };
}

const list = (text = ""): string[] => text.split(/[\s,]+/).filter((part) => part !== "");

function keyHash(text: string): string {
  if (/^[0-9a-f]{64}$/i.test(text)) return text.toLowerCase();
  // What was given is not shown: it may be the key itself.
  throw new SettingsError(
    `RINGTRUE_KEYS holds something ${text.length} letters long that is no SHA-256 hash. Give the hash of each key, ` +
      "64 hexadecimal digits: printf %s THE-KEY | sha256sum",
  );
}

function origin(text: string): string {
  if (text === "*") return text;
  if (URL.canParse(text) && new URL(text).origin === text) return text;
  throw new SettingsError(`RINGTRUE_ORIGINS holds ${text}. Write origins such as https://studio.example, or *.`);
}

function whole(env: Environment, name: string, usual: number, least: number, most: number, what: string): number {
  const text = env[name];
  if (!text) return usual;
  const value = Number(text);
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  throw new SettingsError(`${name} is ${text}. It must be a whole number from ${least} to ${most}: ${what}.`);
}

function onOff(env: Environment, name: string, usual: boolean): boolean {
  const text = env[name];
  if (!text) return usual;
  if (text === "on" || text === "off") return text === "on";
  throw new SettingsError(`${name} is ${text}. It must be on or off.`);
}
