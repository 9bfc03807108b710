/** Who is asking, as far as limits need to know. @module */

/**
 * The caller's address, for counting. Addresses of version 6 count by their first 64 bits: one household has them all.
 * @param socket - address at the other end of the connection, where the runtime knows it
 * @param forwarded - the `x-forwarded-for` header
 * @param proxies - trusted proxies in front; each adds one entry, and anything before those may be made up
 * @example callerAddress("10.0.0.1", "203.0.113.9, 198.51.100.7", 1) // "198.51.100.7"
 */
export function callerAddress(socket: string | undefined, forwarded: string | undefined, proxies: number): string {
  const entries = (forwarded ?? "").split(",").map((entry) => entry.trim());
  const told = proxies > 0 ? entries.at(-proxies) || entries[0] : undefined;
  return narrow((told || socket || "unknown").slice(0, 64));
}

function narrow(address: string): string {
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address);
  if (mapped) return mapped[1]!;
  if (!address.includes(":")) return address;
  const [head = "", tail] = address.toLowerCase().split("::");
  const before = head === "" ? [] : head.split(":");
  const after = tail ? tail.split(":") : [];
  const gap = tail === undefined ? 0 : Math.max(0, 8 - before.length - after.length);
  const groups = [...before, ...Array<string>(gap).fill("0"), ...after];
  return `${groups.slice(0, 4).join(":")}::/64`;
}
