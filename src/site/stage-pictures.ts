// The picture of a plan as it ends up, with pictures of the earlier stages at which something is found that is past by then.

import type { Finding } from "../model/finding.ts";
import type { Picture } from "../model/picture.ts";
import type { Plan } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import { pictureOf } from "./picture.ts";

/** What the pictures are made with: the stages that were checked, and the earth tie, whose true north stands before the plan's. */
export interface PicturesOf {
  readonly stages: readonly number[];
  readonly read: Read;
  readonly tie: { readonly trueNorth: number | null } | null;
  readonly findings: readonly Finding[];
  /** Those of them that tell whether a vehicle has its room. */
  readonly ways: readonly Finding[];
}

/** The picture of the last stage; `earlier` holds those that its findings need besides, in the order of the works. */
export function stagePictures(plan: Plan, { stages: checked, read, tie, findings, ways }: PicturesOf): Picture {
  const last = checked.at(-1) ?? 0;
  const trueNorth = tie ? tie.trueNorth : (plan.trueNorth ?? null);
  const main = pictureOf(plan, last, read, trueNorth);
  const stages = earlierStages(plan, last, findings);
  const driven = drivenStages(plan, [last, ...stages], ways);
  const all = [...stages, ...driven].sort((a, b) => a - b);
  if (all.length === 0) return main;
  const earlier = all.map((stage): Picture => {
    const picture = pictureOf(plan, stage, read, trueNorth);
    return driven.includes(stage) ? { ...picture, shows: "ways" } : picture;
  });
  return { ...main, earlier };
}

/** The fewest latest stages, so that every finding that does not last has one. */
function earlierStages(plan: Plan, last: number, findings: readonly Finding[]): readonly number[] {
  const shown = new Set([last]);
  for (const { verdict, stages, features } of findings) {
    if (verdict !== "not-met" && verdict !== "undecided" && verdict !== "departure") continue;
    const at = stages.map((stage) => plan.stages.indexOf(stage)).filter((index) => index >= 0 && index <= last);
    if (features.length === 0 || at.length === 0 || at.some((index) => shown.has(index))) continue;
    shown.add(Math.max(...at));
  }
  return [...shown].filter((stage) => stage !== last).sort((a, b) => a - b);
}

/** The fewest latest stages besides, so that every vehicle that was judged is shown on its way. */
function drivenStages(plan: Plan, pictured: readonly number[], ways: readonly Finding[]): readonly number[] {
  const shown = new Set(pictured);
  const more: number[] = [];
  for (const { verdict, stages } of ways) {
    const at = stages.map((stage) => plan.stages.indexOf(stage)).filter((index) => index >= 0);
    if (verdict === "does-not-bear" || verdict === "not-given" || at.length === 0) continue;
    if (at.some((index) => shown.has(index))) continue;
    const latest = Math.max(...at);
    shown.add(latest);
    more.push(latest);
  }
  return more;
}
