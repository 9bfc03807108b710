/**
 * What is in that jar? Learn a bought glaze's expansion from its tiles, and ask which tile to fire next.
 *
 *     npm run example examples/06-learn-from-tiles.ts
 *
 * prints
 *
 *     Going by 4 pieces of evidence, the glaze expands 6.0 (5.4 to 6.6) ×10⁻⁶/K from 20 to 300 °C; before that, of a glaze of unknown composition I only knew 7.0 (4.4 to 9.6) ×10⁻⁶/K.
 *     - buff, one coat: It moved the answer down, from 6.1 (5.4 to 6.8) ×10⁻⁶/K to 6.0 (5.4 to 6.6) ×10⁻⁶/K, and narrowed it.
 *     - red, one coat: It taught little: without it the rest would give 6.0 (5.4 to 6.6) ×10⁻⁶/K as well.
 *     - red, two coats: It moved the answer up, from 5.9 (5.3 to 6.5) ×10⁻⁶/K to 6.0 (5.4 to 6.6) ×10⁻⁶/K.
 *     - red, ring: It moved the answer down, from 6.1 (5.5 to 6.8) ×10⁻⁶/K to 6.0 (5.4 to 6.6) ×10⁻⁶/K, and narrowed it.
 *     On porcelain it stays sound about 5 in 20, crazes sooner or later about 15 in 20, shivers less than 1 in 20.
 *     Fire a tile of the red stoneware (6.2 ×10⁻⁶/K stated) with the glaze 0.60 mm thick and look at opening and after a month. I expect that it crazes within a month about 14 in 20, it holds about 6 in 20. On average the expansion would then be known to ±0.5 instead of ±0.6 ×10⁻⁶/K.
 *     This glaze may craze on this vitreous china: about 5 in 20.
 */
import type { StatedBody } from "@ringtrue/sdk";
import { connect } from "./connect.ts";

const client = await connect();

// Larch Lane's Hoarfrost, bought in a jar: nobody knows what is in it, but it has been on three tiles and a ring.
const stated = (name: string, value: number): StatedBody => ({
  class: name,
  expansion: { value, rangeC: [20, 500], plusMinus: 0.3 },
});
const buff = stated("buff-stoneware", 5.6);
const red = stated("red-stoneware", 6.2);
const learned = await client.evidence.learn({
  thicknessMm: 0.3,
  tiles: [
    { name: "buff, one coat", body: buff, seen: [{ kind: "crazed", byDays: 14, soundAtDays: 0 }] },
    { name: "red, one coat", body: red, seen: [{ kind: "not-crazed", afterDays: 90 }, { kind: "not-shivered" }] },
    { name: "red, two coats", body: red, coats: 2, seen: [{ kind: "crazed", byDays: 30 }] },
    { name: "red, ring", body: red, ware: { wallMm: 4 }, seen: [{ kind: "ring", radiusMm: 30, closesMm: 0.1 }] },
  ],
  bodies: [{ name: "porcelain", body: { class: "studio-porcelain" } }],
});

console.log(learned.headline);
for (const { name, text } of learned.lessons) console.log(`- ${name}: ${text}`);
for (const { text } of learned.suits) console.log(text);
console.log(learned.next[0]?.text);

// What was learned is a glaze like any other.
const fit = await client.fit.check({ glaze: learned.glaze, body: { class: "vitreous-china" } });
console.log(fit.headline);
