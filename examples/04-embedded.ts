/**
 * An app that carries the service along: no network, no second process, the same calls.
 *
 *     npm run example examples/04-embedded.ts
 *
 * prints
 *
 *     Thaw       crazes
 *     Hoarfrost  may-shiver
 *     and not one request left this process
 */
import { type Body, Ringtrue } from "@ringtrue/sdk";
import { createApp } from "../api/app.ts";

// The service is a function from request to answer; whatever goes wrong inside it is told here.
const service = createApp({ report: (error, requestId) => console.error(requestId, error) });
let outside = 0;
globalThis.fetch = () => {
  outside += 1;
  throw new Error("This app needs no network.");
};

const ringtrue = new Ringtrue({
  fetch: (url, init) => {
    init.signal?.throwIfAborted();
    return service.request(url, init);
  },
});

const body: Body = { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 } };
const shelf = {
  Thaw: { "potash-feldspar": 42, silica: 22, whiting: 18, kaolin: 12, "frit-soda-borosilicate": 6 },
  Hoarfrost: { "potash-feldspar": 20, silica: 34, whiting: 14, kaolin: 22, talc: 10 },
};
for (const [name, parts] of Object.entries(shelf)) {
  const recipe = Object.entries(parts).map(([material, amount]) => ({ material, parts: amount }));
  const { verdict } = await ringtrue.fit.check({ glaze: { recipe, thicknessMm: 0.3 }, body });
  console.log(name.padEnd(10), verdict);
}
console.log(outside === 0 ? "and not one request left this process" : `${outside} requests left this process`);
