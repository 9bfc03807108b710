/** Thermal strain of the phases of fired bodies, and of mixtures of them. @module */
import phaseData from "../../../data/bodies/phases.json" with { type: "json" };
import { closest, ImpossibleValueError, type Issue } from "../errors.ts";
import { type EvenTable, readPoints, tabulate } from "../numeric/interpolate.ts";

/** One phase: how it grows with temperature and how stiff it is. */
export interface Phase {
  id: string;
  name: string;
  /** Linear strain from 20 °C [-] at a temperature [°C], up to 1000 °C. */
  strain: (c: number) => number;
  /** Bulk modulus [Pa]. */
  bulkPa: number;
  /** Shear modulus [Pa]. */
  shearPa: number;
  /** False where no modulus was found and that of the glass stands in. */
  stiffnessKnown: boolean;
  densityKgPerM3: number;
  sources: readonly string[];
}

interface PhaseRow {
  name: string;
  points?: number[][];
  meanExpansion?: { value: number };
  ceramicMean20To1000?: number;
  youngsGPa: number | null;
  poisson: number | null;
  densityKgPerM3: number;
  sources: string[];
}

const GLASS = { youngsGPa: 70, poisson: 0.2 };

/** Every phase known here, by id. */
export const PHASES: ReadonlyMap<string, Phase> = new Map(
  Object.entries(phaseData.phases as unknown as Record<string, PhaseRow>).map(([id, row]) => [id, toPhase(id, row)]),
);

function toPhase(id: string, row: PhaseRow): Phase {
  const young = (row.youngsGPa ?? GLASS.youngsGPa) * 1e9;
  const poisson = row.youngsGPa === null ? GLASS.poisson : (row.poisson ?? GLASS.poisson);
  return {
    id,
    name: row.name,
    strain: strainOf(row),
    bulkPa: young / (3 * (1 - 2 * poisson)),
    shearPa: young / (2 * (1 + poisson)),
    stiffnessKnown: row.youngsGPa !== null,
    densityKgPerM3: row.densityKgPerM3,
    sources: row.sources,
  };
}

function strainOf(row: PhaseRow): (c: number) => number {
  if (!row.points) {
    const alpha = row.meanExpansion!.value * 1e-6;
    return (c) => alpha * (c - 20);
  }
  const points = row.points as unknown as [number, number][];
  const printed = points.at(-1)![1] / 100;
  const scale = row.ceramicMean20To1000 ? (row.ceramicMean20To1000 * 1e-6 * 980) / printed : 1;
  return (c) => (readPoints(points, c) / 100) * scale;
}

/** Quartz and cristobalite strain from 20 °C [-], tabulated every 2.5 °C to 1000 °C for the hot loop. */
export const QUARTZ_STRAIN: EvenTable = tabulate(20, 1000, 2.5, PHASES.get("quartz")!.strain);
export const CRISTOBALITE_STRAIN: EvenTable = tabulate(20, 1000, 2.5, PHASES.get("cristobalite")!.strain);

/** Share of its free strain that quartz adds in a coarse vitrified body, where grains part from the glass [-]. */
export const DEBONDED_QUARTZ = 0.68;

/** Three rules for the strain of a mixture at one temperature [-]. */
export interface MixtureStrain {
  /** Volume-weighted mean: the upper reference. */
  linear: number;
  /** Turner 1946: every grain squeezed alike. */
  turner: number;
  /** Kerner 1956 with the named matrix: what is used. */
  kerner: number;
}

/** One part of a mixture. */
export interface MixturePart {
  /** Volume fraction [-]. */
  fraction: number;
  /** What is mixed: a strain [-] or an expansion (any unit, the same for all). */
  value: number;
  /** Bulk modulus [any unit, the same as the matrix's shear modulus]. */
  bulk: number;
}

/**
 * Expansion of a mixture of grains by three rules.
 *
 *     kerner = Σ φ α K/(3K + 4G_m) / Σ φ K/(3K + 4G_m)      turner = Σ φ α K / Σ φ K      linear = Σ φ α
 *
 * @param parts - volume fractions, expansions or strains, bulk moduli
 * @param matrixShear - shear modulus of the continuous phase
 * @returns the mixture's value by each rule, in the unit of the parts
 * Source: E.H. Kerner, Proc. Phys. Soc. B 69 (1956) 808; P.S. Turner, J. Res. NBS 37 (1946) 239 (from memory).
 * @example mixture([{ fraction: .3, value: 25, bulk: 90 }, { fraction: .7, value: 5, bulk: 40.5 }], 29).kerner // 12.39
 */
