/** Worked examples of the doc comments, to the digits shown. */
import { expect, it } from "vitest";
import { Faults, lengthReader, readVolume, readWeight, roundLength } from "../../api/engine/lengths/index.ts";
import { knownShrinkage } from "../../api/engine/shrinkage/index.ts";
import { crossing, sizeFor, sphereThrough, volumeBetween, wayOf, workOutSizes } from "../../api/engine/sizes/index.ts";
import { close } from "../support/close.ts";

it("examples of the doc comments", () => {
  const faults = new Faults();
  close(lengthReader("in", faults)("3½", "/height", "The height"), 88.9, { abs: 1e-9 });
  expect(readVolume("350 ml", "/holds", "The capacity", faults)).toBe(350);
  expect(readWeight("2.5 kg", "/dry", "The dry weight", faults)).toBe(2500);
  expect(roundLength(102.27, "mm").text).toBe("102 mm");
  const way = wayOf(knownShrinkage({ percent: 12, plusMinus: 0 }), false);
  expect(sizeFor("rim", 90, way, "mm").throwTo.text).toBe("102 mm");
  expect(sphereThrough(0, 50, 50)).toMatchObject({ radius: 50, centre: 50 });
  close(volumeBetween([sphereThrough(0, 50, 50)], 0, 50), (2 / 3) * Math.PI * 50 ** 3, { rel: 1e-12 });
  const bowTie = [
    { x: 0, y: 0 },
    { x: 1, y: 1 },
    { x: 1, y: 0 },
    { x: 0, y: 1 },
  ];
  expect(crossing(bowTie)).toEqual([0, 2]);
  const { sizes } = workOutSizes({ shrinkage: { percent: 12 }, fired: { rim: "90 mm" } });
  expect(sizes[0]?.throwTo.text).toBe("102 mm");
});

it("leather hard lies nearer to bone dry than to plastic", () => {
  const { sizes } = workOutSizes({
    shrinkage: { percent: 12, dryingPercent: 6, plusMinus: 0 },
    fired: { diameter: "440 mm" },
  });
  // 500 mm thrown: bone dry 470, leather hard about four fifths of the way (from memory).
  close(sizes[0]?.boneDry.value, 470, { abs: 0.005 });
  close(sizes[0]?.leatherHard.value, 476, { abs: 0.005 });
});

it("what must fit is set finer than what need not", () => {
  expect(roundLength(95.4545, "mm", true).text).toBe("95.5 mm");
  expect(roundLength(95.4545, "cm", true).text).toBe("9.55 cm");
  expect(roundLength(95.4545, "in", true).text).toBe("3 49/64 in");
});
