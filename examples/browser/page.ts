/**
 * A page that needs no server: engine, service and SDK are bundled into its one script.
 *
 *     npx esbuild examples/browser/page.ts --bundle --minify --format=esm --platform=browser \
 *       --alias:@ringtrue/sdk=./sdk/src/index.ts --outfile=examples/browser/page.js
 *     npx esbuild --servedir=examples/browser
 *
 * then look at the address it prints. tests/sdk/browser.test.ts does the same in a real browser, with the network off.
 */
import { Ringtrue, UnprocessableError } from "@ringtrue/sdk";
import { app } from "../../api/app.ts";

// Any address will do: none is asked.
const ringtrue = new Ringtrue({ baseUrl: "http://in-this-page", fetch: (url, init) => app.request(url, init) });
const clay = document.querySelector<HTMLInputElement>("#clay")!;
const answer = document.querySelector("#answer")!;
const picture = document.querySelector("#picture")!;

async function judge(): Promise<void> {
  const question = {
    glaze: {
      recipe: [
        { material: "potash-feldspar", parts: 42 },
        { material: "silica", parts: 22 },
        { material: "whiting", parts: 18 },
        { material: "kaolin", parts: 12 },
        { material: "frit-soda-borosilicate", parts: 6 },
      ],
      thicknessMm: 0.3,
    },
    body: { expansion: { value: Number(clay.value), rangeC: [20, 500] as [number, number], plusMinus: 0.3 } },
  };
  try {
    const { headline, stress } = await ringtrue.fit.check(question);
    answer.textContent = `${headline} Stress ${stress.value} ${stress.unit}, likely ${stress.low} to ${stress.high}.`;
    picture.innerHTML = await ringtrue.fit.picture(question, { width: 350 });
  } catch (error) {
    if (!(error instanceof UnprocessableError)) throw error;
    answer.textContent = error.issues.map(({ message }) => message).join(" ");
    picture.replaceChildren();
  }
}

clay.addEventListener("input", judge);
await judge();