export function mixture(parts: readonly MixturePart[], matrixShear: number): MixtureStrain {
  let total = 0;
  let linear = 0;
  let turnerTop = 0;
  let turnerBottom = 0;
  let kernerTop = 0;
  let kernerBottom = 0;
  for (const { fraction, value, bulk } of parts) {
    const stiffness = bulk / (3 * bulk + 4 * matrixShear);
    total += fraction;
    linear += fraction * value;
    turnerTop += fraction * bulk * value;
    turnerBottom += fraction * bulk;
    kernerTop += fraction * stiffness * value;
    kernerBottom += fraction * stiffness;
  }
  return { linear: linear / total, turner: turnerTop / turnerBottom, kerner: kernerTop / kernerBottom };
}

/**
 * Strain of a body made of phases, by {@link mixture} at one temperature.
 * @param fractions - volume fractions by phase id; they are normalised to 1 [-]
 * @param c - temperature [°C], 20 to 1000
 * @param options - `matrix` id (default `glass`), `quartzFactor` on the strain of quartz [-] (default 1)
 * @returns linear strains from 20 °C [-], expansion positive
 * @remarks Porosity does not change the expansion of an isotropic porous body and is left out (Levin's argument).
 * Do not feed weight per cent: convert first with {@link toVolume}.
 * @example mixtureStrain({ glass: 1 }, 520).kerner // 5.5e-6 × 500 = 0.00275
 */
export function mixtureStrain(
  fractions: Readonly<Record<string, number>>,
  c: number,
  options: { matrix?: string; quartzFactor?: number } = {},
): MixtureStrain {
  const { matrix = "glass", quartzFactor = 1 } = options;
  const parts = Object.entries(fractions).map(([id, fraction]) => {
    const phase = PHASES.get(id)!;
    return { fraction, value: phase.strain(c) * (id === "quartz" ? quartzFactor : 1), bulk: phase.bulkPa };
  });
  return mixture(parts, PHASES.get(matrix)!.shearPa);
}

/**
 * Volume fractions from mass fractions.
 *
 *     φ_i = (w_i/ρ_i) / Σ (w_j/ρ_j)
 *
 * @param masses - masses by phase id, any unit
 * @returns volume fractions [-], sum 1
 * @example toVolume({ glass: 1 }) // { glass: 1 }
 */
export function toVolume(masses: Readonly<Record<string, number>>): Record<string, number> {
  const volumes = Object.entries(masses).map(([id, m]) => [id, m / PHASES.get(id)!.densityKgPerM3] as const);
  const total = volumes.reduce((sum, [, v]) => sum + v, 0);
  return Object.fromEntries(volumes.map(([id, v]) => [id, v / total]));
}

/**
 * Refuses phases that cannot be: unknown names, negative shares, nothing at all, more than 100 %.
 * @param phases - per cent by volume, by phase id
 * @param pointer - JSON Pointer of the phases in the input
 */
export function checkPhases(phases: Readonly<Record<string, number>>, pointer: string): void {
  const issues: Issue[] = [];
  let total = 0;
  for (const [id, percent] of Object.entries(phases)) {
    const at = `${pointer}/${id.replace(/~/g, "~0").replace(/\//g, "~1")}`;
    if (!PHASES.has(id)) {
      const suggestion = closest(id, PHASES.keys());
      issues.push({
        pointer: at,
        message: `I don't know this phase.${suggestion ? ` Did you mean ${suggestion}?` : ""}`,
        allowed: [...PHASES.keys()],
        ...(suggestion ? { suggestion } : {}),
      });
    }
    if (!Number.isFinite(percent) || percent < 0) {
      issues.push({ pointer: at, message: "A phase takes a share from 0 to 100 per cent by volume." });
    }
    total += percent;
  }
  if (issues.length === 0 && total <= 0) {
    issues.push({ pointer, message: "The phases add up to nothing. Give per cent by volume, glass included." });
  }
  if (issues.length === 0 && total > 100.5) {
    issues.push({
      pointer,
      message: `The phases add up to ${total.toFixed(1)} %. They are per cent of the solid by volume and stop at 100.`,
    });
  }
  if (issues.length > 0) throw new ImpossibleValueError(issues);
}
