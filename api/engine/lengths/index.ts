/** Lengths, volumes and weights as makers write them, in and out. @module */

// Faults on the way in
export { Faults } from "./faults.ts";
// In
export { hasFraction, readNumber } from "./number-text.ts";
export { GRAMS, ML, readVolume, readWeight } from "./read-amount.ts";
export { type LengthReader, lengthReader, MM } from "./read-length.ts";
// Out
export { inUnit, lengthQuantity, roundLength, sayLength } from "./show-length.ts";
export type {
  LengthInput,
  LengthUnit,
  RoundedLength,
  VolumeInput,
  VolumeUnit,
  WeightInput,
  WeightUnit,
} from "./types.ts";
