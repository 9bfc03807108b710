/** The yardstick: a bare Hono app that reads JSON and sends it back, no validation, no computing. */
import { serve } from "@hono/node-server";
import { Hono } from "hono";

const app = new Hono().post("/echo", async (c) => c.json(await c.req.json()));
serve({ fetch: app.fetch, port: Number(process.env.PORT), hostname: "127.0.0.1" });
