/**
 * What do I weigh for two kilograms of Thaw, and what does the old bucket want?
 *
 *     npm run example examples/05-weigh-a-batch.ts
 *
 * prints
 *
 *     Thaw: 2050 g dry (50 g of it additions) and about 2046 g of water make 2.83 l at 1.45.
 *       potash-feldspar            840.00 g    840.00 g
 *       silica                     440.00 g   1280.00 g
 *       whiting                    360.00 g   1640.00 g
 *       kaolin                     240.00 g   1880.00 g
 *       frit-soda-borosilicate     120.00 g   2000.00 g
 *     + copper-carbonate            50.00 g   2050.00 g
 *     Water: 2046 g (1985 to 2103)
 *     - Weigh in this order and tick each line; the running total shows a slip at once.
 *     - Start with 1840 g of water, add the dry glaze to it, and let it soak.
 *     - Sieve, then add water until it stands at 1.45: a litre weighs 1450 g.
 *     Bucket: 5 l at 1.5 is too thick: stir in about 556 g of water, a little at a time, and measure again.
 *     In the kiln 206 g leave, 1844 g stay.
 *     Mind: I know no density for frit-soda-borosilicate (6 % of the batch) and took 2.6 g/cm3. Weigh a litre of the mixed glaze to be sure.
 *     Mind: Copper compounds are harmful if swallowed or breathed in. Wear a mask and gloves when weighing.
 *     Mind: Fine silica dust scars the lungs. Weigh in a P3 or P100 mask, clean wet and never sweep dry.
 */
import { connect } from "./connect.ts";

const client = await connect();

const batch = await client.batches.plan({
  name: "Thaw",
  glaze: {
    recipe: [
      { material: "potash-feldspar", parts: 42 },
      { material: "silica", parts: 22 },
      { material: "whiting", parts: 18 },
      { material: "kaolin", parts: 12 },
      { material: "frit-soda-borosilicate", parts: 6 },
    ],
    additions: [{ material: "copper-carbonate", parts: 2.5 }],
  },
  amount: { dry: "2 kg" },
  specificGravity: 1.45,
  bucket: { volume: "5 l", specificGravity: 1.5 },
});

console.log(batch.headline);
for (const { label, addition, weighG, runningG } of batch.lines) {
  console.log(
    `${addition ? "+" : " "} ${label.padEnd(24)}${weighG.toFixed(2).padStart(9)} g ${runningG.toFixed(2).padStart(9)} g`,
  );
}
console.log(`Water: ${batch.water.value} ${batch.water.unit} (${batch.water.low} to ${batch.water.high})`);
for (const step of batch.steps) console.log(`- ${step}`);
console.log(`Bucket: ${batch.bucket?.message}`);
console.log(`In the kiln ${batch.lossOnIgnition.lostG} g leave, ${batch.lossOnIgnition.glassG} g stay.`);
for (const { message } of [...batch.warnings, ...batch.cautions]) console.log(`Mind: ${message}`);
