/** Single formulas of the fit, for arguments drawn at random. @module */
import { stiffnessLeft } from "../../../api/engine/body/facts.ts";
import { moistureAge } from "../../../api/engine/body/index.ts";
import * as fit from "../../../api/engine/fit/index.ts";
import { meanOver } from "../../../api/engine/glass/index.ts";
import type { Chance } from "./chance.ts";

/** Stress, cracking, lifting, bending and setting for arguments drawn at random. */
export function ofMechanics(chance: Chance) {
  const layers = {
    glazePa: chance.between(50, 95) * 1e9,
    glazePoisson: 0.2,
    glazeM: chance.scale(0.05, 1.5) / 1000,
    bodyPa: chance.between(12, 95) * 1e9,
    bodyPoisson: chance.between(0.12, 0.25),
    wallM: chance.scale(1.5, 15) / 1000,
  };
  const mismatch = chance.between(-1.5e-3, 1.5e-3);
  const { glazePa, glazeM, bodyPa, wallM } = layers;
  const wall = { pa: bodyPa, poisson: layers.bodyPoisson, thicknessM: wallM };
  const coats = Array.from({ length: chance.pick([1, 2, 3]) }, () => ({
    pa: chance.between(55, 90) * 1e9,
    poisson: 0.2,
    thicknessM: chance.scale(0.05, 0.8) / 1000,
    mismatch: chance.between(-1e-3, 1e-3),
  }));
  const stress = chance.between(-200, 60) * 1e6;
  const [toughness, contrast, seconds] = [chance.between(0.2, 0.9), chance.between(-0.9, 0.9), chance.scale(1, 1e9)];
  const [interfaceToughness, rate, t12C, fragility] = [
    chance.between(5, 60),
    chance.scale(2, 5000),
    chance.between(450, 750),
    chance.between(22, 60),
  ];
  const segments = Array.from({ length: 3 }, (_, i) => ({
    toC: 720 - i * chance.between(60, 150),
    cPerHour: chance.scale(10, 2000),
  }));
  const soaked = segments.map((segment) => ({ ...segment, holdMinutes: chance.pick([0, 10, 300, 3000]) }));
  const absorption = chance.between(0, 20);
  const curvature = fit.stripCurvature(mismatch, glazeM, wallM, glazePa, bodyPa);
  return {
    ...{
      layers,
      mismatch,
      coats,
      stress,
      toughness,
      contrast,
      seconds,
      interfaceToughness,
      rate,
      t12C,
      fragility,
      soaked,
      absorption,
    },
    answers: {
      thin: fit.thinStress(glazePa, 0.2, mismatch),
      straight2: fit.straightWallStress(layers, mismatch, 2),
      straight1: fit.straightWallStress(layers, mismatch, 1),
      bilayer: fit.bilayerStress(layers, mismatch),
      bodyStress: fit.bodyStress(stress, glazeM, wallM, 2),
      stackBoth: fit.stackStress(coats, wall, "both-faces"),
      stackOne: fit.stackStress(coats, wall, "one-face"),
      stackFree: fit.stackStress(coats, wall, "one-face-free"),
      stiffnessContrast: fit.stiffnessContrast(glazePa, 0.2, bodyPa, layers.bodyPoisson),
      channelling: fit.channellingFactor(contrast),
      critical: fit.criticalStress(toughness * 1e6, fit.channellingFactor(contrast), glazeM),
      drivingStress: fit.drivingStress(stress, Math.abs(mismatch) * 1e11),
      meanBorne: fit.meanBorne(toughness * 3e7, Math.abs(mismatch) * 1e11),
      delayedShare: fit.delayedShare(seconds),
      edgeEnergy: fit.edgeEnergy(stress, glazeM, glazePa, 0.2),
      lifting: fit.liftingStress(interfaceToughness, glazeM, glazePa, 0.2),
      curvature,
      cantilever: fit.cantileverDeflection(curvature, 0.2),
      sag: fit.spanSag(curvature, 0.2),
      stripMismatch: fit.stripMismatch(curvature, glazeM, wallM, glazePa, bodyPa),
      ringClosing: fit.ringClosing(stress, 0.03, wallM, glazeM, bodyPa),
      ringClosingOf: fit.ringClosingOf(mismatch, 0.03, wallM, glazeM, glazePa, bodyPa),
      ringStress: fit.ringStress(6e-4, 0.03, wallM, glazeM, bodyPa),
      logSetting: fit.logSettingViscosity(rate),
      settingRatio: fit.settingRatio(fit.logSettingViscosity(rate), fragility),
      setPointOffset: fit.setPointOffset(t12C, rate, fragility),
      setPointAlong: fit.setPointAlong(t12C, fit.coolingOf(fit.coolingSchedule(soaked), fragility)),
      glassContraction: fit.glassContraction(6.5e-6, t12C, 0.0011, 160),
      meanOver: meanOver(6.5, 20, t12C),
      moistureAge: moistureAge(seconds / fit.YEAR_S),
      stiffnessLeft: stiffnessLeft(absorption),
    },
  };
}
