/** Drawings: a sheet or picture as SVG text, all sheets as the bytes of a PDF, a picture as those of a PNG. @module */
import { Call } from "./call.ts";
import type { CallOptions } from "./options.ts";
import { type Transport, type WithResponse, withResponse } from "./transport.ts";

/** How a sheet is asked for. */
export interface SheetOptions extends CallOptions {
  /**
   * Which sheet, from 1.
   * @default 1
   */
  sheet?: number | undefined;
}

/** One sheet as SVG text. */
export function sheetSvg(transport: Transport, path: string, body: string, options: SheetOptions = {}): Call<string> {
  const at = options.sheet === undefined ? path : `${path}?sheet=${options.sheet}`;
  return new Call(printed(transport, at, body, "image/svg+xml", options, (response) => response.text()));
}

/** Every sheet as the bytes of one PDF. */
export function sheetPdf(
  transport: Transport,
  path: string,
  body: string,
  options: CallOptions = {},
): Call<Uint8Array<ArrayBuffer>> {
  return new Call(printed(transport, path, body, "application/pdf", options, bytesOf));
}

/** A picture as the bytes of a PNG. */
export function picturePng(
  transport: Transport,
  path: string,
  body: string,
  options: CallOptions = {},
): Call<Uint8Array<ArrayBuffer>> {
  return new Call(printed(transport, path, body, "image/png", options, bytesOf));
}

async function bytesOf(response: Response): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await response.arrayBuffer());
}

function printed<T>(
  transport: Transport,
  path: string,
  body: string,
  accept: string,
  options: CallOptions,
  read: (response: Response) => Promise<T>,
): Promise<WithResponse<T>> {
  return transport.retrying(options, async () => {
    const request = { method: "POST", path, body, accept } as const;
    const { response, deadline, deprecation } = await transport.open(request, options);
    try {
      const data = await deadline.race(read(response));
      return withResponse(data, response, deprecation);
    } finally {
      deadline.close();
    }
  });
}
