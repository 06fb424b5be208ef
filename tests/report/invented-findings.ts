// Invented findings: every verdict, every reason for silence, every oddity of a number, and hostile names.
// Nothing in them is a real place, a real rule or a real figure of a source: only their form is meant.

import type { Finding, FoundValue, Wanted } from "../../src/model/finding.ts";

/** A finding with everything empty but what is given. */
export function invented(part: Partial<Finding> & Pick<Finding, "rule" | "verdict" | "sentence">): Finding {
  return {
    grade: "must",
    stakes: "damage",
    stage: "yard",
    stages: ["yard", "finished"],
    option: null,
    features: [],
    found: null,
    wanted: null,
    probability: null,
    remedies: [],
    cautions: [],
    defers_to: null,
    doubts: [],
    at: [{ file: "garth.yaml", path: "drains/washhouse", line: 57, column: 5 }],
    witness: [],
    others: [],
    fingerprint: `print-${part.rule}-${part.sentence.length}`,
    reading: "",
    dimension: "length",
    shown_in: "m",
    kinked: false,
    decided_by: null,
    ...part,
  };
}

/** A value with its standard uncertainty. */
export function found(value: number, doubt: number, unit = "m", method = "computed"): FoundValue {
  return { value, unit, doubt, method };
}

/** What is wanted, of at least one number, with a source unless told otherwise. */
export function wanted(part: Partial<Wanted> & Pick<Wanted, "value">): Wanted {
  return {
    sense: "at_least",
    unit: "m",
    limit: "row-1",
    where: "england",
    fell_back: false,
    standing: "guidance",
    source: { id: "garth-guide", title: "Guide to Garths, part H", clause: "table 6", seen: "memory" },
    ...part,
  };
}

const treatAsLive =
  "Treat as live. Do not tip, stack, raise, or measure up to it. Touched: stay in, keep others off, ring.";
const findServices = "Find cables and pipes first: records, locator with generator, hand-dug hole. Treat all as live.";
const sidesFall =
  "Sides fall without warning; kneeling is enough. Support or batter, ladder out, nobody alone; look again after rain.";
const gloves = "Gloves, wash, cuts covered, no spark.";
const practiceOnly = "No publisher. Ask before it decides money or harm to people.";

export const hurt: readonly Finding[] = [
  invented({
    rule: "separation/wire-over-work",
    verdict: "not-given",
    reason: "missing",
    stakes: "safety",
    sentence: 'the wire over "stone drop": nobody has said how high it hangs or what it carries',
    features: [
      { kind: "service", name: "field line", role: "wire" },
      { kind: "surface", name: "stone drop", role: "place" },
    ],
    wanted: wanted({
      value: 5.2,
      standing: "law",
      source: { id: "wire-law", title: "Wires over Garths Order 2002", clause: "regulation 17", seen: "read" },
    }),
    remedies: [
      {
        words: "tip at the road end instead, 31 m from the wire",
        short: null,
        sure: null,
        unit: "m",
        would_then_fail: [],
      },
    ],
    cautions: [treatAsLive],
    defers_to: "the owner of the line",
    at: [{ file: "garth.yaml", path: "services/field line", line: 88, column: 3 }],
    witness: [
      {
        part: "thing",
        form: "line",
        points: [
          [-2, 21],
          [46, 27],
        ],
        label: "field line",
      },
    ],
  }),
  invented({
    rule: "works/trench-entered",
    verdict: "not-met",
    stakes: "safety",
    stages: ["yard"],
    sentence: 'trench "washhouse to tank" is 1.35 m deep where somebody joints pipes in it, and its sides are not held',
    features: [{ kind: "excavation", name: "washhouse to tank", role: "trench" }],
    found: found(1.35, 0.02),
    reading: "depth with a person in it",
    wanted: wanted({
      sense: "at_most",
      value: 0,
      where: "great britain",
      source: { id: "dig-guide", title: "Guide to Digging", clause: "paragraph 12", seen: "read second-hand" },
    }),
    probability: 0,
    remedies: [
      {
        words: "joint the pipes on the bank and lower them in",
        short: null,
        sure: null,
        unit: "m",
        would_then_fail: [],
      },
    ],
    cautions: [sidesFall, findServices],
    defers_to: "a competent person",
    at: [{ file: "garth.yaml", path: "excavations/washhouse to tank", line: 61, column: 3 }],
    witness: [
      {
        part: "found",
        form: "line",
        points: [
          [18, 14],
          [27, 6],
        ],
      },
    ],
  }),
  invented({
    rule: "separation/well-from-tank",
    verdict: "undecided",
    stakes: "safety",
    sentence: 'well "spring head" lies 50.3 m from tank "tank"',
    features: [
      { kind: "water", name: "spring head", role: "well" },
      { kind: "septic_tank", name: "tank", role: "tank" },
    ],
    found: found(50.3, 0.25),
    reading: "clear distance",
    wanted: wanted({
      value: 50,
      standing: "law",
      where: "england",
      fell_back: true,
      source: { id: "well-law", title: "Wells Order", clause: "", seen: "read" },
    }),
    probability: 0.885,
    decided_by: "survey",
    doubts: [
      { path: "survey/stations/WL", words: "the tape P3 to WL", share: 0.82, needed: 0.08 },
      { path: "survey/compass", words: "the bearing of WL", share: 0.13, needed: null },
    ],
    cautions: ["Met is distance only: test the water each year."],
    defers_to: "the health authority",
    at: [{ file: "garth.yaml", path: "water/spring head", line: 71, column: 3 }],
    witness: [
      {
        part: "found",
        form: "line",
        points: [
          [30, 3],
          [5, 42],
        ],
        label: "50.30 m",
      },
    ],
  }),
];

