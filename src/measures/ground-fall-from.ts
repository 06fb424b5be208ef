// What: how far does the ground fall over the first metres from this building's walls, where it falls least?
// Formula: level of the ground at the wall - level so far straight out from it; below 0 where it falls towards the building.
// Source: plane geometry; ends and middle of every wall.
// Valid: where the levels reach both places; straight between the places where the staff stood.
// Witness: the line out from the wall.

import type { CandidatePlace, Measure } from "../model/reading.ts";
import { groundOf, levelAtPoint, roughness } from "../site/ground.ts";
import { wallPlaces } from "../site/outside-walls.ts";
import { askedFor, missing } from "./asked-for.ts";

export const groundFallFrom: Measure = {
  name: "ground-fall-from",
  dimension: "length",
  roles: { building: "a building with an outline" },
  parameters: { within: { dimension: "length", default: 3 } },
  phrase: "the ground falls {found} away from it",
  below: { phrase: "the ground rises {found} away from it", wanted: "of fall" },
  shortName: "fall away",
  shownIn: "mm",
  find: (subject, scene, parameters) => {
    const { building } = subject;
    if (building?.shape?.form !== "outline") return { is: "does-not-bear" };
    const within = Number(parameters["within"]);
    const ground = groundOf(scene);
    const places = wallPlaces(building, scene.read).flatMap((wall): readonly CandidatePlace[] => {
      const at = levelAtPoint(ground, wall.at, scene.read);
      const out = levelAtPoint(ground, (read) => wall.out(read, within), scene.read);
      if (!at || !out) return [];
      return [
        {
          key: wall.key,
          value: (read) => at(read) - out(read),
          witness: (read) => [{ part: "found", form: "line", points: [wall.at(read), wall.out(read, within)] }],
          methodU: roughness,
        },
      ];
    });
    if (places.length > 0) return { is: "found", places };
    return missing(askedFor(building, "ground_outside", "levels of the ground at the walls and beyond", "length"));
  },
};
