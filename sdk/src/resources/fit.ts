/** The main question: will this glaze fit this clay? @module */
import { Call } from "../call.ts";
import type { CheckFitData, CheckFitResponse, FitLine, FitVerdict } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import { picturePng, sheetSvg } from "../sheets.ts";
import { type LineAnswer, streamLines } from "../stream.ts";
import type { Transport } from "../transport.ts";

type PictureQuery = NonNullable<CheckFitData["query"]>;

/** Which picture of a fit, and how it should look. */
export interface PictureChoice {
  picture?: PictureQuery["picture"] | undefined;
  theme?: PictureQuery["theme"] | undefined;
  width?: 980 | 720 | 350 | undefined;
  standalone?: boolean | undefined;
}

/** `client.fit` */
export class Fit {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * Whether a glaze fits a body: verdict, chances, stress in the glaze and the reasons.
   *
   * Tension is positive: −40 MPa squeezes the glaze, +20 MPa pulls it apart. Every figure carries low, high and unit.
   * @param body - glaze (parts by weight, wt % or 1e-6/K; thickness [mm]), clay body, firing [°C, K/h] and ware [mm]
   * @returns the report: chances [-] that sum to 1, stress [MPa], mismatch [%], set point [°C]
   * @throws UnprocessableError when something cannot be; `issues` says which field, why, and what would do
   * @example
   * const report = await client.fit.check({
   *   glaze: {
   *     recipe: [
   *       { material: "potash-feldspar", parts: 42 },
   *       { material: "silica", parts: 22 },
   *       { material: "whiting", parts: 18 },
   *       { material: "kaolin", parts: 12 },
   *     ],
   *     thicknessMm: 0.3,
   *   },
   *   body: { class: "red-stoneware", expansion: { value: 6.2, rangeC: [20, 500], plusMinus: 0.3 } },
   * });
   * console.log(report.headline);
   */
  check(body: CheckFitData["body"], options?: CallOptions): Call<CheckFitResponse> {
    const request = { method: "POST", path: "/v1/fit", body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<CheckFitResponse>(request, options));
  }

  /**
   * A fit as a picture, as SVG text with a title and a description in words.
   * @param body - as for {@link check}; the picture brings the curves or parts that it draws
   * @param choice - which picture (the verdict), theme (light), width it is laid out for (980) [px], and whether the
   *   finding stands above it in words (it does unless `standalone` is false, as for one set into a page)
   * @returns SVG text, at most 30 kB
   * @throws UnprocessableError when something cannot be, as for {@link check}
   * @example
   * const svg = await client.fit.picture(
   *   { glaze: { expansion: { value: 7.2 } }, body: { class: "red-stoneware" } },
   *   { picture: "verdict", theme: "dark", width: 350 },
   * );
   * console.log(svg.slice(0, 4));
   */
  picture(body: CheckFitData["body"], choice: PictureChoice = {}, options: CallOptions = {}): Call<string> {
    return sheetSvg(this.#transport, picturePath(choice), JSON.stringify(body), options);
  }

  /**
   * A fit as a picture, as the bytes of a PNG, two pixels to a unit, for programs that take no SVG.
   * @param body - as for {@link check}
   * @param choice - as for {@link picture}
   * @returns bytes to write to a file or send on
   * @throws ApiError with status 406 where the service runs without a renderer, as on some edge runtimes: take
   *   {@link picture} there
   * @throws UnprocessableError when something cannot be, as for {@link check}
   * @example
   * const png = await client.fit.png(
   *   { glaze: { expansion: { value: 7.2 } }, body: { class: "red-stoneware" } },
   *   { picture: "verdict", theme: "print", width: 720 },
   * );
   * console.log(png.length > 1000);
   */
  png(
    body: CheckFitData["body"],
    choice: PictureChoice = {},
    options: CallOptions = {},
  ): Call<Uint8Array<ArrayBuffer>> {
    return picturePng(this.#transport, picturePath(choice), JSON.stringify(body), options);
  }

  /**
   * Any number of fits, answered in order. A line that cannot be answered yields its problem, and the rest go on.
   * The source is read only as fast as the answers are taken; leaving the loop stops the service's work.
   * @param lines - questions as for {@link check}, from an array, a generator or an async source
   * @returns for each line its place from 1, its `id` if it had one, and either `result` (stress [MPa], chances [-]) or `error`
   * @example
   * for await (const { line, result, error } of client.fit.stream(questions)) {
   *   console.log(line, error ? error.detail : result.headline);
   * }
   */
  stream(
    lines: Iterable<FitLine> | AsyncIterable<FitLine>,
    options?: CallOptions,
  ): AsyncGenerator<LineAnswer<CheckFitResponse>, void, undefined> {
    return streamLines<CheckFitResponse>(this.#transport, "/v1/fit/stream", lines, options);
  }

  /**
   * The same in short, for long tables: the verdict and the figures it rests on, from the same draws, without reasons,
   * trials and next steps. A third of the size, and quicker.
   * @param lines - questions as for {@link stream}; `include` asks for nothing here
   * @returns for each line its place from 1, its `id` if it had one, and either `result` (stress [MPa], chances [-]) or `error`
   * @example
   * for await (const { line, result, error } of client.fit.verdicts(questions)) {
   *   console.log(line, error ? error.detail : result.verdict);
   * }
   */
  verdicts(
    lines: Iterable<FitLine> | AsyncIterable<FitLine>,
    options?: CallOptions,
  ): AsyncGenerator<LineAnswer<FitVerdict>, void, undefined> {
    return streamLines<FitVerdict>(this.#transport, "/v1/fit/verdicts", lines, options);
  }
}

function picturePath(choice: PictureChoice): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(choice)) if (value !== undefined) query.set(name, String(value));
  return `${query}` === "" ? "/v1/fit" : `/v1/fit?${query}`;
}
