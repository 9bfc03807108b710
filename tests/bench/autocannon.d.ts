/** The part of autocannon that the bench uses; the package brings no types. */
declare module "autocannon" {
  interface Result {
    requests: { average: number; total: number };
    errors: number;
    non2xx: number;
  }
  interface Options {
    url: string;
    method: "POST";
    headers: Record<string, string>;
    body: string;
    connections: number;
    duration: number;
  }
  export default function autocannon(options: Options): Promise<Result>;
}