export const fails: readonly Finding[] = [
  invented({
    rule: "drains/too-flat",
    verdict: "not-met",
    sentence: 'drain "washhouse to tank", 100 mm with a WC on it, falls 1 in 94 and is too flat',
    features: [{ kind: "drain run", name: "washhouse to tank", role: "run" }],
    found: found(0.010638, 0.0002, "m/m"),
    reading: "fall",
    dimension: "slope",
    shown_in: "1 in",
    wanted: wanted({ value: 0.0125, unit: "m/m" }),
    probability: 0,
    remedies: [
      {
        words: "lower the tank inlet to 48.906 (now 48.940): 28 mm short; 34 mm to be sure",
        short: 0.028,
        sure: 0.034,
        unit: "m",
        would_then_fail: ["drains/tank-too-deep"],
      },
      {
        words: "lift the washhouse end to 49.134: 28 mm short; 34 mm to be sure",
        short: 0.028,
        sure: 0.034,
        unit: "m",
        would_then_fail: [],
      },
    ],
    cautions: [gloves],
    defers_to: "building control",
    doubts: [{ path: "survey/level_book/3", words: "the staff reading at the tank", share: 0.7, needed: 0.001 }],
    others: [{ features: ["yard drain"], value: 0.0102, verdict: "not-met" }],
    witness: [
      {
        part: "found",
        form: "line",
        points: [
          [18, 14],
          [27, 6],
        ],
        label: "1 in 94",
      },
      { part: "wanted", form: "point", points: [[27, 6]] },
    ],
  }),
  invented({
    rule: "access/no-room-to-turn",
    verdict: "not-met",
    sentence: '"farm pickup" cannot turn on "pad" in 3 moves; its tail would be 0.14 m into the north wall',
    features: [
      { kind: "manoeuvre", name: "pickup turns", role: "manoeuvre" },
      { kind: "surface", name: "pad", role: "pad" },
    ],
    found: found(-0.14, 0.03, "m", "searched"),
    reading: "room at the tail",
    wanted: wanted({ value: 0.3, where: "anywhere", standing: "your own wish", source: null }),
    probability: 0,
    remedies: [
      {
        words: "carry the east edge of the pad out 0.60 m (pegs Q2, Q3): then 0.37 m clear, in 3 moves",
        short: 0.44,
        sure: 0.5,
        unit: "m",
        would_then_fail: [],
      },
    ],
    cautions: ["Nobody on foot in the drawn area. Guide in the driver's sight. Children indoors."],
    at: [{ file: "garth.yaml", path: "manoeuvres/pickup turns", line: 97, column: 3 }],
    witness: [
      {
        part: "found",
        form: "outline",
        points: [
          [24.5, -0.5],
          [29.6, -0.5],
          [29.6, -2.4],
          [24.5, -2.4],
        ],
      },
      { part: "thing", form: "circle", points: [[31, -4]], radius: 6.2 },
    ],
    kinked: true,
  }),
  invented({
    rule: "fences/jumped-from-wall",
    verdict: "departure",
    stages: ["finished"],
    sentence: 'fence "goat paddock" can be jumped from the march wall: from it a rise of 0.35 m clears the top',
    found: found(0.35, 0.04),
    reading: "rise asked for",
    wanted: wanted({ value: 1.2, where: "anywhere", standing: "practice", source: null }),
    probability: 0,
    beneath: {
      verdict: "not-met",
      agreed_by: "the owner",
      because: "top wire goes live in spring",
      review: "2026-05-01",
      expired: true,
    },
    cautions: [practiceOnly],
    at: [{ file: "garth.yaml", path: "fences/goat paddock", line: 120, column: 3 }],
    witness: [{ part: "found", form: "point", points: [[12, -11.2]] }],
  }),
];

