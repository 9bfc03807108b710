/**
 * Keeps the static parts of the pages on the device: asked for first, taken from the store when there is no connection.
 *
 * Answers about glazes are never kept here; a page keeps its own last answer and says when it is from.
 *
 * @module
 */

const STORE = "ringtrue-1";
const PAGES = ["/", "/lesson", "/making"];
const FILES = ["pages.css", "check.js", "lesson.js", "making.js", "brygada.woff2", "atkinson.woff2"];
const PARTS = [...PAGES, ...FILES.map((file) => `/pages/${file}`), "/favicon.svg"];
/** Lists that change only with the service. */
const LISTS = ["/v1/materials", "/v1/bodies", "/v1/sources"];

/** What this file needs of a worker's surroundings; the compiler is set up for pages. */
interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Waiting {
  request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Worker {
  addEventListener(name: "install" | "activate", listener: (event: Waiting) => void): void;
  addEventListener(name: "fetch", listener: (event: Fetching) => void): void;
  skipWaiting(): Promise<void>;
  clients: { claim(): Promise<void> };
  location: Location;
}
const worker = self as unknown as Worker;

worker.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(STORE)
      .then((store) => store.addAll(PARTS))
      .then(() => worker.skipWaiting()),
  );
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name !== STORE).map((name) => caches.delete(name))))
      .then(() => worker.clients.claim()),
  );
});

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  const ours = origin === worker.location.origin && request.method === "GET";
  if (!ours || !(PARTS.includes(pathname) || LISTS.includes(pathname))) return;
  event.respondWith(freshOrKept(event, request));
});

async function freshOrKept(event: Waiting, request: Request): Promise<Response> {
  const store = await caches.open(STORE);
  try {
    const response = await fetch(request);
    if (response.ok) event.waitUntil(store.put(request, response.clone()));
    return response;
  } catch (error) {
    const kept = await store.match(request, { ignoreSearch: !new URL(request.url).pathname.startsWith("/v1/") });
    if (kept) return kept;
    throw error;
  }
}
