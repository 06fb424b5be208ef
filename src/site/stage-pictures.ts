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
}

/** The picture of the last stage; `earlier` holds those that its findings need besides, in the order of the works. */
export function stagePictures(plan: Plan, { stages: checked, read, tie, findings }: PicturesOf): Picture {
  const last = checked.at(-1) ?? 0;
  const trueNorth = tie ? tie.trueNorth : (plan.trueNorth ?? null);
  const main = pictureOf(plan, last, read, trueNorth);
  const stages = earlierStages(plan, last, findings);
  if (stages.length === 0) return main;
  return { ...main, earlier: stages.map((stage) => pictureOf(plan, stage, read, trueNorth)) };
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
