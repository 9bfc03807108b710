/**
 * The worked sample used wherever the service shows one: an invented studio, Larch Lane, and its glaze Thaw.
 *
 * @module
 */

/** Thaw, a limestone glaze softened with a little borosilicate frit. Parts by weight; thickness as fired [mm]. */
export const THAW = {
  recipe: [
    { material: "potash-feldspar", parts: 42 },
    { material: "silica", parts: 22 },
    { material: "whiting", parts: 18 },
    { material: "kaolin", parts: 12 },
    { material: "frit-soda-borosilicate", parts: 6 },
  ],
  thicknessMm: 0.3,
};

/** Larch Lane's red stoneware, with the mean expansion its data sheet states [1e-6/K]. */
export const RED_STONEWARE = {
  class: "red-stoneware",
  expansion: { value: 6.2, rangeC: [20, 500] as [number, number], plusMinus: 0.3 },
};

/** The whole question: Thaw on the red stoneware, fired to 1240 °C on a 6 mm wall, glazed on both faces. */
export const THAW_ON_RED_STONEWARE = {
  glaze: THAW,
  body: RED_STONEWARE,
  firing: { peakC: 1240, coolingCPerHour: 100 },
  ware: { wallMm: 6, glazed: "both-faces" as const },
};
