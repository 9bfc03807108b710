/** What the environment may say, and what is made of it. */
import { describe, expect, it } from "vitest";
import { callerAddress } from "../../api/http/caller.ts";
import { readSettings, SettingsError } from "../../api/http/settings.ts";

const home = { loopback: true, watched: true };
const abroad = { loopback: false, watched: false };
const hash = "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";

describe("settings", () => {
  it("leave a service at home open, quiet and unlimited", () => {
    expect(readSettings({}, home)).toEqual({
      keyHashes: [],
      perMinute: null,
      proxies: 0,
      origins: [],
      mostAtOnce: 256,
      log: false,
      metrics: false,
      workers: 1,
      drainS: 0,
    });
  });

  it("limit and log a service that others can reach, unless told otherwise", () => {
    expect(readSettings({}, abroad)).toMatchObject({ perMinute: 600, log: true, metrics: false, origins: [] });
    const told = { RINGTRUE_RATE: "off", RINGTRUE_LOG: "off" };
    expect(readSettings(told, abroad)).toMatchObject({ perMinute: null, log: false });
    expect(readSettings({ RINGTRUE_RATE: "60" }, home).perMinute).toBe(60);
  });

  it("take several keys and origins, parted by commas or blanks", () => {
    const told = {
      RINGTRUE_KEYS: `${hash.toUpperCase()}, ${hash}`,
      RINGTRUE_ORIGINS: "https://a.example http://b.example:81",
    };
    const { keyHashes, origins } = readSettings(told, home);
    expect(keyHashes).toEqual([hash, hash]);
    expect(origins).toEqual(["https://a.example", "http://b.example:81"]);
    expect(readSettings({ RINGTRUE_ORIGINS: "*" }, home).origins).toEqual(["*"]);
  });

  it.each([
    [{ RINGTRUE_KEY: hash }, "I don't know the setting RINGTRUE_KEY. Did you mean RINGTRUE_KEYS?"],
    [{ RINGTRUE_RATE: "fast" }, /^RINGTRUE_RATE is fast\. It must be a whole number from 1 to 1000000/],
    [{ RINGTRUE_RATE: "0" }, /^RINGTRUE_RATE is 0\./],
    [{ RINGTRUE_CONCURRENCY: "1.5" }, /^RINGTRUE_CONCURRENCY is 1\.5\./],
    [{ RINGTRUE_LOG: "yes" }, "RINGTRUE_LOG is yes. It must be on or off."],
    [{ RINGTRUE_ORIGINS: "studio.example" }, /^RINGTRUE_ORIGINS holds studio\.example\./],
    [{ RINGTRUE_ORIGINS: "https://studio.example/" }, /^RINGTRUE_ORIGINS holds/],
    [{ WORKERS: "-2" }, /^WORKERS is -2\./],
  ])("refuse %j with a sentence", (env, message) => {
    const read = () => readSettings(env as Record<string, string>, home);
    expect(read).toThrow(SettingsError);
    expect(read).toThrow(message);
  });

  it("never repeat a key that was given in place of its hash", () => {
    expect(() => readSettings({ RINGTRUE_KEYS: "larch-lane-secret" }, home)).toThrow(/17 letters long/);
    expect(() => readSettings({ RINGTRUE_KEYS: "larch-lane-secret" }, home)).not.toThrow(/secret/);
  });
});

describe("callerAddress", () => {
  // Addresses are those set aside for documentation: RFC 5737, RFC 3849.
  it.each([
    ["192.0.2.1", undefined, 0, "192.0.2.1"],
    ["192.0.2.1", "203.0.113.9", 0, "192.0.2.1"],
    ["10.0.0.1", "203.0.113.9, 198.51.100.7", 1, "198.51.100.7"],
    ["10.0.0.1", "203.0.113.9, 198.51.100.7", 2, "203.0.113.9"],
    ["10.0.0.1", undefined, 1, "10.0.0.1"],
    ["::ffff:192.0.2.1", undefined, 0, "192.0.2.1"],
    ["2001:db8:1:2:3:4:5:6", undefined, 0, "2001:db8:1:2::/64"],
    ["2001:db8::1", undefined, 0, "2001:db8:0:0::/64"],
    [undefined, undefined, 0, "unknown"],
  ])("%s, forwarded %s, %i proxies: %s", (socket, forwarded, proxies, address) => {
    expect(callerAddress(socket, forwarded, proxies)).toBe(address);
  });
});
