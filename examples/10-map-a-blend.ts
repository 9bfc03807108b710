/**
 * Where between these glazes does it fit? A triangle of three, tile by tile.
 *
 *     npm run example examples/10-map-a-blend.ts
 *
 * prints
 *
 *     A1  6.04 (5.34 to 6.67) 1e-6/K  crazes, 4 in 20 sound  begin with the first corner
 *     B2  5.69 (5.09 to 6.23) 1e-6/K  may-craze, 9 in 20 sound  25 % less Thaw, 25 % more Sleet
 *     B1  5.71 (5.12 to 6.25) 1e-6/K  may-craze, 8 in 20 sound  25 % less Sleet, 25 % more Hail
 *     C1  5.39 (4.85 to 5.89) 1e-6/K  may-craze, 12 in 20 sound  25 % less Thaw, 25 % more Hail
 *     C2  5.37 (4.87 to 5.82) 1e-6/K  may-craze, 14 in 20 sound  25 % less Hail, 25 % more Sleet
 *     C3  5.36 (4.84 to 5.83) 1e-6/K  may-craze, 15 in 20 sound  25 % less Hail, 25 % more Sleet
 *     D4  5.06 (4.57 to 5.49) 1e-6/K  sound, 18 in 20 sound  25 % less Thaw, 25 % more Sleet
 *     D3  5.05 (4.6 to 5.45) 1e-6/K  sound, 18 in 20 sound  25 % less Sleet, 25 % more Hail
 *     D2  5.06 (4.58 to 5.49) 1e-6/K  sound, 17 in 20 sound  25 % less Sleet, 25 % more Hail
 *     D1  5.08 (4.51 to 5.61) 1e-6/K  may-craze, 16 in 20 sound  25 % less Sleet, 25 % more Hail
 *     E1  4.78 (4.13 to 5.38) 1e-6/K  may-craze, 16 in 20 sound  25 % less Thaw, 25 % more Hail
 *     E2  4.75 (4.22 to 5.25) 1e-6/K  sound, 17 in 20 sound  25 % less Hail, 25 % more Sleet
 *     E3  4.74 (4.29 to 5.16) 1e-6/K  sound, 18 in 20 sound  25 % less Hail, 25 % more Sleet
 *     E4  4.75 (4.31 to 5.15) 1e-6/K  sound, 18 in 20 sound  25 % less Hail, 25 % more Sleet
 *     E5  4.78 (4.28 to 5.22) 1e-6/K  sound, 18 in 20 sound  25 % less Hail, 25 % more Sleet
 */
import { connect } from "./connect.ts";

const client = await connect();

// Three glazes of the invented studio Larch Lane, in quarters; tiles come in an order that saves weighing.
const tiles = client.blends.stream({
  corners: [
    {
      name: "Thaw",
      glaze: {
        recipe: [
          { material: "potash-feldspar", parts: 45 },
          { material: "silica", parts: 25 },
          { material: "whiting", parts: 18 },
          { material: "kaolin", parts: 12 },
        ],
        thicknessMm: 0.3,
      },
    },
    {
      name: "Hail",
      glaze: {
        recipe: [
          { material: "nepheline-syenite", parts: 40 },
          { material: "silica", parts: 30 },
          { material: "talc", parts: 15 },
          { material: "kaolin", parts: 15 },
        ],
      },
    },
    {
      name: "Sleet",
      glaze: {
        recipe: [
          { material: "frit-calcium-borosilicate", parts: 60 },
          { material: "silica", parts: 20 },
          { material: "kaolin", parts: 20 },
        ],
      },
    },
  ],
  steps: 4,
  body: { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 } },
});

for await (const tile of tiles) {
  if (!("verdict" in tile)) continue;
  const { label, expansion, verdict, probabilities, move } = tile;
  const sound = `${Math.round(probabilities.sound * 20)} in 20 sound`;
  const figure = `${expansion.value} (${expansion.low} to ${expansion.high}) ${expansion.unit}`;
  console.log(`${label}  ${figure}  ${verdict}, ${sound}  ${move ?? "begin with the first corner"}`);
}
