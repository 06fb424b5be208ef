// Which stages are drawn: the last one, and the fewest earlier ones that show what is past by then.

import { describe, expect, it } from "vitest";
import { readPlain } from "../../src/engine/spread.ts";
import type { Finding } from "../../src/model/finding.ts";
import { stagePictures } from "../../src/site/stage-pictures.ts";
import { planWith } from "../measures/rig.ts";

const heap = (stages: object) => ({ at: [5, 5], ...stages });
const plan = planWith({
  stages: ["now", "shed", "yard"],
  heaps: { drop: heap({ from: "shed", until: "yard" }), muck: heap({ existing: true }) },
});
const finding = (stages: readonly string[], verdict: Finding["verdict"] = "not-met") =>
  ({ verdict, stages, features: [{ kind: "heap", name: "drop", role: "heap" }] }) as unknown as Finding;
const drawn = (...findings: readonly Finding[]) => {
  const main = stagePictures(plan, { stages: [0, 1, 2], read: readPlain(plan.numbers), tie: null, findings, ways: [] });
  return [main, ...(main.earlier ?? [])].map(({ stage }) => stage);
};

describe("stages that are drawn", () => {
  it("are the last alone where nothing is past by then", () => {
    expect(drawn()).toEqual(["yard"]);
    expect(drawn(finding(["shed", "yard"]))).toEqual(["yard"]);
    expect(drawn(finding(["shed"], "met"))).toEqual(["yard"]);
  });
  it("are also the latest stage of each finding that does not last, each once", () => {
    expect(drawn(finding(["now", "shed"]), finding(["shed"]))).toEqual(["yard", "shed"]);
    expect(drawn(finding(["shed"]), finding(["now"]))).toEqual(["yard", "now", "shed"]);
  });
  it("are also the latest stage of a vehicle that has its room, of which only its way is drawn", () => {
    const way = finding(["now", "shed"], "met");
    const read = readPlain(plan.numbers);
    const pictures = (ways: readonly Finding[], findings: readonly Finding[] = []) =>
      stagePictures(plan, { stages: [0, 1, 2], read, tie: null, findings, ways }).earlier ?? [];
    expect(pictures([way]).map(({ stage, shows }) => [stage, shows])).toEqual([["shed", "ways"]]);
    // Where the stage is drawn whole anyway, or the last one shows it, there is no more.
    expect(pictures([way], [finding(["shed"])]).map(({ stage, shows }) => [stage, shows])).toEqual([
      ["shed", undefined],
    ]);
    expect(pictures([finding(["shed", "yard"], "met")])).toEqual([]);
    expect(pictures([finding(["shed"], "not-given")])).toEqual([]);
  });
  it("show what stands at each", () => {
    const main = stagePictures(plan, {
      stages: [0, 1, 2],
      read: readPlain(plan.numbers),
      tie: null,
      findings: [finding(["shed"])],
      ways: [],
    });
    const names = (picture = main) => picture.marks.map(({ name }) => name);
    expect(names()).toEqual(["muck"]);
    expect(names(main.earlier?.[0])).toEqual(["drop", "muck"]);
  });
});
