// An independent check of a path by brute force: outlines put down every step and clipped against the ground. It
// shares nothing with the closed forms under test but the words for poses and arcs.

import type { Envelope } from "../../src/motion/envelope.ts";
import type { Arc, Pose } from "../../src/motion/pose.ts";

type Corner = readonly [number, number];

/** Metres along the path at which an outline first leaves its ground, sampled every `step`; null where it never does. */
export function firstLeaving(
  envelopes: readonly Envelope[],
  path: { start: Pose; arcs: readonly Arc[] },
  step: number,
) {
  let { x, y, heading } = path.start;
  let driven = 0;
  if (envelopes.some((envelope) => leaves(envelope, { x, y, heading }))) return 0;
  for (const arc of path.arcs) {
    const steps = Math.max(1, Math.ceil(Math.abs(arc.length) / step));
    const ds = arc.length / steps;
    for (let i = 0; i < steps; i++) {
      // Midpoint rule with exact chord of a circle, in another arrangement than the code under test.
      const next = heading + arc.curvature * ds;
      if (Math.abs(arc.curvature) < 1e-12) {
        x += ds * Math.cos(heading);
        y += ds * Math.sin(heading);
      } else {
        const middle = (heading + next) / 2;
        const chord = (2 / arc.curvature) * Math.sin((arc.curvature * ds) / 2);
        x += chord * Math.cos(middle);
        y += chord * Math.sin(middle);
      }
      heading = next;
      driven += Math.abs(ds);
      if (envelopes.some((envelope) => leaves(envelope, { x, y, heading }))) return driven;
    }
  }
  return null;
}

/** Whether an outline at a pose is not wholly on its ground: an edge crossed, or a corner outside. */
export function leaves(envelope: Envelope, pose: Pose): boolean {
  const corners = outline(envelope, pose);
  const rings = [...envelope.ground.rings, ...(envelope.ground.obstacles ?? [])];
  for (const ring of rings) {
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] ?? a;
      for (const [j, p] of corners.entries()) if (segmentsCross(a, b, p, corners[(j + 1) % 4] ?? p)) return true;
      if (windsRound(corners, a)) return true;
    }
  }
  const middle: Corner = [mean(corners.map(([u]) => u)), mean(corners.map(([, v]) => v))];
  const inside = envelope.ground.rings.filter((ring) => windsRound(ring, middle)).length % 2 === 1;
  return !inside || (envelope.ground.obstacles ?? []).some((ring) => windsRound(ring, middle));
}

function outline(envelope: Envelope, pose: Pose): Corner[] {
  const { back, front, right, left } = envelope;
  const corners: Corner[] = [
    [back, right],
    [front, right],
    [front, left],
    [back, left],
  ];
  return corners.map(([u, v]) => [
    pose.x + u * Math.cos(pose.heading) - v * Math.sin(pose.heading),
    pose.y + u * Math.sin(pose.heading) + v * Math.cos(pose.heading),
  ]);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function side(a: Corner, b: Corner, p: Corner): number {
  return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
}

function segmentsCross(a: Corner, b: Corner, p: Corner, q: Corner): boolean {
  return side(a, b, p) * side(a, b, q) < 0 && side(p, q, a) * side(p, q, b) < 0;
}

/** Whether a ring winds round a point, by summing the angles under which its edges are seen. */
function windsRound(ring: readonly Corner[], p: Corner): boolean {
  let total = 0;
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] ?? a;
    const u = [a[0] - p[0], a[1] - p[1]] as const;
    const v = [b[0] - p[0], b[1] - p[1]] as const;
    total += Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]);
  }
  return Math.abs(total) > Math.PI;
}