export const others: readonly Finding[] = [
  invented({
    rule: "surfaces/crossfall",
    verdict: "not-met",
    grade: "should",
    stakes: "nuisance",
    sentence: 'surface "yard" falls 1.2 % across',
    found: found(0.012, 0.001, "m/m"),
    reading: "fall across",
    dimension: "slope",
    shown_in: "%",
    wanted: wanted({
      sense: "between",
      value: [0.025, 0.06],
      unit: "m/m",
      where: "anywhere",
      standing: "practice",
      source: null,
    }),
    probability: 0,
    cautions: [practiceOnly],
    at: [{ file: "garth.yaml", path: "surfaces/yard", line: 40, column: 3 }],
  }),
  invented({
    rule: "access/gate-too-narrow",
    verdict: "undecided",
    sentence:
      'Gate "lane": the measurements cannot say whether it is too narrow; clear opening 3.12 m; at least 3.10 m is wanted.',
    found: found(3.12, 0.025),
    reading: "clear opening",
    wanted: wanted({
      value: 3.1,
      source: { id: "fire-guide", title: "Guide to Garths, part B", clause: "table 13.1", seen: "read" },
    }),
    probability: 0.788,
    decided_by: "survey",
    doubts: [{ path: "survey/stations/G2", words: "the tape to the east post", share: 0.89, needed: 0.012 }],
    at: [{ file: "gates/lane.yaml", path: "gates/lane", line: 4, column: 3 }],
    witness: [
      {
        part: "found",
        form: "line",
        points: [
          [0, 0],
          [-3.1, 0.3],
        ],
        label: "3.12 m",
      },
    ],
  }),
  invented({
    rule: "drains/cover",
    verdict: "undecided",
    sentence: 'drain "kitchen" will lie 0.61 m under the yard',
    found: found(0.61, 0.02),
    reading: "cover over the pipe",
    wanted: wanted({
      value: 0.6,
      standing: "standard",
      source: { id: "pipe-standard", title: "Pipes in Garths", clause: "5.2", seen: "computed" },
    }),
    probability: 0.69,
    decided_by: "build",
    doubts: [{ path: "build/levels", words: "how closely a pipe can be laid", share: 0.95, needed: null }],
    at: [{ file: "garth.yaml", path: "drains/kitchen", line: 52, column: 3 }],
  }),
  invented({
    rule: "access/long-trailer",
    verdict: "not-given",
    reason: "gave-up",
    option: "wider gate",
    sentence: 'whether the float can reach "bay" was not found',
    at: [{ file: "garth.yaml", path: "manoeuvres/float", line: 101, column: 3 }],
  }),
  invented({
    rule: "separation/field-near-well",
    verdict: "not-given",
    reason: "no-limit-here",
    stakes: "damage",
    sentence: 'drainage field "lower field" lies 44 m from the well',
    found: found(44, 0.3),
    reading: "clear distance",
    at: [],
  }),
  invented({
    rule: "separation/gas-near-drain",
    verdict: "not-given",
    reason: "unsaid",
    stakes: "safety",
    sentence: "gas stored or piped on the plot",
    at: [],
  }),
  invented({
    rule: "walls/leaning",
    verdict: "departure",
    stakes: "safety",
    sentence: 'wall "march wall" leans 60 mm in 1.26 m',
    found: found(0.06, 0.005),
    reading: "lean",
    wanted: wanted({ sense: "at_most", value: 0.03, standing: "practice", source: null, where: "anywhere" }),
    probability: 0,
    beneath: {
      verdict: "not-met",
      agreed_by: "J. Thwaite, waller",
      because: 'stood so for "sixty years"',
      review: "2027-05-01",
      expired: false,
    },
    cautions: ["A screen, not a design. Keep people away to one and a half times its height."],
    defers_to: "an engineer",
    at: [{ file: "garth.yaml", path: "walls/march wall", line: 44, column: 3 }],
    witness: [{ part: "thing", form: "point", points: [[20, -12.9]] }],
  }),
  invented({
    rule: "survey/hostile",
    verdict: "not-met",
    sentence: 'tree "<script>alert(1)</script>\u001b[31m\u202eoak & ash]]>" \u0000stands\nin the\ttrack',
    features: [{ kind: "tree", name: "<b>\u001b[2J=1+1", role: "tree" }],
    found: found(0, 0),
    reading: "room\u0007 <i>beside</i> the stem of the tree",
    wanted: wanted({ value: 1000, source: { id: "x", title: "A & B <c>", clause: '"d"', seen: "none" } }),
    at: [{ file: "\u001b]0;owned\u0007bad\u202e.yaml", path: "trees/<b>=1+1", line: 9, column: 1 }],
    witness: [{ part: "found", form: "point", points: [[33, 14]], label: "<b>\"&'" }],
    others: [{ features: ["<i>\u0000"], value: Number.NaN, verdict: "not-given" }],
  }),
];

/** Met, some of it only just: enough of them that the note on many checks is due. */
export const quiet: readonly Finding[] = [
  ...[0.951, 0.96, 0.97, 0.955, 0.98, 0.985, 0.9999, 1].map((probability, index) =>
    invented({
      rule: "fences/too-low",
      verdict: "met",
      sentence: `fence "paddock ${index + 1}" is 1.2${index} m high`,
      found: found(1.2 + index / 100, 0.02),
      reading: "height",
      wanted: wanted({ value: 1.2 }),
      probability,
      cautions: index === 0 ? ["Never barbed wire on a live fence."] : [],
    }),
  ),
  invented({
    rule: "walls/leaning",
    verdict: "no-fault-seen",
    sentence: 'wall "byre wall" stands upright',
    probability: 0.999,
    stakes: "safety",
  }),
  invented({ rule: "trees/roots-cut", verdict: "does-not-bear", sentence: 'tree "plum" is nowhere near a dig' }),
];
