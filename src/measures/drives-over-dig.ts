// What: how many vehicles go, in this stage, where an open dig cuts the ground that they use?
// Formula: manoeuvres of the stage that use the ground and do not wait until the dig is filled or what lies in it is laid.
// Source: the plan.
// Valid: as true as the plan's order of work; `after` on the manoeuvre says what it waits for.
// Witness: where the dig lies on the way.

import { type Feature, featureWords, propertyOf } from "../model/plan.ts";
import type { CandidatePlace, Measure, Scene } from "../model/reading.ts";
import { namesIn } from "../site/days.ts";
import { groundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { groundNames } from "../site/used-by.ts";

export const drivesOverDig: Measure = {
  name: "drives-over-dig",
  dimension: "count",
  roles: { dig: "a dig or trench", way: "the ground that vehicles use" },
  parameters: {},
  phrase: "{found} of the vehicles of this stage go where it cuts {way}",
  shortName: "vehicles over an open dig",
  find: ({ dig, way }, scene) => {
    if (!dig || !way) return { is: "does-not-bear" };
    const used = scene.standing("manoeuvre").filter((one) => uses(one, way, scene));
    const [figure, ground] = [groundFigure(dig), groundFigure(way)];
    if (used.length === 0 || !figure || !ground) return { is: "does-not-bear" };
    const cuts = nearPlaces(figure, ground, 0, scene.read).filter((near) => near.distance(scene.read) < 0);
    const [first] = cuts;
    if (!first) return { is: "does-not-bear" };
    const met = used.filter((one) => !waitsFor(one, dig));
    const place: CandidatePlace = {
      key: "over",
      value: () => met.length,
      witness: (read) => [{ part: "found", form: "line", points: first.ends(read) }],
    };
    return { is: "found", places: [met.length > 0 ? { ...place, where: met.map(featureWords).join(", ") } : place] };
  },
};

/** Whether a manoeuvre of this stage goes over ground that stood before the stage's work. */
function uses(manoeuvre: Feature, way: Feature, scene: Scene): boolean {
  return groundNames(manoeuvre).includes(way.name) && scene.before("surface").some(({ name }) => name === way.name);
}

/** Whether it waits for what is laid in the dig, or for the job or thing that fills it. */
function waitsFor(manoeuvre: Feature, dig: Feature): boolean {
  const whole = dig.partOf ?? dig;
  const after = namesIn(manoeuvre, "after");
  return [whole.name, ...[propertyOf(dig, "filled_by")].flat()].some((name) => after.includes(name as string));
}
