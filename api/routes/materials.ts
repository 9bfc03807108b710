/** Built-in materials. @module */
import { z } from "zod";
import { findMaterial, listMaterials } from "../engine/recipe/materials.ts";
import { tagged } from "../http/etag.ts";
import { JSON_TYPE } from "../http/media.ts";
import { named } from "../http/named.ts";
import { type Api, answer, badQuery, jsonAnswer, mount, notFound } from "../http/operation.ts";
import { knownValue, page } from "../http/paging.ts";
import { readQuery } from "../http/read-query.ts";
import { pageOf } from "../schemas/lists.ts";
import { Material, MaterialQuery } from "../schemas/material.ts";
import { type ShownMaterial, showMaterial } from "./show-material.ts";

const MaterialPage = pageOf(Material, "MaterialPage", "A page of materials.");
const id = z.string().meta({ description: "Identifier or common name of the material.", examples: ["whiting"] });

/** Every material as shown, worked out on first need. */
let shown: readonly ShownMaterial[] | undefined;
const everyMaterial = (): readonly ShownMaterial[] => {
  shown ??= listMaterials().map(showMaterial);
  return shown;
};

function filtered({ kind, oxide, q }: z.output<typeof MaterialQuery>): readonly ShownMaterial[] {
  const all = everyMaterial();
  knownValue("kind", kind, [...new Set(all.map((material) => material.kind))]);
  knownValue("oxide", oxide, [...new Set(all.flatMap((material) => Object.keys(material.weightPercent)))].sort());
  const wanted = q?.trim().toLowerCase();
  return all.filter(
    (material) =>
      (kind === undefined || material.kind === kind) &&
      (oxide === undefined || (material.weightPercent[oxide] ?? 0) > 0) &&
      (!wanted ||
        [material.id, material.name, ...material.aliases].some((name) => name.toLowerCase().includes(wanted))),
  );
}

export function materialRoutes(api: Api): void {
  mount(
    api,
    {
      method: "get",
      path: "/v1/materials",
      operationId: "listMaterials",
      tags: ["materials"],
      summary: "Built-in materials, with analyses, spread and sources",
      request: { query: MaterialQuery },
      responses: { 200: jsonAnswer(MaterialPage, "A page of materials."), ...badQuery },
      serves: JSON_TYPE,
      middleware: tagged,
    },
    (c) => {
      const query = readQuery(c, MaterialQuery);
      return answer(
        c,
        MaterialPage,
        page(filtered(query), (material) => material.id, query),
      );
    },
  );
  mount(
    api,
    {
      method: "get",
      path: "/v1/materials/{id}",
      operationId: "getMaterial",
      tags: ["materials"],
      summary: "One built-in material",
      request: { params: z.object({ id }) },
      responses: { 200: jsonAnswer(Material, "The material."), ...notFound },
      serves: JSON_TYPE,
      middleware: tagged,
    },
    (c) => answer(c, Material, showMaterial(named(c, "/v1/materials", (name) => findMaterial(name)))),
  );
}
