/** How far a glaze runs. @module */
import { Call } from "../call.ts";
import type { EstimateRunningData, EstimateRunningResponses } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import { sheetSvg } from "../sheets.ts";
import type { Transport } from "../transport.ts";

const PATH = "/v1/running";
type Report = Exclude<EstimateRunningResponses[200], string>;
type PictureQuery = NonNullable<EstimateRunningData["query"]>;

/** How the picture of a run should look. */
export interface RunningPictureChoice {
  theme?: PictureQuery["theme"] | undefined;
  width?: 980 | 720 | 350 | undefined;
  standalone?: boolean | undefined;
}

/** `client.running` */
export class Running {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * How far a glaze, or a stack of coats, runs down a wall over a firing, and again when refired.
   * @param body - glaze or coats with their thickness [mm], firing [°C, K/h, min] or cone, wall [mm, °]
   * @returns run and roll [mm], the band to leave bare [mm], viscosity along the firing [log10(Pa·s)], what slows it, faults to look for
   * @throws UnprocessableError when glaze, firing or wall cannot be
   * @example
   * const report = await client.running.estimate({
   *   glaze: {
   *     oxides: { basis: "molePercent", amounts: { SiO2: 66, Al2O3: 8, CaO: 14, K2O: 5, Na2O: 7 } },
   *     thicknessMm: 0.4,
   *   },
   *   firing: { cone: "6", heatingCPerHour: 60, holdMinutes: 15, coolingCPerHour: 150 },
   *   wall: { glazedMm: 120, clearanceMm: 6 },
   * });
   * console.log(report.headline);
   */
  estimate(body: EstimateRunningData["body"], options?: CallOptions): Call<Report> {
    const request = { method: "POST", path: PATH, body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<Report>(request, options));
  }

  /**
   * The wall before and after, and viscosity along the firing, as SVG text with a title and a description in words.
   * @param body - as for {@link estimate}
   * @param choice - theme (light), width it is laid out for (980) [px], and whether the finding stands above it in words
   * @returns SVG text
   * @throws UnprocessableError when something cannot be, as for {@link estimate}
   * @example
   * const svg = await client.running.picture(
   *   { glaze: { recipe: [{ material: "potash-feldspar", parts: 70 }, { material: "whiting", parts: 30 }] }, firing: { peakC: 1240 } },
   *   { theme: "dark", width: 350 },
   * );
   * console.log(svg.slice(0, 4));
   */
  picture(
    body: EstimateRunningData["body"],
    choice: RunningPictureChoice = {},
    options: CallOptions = {},
  ): Call<string> {
    const query = new URLSearchParams();
    for (const [name, value] of Object.entries(choice)) if (value !== undefined) query.set(name, String(value));
    const asked = `${query}` === "" ? "" : `?${query}`;
    return sheetSvg(this.#transport, `${PATH}${asked}`, JSON.stringify(body), options);
  }
}
