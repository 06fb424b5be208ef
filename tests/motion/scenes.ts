// Turning scenes with paths that were checked by another program; regions, poses and results are in scenes.json.

import { readFileSync } from "node:fs";
import type { Ground } from "../../src/motion/ground.ts";
import type { Arc, Gear, Pose } from "../../src/motion/pose.ts";
import type { Vehicle } from "../../src/motion/vehicle.ts";
import { sceneVehicles } from "./published-vehicles.ts";

type Rings = readonly (readonly (readonly [number, number])[])[];

interface SceneFile {
  readonly scenes: readonly {
    readonly id: string;
    readonly vehicle: "P" | "compact";
    readonly margin: number;
    readonly clear: Rings;
    readonly running: Rings;
    readonly start: readonly [number, number, number];
    readonly goal: readonly [number, number, number];
    readonly firstGear: Gear;
    readonly expected: { readonly feasible: boolean; readonly minDirectionChanges: number | null };
    readonly verifiedPath: { readonly segments: readonly { readonly k: number; readonly ds: number }[] } | null;
  }[];
}

export interface TestScene {
  readonly id: string;
  readonly vehicle: Vehicle;
  readonly margin: number;
  readonly clear: Ground;
  readonly running: Ground;
  readonly start: Pose;
  readonly goal: Pose;
  readonly firstGear: Gear;
  readonly leastChanges: number | null;
  readonly path: readonly Arc[] | null;
}

/** The scenes; `clear` and `running` are one object where the file gives them the same rings. */
export const scenes: readonly TestScene[] = (
  JSON.parse(readFileSync(new URL("scenes.json", import.meta.url), "utf8")) as SceneFile
).scenes.map((scene) => {
  const clear: Ground = { rings: scene.clear };
  const same = JSON.stringify(scene.clear) === JSON.stringify(scene.running);
  return {
    id: scene.id,
    vehicle: sceneVehicles[scene.vehicle],
    margin: scene.margin,
    clear,
    running: same ? clear : { rings: scene.running },
    start: { x: scene.start[0], y: scene.start[1], heading: scene.start[2] },
    goal: { x: scene.goal[0], y: scene.goal[1], heading: scene.goal[2] },
    firstGear: scene.firstGear,
    leastChanges: scene.expected.minDirectionChanges,
    path: scene.verifiedPath?.segments.map(({ k, ds }) => ({ curvature: k, length: ds })) ?? null,
  };
});

export function sceneById(id: string): TestScene {
  const scene = scenes.find((one) => one.id === id);
  if (scene === undefined) throw new Error(`no scene ${id}`);
  return scene;
}
