// With the types of the OpenAPI document alone: signs in, takes a new part through its first stage as the route in force asks for it.
import createClient from "openapi-fetch";
import type { components, paths } from "./schema.js";

declare const process: { argv: string[] };

const client = createClient<paths>({ baseUrl: process.argv[2] ?? "http://127.0.0.1:5080" });

// What was answered, or the problem as an error.
function good<T>(answer: { data?: T; error?: components["schemas"]["Problem"] }): T {
  if (answer.data === undefined) {
    throw new Error(JSON.stringify(answer.error));
  }
  return answer.data;
}

const session = good(await client.POST("/api/v1/sessions", { body: { badge: "BUILD1", pin: "1111" } }));
client.use({
  onRequest({ request }) {
    request.headers.set("Authorization", `Bearer ${session.token}`);
    return request;
  },
});

const routes = good(await client.GET("/api/v1/routes"));
const route = routes.items.find((r) => r.stages[0]?.method === "entered-limits" && r.stages[0].instrumentKinds.length === 0 && r.kind !== "film-lot");
const stage = route?.stages[0];
if (route === undefined || stage === undefined) {
  throw new Error("no route begins with a stage of entered limits");
}
const station = good(await client.GET("/api/v1/stations")).items[0];
const part = good(await client.POST("/api/v1/parts", { body: { kind: route.kind, model: route.model } }));
const attempt = good(
  await client.POST("/api/v1/parts/{serial}/attempts", {
    params: { path: { serial: part.serial } },
    body: { stage: stage.code, station: station?.code ?? "" },
  }),
);
const id = attempt.id;
for (const slot of stage.slots) {
  const lots = good(await client.GET("/api/v1/lots", { params: { query: { kind: slot.accepts.lotKind ?? "", state: "released" } } }));
  const lot = lots.items.find((l) => l.holds.length === 0)?.number ?? null;
  good(await client.POST("/api/v1/attempts/{id}/fittings", { params: { path: { id } }, body: { position: slot.position, lot } }));
}
for (const c of stage.characteristics.filter((c) => c.entered)) {
  const value = c.lower !== null && c.upper !== null ? (c.lower + c.upper) / 2 : (c.nominal ?? c.lower ?? c.upper ?? 1);
  good(await client.POST("/api/v1/attempts/{id}/readings", { params: { path: { id } }, body: [{ characteristic: c.name, value }] }));
}
const closed = good(await client.POST("/api/v1/attempts/{id}/close", { params: { path: { id } }, body: {} }));
const verdict: components["schemas"]["Verdict"] = closed.verdict;
console.log(`${closed.serial}: ${stage.title}: ${verdict}`);
if (verdict !== "pass") {
  throw new Error(JSON.stringify(closed));
}
