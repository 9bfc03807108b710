/**
 * Requests that no route takes: OPTIONS answered and 405 with Allow where the address exists, 404 with the nearest
 * address where not.
 *
 * @module
 */
import type { Context, Hono } from "hono";
import { closest } from "../engine/errors.ts";
import { ProblemError, problemResponse } from "./problem.ts";

/** Longest address that is said back [letters]. */
const MOST_SAID = 80;

interface Address {
  path: string;
  methods: Set<string>;
  pattern: RegExp;
}

/**
 * Makes the handler for whatever no route took. It answers and never throws: what is thrown here passes by everything
 * that waits for an answer, and places taken for the request would never be given back. Addresses are read from the app's own routes on first need.
 * @param app - the finished app
 */
export function unmatched(app: Pick<Hono, "routes">) {
  let addresses: Address[] | undefined;
  return function answerUnmatched(c: Context): Response {
    addresses ??= readAddresses(app);
    const path = c.req.path;
    const here = addresses.find((address) => address.pattern.test(path));
    if (here) {
      const allow = [...here.methods].sort().join(", ");
      if (c.req.method === "OPTIONS") return c.body(null, 204, { allow });
      const detail = `${here.path} answers ${allow}, not ${c.req.method.slice(0, 16)}.`;
      return problemResponse(c, new ProblemError("method-not-allowed", detail, { headers: { allow } }));
    }
    const suggestion = nearest(path, addresses);
    const meant = suggestion ? ` Did you mean ${suggestion}?` : " See /openapi.json for what there is.";
    const told = suggestion ? { suggestion } : {};
    return problemResponse(c, new ProblemError("unknown-path", `There is nothing at this address.${meant}`, told));
  };
}

function nearest(path: string, addresses: Address[]): string | undefined {
  const known = addresses.map((address) => address.path).filter((one) => !one.includes("{"));
  const bare = withoutSlashes(path);
  const slashed = bare !== path && bare.length <= MOST_SAID;
  if (slashed && addresses.some((address) => address.pattern.test(bare))) return bare;
  const variants = [bare, `/v1${bare}`, bare.replace(/^\/v\d+/, "/v1")];
  return variants.find((variant) => known.includes(variant)) ?? closest(bare, known);
}

/** Without slashes at its end. No expression: one that looks for `/+$` tries anew at every slash of a long row. */
function withoutSlashes(path: string): string {
  let end = path.length;
  while (end > 0 && path[end - 1] === "/") end -= 1;
  return path.slice(0, end);
}

function readAddresses(app: Pick<Hono, "routes">): Address[] {
  const found = new Map<string, Address>();
  for (const { method, path } of app.routes) {
    if (method === "ALL" || path.includes("*")) continue;
    let address = found.get(path);
    if (!address) {
      const source = path.replace(/[.+?^$()[\]\\|]/g, "\\$&").replace(/:[A-Za-z]+/g, "[^/]+");
      address = {
        path: path.replace(/:([A-Za-z]+)/g, "{$1}"),
        methods: new Set(["OPTIONS"]),
        pattern: new RegExp(`^${source}$`),
      };
      found.set(path, address);
    }
    address.methods.add(method);
    if (method === "GET") address.methods.add("HEAD");
  }
  return [...found.values()];
}
