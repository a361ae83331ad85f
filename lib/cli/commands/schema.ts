import { z } from "zod";
import { briefSchema } from "../../brief";
import { capacitySchema, layoutSchema, resultSchema } from "../../layout";
import { HOUSE_RULES, PROFILE_VALUES } from "../../rules";
import { venueSchema } from "../../venue";
import { jsonText, resultTo, type Command } from "../command";
import { badLine } from "../problem";

/** Files that are read may leave out what has a default; files that are written hold it. */
const SCHEMAS = {
  venue: { schema: venueSchema, io: "input", title: "VENUE, marquetry.venue/1" },
  brief: { schema: briefSchema, io: "input", title: "BRIEF, marquetry.brief/1" },
  layout: { schema: layoutSchema, io: "input", title: "LAYOUT, one of a result's layouts" },
  result: { schema: resultSchema, io: "output", title: "RESULT, marquetry.result/1" },
  capacity: { schema: capacitySchema, io: "output", title: "CAPACITY, marquetry.capacity/1" },
} as const;
type Name = keyof typeof SCHEMAS;
const isName = (text: string): text is Name => Object.hasOwn(SCHEMAS, text);

/** The JSON Schema (2020-12) of one of the files, made from the schema that reads it. */
export function schemaOf(name: Name): Readonly<Record<string, unknown>> {
  const { schema, io, title } = SCHEMAS[name];
  const made = z.toJSONSchema(schema, {
    target: "draft-2020-12", io, unrepresentable: "any",
    // That a list is not written to by the program says nothing to a reader of the file.
    override: ({ jsonSchema }) => { delete jsonSchema.readOnly; },
  });
  return { title, ...made, ...(name === "venue" ? { "x-rule-defaults": ruleDefaults() } : {}) };
}

/** The value of every rule in every profile, taken where a venue gives none of its own. Lengths in mm, floor in square metres. */
const ruleDefaults = (): Readonly<Record<string, unknown>> => ({ profile: "model-code", profiles: PROFILE_VALUES, house: HOUSE_RULES });

export const command: Command = {
  usage: { name: "schema", files: ["NAME"], options: ["--out"], switches: [] },
  run: async (args, io) => {
    const name = args.files[0] ?? "";
    if (!isName(name)) throw badLine("NAME", `"${name}" is not allowed; allowed: one of ${Object.keys(SCHEMAS).join(", ")}`);
    const put = await resultTo({ ...args, files: [] }, io);
    await put(jsonText(schemaOf(name)));
    return 0;
  },
};
