/** Where in a blend it fits. @module */
import { Call } from "../call.ts";
import { ConnectionError } from "../errors.ts";
import type { BlendLine, MapBlendData, MapBlendResponse } from "../generated/types.gen.ts";
import type { CallOptions } from "../options.ts";
import { sheetSvg } from "../sheets.ts";
import { streamAnswers } from "../stream.ts";
import { parse, type Transport } from "../transport.ts";

type Blend = MapBlendData["body"];

type PictureQuery = NonNullable<MapBlendData["query"]>;

/** How the picture of a blend should look. */
export interface BlendPictureChoice {
  theme?: PictureQuery["theme"] | undefined;
  width?: 980 | 720 | 350 | undefined;
  standalone?: boolean | undefined;
}

/** `client.blends` */
export class Blends {
  readonly #transport: Transport;
  constructor(transport: Transport) {
    this.#transport = transport;
  }

  /**
   * Every mixture of a line, triangle or grid, or of as many glazes as you like, judged; up to 2500 points in one piece.
   * @param body - two recipes or more, steps along an edge [-], clay, firing [°C, K/h], ware [mm]
   * @returns tiles with label, recipe [parts in 100], expansion [1e-6/K], verdict and chances [-], in weighing order
   * @throws UnprocessableError when something cannot be
   * @example
   * const thaw = { recipe: [{ material: "potash-feldspar", parts: 60 }, { material: "whiting", parts: 20 }, { material: "silica", parts: 20 }] };
   * const hail = { recipe: [{ material: "nepheline-syenite", parts: 50 }, { material: "talc", parts: 20 }, { material: "silica", parts: 30 }] };
   * const { headline, points } = await client.blends.map({
   *   corners: [{ name: "Thaw", glaze: thaw }, { name: "Hail", glaze: hail }],
   *   steps: 4,
   *   body: { class: "buff-stoneware" },
   * });
   * console.log(headline, points.length);
   */
  map(body: Blend, options?: CallOptions): Call<MapBlendResponse> {
    const request = { method: "POST", path: "/v1/blends", body: JSON.stringify(body) } as const;
    return new Call(this.#transport.json<MapBlendResponse>(request, options));
  }

  /**
   * A blend as a picture, as SVG text with a title and a description: a line as a tile a row; a triangle or square with
   * contours of soundness and the ring of each verdict on them; more corners as rings over their stress, with the likeliest
   * to stay sound in words.
   * @param body - as for {@link map}, whole: without `from` and `count`
   * @param choice - theme (light), width it is laid out for (980) [px], and whether the finding
   *   stands above it in words
   * @returns SVG text
   * @throws UnprocessableError when something cannot be, or has no place on paper
   * @example
   * const talc = { recipe: [{ material: "talc", parts: 40 }, { material: "silica", parts: 60 }] };
   * const svg = await client.blends.picture(
   *   { corners: [{ glaze: glazes[0].glaze }, { glaze: talc }], steps: 4, body: { class: "buff-stoneware" } },
   *   { width: 350 },
   * );
   * console.log(svg.slice(0, 4));
   */
  picture(body: Blend, choice: BlendPictureChoice = {}, options: CallOptions = {}): Call<string> {
    const query = new URLSearchParams();
    for (const [name, value] of Object.entries(choice)) if (value !== undefined) query.set(name, String(value));
    const asked = `${query}` === "" ? "" : `?${query}`;
    return sheetSvg(this.#transport, `/v1/blends${asked}`, JSON.stringify(body), options);
  }

  /**
   * The same point by point, up to 20000 of them. When the connection breaks, it goes on from the point that is missing;
   * leaving the loop stops the service's work.
   * @param body - as for {@link map}; `from` begins later
   * @returns tiles as they are worked out, each with its `index` and how many there are (`of`)
   * @example
   * const line = { corners: [{ glaze: glazes[0].glaze }, { glaze: { recipe: [{ material: "talc", parts: 40 }, { material: "silica", parts: 60 }] } }], body: { class: "buff-stoneware" } };
   * for await (const point of client.blends.stream(line)) {
   *   console.log(point.label, "verdict" in point ? point.verdict : point.problem);
   * }
   */
  stream(body: Blend, options: CallOptions = {}): AsyncGenerator<BlendLine, void, undefined> {
    return points(this.#transport, body, options);
  }
}

async function* points(
  transport: Transport,
  body: Blend,
  options: CallOptions,
): AsyncGenerator<BlendLine, void, undefined> {
  let from = body.from ?? 0;
  const end = body.count === undefined ? undefined : from + body.count;
  for (let tries = 1; ; tries++) {
    const rest = { ...body, from, ...(end === undefined ? {} : { count: end - from }) };
    try {
      for await (const { text, response } of streamAnswers(transport, "/v1/blends", JSON.stringify(rest), options)) {
        const point = parse<BlendLine>(text, response);
        from = point.index + 1;
        tries = 1;
        yield point;
        if (from === (end ?? point.of) || from === point.of) return;
      }
      throw new ConnectionError(`The answer broke off before point ${from}.`);
    } catch (error) {
      await transport.pauseAfter(error, tries, options);
    }
  }
}
