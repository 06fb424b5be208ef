// The sheet of a gate off a lane: how wide it must open, by how far back it stands.

import type { Sheet, SheetEntry } from "../model/sheet.ts";
import type { RoomFoot } from "./room.ts";
import { mindWords } from "./room.ts";
import { metres } from "./room-words.ts";
import type { GateTold } from "./room-work.ts";

const columns = [
  "vehicle",
  "lane_m",
  "clearance_m",
  "set_back_m",
  "opening_from_middle_m",
  "opening_from_far_side_m",
] as const;

/** The body covers more than the gate's own width before it comes to the gate. */
function openWords({ setback, posts, beyondPost }: NonNullable<GateTold["placed"]>): string {
  const beyond =
    beyondPost > 0.005
      ? `; on the outside of the bend that reaches ${metres(beyondPost)} beyond the line of its post`
      : "";
  return `A gate ${metres(setback)} back, as it is drawn, opens ${metres(posts[1] - posts[0])}. Between lane and gate keep open all the ground that the body covers, with the clearance${beyond}.`;
}

/** The sheet of one vehicle. */
export function gateSheet(
  { vehicle, lane, rows, straightFrom, placed }: GateTold,
  file: string,
  foot: RoomFoot,
): Sheet {
  const entries = rows.map(({ setback, fromMiddle, fromFarSide }): SheetEntry => {
    const far = fromFarSide === null ? "" : `${metres(fromFarSide)} keeping to the far side of the lane`;
    const middle = fromMiddle === null ? "" : `${metres(fromMiddle)} from the middle of the lane`;
    const both = [middle, far].filter((words) => words !== "").join(", ");
    return {
      words: `${metres(setback)} back: opens ${both === "" ? "nothing that will do: the lane is too narrow" : both}.`,
      notes: [],
    };
  });
  return {
    title: `${vehicle.name}: gate off a lane`,
    what: `right-angled turn off a lane ${metres(lane.width)} wide, forwards in one sweep; ${metres(lane.clearance)} clear on each side`,
    file,
    parts: [
      {
        heading: "CLEAR OPENING between the posts, by how far the gate stands back from the near edge of the lane",
        entries,
      },
      {
        heading: "WHAT TO PEG",
        entries: [
          `From ${metres(straightFrom)} back the vehicle is straight again, and its width with the clearance on each side is enough.`,
          ...(placed === null ? [] : [openWords(placed)]),
          "The post on the inside of the bend is the one that gets hit: measure its place from the line that the driver is to follow.",
        ].map((words) => ({ words, notes: [] })),
      },
    ],
    foot: [
      "How sure: worked out by formula for one sweep at full lock from the moment the driver turns the wheel (checked against an exact sweep). The margin is the clearance on each side and nothing else; a later turn of the wheel, or a shunt, changes all of it. The lane beyond the mouth is taken as free of anything that stands out into it.",
      `The vehicle: ${vehicle.words}. ${vehicle.rests.join(" ")} Measure your own: what is measured stands before any library.`,
      ...mindWords(foot),
      "A gate must not open over the lane, and the longest vehicle must be able to stand clear of the lane before it is opened.",
    ],
    table: {
      columns,
      rows: rows.map(({ setback, fromMiddle, fromFarSide }) => [
        vehicle.name,
        lane.width,
        lane.clearance,
        setback,
        fromMiddle === null ? "" : Number(fromMiddle.toFixed(3)),
        fromFarSide === null ? "" : Number(fromFarSide.toFixed(3)),
      ]),
    },
  };
}
