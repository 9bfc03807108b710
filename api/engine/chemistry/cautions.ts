/** Cautions for a glaze: each once, in the order of the table. @module */
import type { Notice } from "../errors.ts";
import { CAUTIONS } from "../recipe/materials.ts";
import type { Material } from "../recipe/types.ts";
import { OXIDE_INDEX, traceAtoms } from "./oxides.ts";
import type { LeftOut } from "./traces.ts";
import type { Yield } from "./yield.ts";

const RULES = CAUTIONS.map((rule) => ({
  ...rule,
  index: rule.oxide ? OXIDE_INDEX.get(rule.oxide)! : -1,
  limit: rule.limitFiredPercent ?? Number.POSITIVE_INFINITY,
  aboutWare: rule.about.includes("ware"),
}));
/** Rules about elements that no oxide counted holds. */
const OF_TRACES = RULES.flatMap(({ elements, limit }, rule) => (elements ? { rule, elements, limit } : []));
const ruleOf = (code: string) => RULES.findIndex((rule) => rule.code === code);
/** Dusts that say all that the plain one would. */
const DUSTS = ["silica-dust", "needle-dust", "talc-dust", "zircon-dust"].map(ruleOf);
const PLAIN_DUST = ruleOf("dust");
const SILICA_DUST = ruleOf("silica-dust");
const COPPER = ruleOf("copper");
const HIGH_COPPER = ruleOf("high-copper");
const LEACH_TEST = ruleOf("leach-test");
/** What a harmful gas calls for. */
const FUMES: ReadonlyMap<string, number> = new Map([
  ["F", ruleOf("fluoride-fumes")],
  ["SO3", ruleOf("sulfur-fumes")],
  ["N2O5", ruleOf("nitrogen-fumes")],
  ["Cl", ruleOf("chlorine-fumes")],
]);

/**
 * Cautions that a recipe and its fired glaze call for. The limits stand in the data, `common practice, no source`.
 * @param materials - built-in materials weighed out
 * @param firedPercent - weight per cent of each of `OXIDES` in the fired glaze [wt %]
 * @param own - lines of one's own weighed out, which carry no cautions: their fumes and silica dust are told
 * @param leftOut - oxides that are not counted, by their share of the fired glaze
 * @returns notices, each code once; `leach-test` last when anything may come out of the fired ware
 */
export function glazeCautions(
  materials: readonly Material[],
  firedPercent: ArrayLike<number>,
  own: readonly Yield[] = [],
  leftOut: readonly LeftOut[] = [],
): Notice[] {
  called.fill(0);
  for (const { fumes, silicaDust } of own) {
    for (const gas of fumes) called[FUMES.get(gas)!] = 1;
    if (silicaDust) called[SILICA_DUST] = 1;
  }
  for (const material of materials) for (const rule of rulesOf(material)) called[rule] = 1;
  RULES.forEach(({ index, limit }, rule) => {
    if (index >= 0 && firedPercent[index]! >= limit) called[rule] = 1;
  });
  if (leftOut.length > 0) {
    for (const { rule, elements, limit } of OF_TRACES) {
      const holds = ({ name }: LeftOut) => elements.some((element) => element in traceAtoms(name)!);
      const percent = leftOut.filter(holds).reduce((sum, one) => sum + one.percent, 0);
      if (percent >= limit) called[rule] = 1;
    }
  }
  if (DUSTS.some((dust) => called[dust])) called[PLAIN_DUST] = 0;
  if (called[HIGH_COPPER]) called[COPPER] = 0;
  const notices: Notice[] = [];
  let ware = false;
  RULES.forEach(({ code, message, aboutWare }, rule) => {
    if (rule === LEACH_TEST ? !ware : !called[rule]) return;
    ware ||= aboutWare;
    notices.push({ code, message });
  });
  return notices;
}

/** Places in the table of the cautions that a material carries; looked up once, since every fit asks. */
function rulesOf(material: Material): readonly number[] {
  let rules = carried.get(material);
  if (!rules) {
    rules = material.cautions.map(({ code }) => ruleOf(code));
    carried.set(material, rules);
  }
  return rules;
}

const carried = new WeakMap<Material, readonly number[]>();
/** 1 for each rule that is called for; used again by the next call. */
const called = new Uint8Array(RULES.length);
