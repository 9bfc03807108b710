/**
 * Counts of what the service does, as text for a Prometheus server (text exposition format 0.0.4).
 *
 * @module
 */

/** Upper bounds of the time classes [s]. */
const BOUNDS_S = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

/** What one answered request adds. */
export interface Observation {
  method: string;
  /** The address as it is described, parameters in place of values: few, whatever is asked for. */
  route: string;
  status: number;
  /** From the request to the last byte handed on [s]. */
  seconds: number;
}

interface Times {
  counts: number[];
  sum: number;
}

const METHODS = ["GET", "HEAD", "POST", "OPTIONS"];

/** Counts kept in memory, bounded by the number of routes. */
export class Metrics {
  private readonly requests = new Map<string, number>();
  private readonly times = new Map<string, Times>();
  private underWay = 0;
  private readonly process: string;

  /** @param process - tells the workers of one machine apart */
  constructor(process = "") {
    this.process = process ? `,process="${process}"` : "";
  }

  begin(): void {
    this.underWay += 1;
  }

  end({ method, route, status, seconds }: Observation): void {
    this.underWay -= 1;
    const verb = METHODS.includes(method) ? method : "other";
    const labels = `method="${verb}",route="${route}",status="${status}"${this.process}`;
    this.requests.set(labels, (this.requests.get(labels) ?? 0) + 1);
    const own = `route="${route}"${this.process}`;
    let times = this.times.get(own);
    if (!times) {
      times = { counts: Array(BOUNDS_S.length + 1).fill(0), sum: 0 };
      this.times.set(own, times);
    }
    const at = BOUNDS_S.findIndex((bound) => seconds <= bound);
    times.counts[at < 0 ? BOUNDS_S.length : at]! += 1;
    times.sum += seconds;
  }

  /** The counts as text. */
  text(): string {
    const lines = ["# HELP ringtrue_requests_total Requests answered.", "# TYPE ringtrue_requests_total counter"];
    for (const [labels, count] of this.requests) lines.push(`ringtrue_requests_total{${labels}} ${count}`);
    lines.push("# HELP ringtrue_requests_under_way Requests not yet answered.");
    lines.push("# TYPE ringtrue_requests_under_way gauge");
    lines.push(`ringtrue_requests_under_way{${this.process.slice(1)}} ${this.underWay}`.replace("{}", ""));
    lines.push("# HELP ringtrue_request_seconds Time from request to last byte handed on.");
    lines.push("# TYPE ringtrue_request_seconds histogram");
    for (const [own, { counts, sum }] of this.times) {
      let total = 0;
      counts.forEach((count, i) => {
        total += count;
        lines.push(`ringtrue_request_seconds_bucket{${own},le="${BOUNDS_S[i] ?? "+Inf"}"} ${total}`);
      });
      lines.push(`ringtrue_request_seconds_sum{${own}} ${sum}`, `ringtrue_request_seconds_count{${own}} ${total}`);
    }
    return `${lines.join("\n")}\n`;
  }
}
