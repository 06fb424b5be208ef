// Where each vehicle goes at each stage, in words: what it does, over which ground, in and out by what, and whether it has the room.

import type { Finding, Verdict } from "../model/finding.ts";
import { type Feature, type Plan, propertyOf } from "../model/plan.ts";

/** The rule that says whether a manoeuvre has its room. */
const roomRule = "access/no-room-to-turn";

/** Whether a finding tells of a manoeuvre whether it has its room. */
export const tellsRoom = ({ rule }: Finding): boolean => rule === roomRule;

const verbs: Readonly<Record<string, string>> = {
  "turn round": "turns round",
  "drive through": "drives through",
  pass: "passes another",
  park: "parks",
  "leave a bay": "leaves its bay",
  "reverse to": "goes in backwards",
  deliver: "delivers and turns",
  "empty a tank": "empties the tank",
  load: "loads",
  "come in": "comes in",
  "go out": "goes out",
};

const outcomes: Readonly<Record<Verdict, string>> = {
  met: "it has the room that is wanted",
  "no-fault-seen": "no fault was seen",
  "not-met": "it has not the room that is wanted",
  undecided: "whether it has the room cannot be said",
  "not-given": "whether it has the room is not known, for something is not in the plan",
  departure: "it has not the room that is wanted, and somebody agreed to that",
  "does-not-bear": "its room was not looked at",
};

/** A heading for each stage that vehicles come in, and a line for each vehicle; stages with the same vehicles are told together. */
export function vehicleWays(plan: Plan, findings: readonly Finding[], stages: readonly number[]): readonly string[] {
  const told = stages.map((stage) => {
    const ways = plan.features
      .filter((one) => one.kind === "manoeuvre" && isDone(one, stage, plan))
      .map((one) => `-  ${wayWords(one, roomOf(one, plan.stages[stage] ?? "", findings))}`);
    return { stage: `"${plan.stages[stage] ?? ""}"`, ways, text: ways.join("\n") };
  });
  const each = told.filter(({ text }, i) => text !== "" && told.findIndex((one) => one.text === text) === i);
  return each.flatMap(({ text, ways }) => {
    const at = told.filter((one) => one.text === text).map(({ stage }) => stage);
    return [`WHERE VEHICLES GO at stage${at.length > 1 ? "s" : ""} ${at.join(" and ")}:`, ...ways];
  });
}

function isDone(manoeuvre: Feature, stage: number, plan: Plan): boolean {
  const stands = manoeuvre.from <= stage && (manoeuvre.until === null || stage < manoeuvre.until);
  const only = namesOf(manoeuvre, "stages");
  return stands && (only.length === 0 || only.includes(plan.stages[stage] ?? ""));
}

interface Room {
  readonly verdict: Verdict | null;
  /** Whether something else about the manoeuvre fails at the stage. */
  readonly failsElsewhere: boolean;
}

function roomOf(manoeuvre: Feature, stage: string, findings: readonly Finding[]): Room {
  const own = findings.filter(
    ({ stages, features }) => stages.includes(stage) && features.some(({ name }) => name === manoeuvre.name),
  );
  return {
    verdict: own.find(({ rule }) => rule === roomRule)?.verdict ?? null,
    failsElsewhere: own.some(({ rule, verdict }) => rule !== roomRule && verdict === "not-met"),
  };
}

const namesOf = (feature: Feature, ...properties: readonly string[]): readonly string[] =>
  properties.flatMap((property) => {
    const value = propertyOf(feature, property);
    return (Array.isArray(value) ? value : [value]).filter((name): name is string => typeof name === "string");
  });

/** `lorry ("blocks come") delivers and turns on "drive" and "yard", in and out by "drive"`. */
function wayWords(manoeuvre: Feature, { verdict, failsElsewhere }: Room): string {
  const [vehicle = "a vehicle"] = namesOf(manoeuvre, "vehicle");
  const [trailer] = namesOf(manoeuvre, "with_trailer");
  const [to] = namesOf(manoeuvre, "to");
  const [into] = namesOf(manoeuvre, "comes_in_by");
  const [out = into] = namesOf(manoeuvre, "goes_out_by");
  const [does = ""] = namesOf(manoeuvre, "does");
  const on = namesOf(manoeuvre, "on").map((name) => `"${name}"`);
  const parts = [
    `${vehicle}${trailer === undefined ? "" : ` with ${trailer}`} ("${manoeuvre.name}") ${verbs[does] ?? does}`,
    ...(to === undefined ? [] : [`${before[does] ?? "to"} "${to}"`]),
    ...(on.length === 0 ? [] : [`over ${on.join(" and ")}`]),
  ];
  const gates = gateWords(manoeuvre, into, out);
  const room = verdict === null ? "" : `: ${outcomes[verdict]}`;
  const more =
    verdict === "met" ? ", but something else about it is not as wanted: look above" : "; there is more about it above";
  return `${parts.join(" ")}${gates}${room}${failsElsewhere ? more : ""}.`;
}

/** What stands before the place that it goes to. */
const before: Readonly<Record<string, string>> = { park: "in", "leave a bay": "from", "go out": "from" };
const staysIn: ReadonlySet<string> = new Set(["park", "come in", "reverse to"]);
const onlyLeaves: ReadonlySet<string> = new Set(["leave a bay", "go out"]);

function gateWords(manoeuvre: Feature, into: string | undefined, out: string | undefined): string {
  const [does = ""] = namesOf(manoeuvre, "does");
  const { inwards, outwards } = waysRound(manoeuvre);
  if (out === undefined) return "";
  if (into === undefined || onlyLeaves.has(does)) return `, ${outwards}out by "${out}"`;
  if (staysIn.has(does)) return `, in by "${into}"`;
  if (into !== out) return `, ${inwards}in by "${into}", ${outwards}out by "${out}"`;
  return `, ${inwards}in and ${outwards === inwards ? "" : outwards}out by "${into}"`;
}

/** Which way round it comes in and goes out, where the plan leaves no choice of it. */
function waysRound(manoeuvre: Feature): { readonly inwards: string; readonly outwards: string } {
  const own = ["start.gear", "end.gear", "start.at", "end.at"].some((property) => propertyOf(manoeuvre, property));
  const [backwards = ""] = namesOf(manoeuvre, "backwards");
  if (own || backwards === "either") return { inwards: "", outwards: "" };
  const [does] = namesOf(manoeuvre, "does");
  const backsOut = backwards === "out" && does !== "leave a bay";
  return {
    inwards: backwards === "in" ? "backwards " : "forwards ",
    outwards: backsOut ? "backwards " : "forwards ",
  };
}
