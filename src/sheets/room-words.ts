// What a piece of ground for turning is called, how it is pegged and how it is driven, in sentences for the hand.

import type { RoomFound } from "../motion/room-answer.ts";
import type { RoomLayout, Turner } from "../motion/room-layout.ts";
import type { Move } from "../motion/pose.ts";

export const metres = (value: number): string => `${value.toFixed(2)} m`;

/** What is laid out, with the way in. */
export function layoutWords(layout: RoomLayout): string {
  if (layout.form === "road") return "straight road between two edges, in and out the same way";
  const track = `a track ${metres(layout.track)} wide`;
  const splay = layout.splay > 0 ? `, the corners of its mouth cut off by ${metres(layout.splay)}` : "";
  if (layout.form === "circle") return `circle that ${track} leads into towards the middle${splay}`;
  if (layout.form === "wye") return `Y of three legs, each ${metres(layout.track)} wide${splay}`;
  const ways = {
    along: `rectangle beside ${track} that runs on along its long side (a lay-by to turn in)`,
    middle: `rectangle, ${track} coming in at right angles to the middle of its long side`,
    end: `rectangle, ${track} coming in at right angles to the end of its long side`,
    "short side": `rectangle, ${track} coming in through its short side`,
  };
  return `${ways[layout.entry]}${splay}`;
}

const edgeWords = {
  ground: "the edges of the ground stand as high as they hang, the track's do not",
  all: "every edge stands as high as they hang",
} as const;

/** What is left between the wheels and trouble, in one line. */
export function wishWords({ clearance, changes, mirrors }: Turner): string {
  const moves = changes === 0 ? "in one move, no reversing" : `${changes + 1} moves, ${changes} changes of direction`;
  const kept = `${metres(clearance)} clear of every edge all round the body`;
  return `${moves}; ${kept}${mirrors ? `, and beside its mirrors (${metres(mirrors.width)} over both): ${edgeWords[mirrors.edges]}` : ""}`;
}

/** The size in a few words. */
export function sizeWords(layout: RoomLayout, { long, deep }: RoomFound["size"]): string {
  if (layout.form === "road") return `${metres(deep)} between the edges`;
  if (layout.form === "circle") return `${metres(long)} across`;
  if (layout.form === "wye") return `arms ${metres(long)} long from where the middles of the three legs meet`;
  return `${metres(long)} long and ${metres(deep)} deep`;
}

/** Sentences that a person with a tape can peg from. */
export function pegWords(layout: RoomLayout, found: RoomFound, before: number): readonly string[] {
  const { long, deep } = found.size;
  if (layout.form === "road")
    return [`Keep ${metres(deep)} clear between the two edges, for ${metres(roadLength(found))} of road or more.`];
  const track = `Keep the track straight and ${metres(layout.track)} wide for at least ${metres(before)} before its mouth.`;
  if (layout.form === "circle") return [...circleWords(layout.track, long), ...splayWords(layout), track];
  if (layout.form === "wye") return [...wyeWords(layout.track, long), ...splayWords(layout), track];
  return [...rectangleWords(layout, long, deep), ...splayWords(layout), track];
}

const roadLength = (found: RoomFound): number => {
  const along = found.swept.rings.flat().map(([, y]) => y);
  return Math.max(...along) - Math.min(...along);
};

function rectangleWords(
  { entry, track }: Extract<RoomLayout, { form: "rectangle" }>,
  long: number,
  deep: number,
): readonly string[] {
  if (entry === "along") {
    return [
      `Peg A and B on the near edge of the track, ${metres(long)} apart. From each go out ${metres(deep - track)} at right angles, away from the track, to C (from B) and D (from A).`,
      `C to D is ${metres(long)} again; both diagonals, A to C and B to D, are ${metres(Math.hypot(long, deep - track))}. With the track it is ${metres(deep)} deep.`,
      `The track goes on straight past both ends.`,
    ];
  }
  const [near, side] = entry === "short side" ? [deep, long] : [long, deep];
  const edges: Readonly<Record<string, string>> = {
    middle: `Its edges meet AB at ${metres((long - track) / 2)} and ${metres((long + track) / 2)} from A.`,
    end: `One edge runs in line with side DA, the other meets AB at ${metres(track)} from A.`,
    "short side": `One edge runs in line with side DA, the other meets AB at ${metres(track)} from A.`,
  };
  return [
    `Peg A and B ${metres(near)} apart, A on the left as you drive in; C beyond B and D beyond A, ${metres(side)} on. C to D is ${metres(near)} again; both diagonals, A to C and B to D, are ${metres(Math.hypot(near, side))}.`,
    `The track comes in at right angles to AB. ${edges[entry] ?? ""} The other way round, as in a mirror, is as good.`,
  ];
}

function wyeWords(track: number, long: number): readonly string[] {
  return [
    `Peg O on the middle line of the track, ${metres(track / 2 / Math.sqrt(3))} beyond where its straight edges end. Peg P and Q, the middles of the arms' ends, ${metres(long)} from O and ${metres(long * Math.sqrt(3))} from each other, alike on both sides.`,
    `Each arm is ${metres(track)} wide, half to either side of the lines O to P and O to Q.`,
  ];
}

function circleWords(track: number, across: number): readonly string[] {
  const middle = Math.sqrt(Math.max(0, (across / 2) ** 2 - (track / 2) ** 2));
  return [
    `Peg O on the middle line of the track, ${metres(middle)} beyond its mouth, and swing a tape of ${metres(across / 2)} round it.`,
  ];
}

function splayWords(layout: RoomLayout): readonly string[] {
  if (layout.form === "road" || layout.splay <= 0) return [];
  const cut = metres(layout.splay);
  if (layout.form === "wye") return [`Cut off all three corners between the legs: ${cut} along the edge of each leg.`];
  return [`Cut off the corners of the mouth: from ${cut} back along the edge of the track to ${cut} along the side.`];
}

/** How it is driven, move by move. */
export function moveWords(moves: readonly Move[]): string {
  const told = moves.map(({ gear, length }, i) => {
    const way = gear === "forward" ? (i === 0 ? "Forwards" : "forwards again") : i === 1 ? "back" : "back again";
    return `${way} ${length.toFixed(1)} m`;
  });
  return `${told.join(", ")}, as the middle of the rear axle goes`;
}

/** Where the body comes nearest to an edge, as somebody on the ground finds it. */
export function tightWords(layout: RoomLayout, { tightest }: RoomFound): string {
  const [x, y] = tightest.at;
  const clear = `${metres(Math.max(0, tightest.clearance))} of clearance${tightest.part === "mirrors" ? " beside a mirror" : ""}`;
  if (layout.form === "road") return `Tightest: ${clear}, at one of the two edges.`;
  if (y < -0.005) return `Tightest: ${clear}, at the edge of the track ${metres(-y)} before its mouth.`;
  const corner = layout.track / 2 + layout.splay;
  if (Math.abs(y) < 0.005 && Math.abs(Math.abs(x) - corner) < 0.005)
    return `Tightest: ${clear}, at a corner of the mouth.`;
  const aside = `${metres(Math.abs(x))} ${x < 0 ? "left" : "right"} of the track's middle line`;
  return `Tightest: ${clear}, ${metres(Math.max(0, y))} in from the line of the mouth, ${aside}.`;
}
