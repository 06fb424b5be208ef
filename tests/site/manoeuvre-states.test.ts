// What the work of a stage runs on: what stood before it, what waits, and what a change leaves as it was.

import { expect, it } from "vitest";
import { readPlain } from "../../src/engine/spread.ts";
import { stageViews } from "../../src/engine/stages.ts";
import { planOf } from "../plan/resolved.ts";

const plan = planOf(`
sightrail: 1
title: t
place: [anywhere]
stages: [now, yard, finished]
surfaces:
  track: {centre_line: [[0, 0], [20, 0]], width: 3, existing: true}
  yard: {outline: [[20, -5], [30, -5], [30, 5], [20, 5]], from: yard}
walls:
  old wall: {line: [[0, 9], [9, 9]], height: 1, existing: true, until: yard}
changes:
  finished: {surfaces: {track: {width: 4}}}
`);
const read = readPlain(plan.numbers);

/** Names of what stands before the work of a stage, the track with its width then. */
function before(stage: number): readonly string[] {
  const [view] = stageViews(plan, [stage], read, () => []);
  return (view?.scene.before() ?? []).map((feature) => {
    const width = feature.shape?.form === "line" ? feature.shape.width : undefined;
    return width ? `${feature.name} ${read(width)}` : feature.name;
  });
}

it.each([
  ["the first stage finds what exists", 0, ["track 3", "old wall"]],
  ["what is taken away at its start is gone, what it makes is not there", 1, ["track 3"]],
  ["what it changes is still as it was", 2, ["track 3", "yard"]],
])("%s", (_, stage, names) => {
  expect(before(stage)).toEqual(names);
});
