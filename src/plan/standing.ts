// Whether a thing stands already, is new, or is made to take more ground: what its text tells.

import { child, type Node } from "./node.ts";

/** What can only be said of a thing that stands. */
const foundOnly = ["traced", "traced_by", "dead", "condition", "lean", "girth", "stem", "stems", "veteran"] as const;

/** Whether a text without `from` and `existing` still tells that the thing stands. */
export function isPlainlyFound(node: Node): boolean {
  return foundOnly.some((key) => child(node, key) !== null);
}

/** What makes a thing take more ground, or go deeper, when it is changed. */
const ground: readonly string[] =
  "outline circle line centre_line offsets beside at crest toe between bend width thickness across depth bottom foundation layers formation bore inverts trench stone section buried base posts apron".split(
    " ",
  );

/** Whether a change touches where a thing lies, how wide or how deep. */
export function takesMoreGround(change: Node): boolean {
  return ground.some((key) => child(change, key) !== null);
}

const isUnder = ({ place: { path } }: Node, part: "add" | "change"): boolean =>
  path[0] === "options" && path[2] === part;

/** What an option adds is new unless it says otherwise. */
export function isAddedByOption(node: Node): boolean {
  return isUnder(node, "add");
}

/** Whether an option has changed where a thing lies, how wide or how deep. */
export function isReworkedByOption(node: Node): boolean {
  return ground.some((key) => {
    const inner = child(node, key);
    return inner !== null && isUnder(inner, "change");
  });
}
