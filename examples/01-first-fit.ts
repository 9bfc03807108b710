/**
 * Will this glaze fit this clay?
 *
 *     npm run example examples/01-first-fit.ts
 *     RINGTRUE_URL=http://localhost:4600 npm run example examples/01-first-fit.ts
 *
 * prints
 *
 *     This glaze will most likely craze on this red stoneware: about 18 in 20.
 *     Stress in the glaze: 37.5 MPa (-25.3 to 104.1); above 0 it is pulled.
 *     Chance that it stays sound: 11 in 100.
 *     - From the point where it sets, near 685 °C, the glaze wants to shrink 0.048 % more than the clay will let it. Cold, it is left stretched at +38 MPa.
 *     - Worked out from its oxides, the glaze's expansion is 6.38 ×10⁻⁶/K from 20 to 300 °C. Glass swells faster as it gets hotter, and a thin skin takes up clay: from 20 °C to the set point (685 °C) it counts 7.31 ×10⁻⁶/K, against 6.62 ×10⁻⁶/K for the clay (your sheet's 6.20 ×10⁻⁶/K over 20–500 °C).
 *     - A skin 0.30 mm thick cracks at once from about +29 MPa (half as thick, from about +40 MPa). In 10 years it can still crack if it starts out above −10 MPa.
 *     - Of 20 equally likely cases, twelve crack as the kiln cools, six crack within 10 years, two hold.
 *     - Clay that drinks water grows: in 10 years about 0.021 %, which pulls the glaze by another +20 MPa.
 *     - Quartz turns at 573 °C and the clay steps in, which squeezes the glaze. Your figure stops at 500 °C and says nothing of it: I allowed 6 to 20 % quartz by volume.
 *     - Set against silica in its place, K2O pulls hardest toward crazing (+145 MPa), then CaO (+130 MPa). One per cent by weight less of K2O, the rest scaled up, changes the stress by about −20 MPa.
 *     - Expected to fail the quench from 121 °C into 20 °C water; whether it passes a milder one is open.
 */
import { connect } from "./connect.ts";

const client = await connect();

// Thaw, a glaze of the invented studio Larch Lane, on its red stoneware.
const report = await client.fit.check({
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
  body: { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 } },
  firing: { peakC: 1240, coolingCPerHour: 100 },
  ware: { wallMm: 6, glazed: "both-faces" },
});

const { stress, probabilities } = report;
console.log(report.headline);
console.log(
  `Stress in the glaze: ${stress.value} ${stress.unit} (${stress.low} to ${stress.high}); above 0 it is pulled.`,
);
console.log(`Chance that it stays sound: ${Math.round(probabilities.sound * 100)} in 100.`);
for (const reason of report.reasons) console.log(`- ${reason.text}`);
for (const warning of report.warnings) console.log(`Mind: ${warning.message}`);
