// A few small schemas of the same build as the plan's, for tests that must not depend on the plan's own words.

const home = "https://sightrail.invalid/schemas/";

const name = { type: "string", pattern: "^\\p{L}[\\p{L}\\p{N}_ ]*$", description: "A name.", examples: ["P1"] };
const length = { type: ["number", "string"], minLength: 1, "x-unit": "length", examples: [3.6, "450 mm"] };
const slope = { type: "string", "x-unit": "slope", examples: ["1 in 40"] };

export const forms = {
  $id: `${home}forms.schema.json`,
  $defs: {
    name,
    length,
    slope,
    pair: { type: "array", items: { type: "number" }, minItems: 2, maxItems: 2, examples: [[33, 14]] },
    base: { type: "object", properties: { existing: { type: "boolean" }, note: { type: "string" } } },
    branch: {
      oneOf: [
        { $ref: `${home}forms.schema.json#/$defs/pair` },
        {
          type: "object",
          required: ["run"],
          properties: { run: { $ref: "#/$defs/length" } },
          additionalProperties: false,
        },
        { type: "string", enum: ["corner", "middle"] },
      ],
    },
  },
};

export const wall = {
  $id: `${home}features/walls.schema.json`,
  $ref: `${home}forms.schema.json#/$defs/base`,
  type: "object",
  "x-synonyms": { tallness: "height" },
  properties: {
    line: {
      type: "array",
      minItems: 2,
      items: { $ref: `${home}forms.schema.json#/$defs/branch` },
      examples: [
        [
          [0, 0],
          [3, 4],
        ],
      ],
    },
    offsets: { type: "array", items: { type: "number" }, uniqueItems: true },
    height: { $ref: `${home}forms.schema.json#/$defs/length`, description: "How tall it stands.", examples: [1.26] },
    fall: { $ref: `${home}forms.schema.json#/$defs/slope` },
    build: { type: "string", enum: ["dry stone", "brick"], "x-synonyms": { drystane: "dry stone" } },
    seen: { type: "string", pattern: "^[0-9]{4}-[0-9]{2}-[0-9]{2}$", examples: ["2026-11-25"] },
    people: { type: "integer", minimum: 1, maximum: 50, examples: [5] },
    at: { $ref: `${home}forms.schema.json#/$defs/pair` },
    near: { $ref: `${home}forms.schema.json#/$defs/name` },
    over: { type: "number" },
    from: { type: "number" },
    run: { type: "number" },
    along: { type: "string" },
  },
  required: ["height"],
  oneOf: [{ required: ["line"] }, { required: ["offsets", "along"] }],
  not: { required: ["over", "from"] },
  dependentRequired: { run: ["along"] },
  unevaluatedProperties: false,
};

export const plan = {
  $id: `${home}plan.schema.json`,
  type: "object",
  required: ["title"],
  properties: {
    title: { type: "string", minLength: 1, description: "What the plan is of.", examples: ["Brindle Bank"] },
    format: { const: 1 },
    walls: {
      type: "object",
      minProperties: 1,
      propertyNames: { $ref: `${home}forms.schema.json#/$defs/name` },
      additionalProperties: { $ref: `${home}features/walls.schema.json` },
    },
    counts: { type: "object", propertyNames: { enum: ["sheep", "goats"] }, additionalProperties: { type: "integer" } },
  },
  additionalProperties: false,
};
